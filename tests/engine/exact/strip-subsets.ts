import type { PackingProblem } from "../../../src/engine/types.ts";
import type { SubsetSpace } from "./subsets.ts";

/** Room a group of pieces takes: along the strip (`across`) and square to it (`along`). */
export interface Extent {
  across: number;
  along: number;
  /** Some segment holds one piece above another: of account where stacks have a limit. */
  stacked?: true;
}

/** Adds an extent unless another is no bigger either way; drops those it makes needless. */
export function keepBest(list: Extent[], extent: Extent): void {
  // A strip with stacks may not be made higher as freely as one without: it replaces no such strip.
  const replaces = (a: Extent, b: Extent) =>
    a.across <= b.across && a.along <= b.along && (a.stacked !== true || b.stacked === true);
  if (list.some((known) => replaces(known, extent))) return;
  const kept = list.filter((known) => !replaces(extent, known));
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
  const { width, height } = problem.stacks ?? { width: Infinity, height: Infinity };
  return segments.map((list, state) => {
    const pieces = space.countsOf(state).reduce((sum, count) => sum + count, 0);
    return pieces < 2 ? list : list.filter(({ across, along }) => across <= width && along <= height);
  });
}

/** Per state, the best extents of one strip that holds it, whatever the width of the fabric. */
export function stripExtents(space: SubsetSpace, problem: PackingProblem): Extent[][] {
  const segments = segmentExtents(space, problem);
  const limit = problem.stacks?.height ?? Infinity;
  const pieces = (state: number) => space.countsOf(state).reduce((sum, count) => sum + count, 0);
  const holdsStack = (part: number) => pieces(part) > 1;
  const strips: Extent[][] = [[{ across: 0, along: 0 }]];
  for (let state = 1; state < space.size; state++) {
    const list: Extent[] = [];
    for (const part of space.anchoredPartsOf(state)) {
      for (const segment of segments[part]!) {
        for (const rest of strips[state - part]!) {
          const along = Math.max(segment.along, rest.along);
          // A strip of one state is told by its stacks too: beyond the limit it may hold none.
          if (along > limit && (holdsStack(part) || rest.stacked)) continue;
          keepBest(list, {
            across: segment.across + rest.across,
            along,
            ...(holdsStack(part) || rest.stacked ? { stacked: true } : {}),
          });
        }
      }
    }
    strips.push(list);
  }
  return strips;
}
