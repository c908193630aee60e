import type { Rational } from "../../../length/rational.ts";
import * as q from "../../../length/rational.ts";
import { type Surd, surd } from "../../../length/surd.ts";
import { asQuarter } from "../../turning/whole-turns.ts";
import type { Eighth, ExactPoint, Outline } from "../types.ts";
import type { RootSum } from "./roots.ts";
import * as r from "./roots.ts";

/** A point in sums of roots: raw outlines, seam allowance included, need them. */
export interface RootPoint {
  x: RootSum;
  y: RootSum;
}
export type RootOutline = readonly RootPoint[];

/** A corner at exact fractions of a tick. */
export function at(x: Rational, y: Rational): ExactPoint {
  return { x: surd(x), y: surd(y) };
}

export function atSurd(x: Surd, y: Surd): ExactPoint {
  return { x, y };
}

/** The corners of an upright rectangle, clockwise from the top left. */
export function rectangle(x: Rational, y: Rational, across: Rational, along: Rational): Outline {
  const right = q.add(x, across);
  const bottom = q.add(y, along);
  return [at(x, y), at(right, y), at(right, bottom), at(x, bottom)];
}

export function toRoots(outline: Outline): RootOutline {
  return outline.map((point) => ({ x: r.fromSurd(point.x), y: r.fromSurd(point.y) }));
}

/** The item `step` places after `i` in a closed outline. */
function around(outline: RootOutline, i: number): RootPoint {
  const point = outline[(i + outline.length) % outline.length];
  if (point === undefined) throw new RangeError("an outline has no corners");
  return point;
}

function cross(a: RootPoint, b: RootPoint): RootSum {
  return r.minus(r.times(a.x, b.y), r.times(a.y, b.x));
}

function dot(a: RootPoint, b: RootPoint): RootSum {
  return r.plus(r.times(a.x, b.x), r.times(a.y, b.y));
}

function difference(a: RootPoint, b: RootPoint): RootPoint {
  return { x: r.minus(a.x, b.x), y: r.minus(a.y, b.y) };
}

/** Area, positive when the corners run clockwise as drawn (y down). */
export function areaOf(outline: RootOutline): RootSum {
  const twice = r.plus(...outline.map((point, i) => cross(point, around(outline, i + 1))));
  return r.times(twice, r.whole(q.rational(1n, 2n)));
}

/**
 * The direction of an edge as a vector of length one. Edges of any slope that is a fraction are exact, and
 * so are those at 30 and 60 degrees; nothing else occurs in straight-edged patchwork drawn on a grid.
 */
function directionOf(edge: RootPoint): RootPoint {
  const sx = r.signOf(edge.x);
  const sy = r.signOf(edge.y);
  const unit = (sign: number, size: RootSum): RootSum => r.times(r.whole(q.fromInteger(sign)), size);
  const one = r.whole(q.ONE);
  if (sx === 0 || sy === 0) return { x: unit(sx, one), y: unit(sy, one) };
  const slope = r.over(edge.y, edge.x);
  const steepness = r.times(slope, slope);
  const square = steepness[0];
  if (steepness.length !== 1 || square === undefined || square.root !== 1n)
    throw new RangeError("an edge whose slope is neither a fraction nor at 30 or 60 degrees");
  // cos^2 = 1 / (1 + slope^2), sin^2 = slope^2 / (1 + slope^2)
  const cosine = q.div(q.ONE, q.add(q.ONE, square.by));
  const sine = q.mul(square.by, cosine);
  return { x: unit(sx, r.rootOf(cosine)), y: unit(sy, r.rootOf(sine)) };
}

/** Length of the edge from one point to another. */
function lengthOf(from: RootPoint, to: RootPoint): RootSum {
  const edge = difference(to, from);
  return dot(edge, directionOf(edge));
}

/** The directions of all edges, as vectors of length one. */
export function directionsOf(outline: RootOutline): RootOutline {
  return outline.map((point, i) => directionOf(difference(around(outline, i + 1), point)));
}

/** The outline seen by an eye turned so that `direction`, a vector of length one, runs to the right. */
export function laidAlong(outline: readonly RootPoint[], direction: RootPoint): RootOutline {
  return outline.map((point) => ({ x: dot(direction, point), y: cross(direction, point) }));
}

/** Lengths of all edges, the first from corner 0 to corner 1. */
export function edgeLengths(outline: RootOutline): RootSum[] {
  return outline.map((point, i) => lengthOf(point, around(outline, i + 1)));
}

/** `point + by * direction`. */
function along(point: RootPoint, direction: RootPoint, by: RootSum): RootPoint {
  return {
    x: r.plus(point.x, r.times(by, direction.x)),
    y: r.plus(point.y, r.times(by, direction.y)),
  };
}

