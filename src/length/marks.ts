import type { Rational } from "./rational.ts";
import { ceilDivide, floorDivide } from "./rational.ts";
import type { Ruler, Ticks } from "./types.ts";

/** The next mark at or above `value`. Rounding up never shrinks a piece. */
export function roundUpToMark(value: Rational, mark: Ticks): Ticks {
  return Number(ceilDivide(value.n, value.d * BigInt(mark))) * mark;
}

/** The last mark at or below `value`. */
export function roundDownToMark(value: Rational, mark: Ticks): Ticks {
  return Number(floorDivide(value.n, value.d * BigInt(mark))) * mark;
}

/**
 * Room on the cloth (a usable width, an offcut) as it is told: the last mark at or below it, so that no more is
 * promised than is there. Room smaller than a mark is told as it is.
 */
export function roomToMark(room: Ticks, ruler: Ruler): Ticks {
  return room < ruler.mark ? room : room - (room % ruler.mark);
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** The ruler of a quilt sewn with so wide a seam allowance: with lengths between its marks where they are needed. */
export function rulerWithSeams({ between: _, ...ruler }: Ruler, seam: Ticks): Ruler {
  const between = gcd(ruler.mark, 2 * seam);
  return between === ruler.mark ? ruler : { ...ruler, between };
}

/** True for a length off the marks that a quilt's seam allowances ask for all the same. */
export function isBetweenMarks(ticks: Ticks, { mark, between }: Ruler): boolean {
  return between !== undefined && ticks % mark !== 0 && ticks % between === 0;
}

/** True when a cut of this length can be set on the ruler. */
export function onMark(ticks: Ticks, ruler: Ruler): boolean {
  return ticks % ruler.mark === 0;
}
