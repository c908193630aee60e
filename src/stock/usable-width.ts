import type { Ticks } from "../length/types.ts";
import type { Cloth } from "./types.ts";

/** A thousandth is the unit of shrinkage: tenths of a percent. */
const WHOLE = 1000n;

/** What is left of a length after washing, to the tick below. */
export function afterWashing(length: Ticks, shrink: number): Ticks {
  return Number((BigInt(length) * (WHOLE - BigInt(shrink))) / WHOLE);
}

/** The least length that is still `wanted` after washing. The inverse of `afterWashing`, to the tick above. */
export function beforeWashing(wanted: Ticks, shrink: number): Ticks {
  const kept = WHOLE - BigInt(shrink);
  return Number((BigInt(wanted) * WHOLE + kept - 1n) / kept);
}

/**
 * Width that can be cut: width of fabric less both selvages, after washing, to the tick below. Zero when the
 * selvages leave nothing.
 */
export function usableWidth(fabric: Cloth): Ticks {
  return Math.max(0, afterWashing(fabric.width - 2 * fabric.selvage, fabric.shrinkAcross));
}
