import type { Rational } from "../../../length/rational.ts";
import * as q from "../../../length/rational.ts";
import type { Surd } from "../../../length/surd.ts";
import type { Ticks } from "../../../length/types.ts";

/*
 * Seam allowances offset edges that lean at any slope, so lengths appear that are sums of several square
 * roots: a half-rectangle triangle of 1 by 2 has sqrt 5 in it, a patch beside it perhaps sqrt 13. A `Surd`
 * holds one root of two or three; a RootSum holds any. Roots of different square-free whole numbers are
 * independent over the fractions, so such a sum is zero only when every term is, and its sign can be
 * settled by narrowing whole-number intervals: no floating point, and no endless loop.
 */

/** A sum of `by * sqrt(root)`; roots square-free, rising, each once; no zero terms. Empty is zero. */
export type RootSum = readonly { readonly root: bigint; readonly by: Rational }[];

function wholeRoot(value: bigint): bigint {
  if (value < 2n) return value;
  let guess = 1n << BigInt((value.toString(2).length + 1) >> 1);
  for (;;) {
    const next = (guess + value / guess) >> 1n;
    if (next >= guess) return guess;
    guess = next;
  }
}

function commonDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : commonDivisor(b, a % b);
}

/** `value` as `outside^2 * inside` with `inside` square-free. Positive values only. */
function takeSquares(value: bigint): { outside: bigint; inside: bigint } {
  let rest = value;
  let outside = 1n;
  let inside = 1n;
  for (let p = 2n; p * p * p <= rest; p += p === 2n ? 1n : 2n) {
    let power = 0;
    while (rest % p === 0n) {
      rest /= p;
      power += 1;
    }
    outside *= p ** BigInt(power >> 1);
    if (power % 2 === 1) inside *= p;
  }
  // What is left has at most two prime factors, each above every prime tried: a square or square-free.
  const root = wholeRoot(rest);
  return root * root === rest ? { outside: outside * root, inside } : { outside, inside: inside * rest };
}

function tidy(terms: RootSum): RootSum {
  const by = new Map<bigint, Rational>();
  for (const term of terms) by.set(term.root, q.add(by.get(term.root) ?? q.ZERO, term.by));
  return [...by]
    .filter(([, factor]) => q.sign(factor) !== 0)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([root, factor]) => ({ root, by: factor }));
}

/** A plain fraction as a sum of roots. */
export function whole(value: Rational): RootSum {
  return tidy([{ root: 1n, by: value }]);
}

/** The square root of a fraction that is not negative. */
export function rootOf(value: Rational): RootSum {
  if (q.sign(value) < 0) throw new RangeError("no root of a negative number");
  if (q.sign(value) === 0) return [];
  // Above and below the line apart: they share no factor, and small numbers are taken to pieces sooner.
  const above = takeSquares(value.n);
  const below = takeSquares(value.d);
  return [
    {
      root: above.inside * below.inside,
      by: q.rational(above.outside, below.outside * below.inside),
    },
  ];
}

export function fromSurd(value: Surd): RootSum {
  return tidy([
    { root: 1n, by: value.a },
    { root: BigInt(value.root), by: value.b },
  ]);
}

export function plus(...values: readonly RootSum[]): RootSum {
  return tidy(values.flat());
}

export function minus(a: RootSum, b: RootSum): RootSum {
  return tidy([...a, ...b.map((term) => ({ root: term.root, by: q.negate(term.by) }))]);
}

export function times(a: RootSum, b: RootSum): RootSum {
  return tidy(
    a.flatMap((x) =>
      b.map((y) => {
        const common = commonDivisor(x.root, y.root);
        return {
          root: (x.root / common) * (y.root / common),
          by: q.mul(q.mul(x.by, y.by), q.rational(common)),
        };
      }),
    ),
  );
}

/**
 * `a / b`, for a divisor of one or two terms: the conjugate of two terms leaves no root below the line.
 * Throws when `b` is zero or longer, which the offsets of straight edges never need.
 */
export function over(a: RootSum, b: RootSum): RootSum {
  const [first, second] = b;
  if (first === undefined || b.length > 2) throw new RangeError(`no division by a sum of ${b.length} roots`);
  if (second === undefined) {
    const divisor = q.mul(first.by, q.rational(first.root));
    return times(a, [{ root: first.root, by: q.div(q.ONE, divisor) }]);
  }
  const conjugate = [first, { root: second.root, by: q.negate(second.by) }];
  return over(times(a, conjugate), times(b, conjugate));
}

/** Whole numbers below and above `value * den * 2^bits`, at most one apart for each root. */
function enclose(value: RootSum, den: bigint, bits: bigint): { low: bigint; high: bigint } {
  let low = 0n;
  let high = 0n;
  for (const { root, by } of value) {
    const factor = (by.n * den) / by.d;
    const square = (factor * factor * root) << (2n * bits);
    const down = wholeRoot(square);
    const up = down * down === square ? down : down + 1n;
    low += factor < 0n ? -up : down;
    high += factor < 0n ? -down : up;
  }
  return { low, high };
}

function commonDenominator(value: RootSum): bigint {
  return value.reduce((den, term) => (den / commonDivisor(den, term.by.d)) * term.by.d, 1n);
}

/** -1, 0 or 1, exactly. */
export function signOf(value: RootSum): -1 | 0 | 1 {
  if (value.length === 0) return 0;
  const den = commonDenominator(value);
  for (let bits = 8n; ; bits *= 2n) {
    const { low, high } = enclose(value, den, bits);
    if (low > 0n) return 1;
    if (high < 0n) return -1;
  }
}

export function compareRoots(a: RootSum, b: RootSum): -1 | 0 | 1 {
  return signOf(minus(a, b));
}

export function largest(values: readonly RootSum[]): RootSum {
  return values.reduce((best, value) => (compareRoots(value, best) > 0 ? value : best));
}

export function smallest(values: readonly RootSum[]): RootSum {
  return values.reduce((best, value) => (compareRoots(value, best) < 0 ? value : best));
}

/** Largest whole number not above `value`, exactly: a plain fraction is enclosed exactly, a root is never whole. */
export function floorOf(value: RootSum): bigint {
  const den = commonDenominator(value);
  for (let bits = 8n; ; bits *= 2n) {
    const { low, high } = enclose(value, den, bits);
    const down = q.floorDivide(low, den << bits);
    if (down === q.floorDivide(high, den << bits)) return down;
  }
}

/** The next ruler mark at or above `value` ticks. */
export function upToMark(value: RootSum, mark: Ticks): Ticks {
  const marks = times(value, whole(q.div(q.ONE, q.fromInteger(mark))));
  return Number(-floorOf(minus([], marks))) * mark;
}

/** The last ruler mark at or below `value` ticks. */
export function downToMark(value: RootSum, mark: Ticks): Ticks {
  return Number(floorOf(times(value, whole(q.div(q.ONE, q.fromInteger(mark)))))) * mark;
}

/** To the nearest whole number, halves up. */
export function nearest(value: RootSum): number {
  return Number(floorOf(plus(value, whole(q.rational(1n, 2n)))));
}

/** For drawings and messages only: never for a size that is cut. */
export function rootsToNumber(value: RootSum): number {
  return value.reduce((sum, term) => sum + q.toNumber(term.by) * Math.sqrt(Number(term.root)), 0);
}
