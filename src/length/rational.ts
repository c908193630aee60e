import type { Ticks } from "./types.ts";

/** An exact fraction, always in lowest terms with a positive denominator. Lives only until the cut list. */
export interface Rational {
  readonly n: bigint;
  readonly d: bigint;
}

function gcd(a: bigint, b: bigint): bigint {
  let x = a < 0n ? -a : a;
  let y = b < 0n ? -b : b;
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}

/** `n/d` in lowest terms. Throws on a zero denominator: that is our bug, readers check before. */
export function rational(n: bigint, d: bigint = 1n): Rational {
  if (d === 0n) throw new RangeError("a fraction needs a denominator other than zero");
  const common = gcd(n, d) * (d < 0n ? -1n : 1n);
  return common === 1n ? { n, d } : { n: n / common, d: d / common };
}

/** A whole number as a fraction. Throws when `value` is not a safe integer. */
export function fromInteger(value: number): Rational {
  if (!Number.isSafeInteger(value)) throw new RangeError(`not a safe whole number: ${value}`);
  return { n: BigInt(value), d: 1n };
}

export const ZERO: Rational = { n: 0n, d: 1n };
export const ONE: Rational = { n: 1n, d: 1n };

export function add(a: Rational, b: Rational): Rational {
  return rational(a.n * b.d + b.n * a.d, a.d * b.d);
}

export function sub(a: Rational, b: Rational): Rational {
  return rational(a.n * b.d - b.n * a.d, a.d * b.d);
}

export function mul(a: Rational, b: Rational): Rational {
  return rational(a.n * b.n, a.d * b.d);
}

/** `a / b`. Throws when `b` is zero. */
export function div(a: Rational, b: Rational): Rational {
  return rational(a.n * b.d, a.d * b.n);
}

export function negate(a: Rational): Rational {
  return { n: -a.n, d: a.d };
}

/** Negative, zero or positive as `a` is less than, equal to or more than `b`. */
export function compare(a: Rational, b: Rational): -1 | 0 | 1 {
  const left = a.n * b.d;
  const right = b.n * a.d;
  return left < right ? -1 : left > right ? 1 : 0;
}

export function equal(a: Rational, b: Rational): boolean {
  return a.n === b.n && a.d === b.d;
}

/** -1, 0 or 1. */
export function sign(a: Rational): -1 | 0 | 1 {
  return a.n < 0n ? -1 : a.n > 0n ? 1 : 0;
}

/** Largest whole number not above `n/d`, for any `n` and a positive `d`. */
export function floorDivide(n: bigint, d: bigint): bigint {
  const quotient = n / d;
  return n % d < 0n ? quotient - 1n : quotient;
}

/** Smallest whole number not below `n/d`, for any `n` and a positive `d`. */
export function ceilDivide(n: bigint, d: bigint): bigint {
  return -floorDivide(-n, d);
}

export function floor(a: Rational): bigint {
  return floorDivide(a.n, a.d);
}

export function ceil(a: Rational): bigint {
  return ceilDivide(a.n, a.d);
}

/** The length in whole ticks, or null when it lies between two ticks. */
export function toTicksExact(a: Rational): Ticks | null {
  if (a.d !== 1n) return null;
  const ticks = Number(a.n);
  return Number.isSafeInteger(ticks) ? ticks : null;
}

/** For drawings only: never for a size that is cut. */
export function toNumber(a: Rational): number {
  return Number(a.n) / Number(a.d);
}
