import { addSize, spread } from "../oracles/knapsack.ts";
import type { RestLevels, StripOracle } from "../oracles/oracle.ts";
import type { HeightCut } from "../search/master.ts";
import { ceilMulDiv } from "../search/prices.ts";

/** Longer rests are bounded as if strips could be had in fractions: their tables would be too long. */
const LONGEST_TABLE = 200_000;

/**
 * The most that strips of a rest can be worth together within each length up to `length`: a knapsack over their
 * heights, exact.
 */
export function heldWithin(
  heights: readonly number[],
  { first, end }: RestLevels,
  cut: HeightCut,
  length: number,
) {
  const best = new Float64Array(length + 1);
  for (let level = first; level < end; level++)
    if (cut.values[level]! > 0) addSize(best, heights[level]!, cut.values[level]!);
  return spread(best);
}

/**
 * The most that a rest can hold at the prices of a cut, less what the length added to it is worth to strips of the
 * whole roll: `rate` says the least that so much length is worth there.
 */
export function restHolds(
  { heights }: StripOracle,
  rest: RestLevels,
  cut: HeightCut,
  rate: (length: number) => number,
): number {
  const longest = rest.ends.at(-1) ?? rest.length;
  if (longest > LONGEST_TABLE) {
    let most = 0;
    for (let level = rest.first; level < rest.end; level++)
      if (cut.values[level]! > 0)
        most = Math.max(most, ceilMulDiv(longest, cut.values[level]!, heights[level]!));
    return most;
  }
  const best = heldWithin(heights, rest, cut, longest);
  return rest.ends.reduce(
    (most, end) => Math.max(most, best[end]! - rate(end - rest.length)),
    best[rest.length]!,
  );
}
