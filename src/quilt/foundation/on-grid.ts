import { foundationOffGrid, foundationUnit, gridSquares } from "../../diagnostics/foundation.ts";
import type { InDesign } from "../../diagnostics/quilt.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import * as q from "../../length/rational.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import { rationalOfExact, subExact } from "../exact.ts";
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

/** The two sizes nearest to this one whose seams all lie on lines. */
function nearestSizes(
  measure: q.Rational,
  across: q.Rational,
  down: q.Rational,
  { step, ruler }: Lines,
): string[] {
  return around(measure, step).map((times) => {
    const factor = q.div(q.mul(q.rational(times), q.fromInteger(step)), measure);
    return saySize(q.mul(across, factor), q.mul(down, factor), ruler);
  });
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
    const told = unitOff(unit, own[i] ?? [], lines, where.units[i] ?? where.block);
    if (told === null) continue;
    diagnostics.push(told);
    fits = false;
  }
  if (!fits) return null;
  const places = design.units.flatMap(({ x, y, across, down }) => [x, y, across, down].map(rationalOfExact));
  const inside = design.patches.flatMap(({ outline }) =>
    outline.flatMap(({ x, y }) => [rationalOfExact(x), rationalOfExact(y)]),
  );
  const measure = commonMeasure([...places, ...inside]);
  const step = q.fromInteger(lines.step);
  if (q.div(measure, step).d !== 1n) {
    const [across, down] = [rationalOfExact(design.across), rationalOfExact(design.down)];
    const what = `Block ${design.name} ${saySize(across, down, lines.ruler)}`;
    const sizes = nearestSizes(measure, across, down, lines);
    diagnostics.push(
      foundationOffGrid(where.block, what, squaresSaid(across, down, lines), sizes, lines.halves),
    );
    return null;
  }
  const steps = (value: Exact): number => Number(q.div(rationalOfExact(value), step).n);
  return design.patches.map((patch) => ({
    patch,
    corners: patch.outline.map(({ x, y }): Node => [steps(x), steps(y)]),
  }));
}

function squaresSaid(across: q.Rational, down: q.Rational, { grid }: Lines): string {
  return `${gridSquares(across, grid)} x ${gridSquares(down, grid)} squares`;
}

/** What is wrong with one unit by itself: a root in it, or seams between the lines. */
function unitOff(
  unit: DesignUnit,
  patches: readonly Patch[],
  lines: Lines,
  where: InDesign,
): Diagnostic | null {
  const corners = patches.flatMap(({ outline }) =>
    outline.flatMap(({ x, y }) => [subExact(x, unit.x), subExact(y, unit.y)]),
  );
  if (corners.some(hasRoot)) {
    const reason = "its seams do not run between corners of printed squares.";
    return foundationUnit(
      where,
      unit.kind,
      reason,
      "List the blocks that are made on it without this one: `blocks: [...]`.",
    );
  }
  const [across, down] = [rationalOfExact(unit.across), rationalOfExact(unit.down)];
  const measure = commonMeasure([...corners.map(rationalOfExact), across, down]);
  if (q.div(measure, q.fromInteger(lines.step)).d === 1n) return null;
  const what = `${unit.kind} finishing ${saySize(across, down, lines.ruler)}`;
  const sizes = nearestSizes(measure, across, down, lines);
  return foundationOffGrid(where, what, squaresSaid(across, down, lines), sizes, lines.halves);
}
