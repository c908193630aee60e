import type { Corner } from "../quilt/patches.ts";

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
function areaOf(corners: readonly Corner[]): number {
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

export function boxCorners({ x, y, right, bottom }: Bounds): [Corner, Corner, Corner, Corner] {
  return [
    [x, y],
    [right, y],
    [right, bottom],
    [x, bottom],
  ];
}

/** The part of a convex outline inside an upright box. */
export function insideBox(corners: readonly Corner[], box: Bounds): Corner[] {
  const [a, b, c, d] = boxCorners(box);
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
  let [x1, y1] = corners.at(-1) ?? [0, 0];
  for (const [x2, y2] of corners) {
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
    x1 = x2;
    y1 = y2;
  }
  return inside;
}

/** Full points of sharp corners reach this many seams at most; beyond it they are cut straight off. */
const LONGEST_POINT = 4;

/** Where two lines meet; null where they run alike. */
function meetingOf(a: Line, b: Line): Corner | null {
  const cross = a.run[0] * b.run[1] - a.run[1] * b.run[0];
  if (Math.abs(cross) < 1e-6) return null;
  const t = ((b.at[0] - a.at[0]) * b.run[1] - (b.at[1] - a.at[1]) * b.run[0]) / cross;
  return [a.at[0] + a.run[0] * t, a.at[1] + a.run[1] * t];
}

/**
 * A finished patch as it shows in what it is sewn into: with its allowance outside the edges that are raw still.
 * @param corners clockwise as seen
 * @param sewn whether the edge between two of its corners is sewn: in stretches, since only part of it may be
 */
export function withRawEdges(
  corners: readonly Corner[],
  seam: number,
  sewn: (from: Corner, to: Corner) => readonly (readonly [Corner, Corner])[],
): Corner[] {
  const edges = corners.flatMap((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    return stretches(from, to, sewn(from, to));
  });
  return edges.flatMap((own, i): Corner[] => {
    const before = edges[(i + edges.length - 1) % edges.length] ?? own;
    const lineOf = ({ from, to, raw }: typeof own): Line => beside(lineThrough(from, to), raw ? -seam : 0);
    const lines: [Line, Line] = [lineOf(before), lineOf(own)];
    const met = meetingOf(...lines);
    const ends = (): Corner[] =>
      lines.map(({ run }, k): Corner => {
        const by = (k === 0 ? before : own).raw ? seam : 0;
        return [own.from[0] + run[1] * by, own.from[1] - run[0] * by];
      });
    if (met === null) return before.raw === own.raw ? ends().slice(1) : ends();
    const reach = Math.hypot(met[0] - own.from[0], met[1] - own.from[1]);
    return reach <= LONGEST_POINT * seam ? [met] : ends();
  });
}

/** An edge as its sewn and raw stretches, in order. */
function stretches(
  from: Corner,
  to: Corner,
  sewn: readonly (readonly [Corner, Corner])[],
): { from: Corner; to: Corner; raw: boolean }[] {
  const { run } = lineThrough(from, to);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const at = ([x, y]: Corner): number => (x - from[0]) * run[0] + (y - from[1]) * run[1];
  const spans = sewn
    .map(([a, b]) => [Math.min(at(a), at(b)), Math.max(at(a), at(b))] as const)
    .sort((a, b) => a[0] - b[0]);
  const slack = length * 1e-3;
  const found: { start: number; end: number; raw: boolean }[] = [];
  let done = 0;
  for (const [start, end] of spans) {
    if (start > done + slack) found.push({ start: done, end: start, raw: true });
    if (end > done + slack) {
      const last = found.at(-1);
      if (last !== undefined && !last.raw) last.end = end;
      else found.push({ start: Math.max(start, done), end, raw: false });
      done = end;
    }
  }
  if (done < length - slack) found.push({ start: done, end: length, raw: true });
  const place = (t: number): Corner =>
    t <= slack ? from : t >= length - slack ? to : [from[0] + run[0] * t, from[1] + run[1] * t];
  return found.map(({ start, end, raw }) => ({ from: place(start), to: place(end), raw }));
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
