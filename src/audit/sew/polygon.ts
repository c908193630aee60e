/*
 * Polygons in doubles, for following cloth from cut to quilt: x to the right, y down, lengths in ticks, corners
 * clockwise as seen. Angles are degrees clockwise.
 */

import { areaOf, type Spot } from "../shapes.ts";

export { areaOf, type Spot };

export type Polygon = readonly Spot[];

/** Ticks by which two places may differ and still be one: each was rounded to a tick on its way here. */
export const NEAR = 3;

/** A line by a direction square to it, of length one, and its distance from the origin that way. */
export interface Line {
  out: Spot;
  at: number;
}

export const dot = (a: Spot, b: Spot): number => a.x * b.x + a.y * b.y;

export function rectangleOf(across: number, along: number, x = 0, y = 0): [Spot, Spot, Spot, Spot] {
  return [
    { x, y },
    { x: x + across, y },
    { x: x + across, y: y + along },
    { x, y: y + along },
  ];
}

export function boxOf(polygons: readonly Polygon[]): { x: number; y: number; across: number; along: number } {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const polygon of polygons)
    for (const { x, y } of polygon) {
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  return { x: left, y: top, across: right - left, along: bottom - top };
}

export function moved(polygon: Polygon, by: Spot): Polygon {
  return polygon.map(({ x, y }) => ({ x: x + by.x, y: y + by.y }));
}

/** Turned about the origin, clockwise as seen. Quarter-turns are exact. */
export function turnedBy(polygon: Polygon, degrees: number): Polygon {
  const angle = ((degrees % 360) + 360) % 360;
  if (angle === 0) return polygon;
  const quarter = angle % 90 === 0;
  const round = (value: number): number => (quarter ? Math.round(value) : value);
  const [cos, sin] = [round(Math.cos((angle * Math.PI) / 180)), round(Math.sin((angle * Math.PI) / 180))];
  return polygon.map(({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos }));
}

/** Reflected in a line; corners are listed the other way round, so that they stay clockwise. */
export function reflected(polygon: Polygon, line: Line): Polygon {
  return polygon
    .map((spot) => {
      const by = 2 * (dot(spot, line.out) - line.at);
      return { x: spot.x - by * line.out.x, y: spot.y - by * line.out.y };
    })
    .reverse();
}

/** A direction in degrees, reflected in a line. */
export function reflectedAngle(degrees: number, { out }: Line): number {
  // A direction d clockwise from up is (sin d, -cos d); the line runs square to `out`.
  const along = (Math.atan2(out.y, out.x) * 180) / Math.PI + 180;
  return (((2 * along - degrees) % 360) + 360) % 360;
}

