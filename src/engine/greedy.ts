import type { StripCount } from "./assemble.ts";
import type { Filling, StripOracle } from "./oracle.ts";

/**
 * Fills the sheets on the table and then strip after strip by price per step of height: always the best
 * filling of what is still wanted, as often as it fits. Returns null when some kind fits nowhere.
 * `sheets[level]` says how many sheets of each level there are.
 */
export function greedyStrips(
  oracle: StripOracle,
  demand: readonly number[],
  prices: Float64Array,
  sheets: readonly number[],
): StripCount[] | null {
  const { strips, left } = greedySheets(oracle, demand, prices, sheets);
  const floor = prices.map((price) => Math.max(1, price));
  for (;;) {
    if (left.every((count) => count === 0)) return strips;
    // A fresh array every round: oracles keep tables for the arrays they were last asked about.
    const caps = left.slice();
    const values = oracle.values(floor, caps);
    let best = -1;
    for (let level = 0; level < oracle.stripLevels; level++) {
      const height = oracle.heights[level]!;
      if (values[level]! <= 0) continue;
      if (best < 0 || values[level]! * oracle.heights[best]! > values[best]! * height) best = level;
    }
    if (best < 0) return null;
    const filling = fitTo(oracle.filling(best, floor, caps), caps);
    let times = Infinity;
    filling.counts.forEach((copies, k) => {
      if (copies > 0) times = Math.min(times, Math.floor(left[k]! / copies));
    });
    strips.push({ filling, count: times });
    take(left, filling, times);
  }
}

/** Fills the sheets one after another, the one worth most first; tells what is left over. */
export function greedySheets(
  oracle: StripOracle,
  demand: readonly number[],
  prices: Float64Array,
  sheets: readonly number[],
): { strips: StripCount[]; left: number[] } {
  const left = demand.slice();
  const free = sheets.slice();
  const strips: StripCount[] = [];
  const floor = prices.map((price) => Math.max(1, price));
  for (;;) {
    const levels = free.flatMap((count, level) => (count > 0 && level >= oracle.stripLevels ? [level] : []));
    if (levels.length === 0 || left.every((count) => count === 0)) return { strips, left };
    const caps = left.slice();
    const values = oracle.values(floor, caps, levels);
    const best = levels.reduce((a, b) => (values[b]! > values[a]! ? b : a));
    if (values[best]! <= 0) return { strips, left };
    const filling = oracle.filling(best, floor, caps);
    let times = free[best]!;
    filling.counts.forEach((copies, k) => {
      if (copies > 0) times = Math.min(times, Math.floor(left[k]! / copies));
    });
    strips.push({ filling, count: times });
    free[best]! -= times;
    take(left, filling, times);
  }
}

function take(left: number[], filling: Filling, times: number): void {
  filling.counts.forEach((copies, k) => {
    left[k]! -= copies * times;
  });
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