/** Directions along each edge and straight out of it; the first edge runs from corner 0 to corner 1. */
function edgesOf(outline: RootOutline): { run: RootOutline; out: RootOutline } {
  const run = directionsOf(outline);
  return { run, out: run.map(({ x, y }) => ({ x: y, y: r.minus([], x) })) };
}

/**
 * The outline with a seam allowance added outside every edge, corners left at their full points.
 *
 *     raw ________            a corner moves by seam x (n1 + n2) / (1 + n1 . n2)
 *        |  ____  |           for the outward directions n1, n2 of the edges that meet there
 *        | |    | |
 *
 * @param outline clockwise as drawn
 */
export function withSeams(outline: RootOutline, seam: Rational): RootOutline {
  const { out } = edgesOf(outline);
  return outline.map((point, i) => fullPoint(point, around(out, i - 1), around(out, i), seam));
}

function fullPoint(point: RootPoint, before: RootPoint, after: RootPoint, seam: Rational): RootPoint {
  const stretch = r.over(r.whole(seam), r.plus(r.whole(q.ONE), dot(before, after)));
  return along(along(point, before, stretch), after, stretch);
}

// A full point reaches seam x root(2 / (1 + n1 . n2)) beyond its corner: three seams where this is 2/9.
const SHARP = r.whole(q.rational(2n, 9n));

const ONE = r.whole(q.ONE);
const BEYOND = r.whole(q.rational(3n, 2n));

function onGrain(direction: RootPoint): boolean {
  return r.signOf(direction.x) === 0 || r.signOf(direction.y) === 0;
}

/**
 * The two corners a sharp point is cut off at, on the moved edges before and after it.
 *
 *     |\      one edge on the straight grain: square to it,      / \    else: both moved edges run on for one
 *     | \     one seam beyond the corner of the seam line       /___\   and a half seams, and are joined
 *     |__\
 *
 * Either way mirror images are blunted as mirror images, and the corner of a raw unit (root 2 seams from the
 * point at most) is left on.
 */
function bluntEnds(
  corner: { point: RootPoint; to: RootPoint; from: RootPoint; before: RootPoint; after: RootPoint },
  seam: Rational,
): [RootPoint, RootPoint] {
  const { point, to, from, before, after } = corner;
  const allowance = r.whole(seam);
  const first = (by: RootSum): RootPoint => along(along(point, before, allowance), to, by);
  const second = (by: RootSum): RootPoint => along(along(point, after, allowance), from, by);
  const back = r.minus([], allowance);
  if (onGrain(to) === onGrain(from)) {
    const run = r.times(allowance, BEYOND);
    return [first(run), second(r.minus([], run))];
  }
  // Where the other moved edge is one seam beyond the corner, measured along the edge on the grain.
  return onGrain(to)
    ? [first(allowance), second(r.times(allowance, r.over(r.minus(ONE, dot(to, after)), dot(to, from))))]
    : [first(r.times(back, r.over(r.plus(ONE, dot(from, before)), dot(to, from)))), second(back)];
}

/**
 * The same, with points sharper than about 39 degrees (reaching more than three seams beyond their corner)
 * cut off: no edge loses any of its allowance.
 */
export function withSeamsBlunted(outline: RootOutline, seam: Rational): RootOutline {
  const { run, out } = edgesOf(outline);
  return outline.flatMap((point, i) => {
    const [before, after] = [around(out, i - 1), around(out, i)];
    const [to, from] = [around(run, i - 1), around(run, i)];
    // A corner that points inwards has no point to blunt: there the moved edges meet nearer the corner's mouth.
    const inwards = r.signOf(cross(to, from)) < 0;
    if (inwards || r.compareRoots(r.plus(ONE, dot(before, after)), SHARP) >= 0)
      return [fullPoint(point, before, after, seam)];
    return bluntEnds({ point, to, from, before, after }, seam);
  });
}

const HALF_ROOT2: RootSum = r.rootOf(q.rational(1n, 2n));

/** The outline turned clockwise as seen by eighths of a turn, about the origin. */
export function turned(outline: RootOutline, eighths: Eighth): RootOutline {
  const quarters = asQuarter(Math.floor(eighths / 2));
  const quartered = outline.map((point) => {
    let { x, y } = point;
    for (let i = 0; i < quarters; i += 1) [x, y] = [r.minus([], y), x];
    return { x, y };
  });
  if (eighths % 2 === 0) return quartered;
  return quartered.map(({ x, y }) => ({
    x: r.times(HALF_ROOT2, r.minus(x, y)),
    y: r.times(HALF_ROOT2, r.plus(x, y)),
  }));
}

/** The upright rectangle round an outline. */
export function bounds(outline: RootOutline): { x: RootSum; y: RootSum; across: RootSum; along: RootSum } {
  const xs = outline.map((point) => point.x);
  const ys = outline.map((point) => point.y);
  const x = r.smallest(xs);
  const y = r.smallest(ys);
  return { x, y, across: r.minus(r.largest(xs), x), along: r.minus(r.largest(ys), y) };
}
