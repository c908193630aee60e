import { fromInteger } from "../../length/rational.ts";
import type { Ticks } from "../../length/types.ts";
import type { RootOutline } from "./outlines/outlines.ts";
import * as r from "./outlines/roots.ts";
import {
  beside,
  edgesOf,
  isSetIn,
  lengthOf,
  ON_LINE,
  plainShape,
  type Shape,
  type Spot,
  type Stretch,
  sharedStretches,
  slants,
  touching,
  turnsOf,
} from "./outlines/seam-lines.ts";
import type { RecipeDraft } from "./recipe.ts";
import type { RecipePress, RecipeStep } from "./types.ts";

/*
 * The order in which patches of any shape are joined. Wherever a straight line runs right across what is to be
 * made, its two sides are made first and joined on that line last. What no line divides is joined in one of two
 * ways, whichever turns fewer corners: patch by patch from the one that touches most, or in pairs, pairs of pairs and
 * so on, with what has to be set in last.
 *
 *     +-----+-----+        the upright line first: each half is then a join of its own
 *     |  a  |  c /|
 *     |-----|   / |
 *     |  b  |  /d |
 *     +-----+-----+
 */

type Join = Extract<RecipeStep, { do: "join" }>;

/** Two groups to be joined, by the names of what was made before. */
interface Bond {
  parts: [Group, Group];
  stretches: Stretch[];
}

interface Group {
  shapes: readonly Shape[];
  /** What makes it; null for a single patch. */
  bond: Bond | null;
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

/** Of the lines that divide the shapes, the one whose seam is longest; the first found among equals. */
function bestDivision(shapes: readonly Shape[]): [Shape[], Shape[]] | null {
  let best: [Shape[], Shape[]] | null = null;
  let longest = 0;
  for (const [a, b] of shapes.flatMap(({ corners }) => edgesOf(corners))) {
    const found = sides(shapes, a, b);
    if (found === null) continue;
    const length = lengthOf(sharedStretches(...found));
    if (length > longest + ON_LINE) [best, longest] = [found, length];
  }
  return best;
}

const single = (shape: Shape): Group => ({ shapes: [shape], bond: null });

function bonded(one: Group, other: Group): Group {
  const stretches = sharedStretches(one.shapes, other.shapes);
  return { shapes: [...one.shapes, ...other.shapes], bond: { parts: [one, other], stretches } };
}

/** Corners that all seams of a group turn. */
function turnsIn({ bond }: Group): number {
  if (bond === null) return 0;
  return turnsOf(bond.stretches).length + turnsIn(bond.parts[0]) + turnsIn(bond.parts[1]);
}

/** From the patch that touches most, straight seams before those that turn; null where something touches nothing. */
function patchByPatch(shapes: readonly Shape[]): Group | null {
  const neighbours = (shape: Shape): number =>
    shapes.filter((each) => each !== shape && sharedStretches([shape], [each]).length > 0).length;
  const counts = new Map(shapes.map((shape) => [shape, neighbours(shape)]));
  const most = Math.max(...counts.values());
  const start = shapes.find((shape) => counts.get(shape) === most);
  if (start === undefined) return null;
  let group = single(start);
  let left = shapes.filter((shape) => shape !== start);
  while (left.length > 0) {
    const ranked = left
      .map((shape) => ({ shape, stretches: sharedStretches(group.shapes, [shape]) }))
      .filter(({ stretches }) => stretches.length > 0)
      .sort(
        (a, b) =>
          Number(isSetIn(a.stretches)) - Number(isSetIn(b.stretches)) ||
          lengthOf(b.stretches) - lengthOf(a.stretches),
      );
    const [next] = ranked;
    if (next === undefined) return null;
    group = bonded(group, single(next.shape));
    left = left.filter((shape) => shape !== next.shape);
  }
  return group;
}

/** Groups of like numbers of patches first, straight seams before those that turn. */
function byPairs(shapes: readonly Shape[]): Group | null {
  let groups = shapes.map(single);
  while (groups.length > 1) {
    let best: { rank: [number, number, number]; pair: [Group, Group] } | null = null;
    for (const [i, one] of groups.entries())
      for (const other of groups.slice(i + 1)) {
        const stretches = sharedStretches(one.shapes, other.shapes);
        if (stretches.length === 0) continue;
        const [a, b] = [one.shapes.length, other.shapes.length];
        const rank: [number, number, number] = [Number(isSetIn(stretches)), Math.abs(a - b), a + b];
        if (best === null || before(rank, best.rank)) best = { rank, pair: [one, other] };
      }
    if (best === null) return null;
    const [one, other] = best.pair;
    const made = bonded(one, other);
    groups = groups.flatMap((group) => (group === one ? [made] : group === other ? [] : [group]));
  }
  return groups[0] ?? null;
}

function before(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, i) => value !== b[i]);
  return at >= 0 && (a[at] ?? 0) < (b[at] ?? 0);
}

