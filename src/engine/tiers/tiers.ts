import type { WholePrices } from "../search/prices.ts";

/**
 * How many strips a plan has that are at least as high as each level: `least` is proved, `most` is proved or
 * assumed by the branch. Both fall from level to level.
 */
export interface TierBounds {
  least: number[];
  most: number[];
}

/**
 * Prices of the kinds and what a strip of each height can hold at most at those prices.
 * With `y(l)` strips at least as high as level l, every plan satisfies
 *
 *     sum over l of  gains(l) * y(l)  >=  total,      gains(l) = values(l) - values(l - 1)
 */
export interface TierCut {
  prices: Float64Array;
  values: number[];
  gains: number[];
  total: number;
  /** Levels by gain per step of length, best first. */
  order: number[];
}

/** What each tier adds to the length: the height of a level above the one below it. */
export function tierSteps(heights: readonly number[]): number[] {
  return heights.map((height, level) => height - (heights[level - 1] ?? 0));
}

/**
 * Makes a cut. `best` is exact per level; `guide` is what the linear program pays for a strip of each level.
 * Values may be raised without harm to the truth of the cut, and raising them to the guide's shape makes the
 * bound as sharp as the linear program's own (its dual solution, scaled up until no filling is worth more:
 * Farley 1990).
 */
export function tierCut(
  whole: WholePrices,
  best: Float64Array,
  guide: readonly number[],
  steps: readonly number[],
): TierCut {
  let stretch = 1;
  best.forEach((value, level) => {
    const shape = guide[level]! * whole.scale;
    // What rounding the prices may have added is no reason to stretch everything.
    if (value > shape + whole.scale * ROUNDING) stretch = Math.max(stretch, value / Math.max(1, shape));
  });
  const values: number[] = [];
  best.forEach((value, level) => {
    const shaped = Math.min(Math.ceil(guide[level]! * whole.scale * stretch), Number.MAX_SAFE_INTEGER);
    values.push(Math.max(value, shaped));
  });
  const gains = values.map((value, level) => value - (values[level - 1] ?? 0));
  const order = gains.flatMap((gain, level) => (gain > 0 ? [level] : []));
  order.sort((a, b) => compareRates(gains[b]!, steps[b]!, gains[a]!, steps[a]!) || a - b);
  return { prices: whole.prices, values, gains, total: whole.total, order };
}

/** As a part of one step of length. */
const ROUNDING = 1e-4;

/** Sign of a/b - c/d, exactly. */
function compareRates(a: number, b: number, c: number, d: number): number {
  const difference = a * d - c * b;
  if (Math.abs(difference) > 1e-12 * Math.abs(a * d)) return difference;
  return Number(BigInt(a) * BigInt(d) - BigInt(c) * BigInt(b));
}

/**
 * Least length within the bounds that satisfies the cut when strips could be had in fractions (a continuous
 * knapsack, Dantzig 1957), rounded up; Infinity when nothing satisfies it.
 */
export function leastLength(cut: TierCut, steps: readonly number[], { least, most }: TierBounds): number {
  let length = 0;
  let wanted = cut.total;
  for (let l = 0; l < steps.length; l++) {
    length += steps[l]! * least[l]!;
    wanted -= cut.gains[l]! * least[l]!;
  }
  if (!Number.isSafeInteger(wanted)) return 0;
  for (const l of cut.order) {
    if (wanted <= 0) return length;
    const gain = cut.gains[l]!;
    const room = most[l]! - least[l]!;
    if (room <= 0) continue;
    if (gain * room >= wanted) return length + ceilOf(wanted, steps[l]!, gain);
    wanted -= gain * room;
    length += steps[l]! * room;
  }
  return wanted <= 0 ? length : Infinity;
}

/**
 * How much less than its value any single strip may hold at the cut's prices in a plan no longer than
 * `length` (reduced-cost fixing); negative when there is no such plan.
 */
export function mostShortfall(
  cut: TierCut,
  steps: readonly number[],
  { least, most }: TierBounds,
  length: number,
): number {
  let room = length;
  let held = -cut.total;
  for (let l = 0; l < steps.length; l++) {
    room -= steps[l]! * least[l]!;
    held += cut.gains[l]! * least[l]!;
  }
  if (room < 0) return -1;
  for (const l of cut.order) {
    const more = Math.min(most[l]! - least[l]!, Math.floor(room / steps[l]!));
    held += cut.gains[l]! * Math.max(0, more);
    room -= steps[l]! * Math.max(0, more);
    if (more < most[l]! - least[l]!)
      return held + Number((BigInt(cut.gains[l]!) * BigInt(room)) / BigInt(steps[l]!));
  }
  return held;
}

function ceilOf(wanted: number, step: number, gain: number): number {
  if (wanted * step < Number.MAX_SAFE_INTEGER) {
    const whole = Math.floor((wanted * step) / gain);
    return whole * gain >= wanted * step ? whole : whole + 1;
  }
  return Number((BigInt(wanted) * BigInt(step) + BigInt(gain) - 1n) / BigInt(gain));
}

/**
 * Draws the bounds together: a count is out of the question when with it no plan within the bounds is
 * shorter than `limit`. Null when there is no such plan at all.
 */
export function tighten(
  cuts: readonly TierCut[],
  steps: readonly number[],
  bounds: TierBounds,
  limit: number,
): TierBounds | null {
  const now = { least: bounds.least.slice(), most: bounds.most.slice() };
  if (!settle(now)) return null;
  const dead = (trial: TierBounds) => cuts.some((cut) => leastLength(cut, steps, trial) >= limit);
  if (dead(now)) return null;
  for (let l = 0; l < steps.length; l++) {
    while (now.least[l]! < now.most[l]!) {
      const count = now.least[l]!;
      if (!dead({ least: now.least, most: now.most.map((m, i) => (i >= l ? Math.min(m, count) : m)) })) break;
      for (let i = 0; i <= l; i++) now.least[i] = Math.max(now.least[i]!, count + 1);
    }
    while (now.least[l]! < now.most[l]!) {
      const count = now.most[l]!;
      if (!dead({ least: now.least.map((m, i) => (i <= l ? Math.max(m, count) : m)), most: now.most })) break;
      for (let i = l; i < steps.length; i++) now.most[i] = Math.min(now.most[i]!, count - 1);
    }
    if (!settle(now)) return null;
  }
  return now;
}

/** Counts fall from level to level; false when the bounds cross. */
function settle({ least, most }: TierBounds): boolean {
  for (let l = least.length - 2; l >= 0; l--) least[l] = Math.max(least[l]!, least[l + 1]!);
  for (let l = 1; l < most.length; l++) most[l] = Math.min(most[l]!, most[l - 1]!);
  return least.every((count, l) => count <= most[l]!);
}
