import type { RootOutline } from "./outlines.ts";
import * as r from "./roots.ts";
import type { RecipeStep } from "./types.ts";

/*
 * The order in which patches of any shape are joined. Wherever a straight line runs right across what is to be
 * made, its two sides are made first and joined on that line last. What no line divides grows patch by patch
 * instead, straight seams before those that go round a corner.
 *
 *     +-----+-----+        the upright line first: each half is then a join of its own
 *     |  a  |  c /|
 *     |-----|   / |
 *     |  b  |  /d |
 *     +-----+-----+
 *
 * Plain numbers serve here: they only say which patch lies on which side, never how long anything is.
 */

interface Spot {
  x: number;
  y: number;
}

interface Shape {
  spot: string;
  corners: Spot[];
}

/** Ticks within which a point counts as lying on a line. */
const ON_LINE = 0.5;

type JoinOf = Extract<RecipeStep, { do: "join" }>;
type Join = Omit<JoinOf, "press">;

function plainly(outline: RootOutline): Spot[] {
  return outline.map(({ x, y }) => ({ x: r.rootsToNumber(x), y: r.rootsToNumber(y) }));
}

/** Distance of a point from the line through two others; its sign says on which side. */
function beside(p: Spot, a: Spot, b: Spot): number {
  return ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / Math.hypot(b.x - a.x, b.y - a.y);
}

function edgesOf(corners: readonly Spot[]): [Spot, Spot][] {
  return corners.map((a, i) => [a, corners[(i + 1) % corners.length] ?? a]);
}

/** The two sides of a line that cuts no shape; null when it does, or when all lie on one side. */
function sides(shapes: readonly Shape[], a: Spot, b: Spot): [Shape[], Shape[]] | null {
  const [one, other]: [Shape[], Shape[]] = [[], []];
  for (const shape of shapes) {
    const distances = shape.corners.map((p) => beside(p, a, b));
    const [least, most] = [Math.min(...distances), Math.max(...distances)];
    if (least >= -ON_LINE) one.push(shape);
    else if (most <= ON_LINE) other.push(shape);
    else return null;
  }
  return one.length > 0 && other.length > 0 ? [one, other] : null;
}

/** Where the outlines of two groups run along one another: stretches, by the direction they lie in. */
function shared(one: readonly Shape[], other: readonly Shape[]): { length: number; directions: number } {
  let length = 0;
  const directions: Spot[] = [];
  for (const [a, b] of one.flatMap(({ corners }) => edgesOf(corners))) {
    const run = Math.hypot(b.x - a.x, b.y - a.y);
    const unit = { x: (b.x - a.x) / run, y: (b.y - a.y) / run };
    for (const [c, d] of other.flatMap(({ corners }) => edgesOf(corners))) {
      if (Math.abs(beside(c, a, b)) > ON_LINE || Math.abs(beside(d, a, b)) > ON_LINE) continue;
      const at = (p: Spot): number => (p.x - a.x) * unit.x + (p.y - a.y) * unit.y;
      const overlap = Math.min(run, Math.max(at(c), at(d))) - Math.max(0, Math.min(at(c), at(d)));
      if (overlap <= ON_LINE) continue;
      length += overlap;
      const known = directions.some((each) => Math.abs(each.x * unit.y - each.y * unit.x) < 1e-6);
      if (!known) directions.push(unit);
    }
  }
  return { length, directions: directions.length };
}

/** Of the lines that divide the shapes, the one whose seam is longest; the first found among equals. */
function bestDivision(shapes: readonly Shape[]): [Shape[], Shape[]] | null {
  let best: [Shape[], Shape[]] | null = null;
  let longest = 0;
  for (const [a, b] of shapes.flatMap(({ corners }) => edgesOf(corners))) {
    const found = sides(shapes, a, b);
    if (found === null) continue;
    const { length } = shared(...found);
    if (length > longest + ON_LINE) [best, longest] = [found, length];
  }
  return best;
}

function nameOf(index: number): string {
  return `part ${index + 1}`;
}

/** Joins in order; the last makes all of `shapes`. Returns the name of what is made. */
function joinAll(shapes: readonly Shape[], joins: Join[]): string {
  const [only] = shapes;
  if (only !== undefined && shapes.length === 1) return only.spot;
  const found = bestDivision(shapes);
  if (found !== null) {
    const parts = found.map((side) => joinAll(side, joins));
    const makes = nameOf(joins.length);
    joins.push({ do: "join", makes, parts, way: "edge" });
    return makes;
  }
  // Nothing divides it: begin with the patch that touches most, and add the others round it.
  const touching = (shape: Shape): number =>
    shapes.filter((each) => each !== shape && shared([shape], [each]).length > 0).length;
  const start = shapes.reduce((best, shape) => (touching(shape) > touching(best) ? shape : best));
  let left = shapes.filter((shape) => shape !== start);
  const done = [start];
  let name = start.spot;
  while (left.length > 0) {
    const ranked = left
      .map((shape) => ({ shape, ...shared(done, [shape]) }))
      .filter(({ length }) => length > 0)
      .sort((a, b) => a.directions - b.directions || b.length - a.length);
    const [next] = ranked;
    if (next === undefined) break;
    const makes = nameOf(joins.length);
    joins.push({
      do: "join",
      makes,
      parts: [name, next.shape.spot],
      way: "edge",
      ...(next.directions > 1 ? { setIn: true as const } : {}),
    });
    done.push(next.shape);
    left = left.filter((shape) => shape !== next.shape);
    name = makes;
  }
  return name;
}

/**
 * The joins that make a unit of patches cut to shape, in order; the last makes `unit`. Empty for a single patch.
 * @param patches finished outlines by spot; they tile the unit
 */
export function joinOrder(patches: readonly { spot: string; outline: RootOutline }[]): JoinOf[] {
  const joins: Join[] = [];
  joinAll(
    patches.map(({ spot, outline }) => ({ spot, corners: plainly(outline) })),
    joins,
  );
  const last = joins.at(-1);
  if (last !== undefined) last.makes = "unit";
  return joins.map((join) => ({ ...join, press: { to: "darker" } }));
}
