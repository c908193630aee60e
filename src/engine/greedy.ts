import type { StripCount } from "./assemble.ts";
import type { Filling, StripOracle } from "./oracle.ts";

/**
 * Fills strip after strip by price per step of height (sequential value correction, after Mukhacheva and
 * Zalgaller 1993, without the correction): always the best filling of what is still wanted, as often as it
 * fits. Returns null when some kind fits nowhere.
 */
export function greedyStrips(
  oracle: StripOracle,
  demand: readonly number[],
  prices: Float64Array,
  levels: readonly number[] | undefined,
): StripCount[] | null {
  const left = demand.slice();
  const strips: StripCount[] = [];
  const floor = prices.map((price) => Math.max(1, price));
  for (;;) {
    if (left.every((count) => count === 0)) return strips;
    // A fresh array every round: oracles keep tables for the arrays they were last asked about.
    const caps = left.slice();
    const values = oracle.values(floor, caps, levels);
    let best = -1;
    oracle.heights.forEach((height, level) => {
      if (values[level]! <= 0) return;
      if (best < 0 || values[level]! * oracle.heights[best]! > values[best]! * height) best = level;
    });
    if (best < 0) return null;
    const filling = fitTo(oracle.filling(best, floor, caps), caps);
    let times = Infinity;
    filling.counts.forEach((copies, k) => {
      if (copies > 0) times = Math.min(times, Math.floor(left[k]! / copies));
    });
    strips.push({ filling, count: times });
    filling.counts.forEach((copies, k) => {
      left[k]! -= copies * times;
    });
  }
}

/** Leaves out items beyond the caps (stacks of one strip may together hold too many of a kind). */
export function fitTo(filling: Filling, caps: readonly number[]): Filling {
  if (filling.counts.every((copies, k) => copies <= caps[k]!)) return filling;
  const counts = filling.counts.map(() => 0);
  const segments = filling.segments
    .map((segment) => ({
      width: segment.width,
      stack: segment.stack.filter(({ kind }) => {
        if (counts[kind]! >= caps[kind]!) return false;
        counts[kind]!++;
        return true;
      }),
    }))
    .filter((segment) => segment.stack.length > 0);
  return { ...filling, counts, segments };
}