function grouped(shapes: readonly Shape[]): Group | null {
  const [only] = shapes;
  if (only === undefined) return null;
  if (shapes.length === 1) return single(only);
  const found = bestDivision(shapes);
  if (found !== null) {
    const [one, other] = found.map(grouped);
    return one == null || other == null ? null : bonded(one, other);
  }
  const ways = [byPairs(shapes), patchByPatch(shapes)].filter((way) => way !== null);
  return ways.reduce<Group | null>(
    (best, way) => (best === null || turnsIn(way) < turnsIn(best) ? way : best),
    null,
  );
}

/** Single patches to the darker; a patch set in towards itself; what is made of several parts, one way. */
function pressOf(parts: readonly string[], singles: ReadonlySet<string>, setIn: boolean): RecipePress {
  const [, last = ""] = parts;
  if (parts.every((part) => singles.has(part))) return { to: "darker" };
  return setIn && singles.has(last) ? { to: "part", part: last } : { to: "one-way" };
}

/**
 * The joins that make a unit of patches cut to shape, in order; the last makes `unit`. Empty for a single patch.
 * @param patches finished outlines by spot; they tile the unit
 */
export function joinOrder(patches: readonly { spot: string; outline: RootOutline }[]): Join[] {
  const all = grouped(patches.map(({ spot, outline }) => plainShape(spot, outline)));
  const singles = new Set(patches.map(({ spot }) => spot));
  const joins: Join[] = [];
  const tell = (group: Group): string => {
    if (group.bond === null) return group.shapes[0]?.spot ?? "";
    const parts = group.bond.parts.map(tell);
    const makes = group === all ? "unit" : `part ${joins.length + 1}`;
    const setIn = isSetIn(group.bond.stretches);
    joins.push({
      do: "join",
      makes,
      parts,
      way: "edge",
      press: pressOf(parts, singles, setIn),
      ...(setIn ? { setIn: true as const } : {}),
    });
    return makes;
  };
  if (all !== null) tell(all);
  return joins;
}

/**
 * What every join sews: one seam each, as long as the edges it joins and a seam allowance at both ends. The joins
 * come back with the corners at which their seams turn.
 * @param seam allowance in ticks
 */
export function sewJoins(
  joins: readonly Join[],
  patches: readonly { spot: string; outline: RootOutline }[],
  seam: Ticks,
): { joins: Join[]; seams: RecipeDraft["seams"] } {
  const made = new Map(patches.map(({ spot, outline }) => [spot, [plainShape(spot, outline)]]));
  const sewn = joins.map((join) => {
    const groups = join.parts.map((part) => made.get(part) ?? []);
    const stretches = groups
      .slice(1)
      .flatMap((group, i) => sharedStretches(groups.slice(0, i + 1).flat(), group));
    const all = groups.flat();
    made.set(join.makes, all);
    const corners = turnsOf(stretches).map(({ x, y }) => ({
      x: Math.round(x),
      y: Math.round(y),
      spots: touching(all, { x, y }),
    }));
    return { join, stretches, corners };
  });
  return {
    joins: sewn.map(({ join, corners }) => (corners.length === 0 ? join : { ...join, corners })),
    seams: sewn.map(({ join, stretches }) => ({
      what: "parts",
      parts: join.parts,
      length: r.whole(fromInteger(Math.ceil(lengthOf(stretches) + 2 * seam - ON_LINE))),
      count: join.parts.length - 1,
      bias: stretches.some(slants),
    })),
  };
}
