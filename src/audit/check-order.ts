import type { Lay, Part } from "../plan/types.ts";
import { at, isStripOrBand, walk } from "./walk.ts";

/** Strips and bands are numbered without gaps in the order they lie; equal kinds are cut exactly alike. */
export function checkOrder({ root }: Lay): string[] {
  const faults: string[] = [];
  const shapeOfKind = new Map<number, string>();
  const kindOfShape = new Map<string, number>();
  let next = 1;
  for (const { part } of walk(root)) {
    if (!isStripOrBand(part)) {
      if (part.number !== 0 || part.kind !== -1)
        faults.push(`${at(part)} has a number, though it is no strip`);
      continue;
    }
    if (part.number !== next) faults.push(`${at(part)} is number ${part.number}, expected ${next}`);
    next += 1;
    const shape = shapeOf(part);
    if ((shapeOfKind.get(part.kind) ?? shape) !== shape)
      faults.push(`strips of kind ${part.kind} are not cut alike`);
    if ((kindOfShape.get(shape) ?? part.kind) !== part.kind)
      faults.push(`strips ${kindOfShape.get(shape)} and ${part.kind} are alike but of two kinds`);
    shapeOfKind.set(part.kind, shape);
    kindOfShape.set(shape, part.kind);
  }
  for (const { part } of walk(root)) {
    if (part.role === "stock" || part.role === "rest") faults.push(...checkRun(part));
  }
  return faults;
}

/** Lengthwise sections first, then strips from the widest down, equal ones together. */
function checkRun(parent: Part): string[] {
  const faults: string[] = [];
  const strips = parent.parts.filter(({ role }) => role === "strip");
  const firstStrip = parent.parts.findIndex(({ role }) => role === "strip");
  const lastSection = parent.parts.findLastIndex(({ role }) => role === "band-section");
  if (firstStrip >= 0 && lastSection > firstStrip) faults.push("a lengthwise section is cut after a strip");
  const done = new Set<number>();
  strips.forEach((strip, index) => {
    const before = strips[index - 1];
    if (before === undefined) return;
    const wider = parent.cut === "across" ? strip.along > before.along : strip.across > before.across;
    if (wider) faults.push(`strip ${strip.number} is wider than strip ${before.number}, cut before it`);
    if (strip.kind !== before.kind) done.add(before.kind);
    if (done.has(strip.kind)) faults.push(`strip ${strip.number} does not lie with its like`);
  });
  return faults;
}

/** How a part is cut, without where it lies. */
function shapeOf(part: Part): string {
  return JSON.stringify([
    part.role,
    part.across,
    part.along,
    part.cut,
    part.piece,
    part.turned,
    part.shapes ?? [],
    part.cause,
    part.parts.map(shapeOf),
  ]);
}
