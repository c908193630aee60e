import { type Rational, rational } from "../length/rational.ts";
import { type Surd, surd, surdToNumber } from "../length/surd.ts";
import type { FractionTicks } from "../spec/quilt-types.ts";
import { turnIn } from "./turning/turn-in.ts";
import type { Exact, Point } from "./types.ts";

/*
 * The plain form of an exact length, which can be stored, beside the big-number form that calculates.
 * Placing a patch needs only sums, so sums are done here on plain whole numbers; anything else goes
 * through `Surd`.
 */

export const ZERO_EXACT: Exact = { n: 0, r: 0, d: 1 };

function gcd(a: number, b: number): number {
  let [x, y] = [Math.abs(a), Math.abs(b)];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

function tidy(n: number, r: number, d: number, root: 2 | 3): Exact {
  if (!Number.isSafeInteger(n) || !Number.isSafeInteger(r) || !Number.isSafeInteger(d)) {
    throw new Error(`exact length out of range: (${n} + ${r} root ${root}) / ${d}`);
  }
  const common = gcd(gcd(n, r), d) || 1;
  const value = { n: n / common || 0, r: r / common || 0, d: d / common };
  return root === 3 && value.r !== 0 ? { ...value, root } : value;
}

/** Whole ticks as an exact length. */
function exactTicks(n: number): Exact {
  return { n, r: 0, d: 1 };
}

export function exactOfFraction(value: FractionTicks): Exact {
  return tidy(value.n, 0, value.d, 2);
}

export function exactOfRational(value: Rational): Exact {
  return tidy(Number(value.n), 0, Number(value.d), 2);
}

export function exactOfSurd(value: Surd): Exact {
  const { a, b, root } = value;
  const d = a.d * b.d;
  // Reduce before leaving big numbers, so that only the lowest terms must fit.
  const [n, r] = [a.n * b.d, b.n * a.d];
  let [x, y] = [d, n < 0n ? -n : n];
  while (y !== 0n) [x, y] = [y, x % y];
  let [z, w] = [x, r < 0n ? -r : r];
  while (w !== 0n) [z, w] = [w, z % w];
  return tidy(Number(n / z), Number(r / z), Number(d / z), root);
}

export function surdOfExact(value: Exact): Surd {
  const d = BigInt(value.d);
  return surd(rational(BigInt(value.n), d), rational(BigInt(value.r), d), value.root ?? 2);
}

/** The rational value; throws when a root is left, which the caller has ruled out. */
export function rationalOfExact(value: Exact): Rational {
  if (value.r !== 0) throw new Error("a root where a fraction was expected");
  return rational(BigInt(value.n), BigInt(value.d));
}

export function rationalOfFraction(value: FractionTicks): Rational {
  return rational(BigInt(value.n), BigInt(value.d));
}

export function fractionOfRational(value: Rational): FractionTicks {
  return { n: Number(value.n), d: Number(value.d) };
}

/**
 * Sum. Roots of 2 and 3 do not mix in one number: where a 60 degree unit meets an on-point setting, the root
 * of 3 is taken to the nearest tick, which only a drawing can see.
 */
export function addExact(a: Exact, b: Exact): Exact {
  if (a.r !== 0 && b.r !== 0 && a.root !== b.root) return addExact(withoutThree(a), withoutThree(b));
  const root = (a.r === 0 ? b.root : a.root) ?? 2;
  if (a.d === b.d) return tidy(a.n + b.n, a.r + b.r, a.d, root);
  const common = gcd(a.d, b.d);
  const [p, q] = [b.d / common, a.d / common];
  return tidy(a.n * p + b.n * q, a.r * p + b.r * q, a.d * p, root);
}

function withoutThree(value: Exact): Exact {
  return value.root === 3 ? exactTicks(Math.round(surdToNumber(surdOfExact(value)))) : value;
}

function negateExact(a: Exact): Exact {
  const value = { n: -a.n || 0, r: -a.r || 0, d: a.d };
  return a.root === 3 ? { ...value, root: a.root } : value;
}

export function subExact(a: Exact, b: Exact): Exact {
  return addExact(a, negateExact(b));
}

/** `a * n / d` for small whole numbers. */
export function scaleExact(a: Exact, n: number, d = 1): Exact {
  return tidy(a.n * n, a.r * n, a.d * d, a.root ?? 2);
}

/** `a / sqrt 2`: turns a distance along a block set on point into one across the quilt. */
export function overRoot2(a: Exact): Exact {
  const value = withoutThree(a);
  return tidy(value.r * 2, value.n, value.d * 2, 2);
}

/** `a * sqrt 2`: the diagonal of a square of side `a`. */
export function diagonalExact(a: Exact): Exact {
  const value = withoutThree(a);
  return tidy(value.r * 2, value.n, value.d, 2);
}

export function sameExact(a: Exact, b: Exact): boolean {
  const x = subExact(a, b);
  return x.n === 0 && x.r === 0;
}

/** For comparing and drawing, never for a size that is cut. */
export function exactToNumber(a: Exact): number {
  return (a.n + (a.r === 0 ? 0 : a.r * Math.sqrt(a.root ?? 2))) / a.d;
}

export function point(x: Exact, y: Exact): Point {
  return { x, y };
}

export function shiftPoint(p: Point, by: Point): Point {
  return { x: addExact(p.x, by.x), y: addExact(p.y, by.y) };
}

/** A point of an `across` x `down` rectangle, in the frame of the rectangle turned clockwise. */
export function turnPoint(p: Point, turn: number, across: Exact, down: Exact): Point {
  return turnIn(p, turn, across, down, subExact);
}

/** Outline of a rectangle, clockwise from its top left corner. */
export function rectangle(x: Exact, y: Exact, across: Exact, down: Exact): Point[] {
  const [right, bottom] = [addExact(x, across), addExact(y, down)];
  return [point(x, y), point(right, y), point(right, bottom), point(x, bottom)];
}
