import type { Filling, StripOracle } from "./oracle.ts";

/**
 * Says which fillings of stacked strips two lower strips of no more height together would hold as well: those
 * through whose stacks one straight cut can go, along the whole strip and through no item. Among the plans of the
 * least length one with the most strips has no such filling, so a search for that length may leave them out.
 *
 *     height of the cut a, of the strip c:  every stack of total height t has items of together s high,
 *     where  t - (c - a)  <=  s  <=  a
 */
export function splitFinder({ kinds }: StripOracle): (filling: Filling) => boolean {
  const known = new Map<string, { total: number; sums: readonly number[] }>();
  const stackOf = (stack: Filling["segments"][number]["stack"]) => {
    const key = stack.map(({ kind, lie }) => `${kind}.${lie}`).join();
    let sums = known.get(key);
    if (sums === undefined) {
      sums = subsetSums(stack.map(({ kind, lie }) => kinds[kind]!.lies[lie]!.height));
      known.set(key, sums);
    }
    return sums;
  };
  return ({ height, segments, sheet }) => {
    if (sheet !== undefined || segments.length === 0) return false;
    const stacks = [...new Set(segments.map(({ stack }) => stackOf(stack)))];
    const passes = (cut: number) =>
      stacks.every(({ total, sums }) => {
        const least = total - (height - cut);
        return sums.some((sum) => sum >= least && sum <= cut);
      });
    return stacks.some(({ sums }) => sums.some((cut) => cut > 0 && cut < height && passes(cut)));
  };
}

/** Every height that some of the items make up, none and all included, ascending. */
function subsetSums(heights: readonly number[]): { total: number; sums: readonly number[] } {
  const reached = new Set([0]);
  for (const height of heights) for (const sum of [...reached]) reached.add(sum + height);
  return {
    total: heights.reduce((sum, height) => sum + height, 0),
    sums: [...reached].sort((a, b) => a - b),
  };
}
