import type { Rational } from "../../../length/rational.ts";
import * as q from "../../../length/rational.ts";

export interface PlanePoint {
  x: Rational;
  y: Rational;
}

const corner = (outline: readonly PlanePoint[], i: number): PlanePoint => {
  const point = outline[i % outline.length];
  if (point === undefined) throw new RangeError("an outline has no corners");
  return point;
};

/** Twice the area of the triangle; positive when clockwise as drawn (y down). */
function twiceArea(a: PlanePoint, b: PlanePoint, c: PlanePoint): Rational {
  return q.sub(q.mul(q.sub(b.x, a.x), q.sub(c.y, a.y)), q.mul(q.sub(b.y, a.y), q.sub(c.x, a.x)));
}

/** Area; positive when clockwise as drawn. */
export function signedArea(outline: readonly PlanePoint[]): Rational {
  const origin = corner(outline, 0);
  const twice = outline.reduce(
    (sum, p, i) => q.add(sum, twiceArea(origin, p, corner(outline, i + 1))),
    q.ZERO,
  );
  return q.mul(twice, q.rational(1n, 2n));
}

function between(a: Rational, p: Rational, b: Rational): boolean {
  return q.compare(a, p) * q.compare(p, b) >= 0;
}

function touches(a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint): boolean {
  const s = (p: PlanePoint, r: PlanePoint, t: PlanePoint): number => q.sign(twiceArea(p, r, t));
  const [abc, abd, cda, cdb] = [s(a, b, c), s(a, b, d), s(c, d, a), s(c, d, b)];
  if (abc * abd < 0 && cda * cdb < 0) return true;
  const on = (side: number, p: PlanePoint, from: PlanePoint, to: PlanePoint): boolean =>
    side === 0 && between(from.x, p.x, to.x) && between(from.y, p.y, to.y);
  return on(abc, c, a, b) || on(abd, d, a, b) || on(cda, a, c, d) || on(cdb, b, c, d);
}

/** True when no edge of the outline meets another but at their shared corner. */
export function isSimple(outline: readonly PlanePoint[]): boolean {
  const n = outline.length;
  for (let i = 0; i < n; i += 1)
    for (let j = i + 1; j < n; j += 1) {
      const [a, b, c, d] = [
        corner(outline, i),
        corner(outline, i + 1),
        corner(outline, j),
        corner(outline, j + 1),
      ];
      const neighbours = j === i + 1 || (i === 0 && j === n - 1);
      if (!neighbours && touches(a, b, c, d)) return false;
      // Neighbours share one corner; folding back on itself is the only way for them to meet again.
      if (neighbours && n > 2) {
        const [far, mid, other] = j === i + 1 ? [a, b, d] : [b, a, c];
        const folded =
          q.sign(twiceArea(far, mid, other)) === 0 &&
          q.sign(
            q.add(
              q.mul(q.sub(far.x, mid.x), q.sub(other.x, mid.x)),
              q.mul(q.sub(far.y, mid.y), q.sub(other.y, mid.y)),
            ),
          ) >= 0;
        if (folded) return false;
      }
    }
  return true;
}

/** A stretch of edge, from point to point. */
interface Stretch {
  from: PlanePoint;
  to: PlanePoint;
}

/** The line an edge lies on, the same text for every edge on it, where the edge runs along it, and back to points. */
function onLine(
  a: PlanePoint,
  b: PlanePoint,
): { line: string; from: Rational; to: Rational; point: (along: Rational) => PlanePoint } {
  const dx = q.sub(b.x, a.x);
  const text = (value: Rational): string => `${value.n}/${value.d}`;
  if (q.sign(dx) === 0)
    return { line: `x=${text(a.x)}`, from: a.y, to: b.y, point: (along) => ({ x: a.x, y: along }) };
  const slope = q.div(q.sub(b.y, a.y), dx);
  const meets = q.sub(a.y, q.mul(slope, a.x));
  return {
    line: `${text(slope)};${text(meets)}`,
    from: a.x,
    to: b.x,
    point: (along) => ({ x: along, y: q.add(q.mul(slope, along), meets) }),
  };
}