/** What of a polygon lies behind a line: where the distance along `out` is at most `at`. Right for any outline's area. */
export function clipped(polygon: Polygon, { out, at }: Line): Polygon {
  const kept: Spot[] = [];
  for (let i = 0; i < polygon.length; i += 1) {
    const a = polygon[i] as Spot;
    const b = polygon[(i + 1) % polygon.length] as Spot;
    const [one, other] = [dot(a, out) - at, dot(b, out) - at];
    if (one <= 0) kept.push(a);
    if ((one < 0 && other > 0) || (one > 0 && other < 0)) {
      const share = one / (one - other);
      kept.push({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
    }
  }
  return kept;
}

export interface Edge {
  from: Spot;
  to: Spot;
  length: number;
  /** The line it lies on, `out` pointing out of the polygon. */
  line: Line;
}

export function edgesOf(polygon: Polygon): Edge[] {
  const edges: Edge[] = [];
  polygon.forEach((from, i) => {
    const to = polygon[(i + 1) % polygon.length] as Spot;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length < 1) return;
    const out = { x: (to.y - from.y) / length, y: -(to.x - from.x) / length };
    edges.push({ from, to, length, line: { out, at: dot(from, out) } });
  });
  return edges;
}

/** Corners in clockwise order, whichever way they were listed. */
export function clockwise(polygon: Polygon): Polygon {
  const twice = polygon.reduce((sum, a, i) => {
    const b = polygon[(i + 1) % polygon.length] ?? a;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);
  return twice < 0 ? [...polygon].reverse() : polygon;
}

/** The part of a polygon inside a convex one. */
export function within(polygon: Polygon, convex: Polygon): Polygon {
  let left = polygon;
  for (const { line } of edgesOf(convex)) {
    if (left.length === 0) return left;
    left = clipped(left, line);
  }
  return left;
}

export function isConvex(polygon: Polygon): boolean {
  return polygon.every((b, i) => {
    const a = polygon[(i + polygon.length - 1) % polygon.length] ?? b;
    const c = polygon[(i + 1) % polygon.length] ?? b;
    const [x, y] = [b.x - a.x, b.y - a.y];
    // Corners rounded to ticks: an angle that is nearly straight does not point inwards.
    return x * (c.y - b.y) - y * (c.x - b.x) >= -NEAR * (Math.hypot(x, y) + Math.hypot(c.x - b.x, c.y - b.y));
  });
}

export function girth(polygon: Polygon): number {
  return edgesOf(polygon).reduce((sum, { length }) => sum + length, 0);
}

/** Distance of a spot inside a polygon from its nearest edge; below zero when it lies outside. */
function depth(spot: Spot, polygon: Polygon): number {
  let inside = false;
  let nearest = Infinity;
  for (let i = 0; i < polygon.length; i += 1) {
    const a = polygon[i] as Spot;
    const b = polygon[(i + 1) % polygon.length] as Spot;
    if (a.y > spot.y !== b.y > spot.y && spot.x < ((b.x - a.x) * (spot.y - a.y)) / (b.y - a.y) + a.x)
      inside = !inside;
    const run = (b.x - a.x) ** 2 + (b.y - a.y) ** 2 || 1;
    const share = Math.min(
      1,
      Math.max(0, ((spot.x - a.x) * (b.x - a.x) + (spot.y - a.y) * (b.y - a.y)) / run),
    );
    nearest = Math.min(
      nearest,
      Math.hypot(spot.x - a.x - share * (b.x - a.x), spot.y - a.y - share * (b.y - a.y)),
    );
  }
  return inside ? nearest : -nearest;
}

/** Whether one polygon lies inside another, but for the tolerance. */
export function covers(outer: Polygon, inner: Polygon, near: number): boolean {
  if (inner.some((spot) => depth(spot, outer) < -near)) return false;
  // A corner of the outer one that points inwards may bite into an edge of the inner one.
  return isConvex(outer) || outer.every((spot) => depth(spot, inner) <= near);
}

/** A point that would reach farther than so many seams from its corner is cut off. */
const SHARP = 3;

/**
 * A patch with a seam allowance on every edge; of points that would reach more than three seams beyond their corner no
 * more is asked than an allowance as long as each edge. Derived geometry: moved edges meet at seam x (n + m) / (1 + n . m).
 */
export function withAllowance(patch: Polygon, seam: number): Polygon {
  const edges = edgesOf(patch);
  return edges.flatMap((after, i) => {
    const before = edges[(i + edges.length - 1) % edges.length] ?? after;
    const [n, m] = [before.line.out, after.line.out];
    const inwards = n.x * m.y - n.y * m.x < 0;
    const stretch = seam / (1 + dot(n, m));
    const tip = { x: after.from.x + stretch * (n.x + m.x), y: after.from.y + stretch * (n.y + m.y) };
    const reach = Math.hypot(tip.x - after.from.x, tip.y - after.from.y);
    if (inwards || reach <= SHARP * seam * 1.0001) return [tip];
    const out = { x: (tip.x - after.from.x) / reach, y: (tip.y - after.from.y) / reach };
    const at = dot(after.from, out) + seam * dot(n, out);
    // From the tip along a moved edge back to the blunting line.
    const back = (along: Spot): Spot => {
      const run = (at - dot(tip, out)) / dot(along, out);
      return { x: tip.x + run * along.x, y: tip.y + run * along.y };
    };
    const unit = ({ from, to, length }: Edge): Spot => ({
      x: (to.x - from.x) / length,
      y: (to.y - from.y) / length,
    });
    return [back(unit(before)), back(unit(after))];
  });
}

/** Degrees between two directions that read alike every `same` degrees. */
export function between(a: number, b: number, same: number): number {
  const apart = (((a - b) % same) + same) % same;
  return Math.min(apart, same - apart);
}
