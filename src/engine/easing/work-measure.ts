import type { CuttingTable, PackingProblem, PackingResult, Section, SegmentUse } from "../types.ts";

/**
 * What a plan costs at the cutting mat, all counted over the whole plan. `total` weighs the parts by
 * `WORK_WEIGHTS`.
 */
export interface WorkMeasure {
  /** Strips cut off the stock, lengthwise bands included. */
  strips: number;
  /** Distinct strip widths and distinct subcut sizes: how often the ruler is set anew. */
  settings: number;
  /** Distinct strips. One that holds only part of what another of its width holds is no kind of its own. */
  kinds: number;
  /** Turns of the mat: each kind of strip is turned once to be subcut, once more to be cut along again. */
  turns: number;
  /** Cuts longer than the ruler: cloth is folded again, or the ruler moved along. */
  long: number;
  /** Parts too narrow to hold safely beside the ruler. */
  narrow: number;
  /** Cuts made in strips: segments cut off, stacks cut apart, trims. */
  subcuts: number;
  /** Those of the subcuts that only bring something down to size; a run of one height is trimmed in one cut. */
  trims: number;
  total: number;
}

/**
 * Common practice at the mat, no source: only the order of the parts is meant to be firm. A setting counts as much as a
 * strip, a trim three times a plain subcut: over the fixtures and the benchmark's bolts this leaves fewest settings and
 * a fifth fewer trims than counting a trim as half a subcut.
 */
export const WORK_WEIGHTS = {
  strips: 24,
  settings: 24,
  kinds: 12,
  turns: 6,
  trims: 6,
  long: 5,
  narrow: 4,
  subcuts: 2,
} as const;

/** A table on which no cut is too long and no part too narrow. */
export const ANY_TABLE: CuttingTable = { across: Infinity, inside: Infinity, narrow: 0 };

/** Equal segments of a strip as the ruler sees them. */
export interface SegmentShape {
  /** Sizes of all that is in it: equal texts mean equal cuts. */
  key: string;
  width: number;
  count: number;
  rows: readonly { width: number; height: number; count: number }[];
}

/** A strip as the ruler sees it: sizes only, whatever the items are called. */
export interface StripShape {
  run: number;
  height: number;
  segments: readonly SegmentShape[];
}

/** Strips of one shape, and how many. */
export interface Measured {
  shape: StripShape;
  count: number;
}

/** A segment of the given rows; rows come in any order. */
export function segmentShape(width: number, count: number, rows: SegmentShape["rows"]): SegmentShape {
  const merged = new Map<string, { width: number; height: number; count: number }>();
  for (const row of rows) {
    const key = `${row.width}x${row.height}`;
    const known = merged.get(key);
    if (known === undefined) merged.set(key, { ...row });
    else known.count += row.count;
  }
  const sorted = [...merged].sort(([a], [b]) => (a < b ? -1 : 1));
  const key = `${width}:${sorted.map(([size, row]) => `${row.count}*${size}`).join("+")}`;
  return { key, width, count, rows: sorted.map(([, row]) => row) };
}

/** The cuts made in one strip and the ruler settings they need beside the strip's own width. */
export interface StripCuts {
  subcuts: number;
  trims: number;
  sizes: number[];
  turns: number;
  long: number;
  narrow: number;
}

export function cutsOf(shape: StripShape, table: CuttingTable): StripCuts {
  const { run, height, segments } = shape;
  const sizes = new Set<number>();
  const runHeights = new Set<number>();
  let subcuts = 0;
  let trims = 0;
  let used = 0;
  let narrow = height < table.narrow ? 1 : 0;
  let alongAgain = false;
  for (const { width, count, rows } of segments) {
    used += width * count;
    if (width < table.narrow) narrow += count;
    if (width < run) {
      subcuts += count;
      sizes.add(width);
    }
    const stacked = rows.reduce((sum, row) => sum + row.count, 0);
    const filled = rows.reduce((sum, row) => sum + row.height * row.count, 0);
    if (stacked > 1) {
      alongAgain = true;
      for (const row of rows) if (row.height < table.narrow) narrow += row.count * count;
      subcuts += (stacked - 1) * count;
      if (filled < height) trims += count;
      for (const row of rows) sizes.add(row.height);
    } else if (filled < height) runHeights.add(filled);
    for (const row of rows) {
      if (row.width === width) continue;
      trims += row.count * count;
      sizes.add(row.width);
    }
  }
  // The last segment of a strip used to its very end is free already.
  if (used === run && subcuts > 0) subcuts--;
  const across = subcuts;
  for (const size of runHeights) sizes.add(size);
  trims += runHeights.size;
  subcuts += trims;
  const turns = (across > 0 ? 1 : 0) + (alongAgain || runHeights.size > 0 ? 1 : 0);
  // Every subcut is as long as the strip is wide, but for the trims along it.
  const long = (run > table.across ? 1 : 0) + (height > table.inside ? across : 0);
  return { subcuts, trims, sizes: [...sizes], turns, long, narrow };
}

