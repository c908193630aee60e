import type { StackLimit } from "../types.ts";
import { lastAtMost, normalPositions, type Positions } from "./positions.ts";

/** Strips of any height may be cut into stacks, whatever their width. */
export const NO_LIMIT: StackLimit = { height: Infinity, width: Infinity };

/** Most strip heights listed, and most table cells for all of them, so that no question takes long. */
const MOST_HEIGHTS = 1500;
const MOST_CELLS = 12_000_000;

/**
 * Normal positions of strip heights, and which of them are asked about: all up to `listedTo`, beyond that only
 * the items' own heights, so that every item has a strip to lie in.
 * @param stackedTo the highest strip that may be cut into stacks
 */
export function listedHeights(
  choices: readonly { height: number }[],
  longest: number,
  cellsEach: number,
  stackedTo: number,
): { upright: Positions; at: number[]; listedTo: number } {
  const sizes = choices.map((choice) => choice.height).filter((height) => height <= longest);
  const highest = Math.max(0, ...sizes);
  const lowest = Math.min(...sizes);
  const most = Math.min(MOST_HEIGHTS, Math.max(150, Math.floor(MOST_CELLS / Math.max(1, cellsEach))));
  // Beyond the limit for stacks no height is needed but the items' own.
  const farthest = Math.min(longest, Math.max(highest, stackedTo));
  let upright = normalPositions(sizes, Math.min(farthest, Math.max(highest, 2000)));
  // Sums of a few items are enough to find the cut-off without listing millions.
  while (upright.sums.length <= most && upright.limit < farthest && upright.limit < 2_000_000)
    upright = normalPositions(sizes, Math.min(farthest, upright.limit * 4));
  const complete = upright.limit === farthest && upright.sums.length <= most + 1;
  const last = Math.min(most, upright.sums.length - 1);
  const listedTo = complete || upright.sums[last]! >= stackedTo ? longest : upright.sums[last]!;
  const own = new Set(sizes);
  const at = upright.sums.flatMap((sum, v) =>
    sum >= lowest && ((sum <= listedTo && sum <= stackedTo) || own.has(sum)) ? [v] : [],
  );
  const limit = Math.max(Math.min(listedTo, farthest), highest);
  const sums = upright.sums.slice(0, lastAtMost(upright, limit) + 1);
  return { upright: { sums, limit }, at, listedTo };
}
