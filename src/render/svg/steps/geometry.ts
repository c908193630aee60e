import type { Corner } from "../patches.ts";

/*
 * Plane geometry for pictures: x to the right, y down, directions in eighths of a turn clockwise from up. Plain
 * numbers serve, since nothing is cut by a picture.
 */

/** A straight line by a point on it and the direction it runs in (a vector of length one). */
export interface Line {
  at: Corner;
  run: Corner;
}

export function lineThrough(a: Corner, b: Corner): Line {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return { at: a, run: [(b[0] - a[0]) / length, (b[1] - a[1]) / length] };
}

/** The line moved to its right-hand side as one walks along it (y points down). */
export function beside({ at, run }: Line, by: number): Line {
  return { at: [at[0] - run[1] * by, at[1] + run[0] * by], run };
}

/** Distance from a line, above zero on the right-hand side as one walks along it. */
export function offside({ at, run }: Line, [x, y]: Corner): number {
  return run[0] * (y - at[1]) - run[1] * (x - at[0]);
}

export function mirrorPoint({ at, run }: Line, [x, y]: Corner): Corner {
  const along = (x - at[0]) * run[0] + (y - at[1]) * run[1];
  const foot: Corner = [at[0] + run[0] * along, at[1] + run[1] * along];
  return [2 * foot[0] - x, 2 * foot[1] - y];
}

/** Direction of a line in eighths clockwise from up. */
export function eighthsOf({ run }: Line): number {
  return (Math.atan2(run[0], -run[1]) * 4) / Math.PI;
}

/** Clockwise as seen about the origin. */
export function turnPoint([x, y]: Corner, eighths: number): Corner {
  const angle = (eighths * Math.PI) / 4;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [x * cos - y * sin, x * sin + y * cos];
}

const FLAT = 1e-6;

/** What is left of a convex outline on the right-hand side of a line. */
export function clipped(corners: readonly Corner[], line: Line): Corner[] {
  const kept = corners.flatMap((from, i): Corner[] => {
    const to = corners[(i + 1) % corners.length] ?? from;
    const [a, b] = [offside(line, from), offside(line, to)];
    const own = a >= -FLAT ? [from] : [];
    if ((a > FLAT && b < -FLAT) || (a < -FLAT && b > FLAT)) {
      const t = a / (a - b);
      own.push([from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])]);
    }
    return own;
  });
  return Math.abs(areaOf(kept)) < 1 ? [] : kept;
}

/** Area by the shoelace formula: above zero where the corners run clockwise as seen. */
export function areaOf(corners: readonly Corner[]): number {
  let twice = 0;
  for (const [i, [x1, y1]] of corners.entries()) {
    const [x2, y2] = corners[(i + 1) % corners.length] ?? [0, 0];
    twice += x1 * y2 - x2 * y1;
  }
  return twice / 2;
}

export interface Bounds {
  x: number;
  y: number;
  right: number;
  bottom: number;
}

export function boundsOf(points: readonly Corner[]): Bounds {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { x: Math.min(...xs), y: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

export function boxCorners({ x, y, right, bottom }: Bounds): Corner[] {
  return [
    [x, y],
    [right, y],
    [right, bottom],
    [x, bottom],
  ];
}

/** The part of a convex outline inside an upright box. */
export function insideBox(corners: readonly Corner[], box: Bounds): Corner[] {
  const [a, b, c, d] = boxCorners(box) as [Corner, Corner, Corner, Corner];
  const edges: [Corner, Corner][] = [
    [a, b],
    [b, c],
    [c, d],
    [d, a],
  ];
  return edges.reduce<Corner[]>((left, [p, q]) => clipped(left, lineThrough(p, q)), [...corners]);
}

/** Whether a point lies inside an outline, by counting crossings. */
export function holds(corners: readonly Corner[], [x, y]: Corner): boolean {
  let inside = false;
  for (const [i, [x1, y1]] of corners.entries()) {
    const [x2, y2] = corners[(i + 1) % corners.length] ?? [x1, y1];
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
  }
  return inside;
}

/** Full points of sharp corners reach this many seams at most; beyond it they are cut straight off. */
const LONGEST_POINT = 4;

/**
 * An outline with a seam allowance outside every edge.
 * @param corners clockwise as seen
 */
export function withAllowance(corners: readonly Corner[], seam: number): Corner[] {
  const count = corners.length;
  const out = corners.map((from, i): Corner => {
    const to = corners[(i + 1) % count] ?? from;
    const { run } = lineThrough(from, to);
    return [run[1], -run[0]];
  });
  return corners.flatMap(([x, y], i): Corner[] => {
    const before = out[(i + count - 1) % count] ?? [0, 0];
    const after = out[i] ?? [0, 0];
    // The moved edges meet seam x (n1 + n2) / (1 + n1 . n2) from the corner.
    const stretch = 1 + before[0] * after[0] + before[1] * after[1];
    const reach = Math.sqrt(2 / Math.max(stretch, 1e-9));
    if (reach <= LONGEST_POINT) {
      const by = seam / stretch;
      return [[x + by * (before[0] + after[0]), y + by * (before[1] + after[1])]];
    }
    const forth = seam * 1.5;
    return [
      [x + seam * before[0] - forth * before[1], y + seam * before[1] + forth * before[0]],
      [x + seam * after[0] + forth * after[1], y + seam * after[1] - forth * after[0]],
    ];
  });
}

/** Where edges of two outlines run along one another. */
export function sharedEdges(
  one: readonly Corner[],
  other: readonly Corner[],
  slack: number,
): [Corner, Corner][] {
  return one.flatMap((a, i): [Corner, Corner][] => {
    const b = one[(i + 1) % one.length] ?? a;
    if (Math.hypot(b[0] - a[0], b[1] - a[1]) < slack) return [];
    const line = lineThrough(a, b);
    const at = ([x, y]: Corner): number => (x - a[0]) * line.run[0] + (y - a[1]) * line.run[1];
    return other.flatMap((c, k): [Corner, Corner][] => {
      const d = other[(k + 1) % other.length] ?? c;
      if (Math.abs(offside(line, c)) > slack || Math.abs(offside(line, d)) > slack) return [];
      const from = Math.max(0, Math.min(at(c), at(d)));
      const to = Math.min(at(b), Math.max(at(c), at(d)));
      if (to - from <= slack) return [];
      const place = (t: number): Corner => [a[0] + line.run[0] * t, a[1] + line.run[1] * t];
      return [[place(from), place(to)]];
    });
  });
}