/** Work of one strip whatever else is cut: all but its settings and its kind. */
export function workOfStrip({ subcuts, trims, long, narrow }: StripCuts): number {
  const weights = WORK_WEIGHTS;
  return (
    weights.strips +
    weights.long * long +
    weights.narrow * narrow +
    weights.subcuts * subcuts +
    weights.trims * trims
  );
}

/** Work of strips given by their shapes, each cut `count` times. */
export function measureStrips(
  strips: readonly Measured[],
  table: CuttingTable,
  cutsIn: (shape: StripShape) => StripCuts = (shape) => cutsOf(shape, table),
): WorkMeasure {
  const widths = new Set<number>();
  const sizes = new Set<number>();
  const work = { strips: 0, long: 0, narrow: 0, subcuts: 0, trims: 0 };
  let total = 0;
  for (const { shape, count } of strips) {
    const cuts = cutsIn(shape);
    total += workOfStrip(cuts) * count;
    work.strips += count;
    work.long += cuts.long * count;
    work.narrow += cuts.narrow * count;
    work.subcuts += cuts.subcuts * count;
    work.trims += cuts.trims * count;
    widths.add(shape.height);
    for (const size of cuts.sizes) sizes.add(size);
  }
  const settings = widths.size + sizes.size;
  const distinct = distinctShapes(strips.map(({ shape }) => shape));
  const kinds = distinct.length;
  const turns = distinct.reduce((sum, shape) => sum + cutsIn(shape).turns, 0);
  const weights = WORK_WEIGHTS;
  total += weights.settings * settings + weights.kinds * kinds + weights.turns * turns;
  return { ...work, settings, kinds, turns, total };
}

/** Shapes that hold only part of what another of the same width holds are left out. */
function distinctShapes(shapes: readonly StripShape[]): StripShape[] {
  const byWidth = new Map<number, { shape: StripShape; held: ReadonlyMap<string, number> }[]>();
  for (const shape of shapes) {
    const held = heldBy(shape);
    const list = byWidth.get(shape.height) ?? [];
    if (list.some((other) => within(held, other.held))) continue;
    byWidth.set(shape.height, [...list.filter((other) => !within(other.held, held)), { shape, held }]);
  }
  return [...byWidth.values()].flatMap((list) => list.map(({ shape }) => shape));
}

const HELD = new WeakMap<StripShape, ReadonlyMap<string, number>>();

/** How many of each segment a strip holds; counted once for each shape, which is plain data and stays as it is. */
function heldBy(shape: StripShape): ReadonlyMap<string, number> {
  const known = HELD.get(shape);
  if (known !== undefined) return known;
  const held = new Map<string, number>();
  for (const { key, count } of shape.segments) held.set(key, (held.get(key) ?? 0) + count);
  HELD.set(shape, held);
  return held;
}

function within(part: ReadonlyMap<string, number>, whole: ReadonlyMap<string, number>): boolean {
  for (const [key, count] of part) if (count > (whole.get(key) ?? 0)) return false;
  return true;
}

/** The work of a whole plan, roll, sheets and bands together. */
export function workOf(
  problem: PackingProblem,
  result: PackingResult,
  table: CuttingTable = ANY_TABLE,
): WorkMeasure {
  return measureStrips(shapesOf(problem, result, 1), table);
}

/**
 * Shapes of all strips of a plan, sizes divided by `step`; those that hold runs of shapes are left out. A band section is
 * one strip whose segments are the bands.
 */
export function shapesOf(problem: PackingProblem, result: PackingResult, step: number): Measured[] {
  const { items } = problem;
  const inSteps = (size: number): number => Math.floor(size / step);
  const toShape = ({ across, count, stack }: SegmentUse, transposed: boolean): SegmentShape =>
    segmentShape(
      inSteps(across),
      count,
      stack.map((use) => {
        const item = items[use.item]!;
        const swap = use.turned !== transposed;
        const [width, height] = swap ? [item.along, item.across] : [item.across, item.along];
        return { width: inSteps(width), height: inSteps(height), count: use.count };
      }),
    );
  const ofSection = (section: Section, width: number, transposed: boolean, times: number): Measured[] => {
    const uses = section.kind === "strips" ? section.column.segments : section.bands;
    if (uses.some(({ stack }) => stack.some(({ item }) => items[item]!.nest !== undefined))) return [];
    const height = section.kind === "strips" ? section.column.along : section.along;
    const segments = uses.map((use) => toShape(use, transposed));
    const count = section.count * times;
    const shape = { run: inSteps(width), height: inSteps(height), segments };
    const rest =
      section.kind === "strips"
        ? []
        : section.rest.flatMap((one) => ofSection(one, section.restAcross, transposed, count));
    return [{ shape, count }, ...rest];
  };
  return result.layouts.flatMap(({ sections, sheet, stock, firstCut, count }) => {
    const transposed = firstCut === "along";
    const cloth = stock === "sheet" ? problem.sheets[sheet]! : { across: problem.roll?.width ?? 0, along: 0 };
    const run = transposed ? cloth.along : cloth.across;
    return sections.flatMap((section) => ofSection(section, run, transposed, count));
  });
}
