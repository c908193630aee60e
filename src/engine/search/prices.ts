import type { Counts } from "../problem/counts.ts";
import { areaOfOne, type Kind } from "../problem/reduce.ts";

/**
 * Whole-number prices from a linear program's dual values. Any whole non-negative prices make a true bound,
 * so rounding here costs sharpness at most, never truth.
 */
export interface WholePrices {
  prices: Float64Array;
  /** What one step of length is worth in these prices. */
  scale: number;
  /** Sum of price times demand: what all strips together must hold. */
  total: number;
}

/** Scales duals so that the total stays well below 2^53. `length` is about what the plan will take. */
export function wholePrices(duals: ArrayLike<number>, demand: Counts, length: number): WholePrices {
  const scale = 2 ** Math.max(4, Math.min(22, Math.floor(Math.log2(2 ** 46 / Math.max(1, length)))));
  const prices = new Float64Array(demand.length);
  let total = 0;
  for (let k = 0; k < demand.length; k++) {
    const price = Math.max(0, Math.round((duals[k] ?? 0) * scale));
    prices[k] = Number.isFinite(price) ? price : 0;
    total += prices[k]! * demand[k]!;
  }
  return { prices, scale, total };
}

/** Prices by area, where no linear program gives any; `unit` is the area that counts for one. */
export function pricesByArea(
  kinds: readonly Kind[],
  unit: number,
  demand: Counts,
  length: number,
): WholePrices {
  return wholePrices(
    kinds.map((kind) => areaOfOne(kind) / unit),
    demand,
    length,
  );
}

/** ceil(a * b / c) for whole numbers, exactly. */
export function ceilMulDiv(a: number, b: number, c: number): number {
  return Number((BigInt(a) * BigInt(b) + BigInt(c) - 1n) / BigInt(c));
}
