import type { PackingProblem } from "../../../src/engine/types.ts";
import type { SubsetSpace } from "./subsets.ts";

/** Room a group of pieces takes: along the strip (`across`) and square to it (`along`). */
export interface Extent {
  across: number;
  along: number;
}

/** Adds an extent unless another is no bigger either way; drops those it makes needless. */
export function keepBest(list: Extent[], extent: Extent): void {
  if (list.some((known) => known.across <= extent.across && known.along <= extent.along)) return;
  const kept = list.filter((known) => !(extent.across <= known.across && extent.along <= known.along));
  list.length = 0;
  list.push(...kept, extent);
}

/** The ways one piece may lie. */
export function liesOf(item: { across: number; along: number; turnable: boolean }): Extent[] {
  const lies = [{ across: item.across, along: item.along }];
  if (item.turnable) lies.push({ across: item.along, along: item.across });
  return lies;
}

/**
 * Per state, the best extents of a single segment that holds it: in strips-2 a segment holds one piece, in
 * strips-3 a stack whose width is its widest piece and whose height is the sum of the heights.
 */
function segmentExtents(space: SubsetSpace, problem: PackingProblem): Extent[][] {
  const lies = problem.items.map((item) => (item.place === "bands" ? [] : liesOf(item)));
  const segments: Extent[][] = [[{ across: 0, along: 0 }]];
  for (let state = 1; state < space.size; state++) {
    const counts = space.countsOf(state);
    const item = counts.findIndex((count) => count > 0);
    const below = segments[state - space.single(item)]!;
    const list: Extent[] = [];
    if (problem.style === "strips-3" || state === space.single(item)) {
      for (const lie of lies[item]!) {
        for (const stack of below) {
          keepBest(list, { across: Math.max(stack.across, lie.across), along: stack.along + lie.along });
        }
      }
    }
    segments.push(list);
  }
  return segments;
}

/** Per state, the best extents of one strip that holds it, whatever the width of the fabric. */
export function stripExtents(space: SubsetSpace, problem: PackingProblem): Extent[][] {
  const segments = segmentExtents(space, problem);
  const strips: Extent[][] = [[{ across: 0, along: 0 }]];
  for (let state = 1; state < space.size; state++) {
    const list: Extent[] = [];
    for (const part of space.anchoredPartsOf(state)) {
      for (const segment of segments[part]!) {
        for (const rest of strips[state - part]!) {
          keepBest(list, {
            across: segment.across + rest.across,
            along: Math.max(segment.along, rest.along),
          });
        }
      }
    }
    strips.push(list);
  }
  return strips;
}
