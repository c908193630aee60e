import type { Rational } from "../../length/rational.ts";
import * as q from "../../length/rational.ts";

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

/** The line an edge lies on, the same text for every edge on it, and where it runs along it. */
function onLine(a: PlanePoint, b: PlanePoint): { line: string; from: Rational; to: Rational } {
  const dx = q.sub(b.x, a.x);
  const text = (value: Rational): string => `${value.n}/${value.d}`;
  if (q.sign(dx) === 0) return { line: `x=${text(a.x)}`, from: a.y, to: b.y };
  const slope = q.div(q.sub(b.y, a.y), dx);
  const meets = q.sub(a.y, q.mul(slope, a.x));
  return { line: `${text(slope)};${text(meets)}`, from: a.x, to: b.x };
}

/**
 * Whether clockwise simple outlines fill a clockwise frame with no gap and no overlap. Each edge of a tiling
 * is met by one running the other way, or lies on the frame: so along every line the edges must cancel the
 * frame's. Exact, and it does not mind corners that meet the middle of an edge.
 */
export function tiles(frame: readonly PlanePoint[], outlines: readonly (readonly PlanePoint[])[]): boolean {
  const steps = new Map<string, { at: Rational; change: number }[]>();
  const add = (outline: readonly PlanePoint[], weight: number): void => {
    outline.forEach((point, i) => {
      const { line, from, to } = onLine(point, corner(outline, i + 1));
      const forward = q.compare(from, to) < 0 ? weight : -weight;
      const list = steps.get(line) ?? [];
      list.push(
        { at: forward === weight ? from : to, change: forward },
        { at: forward === weight ? to : from, change: -forward },
      );
      steps.set(line, list);
    });
  };
  add(frame, -1);
  for (const outline of outlines) add(outline, 1);
  for (const list of steps.values()) {
    list.sort((a, b) => q.compare(a.at, b.at));
    let cover = 0;
    for (let i = 0; i < list.length; i += 1) {
      cover += list[i]?.change ?? 0;
      const next = list[i + 1];
      const here = list[i];
      if (cover !== 0 && next !== undefined && here !== undefined && !q.equal(here.at, next.at)) return false;
    }
  }
  return true;
}
