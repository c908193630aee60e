import { foundationOffGrid, foundationUnit, gridSquares } from "../../diagnostics/quilts/foundation.ts";
import type { InDesign } from "../../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import * as q from "../../length/rational.ts";
import type { SpokenSize } from "../../length/spoken.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import { rationalOfExact, sameExact, subExact } from "../exact.ts";
import { saySize } from "../say.ts";
import type { BlockDesign, DesignUnit, Exact, Patch } from "../types.ts";
import type { Node } from "./sequence.ts";

/** A patch of a design with its corners in whole steps of the grid. */
export interface GridPatch {
  patch: Patch;
  corners: Node[];
}

/** Where the lines a seam may lie on are: every step, in ticks. */
export interface Lines {
  grid: Ticks;
  /** A square, or half of one. */
  step: Ticks;
  halves: boolean;
  ruler: Ruler;
}

function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? a : gcd(b, a % b);
}

/** The largest length that all are multiples of; zero when all are zero. */
function commonMeasure(values: readonly q.Rational[]): q.Rational {
  let found = q.ZERO;
  for (const value of values) {
    const size = value.n < 0n ? -value.n : value.n;
    found = q.rational(gcd(size * found.d, found.n * value.d), value.d * found.d);
  }
  return found;
}

/** Whole multiples of `step` nearest to a length, one below (at least one step) and one above. */
function around(measure: q.Rational, step: Ticks): bigint[] {
  const below = q.floor(q.div(measure, q.fromInteger(step)));
  return below < 1n ? [1n] : [below, below + 1n];
}

/** A length at the nearest sizes, one below and one above; itself where it fits. */
function nearestLengths(measure: q.Rational, length: q.Rational, step: Ticks): q.Rational[] {
  const times = q.div(measure, q.fromInteger(step));
  if (times.d === 1n) return [length];
  const own = q.div(length, measure);
  return around(measure, step).map((n) => q.mul(own, q.mul(q.rational(n), q.fromInteger(step))));
}

/**
 * The sizes nearest to a unit's whose seams all lie on lines: both ways alike where its seams slant, so that it keeps
 * its shape; each way by itself where it is made of rectangles.
 */
function nearestSizes(unit: Measured, { step, ruler }: Lines): SpokenSize[] {
  const { across, down, xs, ys, slanting } = unit;
  const [x, y] = [commonMeasure([...xs, across]), commonMeasure([...ys, down])];
  const both = commonMeasure([x, y]);
  const [wide, high] = slanting
    ? [nearestLengths(both, across, step), nearestLengths(both, down, step)]
    : [nearestLengths(x, across, step), nearestLengths(y, down, step)];
  const sizes = [0, 1].map((i) => saySize(wide[i] ?? wide[0] ?? across, high[i] ?? high[0] ?? down, ruler));
  return unlike(sizes);
}

/** Sizes that are said alike once. */
function unlike(sizes: readonly SpokenSize[]): SpokenSize[] {
  return [...new Map(sizes.map((size) => [JSON.stringify(size), size])).values()];
}

/** A unit's size and where its corners lie in it. */
interface Measured {
  across: q.Rational;
  down: q.Rational;
  xs: readonly q.Rational[];
  ys: readonly q.Rational[];
  slanting: boolean;
}

function hasRoot(value: Exact): boolean {
  return value.r !== 0;
}

/**
 * The patches of a design in steps of the printed grid; null when a seam falls between the lines, which is told
 * with the nearest sizes that fit.
 * @param where the place in the file of each unit, then of the block
 */
export function onGrid(
  design: BlockDesign,
  lines: Lines,
  where: { units: readonly InDesign[]; block: InDesign },
  diagnostics: Diagnostic[],
): GridPatch[] | null {
  const own = design.units.map((): Patch[] => []);
  for (const patch of design.patches) own[patch.origin.unit ?? -1]?.push(patch);
  let fits = true;
  for (const [i, unit] of design.units.entries()) {
    const told = unitOff(unit, own[i] ?? [], lines, where.units[i] ?? where.block, wholeBlock(design, lines));
    if (told === null) continue;
    diagnostics.push(told);
    fits = false;
  }
  if (!fits) return null;
  // Units tile the block, so where all of them fit their places are whole steps too.
  const step = q.fromInteger(lines.step);
  const steps = (value: Exact): number => Number(q.div(rationalOfExact(value), step).n);
  return design.patches.map((patch) => ({
    patch,
    corners: patch.outline.map(({ x, y }): Node => [steps(x), steps(y)]),
  }));
}

/** A block made less than half or more than twice as large would be another quilt. */
const MOST_STRETCH = 2;

/** Sizes at which the block would fit with its proportions kept; none of a block of one unit, or with a root. */
function wholeBlock({ units, patches, across, down }: BlockDesign, { step, ruler }: Lines): SpokenSize[] {
  const corners = patches.flatMap(({ outline }) => outline.flatMap(({ x, y }) => [x, y]));
  if (units.length < 2 || corners.some(hasRoot)) return [];
  const measure = commonMeasure(corners.map(rationalOfExact));
  return around(measure, step).flatMap((times) => {
    const factor = q.div(q.mul(q.rational(times), q.fromInteger(step)), measure);
    const stretch = q.toNumber(factor);
    if (stretch > MOST_STRETCH || stretch < 1 / MOST_STRETCH) return [];
    return [saySize(q.mul(rationalOfExact(across), factor), q.mul(rationalOfExact(down), factor), ruler)];
  });
}

/** What is wrong with one unit by itself: a root in it, or seams between the lines. */
function unitOff(
  unit: DesignUnit,
  patches: readonly Patch[],
  lines: Lines,
  where: InDesign,
  blocks: readonly SpokenSize[],
): Diagnostic | null {
  const corners = patches.flatMap(({ outline }) =>
    outline.flatMap(({ x, y }) => [subExact(x, unit.x), subExact(y, unit.y)]),
  );
  if (corners.some(hasRoot)) {
    return foundationUnit(where, unit.kind, "off-corners");
  }
  const [across, down] = [rationalOfExact(unit.across), rationalOfExact(unit.down)];
  const inside = (axis: "x" | "y") =>
    patches.flatMap(({ outline }) =>
      outline.map((corner) => rationalOfExact(subExact(corner[axis], unit[axis]))),
    );
  const [xs, ys] = [inside("x"), inside("y")];
  const step = q.fromInteger(lines.step);
  const misses = (value: q.Rational): boolean => q.div(value, step).d !== 1n;
  const off = [across, down, ...xs, ...ys].find(misses);
  if (off === undefined) return null;
  const slanting = patches.some(({ outline }) =>
    outline.some((corner, i) => {
      const next = outline[(i + 1) % outline.length] ?? corner;
      return !sameExact(corner.x, next.x) && !sameExact(corner.y, next.y);
    }),
  );
  const whole = !misses(across) && !misses(down);
  const told = {
    of: "unit" as const,
    kind: unit.kind,
    finished: saySize(across, down, lines.ruler),
    across: gridSquares(across, lines.grid),
    down: gridSquares(down, lines.grid),
    seam: whole ? gridSquares(off, lines.grid) : null,
  };
  const sizes = nearestSizes({ across, down, xs, ys, slanting }, lines);
  return foundationOffGrid(where, told, { sizes, lengths: [], blocks }, lines.halves);
}
