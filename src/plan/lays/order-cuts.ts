import { nth } from "../../length/nth.ts";
import type { Cut, Lay, Part } from "../types.ts";
import { likeness } from "./parts.ts";

/**
 * Every knife cut of the lays, in the order a maker makes them: the end is straightened, then equal strips
 * are cut off together and subcut before the next are cut. A cut parts two neighbours, so `n` parts need
 * `n - 1` cuts and the far edge of the cloth none.
 */
export function orderCuts(lays: readonly Lay[]): Cut[] {
  const cuts: Cut[] = [];
  lays.forEach(({ root }, lay) => {
    cutApart(root, lay, cuts);
  });
  return cuts;
}

function cutApart(part: Part, lay: number, cuts: Cut[]): void {
  if (part.parts.length === 0) return;
  // Where strips are cut, equal ones are finished before the next are begun; elsewhere all parts are
  // separated first.
  for (const group of groupsOf(part)) {
    for (const index of group) {
      if (index < part.parts.length - 1) cuts.push(cutAfter(part, index, lay, cuts.length + 1));
    }
    for (const index of group) {
      const inner = part.parts[index];
      if (inner !== undefined) cutApart(inner, lay, cuts);
    }
  }
}

/** Indices of the parts that are cut off before any of them is cut further. */
function groupsOf(part: Part): number[][] {
  const indices = part.parts.map((_, index) => index);
  if (part.role !== "stock" && part.role !== "rest") return [indices];
  const groups: number[][] = [];
  let last = "";
  for (const index of indices) {
    const like = likeness(nth(part.parts, index));
    const group = groups.at(-1);
    if (group === undefined || like !== last) groups.push([index]);
    else group.push(index);
    last = like;
  }
  return groups;
}

/** The cut that takes the part at `index` off those that follow it. */
function cutAfter(parent: Part, index: number, lay: number, number: number): Cut {
  const part = nth(parent.parts, index);
  const direction = parent.cut ?? "across";
  if (direction === "across") {
    const y = part.y + part.along;
    const setting = part.along;
    return { number, lay, direction, x1: parent.x, y1: y, x2: parent.x + parent.across, y2: y, setting };
  }
  const x = part.x + part.across;
  const setting = part.across;
  return { number, lay, direction, x1: x, y1: parent.y, x2: x, y2: parent.y + parent.along, setting };
}
