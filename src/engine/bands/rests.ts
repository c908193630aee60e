import { addSize, spread } from "../oracles/knapsack.ts";
import { inRest, type RestLevels, type StripOracle } from "../oracles/oracle.ts";
import { normalPositions } from "../oracles/positions.ts";
import type { StripCount } from "../problem/assemble.ts";
import { addCounts, sum } from "../problem/counts.ts";
import { fitsRun } from "../problem/reduce.ts";
import type { Rest, RollQuestion } from "../problem/roll-question.ts";
import type { HeightCut } from "../search/master.ts";
import { ceilMulDiv } from "../search/prices.ts";

/** Ends of strips farther than this beyond a band are not listed: there would be too many. */
const FARTHEST = 200_000;

/** Longer rests are bounded as if strips could be had in fractions: their tables would be too long. */
const LONGEST_TABLE = 200_000;

/** A rest, and whether every length it may usefully have is listed. */
export type RestWithEnds = Rest & { whole: boolean };

/**
 * How long the width beside bands may usefully be made, so that the strips in it come out even: to an end of strips
 * laid one below another. An overhang as high as a strip is never needed: that strip may as well be cut across the
 * full width. With stacks a strip may be as high as the whole plan, and so may the overhang, up to `limit`.
 */
export function restEnds({ kinds, style }: Pick<RollQuestion, "kinds" | "style">, limit: number) {
  const strips = kinds.filter((kind) => kind.place !== "bands" && kind.demand > 0);
  const known = new Map<string, RestWithEnds>();
  return (across: number, along: number): RestWithEnds => {
    const key = `${across}x${along}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const heights = strips.flatMap(({ lies, run }) => {
      if (run !== undefined) return fitsRun({ lies, run }, across) ? [run.height] : [];
      return lies.filter((lie) => lie.width <= across).map(({ height }) => height);
    });
    const highest = Math.max(0, ...heights);
    const wanted = Math.min(limit, along + (style === "strips-3" && highest > 0 ? limit : highest));
    const farthest = Math.min(wanted, along + Math.max(highest, FARTHEST));
    const { sums } = normalPositions(heights, Math.max(0, farthest));
    const beyond = style === "strips-3" ? Infinity : along + highest;
    const ends = sums.filter((end) => end > along && end < beyond);
    const rest = { across, along, ends, whole: farthest >= wanted };
    known.set(key, rest);
    return rest;
  };
}

/**
 * The most that strips of a rest can be worth together within each length up to `length`: a knapsack over their
 * heights, exact.
 */
export function heldWithin(
  heights: readonly number[],
  { first, end }: RestLevels,
  { values }: HeightCut,
  length: number,
): Float64Array {
  const best = new Float64Array(length + 1);
  for (let level = first; level < end; level++)
    if (values[level]! > 0) addSize(best, heights[level]!, values[level]!);
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
  let most = 0;
  if (longest > LONGEST_TABLE) {
    for (let level = rest.first; level < rest.end; level++)
      if (cut.values[level]! > 0)
        most = Math.max(most, ceilMulDiv(longest, cut.values[level]!, heights[level]!));
    return most;
  }
  const best = heldWithin(heights, rest, cut, longest);
  most = best[rest.length]!;
  for (const end of rest.ends) most = Math.max(most, best[end]! - rate(end - rest.length));
  return most;
}

/** Strips of every rest gathered to one filling of it, numbered after the `sheets` given. */
export function onRests(oracle: StripOracle, strips: readonly StripCount[], sheets: number): StripCount[] {
  const { rests = [], kinds } = oracle;
  const others = strips.filter(({ filling }) => !rests.some((rest) => inRest(filling.level, rest)));
  const gathered = rests.flatMap((rest, r): StripCount[] => {
    const held = strips.filter(({ filling }) => inRest(filling.level, rest));
    if (held.length === 0) return [];
    const counts = kinds.map(() => 0);
    for (const { filling, count } of held) addCounts(counts, filling.counts, count);
    const list = held.flatMap(({ filling, count }) => Array.from({ length: count }, () => filling));
    const sheet = { index: sheets + r, transposed: false, strips: list };
    return [{ filling: { level: -1, height: 0, counts, segments: [], sheet }, count: 1 }];
  });
  return [...others, ...gathered];
}

/** Length of the strips on one sheet or rest. */
export function lengthOn(strips: readonly StripCount[], index: number): number {
  return sum(strips, ({ filling: { sheet } }) =>
    sheet?.index === index ? sum(sheet.strips, ({ height }) => height) : 0,
  );
}

/** How much longer the rests are made than they are. */
export function overhang(strips: readonly StripCount[], rests: readonly Rest[], sheets: number): number {
  return sum(rests, ({ along }, r) => Math.max(0, lengthOn(strips, sheets + r) - along));
}
