import type { Part } from "../plan/types.ts";

/** A part with the parts that hold it, outermost first. */
export interface Placed {
  part: Part;
  within: readonly Part[];
}

/**
 * Every part of a tree, parents before children, in the order they are listed: one at a time, since a plan may hold
 * hundreds of thousands.
 */
export function* walk(root: Part, within: readonly Part[] = []): Generator<Placed> {
  yield { part: root, within };
  if (root.parts.length === 0) return;
  const around = [...within, root];
  for (const inner of root.parts)
    if (inner.parts.length === 0) yield { part: inner, within: around };
    else yield* walk(inner, around);
}

/** Every leaf of a tree. */
export function* leaves(root: Part): Generator<Part> {
  for (const { part } of walk(root)) if (part.parts.length === 0) yield part;
}

/** How many pieces a leaf holds: a run of shapes holds several. */
export function piecesIn({ piece, shapes }: Part): number {
  return piece === null ? 0 : (shapes?.length ?? 1);
}

export function isStripOrBand(part: Part): boolean {
  return part.role === "strip" || part.role === "band";
}

/** Where a part lies and how big it is, for messages. */
export function at({ role, x, y, across, along }: Part): string {
  return `${role} of ${across} x ${along} at ${x}, ${y}`;
}
