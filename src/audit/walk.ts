import type { Part } from "../plan/types.ts";

/** A part with the parts that hold it, outermost first. */
export interface Placed {
  part: Part;
  within: readonly Part[];
}

/** Every part of a tree, parents before children, in the order they are listed. */
export function walk(root: Part): Placed[] {
  const found: Placed[] = [];
  const visit = (part: Part, within: readonly Part[]) => {
    found.push({ part, within });
    for (const inner of part.parts) visit(inner, [...within, part]);
  };
  visit(root, []);
  return found;
}

/** Every leaf of a tree. */
export function leaves(root: Part): Part[] {
  return root.parts.length === 0 ? [root] : root.parts.flatMap(leaves);
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