/**
 * An edge that nothing meets, where clockwise simple outlines do not fill a clockwise frame; null where they
 * do. Each edge of a tiling is met by one running the other way, or lies on the frame: so along every line the
 * edges must cancel the frame's. Exact, and it does not mind corners that meet the middle of an edge.
 */
function unmet(frame: readonly PlanePoint[], outlines: readonly (readonly PlanePoint[])[]): Stretch | null {
  const lines = new Map<
    string,
    { point: (along: Rational) => PlanePoint; steps: { at: Rational; change: number }[] }
  >();
  const add = (outline: readonly PlanePoint[], weight: number): void => {
    outline.forEach((start, i) => {
      const { line, from, to, point } = onLine(start, corner(outline, i + 1));
      const forward = q.compare(from, to) < 0 ? weight : -weight;
      const known = lines.get(line) ?? { point, steps: [] };
      known.steps.push(
        { at: forward === weight ? from : to, change: forward },
        { at: forward === weight ? to : from, change: -forward },
      );
      lines.set(line, known);
    });
  };
  add(frame, -1);
  for (const outline of outlines) add(outline, 1);
  for (const { point, steps } of lines.values()) {
    steps.sort((a, b) => q.compare(a.at, b.at));
    let cover = 0;
    for (const [i, here] of steps.entries()) {
      cover += here.change;
      const next = steps[i + 1];
      if (cover !== 0 && next !== undefined && !q.equal(here.at, next.at))
        return { from: point(here.at), to: point(next.at) };
    }
  }
  return null;
}

/** Whether clockwise simple outlines fill a clockwise frame with no gap and no overlap. */
export function tiles(frame: readonly PlanePoint[], outlines: readonly (readonly PlanePoint[])[]): boolean {
  return unmet(frame, outlines) === null;
}

/** Whether a point that is on no edge lies inside an outline. */
function holds(outline: readonly PlanePoint[], p: PlanePoint): boolean {
  let inside = false;
  outline.forEach((a, i) => {
    const b = corner(outline, i + 1);
    const [above, below] = [q.compare(a.y, p.y) > 0, q.compare(b.y, p.y) > 0];
    if (above === below) return;
    const x = q.add(a.x, q.div(q.mul(q.sub(p.y, a.y), q.sub(b.x, a.x)), q.sub(b.y, a.y)));
    if (q.compare(p.x, x) < 0) inside = !inside;
  });
  return inside;
}

/** Where outlines fail to fill a frame: a place no outline covers, or one that two or more cover, and which. */
export interface TilingFault {
  place: PlanePoint;
  /** Indices of the outlines that cover the place: none in a gap, two or more in an overlap. */
  covering: number[];
}

/** The first fault found where outlines do not fill a frame; null where they do. */
export function tilingFault(
  frame: readonly PlanePoint[],
  outlines: readonly (readonly PlanePoint[])[],
): TilingFault | null {
  const stretch = unmet(frame, outlines);
  if (stretch === null) return null;
  const { from, to } = stretch;
  const half = q.rational(1n, 2n);
  const place = { x: q.mul(q.add(from.x, to.x), half), y: q.mul(q.add(from.y, to.y), half) };
  const [dx, dy] = [q.sub(to.x, from.x), q.sub(to.y, from.y)];
  // A little way off on either side of the edge's middle: far less than a tick.
  const run = q.add(q.sign(dx) < 0 ? q.negate(dx) : dx, q.sign(dy) < 0 ? q.negate(dy) : dy);
  const little = q.div(q.rational(1n, 1000n), run);
  for (const side of [little, q.negate(little)]) {
    const probe = { x: q.sub(place.x, q.mul(dy, side)), y: q.add(place.y, q.mul(dx, side)) };
    if (!holds(frame, probe)) continue;
    const covering = outlines.flatMap((outline, i) => (holds(outline, probe) ? [i] : []));
    if (covering.length !== 1) return { place, covering };
  }
  return { place, covering: [] };
}
