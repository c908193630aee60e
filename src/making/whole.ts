import type { Exact, Patch, Point, QuiltTop } from "../quilt/types.ts";
import type { Box } from "./tiling.ts";

/*
 * Exact places as whole numbers: everything upright in parts of a tick, everything on point in the frame in
 * which its blocks stand upright.
 */

/** Above this the parts of a tick would no longer be exact in plain numbers. */
const FINEST = 1_000_000;

function gcd(a: number, b: number): number {
  let [x, y] = [Math.abs(a), Math.abs(b)];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

/** Parts of a tick in which all are whole; null when there is no sensible one. */
export function partsOfTick(values: Iterable<Exact>): number | null {
  let scale = 1;
  for (const { d } of values) {
    scale = (scale / gcd(scale, d)) * d;
    if (scale > FINEST) return null;
  }
  return scale;
}

/** Null when a root is left. */
export function wholeOf(value: Exact, scale: number): number | null {
  return value.r === 0 ? (value.n * scale) / value.d : null;
}

export function* placesOf(outlines: Iterable<readonly Point[]>): Generator<Exact> {
  for (const outline of outlines) {
    for (const { x, y } of outline) {
      yield x;
      yield y;
    }
  }
}

type Corner = readonly [number, number];

/** The upright rectangle with these corners; null when they are not those of one. */
export function uprightBox(corners: readonly (Corner | null)[]): Box | null {
  if (corners.length !== 4) return null;
  const found = corners.filter((corner) => corner !== null);
  const xs = new Set(found.map(([x]) => x));
  const ys = new Set(found.map(([, y]) => y));
  if (found.length !== 4 || xs.size !== 2 || ys.size !== 2) return null;
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, across: Math.max(...xs) - x, down: Math.max(...ys) - y };
}

/** A point of an upright top, or null when it has a root in it. */
export function uprightCorner({ x, y }: Point, scale: number): Corner | null {
  const [a, b] = [wholeOf(x, scale), wholeOf(y, scale)];
  return a === null || b === null ? null : [a, b];
}

/**
 * A point of a top set on point, in the frame turned an eighth back about the centre's corner: there
 * `u = (x + y) / root 2`, `v = (y - x) / root 2`. Null when that is not a fraction.
 */
export function tiltedCorner({ x, y }: Point, centre: QuiltTop["centre"], scale: number): Corner | null {
  const root = (a: Exact, b: Exact): number | null => {
    if (a.root === 3 || a.n * b.d !== b.n * a.d) return null;
    return ((a.r * b.d - b.r * a.d) * scale) / (a.d * b.d);
  };
  const [a, b] = [root(x, centre.x), root(y, centre.y)];
  return a === null || b === null ? null : [a + b, b - a];
}

/** Degrees clockwise that the first side of a turned rectangle points away from the right. */
export function turnOf(corners: readonly (Corner | null)[]): 0 | 90 | 180 | 270 {
  const [a, b] = [corners[0] ?? [0, 0], corners[1] ?? [0, 0]];
  if (b[0] > a[0]) return 0;
  if (b[1] > a[1]) return 90;
  return b[0] < a[0] ? 180 : 270;
}

/** The patch as an upright rectangle; null for any other. */
export function boxOfPatch(patch: Patch, scale: number): Box | null {
  return uprightBox(patch.outline.map((corner) => uprightCorner(corner, scale)));
}
