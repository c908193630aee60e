import type { Rational } from "./rational.ts";
import * as q from "./rational.ts";
import type { Ticks } from "./types.ts";

/**
 * The exact number `a + b * sqrt(root)`. Diagonals of squares need sqrt 2, equilateral triangles and
 * 60-degree diamonds sqrt 3. With `b` zero the root says nothing, and such a number mixes with either.
 */
export interface Surd {
  readonly a: Rational;
  readonly b: Rational;
  readonly root: 2 | 3;
}

/** `a + b * sqrt(root)`. */
export function surd(a: Rational, b: Rational = q.ZERO, root: 2 | 3 = 2): Surd {
  return { a, b, root };
}

/** `value * sqrt 2`: the diagonal of a square of that side. */
export function timesRoot2(value: Rational): Surd {
  return surd(q.ZERO, value, 2);
}

/** `value * sqrt 3`: twice the height of an equilateral triangle of that side. */
export function timesRoot3(value: Rational): Surd {
  return surd(q.ZERO, value, 3);
}

function commonRoot(x: Surd, y: Surd): 2 | 3 {
  if (q.sign(x.b) === 0) return y.root;
  if (q.sign(y.b) === 0 || x.root === y.root) return x.root;
  throw new RangeError("sqrt 2 and sqrt 3 do not mix in one length");
}

export function addSurd(x: Surd, y: Surd): Surd {
  return surd(q.add(x.a, y.a), q.add(x.b, y.b), commonRoot(x, y));
}

export function subSurd(x: Surd, y: Surd): Surd {
  return surd(q.sub(x.a, y.a), q.sub(x.b, y.b), commonRoot(x, y));
}

export function mulSurd(x: Surd, y: Surd): Surd {
  const root = commonRoot(x, y);
  const k = q.fromInteger(root);
  return surd(
    q.add(q.mul(x.a, y.a), q.mul(k, q.mul(x.b, y.b))),
    q.add(q.mul(x.a, y.b), q.mul(x.b, y.a)),
    root,
  );
}

/** `x / y`, by the conjugate of `y`. Throws when `y` is zero. */
export function divSurd(x: Surd, y: Surd): Surd {
  const root = commonRoot(x, y);
  const conjugate = surd(y.a, q.negate(y.b), root);
  const norm = q.sub(q.mul(y.a, y.a), q.mul(q.fromInteger(root), q.mul(y.b, y.b)));
  const product = mulSurd({ ...x, root }, conjugate);
  return surd(q.div(product.a, norm), q.div(product.b, norm), root);
}

export function scaleSurd(x: Surd, by: Rational): Surd {
  return surd(q.mul(x.a, by), q.mul(x.b, by), x.root);
}

/** -1, 0 or 1, decided by comparing squares: no root is ever taken. */
export function signOfSurd(x: Surd): -1 | 0 | 1 {
  const a = q.sign(x.a);
  const b = q.sign(x.b);
  if (a === b || b === 0) return a;
  if (a === 0) return b;
  const squares = q.compare(q.mul(x.a, x.a), q.mul(q.fromInteger(x.root), q.mul(x.b, x.b)));
  return squares > 0 ? a : b;
}

/** -1, 0 or 1 as `x` is less than, equal to or more than `y`. */
export function compareSurd(x: Surd, y: Surd): -1 | 0 | 1 {
  return signOfSurd(subSurd(x, y));
}

/** The exact fraction when no root is left in it, else null. */
export function rationalPart(x: Surd): Rational | null {
  return q.sign(x.b) === 0 ? x.a : null;
}

/** Largest whole number whose square is not above `value`. */
function wholeRoot(value: bigint): bigint {
  if (value < 2n) return value;
  let guess = 1n << BigInt((value.toString(2).length + 1) >> 1);
  for (;;) {
    const next = (guess + value / guess) >> 1n;
    if (next >= guess) return guess;
    guess = next;
  }
}

/** Largest whole number not above `x`, exactly. */
export function floorSurd(x: Surd): bigint {
  const denominator = x.a.d * x.b.d;
  const whole = x.a.n * x.b.d;
  const factor = x.b.n * x.a.d;
  const root = wholeRoot(factor * factor * BigInt(x.root));
  const rootPart = factor === 0n ? 0n : factor > 0n ? root : -root - 1n;
  return q.floorDivide(whole + rootPart, denominator);
}

/** The next ruler mark at or above `value` (in ticks), with no floating point anywhere. */
export function roundSurdUpToMark(value: Surd, mark: Ticks): Ticks {
  const marks = scaleSurd(value, q.div(q.ONE, q.fromInteger(mark)));
  const up = q.sign(marks.b) === 0 ? q.ceil(marks.a) : floorSurd(marks) + 1n;
  return Number(up) * mark;
}

/** For drawings only: never for a size that is cut. */
export function surdToNumber(x: Surd): number {
  return q.toNumber(x.a) + q.toNumber(x.b) * Math.sqrt(x.root);
}
