import type { Filling } from "../oracles/oracle.ts";
import { sum } from "../problem/counts.ts";
import type { Kind } from "../problem/reduce.ts";
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

/** A segment of a strip as the ruler sees it: sizes only, whatever the items are called. */
interface Segment {
  width: number;
  count: number;
  rows: readonly Row[];
}

interface Row {
  width: number;
  height: number;
  count: number;
}

/** The cuts made in one strip, and the ruler settings they need beside the strip's own width. */
export interface StripWork {
  height: number;
  /** How many it holds of each segment: equal texts mean equal cuts. */
  held: ReadonlyMap<string, number>;
  /** All of it, in any order of its segments. */
  text: string;
  subcuts: number;
  trims: number;
  sizes: number[];
  turns: number;
  long: number;
  narrow: number;
}

/** Strips of one kind, and how many. */
export interface Measured {
  strip: StripWork;
  count: number;
}

/** The work of one strip of a run. */
function stripWork(
  run: number,
  height: number,
  segments: readonly Segment[],
  table: CuttingTable,
): StripWork {
  const held = heldBy(segments);
  const sizes = new Set<number>();
  const lower = new Set<number>();
  let subcuts = 0;
  let trims = 0;
  let narrow = height < table.narrow ? 1 : 0;
  let alongAgain = false;
  for (const { width, count, rows } of segments) {
    if (width < table.narrow) narrow += count;
    if (width < run) {
      subcuts += count;
      sizes.add(width);
    }
    const stacked = sum(rows, (row) => row.count);
    const filled = sum(rows, (row) => row.height * row.count);
    if (stacked > 1) {
      alongAgain = true;
      subcuts += (stacked - 1) * count;
      if (filled < height) trims += count;
      for (const row of rows) {
        if (row.height < table.narrow) narrow += row.count * count;
        sizes.add(row.height);
      }
    } else if (filled < height) lower.add(filled);
    for (const row of rows) {
      if (row.width === width) continue;
      trims += row.count * count;
      sizes.add(row.width);
    }
  }
  // The last segment of a strip used to its very end is free already.
  if (subcuts > 0 && sum(segments, ({ width, count }) => width * count) === run) subcuts--;
  const across = subcuts;
  // Neighbours of one height are trimmed in one cut.
  for (const size of lower) sizes.add(size);
  trims += lower.size;
  const turns = (across > 0 ? 1 : 0) + (alongAgain || lower.size > 0 ? 1 : 0);
  // Every subcut is as long as the strip is wide, but for the trims along it.
  const long = (run > table.across ? 1 : 0) + (height > table.inside ? across : 0);
  const text = `${height}:${[...held].map(([key, count]) => `${count}*${key}`).sort()}`;
  return { height, held, text, subcuts: subcuts + trims, trims, sizes: [...sizes], turns, long, narrow };
}

function heldBy(segments: readonly Segment[]): ReadonlyMap<string, number> {
  const held = new Map<string, number>();
  for (const { width, count, rows } of segments) {
    const sizes = new Map<string, number>();
    for (const row of rows) {
      const size = `${row.width}x${row.height}`;
      sizes.set(size, (sizes.get(size) ?? 0) + row.count);
    }
    const key = `${width}:${[...sizes].map(([size, times]) => `${times}*${size}`).sort()}`;
    held.set(key, (held.get(key) ?? 0) + count);
  }
  return held;
}

/** The work of a strip filled so, sizes from the kinds. */
export function fillingWork(
  kinds: readonly Kind[],
  run: number,
  { height, segments }: Filling,
  table: CuttingTable,
): StripWork {
  const shapes = segments.map(({ width, stack }) => {
    const rows = stack.map(({ kind, lie }): Row => ({ ...kinds[kind]!.lies[lie]!, count: 1 }));
    return { width, count: 1, rows };
  });
  return stripWork(run, height, shapes, table);
}

/** Work of one strip whatever else is cut: all but its settings and its kind. */
export function workOfStrip({ subcuts, trims, long, narrow }: StripWork): number {
  const { strips, long: each, narrow: part, subcuts: subcut, trims: trim } = WORK_WEIGHTS;
  return strips + each * long + part * narrow + subcut * subcuts + trim * trims;
}

/** Work of strips that are each cut `count` times. */
export function measureStrips(strips: readonly Measured[]): WorkMeasure {
  const all = (part: "long" | "narrow" | "subcuts" | "trims") =>
    sum(strips, ({ strip, count }) => strip[part] * count);
  const widths = new Set(strips.map(({ strip }) => strip.height));
  const sizes = new Set(strips.flatMap(({ strip }) => strip.sizes));
  const distinct = distinctStrips(strips);
  const work = {
    strips: sum(strips, ({ count }) => count),
    settings: widths.size + sizes.size,
    kinds: distinct.length,
    turns: sum(distinct, ({ turns }) => turns),
    ...{ long: all("long"), narrow: all("narrow"), subcuts: all("subcuts"), trims: all("trims") },
  };
  const parts = Object.keys(WORK_WEIGHTS) as (keyof typeof WORK_WEIGHTS)[];
  return { ...work, total: sum(parts, (part) => WORK_WEIGHTS[part] * work[part]) };
}

/** Strips that hold only part of what another of the same width holds are left out. */
function distinctStrips(strips: readonly Measured[]): StripWork[] {
  const kept: StripWork[] = [];
  for (const { strip } of strips) {
    const isPart = (part: StripWork, whole: StripWork) =>
      part.height === whole.height && within(part.held, whole.held);
    if (kept.some((other) => isPart(strip, other))) continue;
    for (let i = kept.length - 1; i >= 0; i--) if (isPart(kept[i]!, strip)) kept.splice(i, 1);
    kept.push(strip);
  }
  return kept;
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
  return measureStrips(stripsOf(problem, result, 1, table));
}

/**
 * All strips of a plan, sizes divided by `step`, those of the table too; those that hold runs of shapes are left out. A
 * band section is one strip whose segments are the bands.
 */
export function stripsOf(
  { items, sheets, roll }: PackingProblem,
  { layouts }: PackingResult,
  step: number,
  { across, inside, narrow }: CuttingTable,
): Measured[] {
  const inSteps = (size: number): number => Math.floor(size / step);
  const table = { across: across / step, inside: inside / step, narrow: narrow / step };
  const segmentOf = ({ across, count, stack }: SegmentUse, transposed: boolean): Segment => {
    const rows = stack.map((use): Row => {
      const item = items[use.item]!;
      const [width, height] =
        use.turned !== transposed ? [item.along, item.across] : [item.across, item.along];
      return { width: inSteps(width), height: inSteps(height), count: use.count };
    });
    return { width: inSteps(across), count, rows };
  };
  const ofSection = (section: Section, run: number, transposed: boolean, times: number): Measured[] => {
    const isBand = section.kind === "bands";
    const uses = isBand ? section.bands : section.column.segments;
    if (uses.some(({ stack }) => stack.some(({ item }) => items[item]!.nest !== undefined))) return [];
    const height = inSteps(isBand ? section.along : section.column.along);
    const segments = uses.map((use) => segmentOf(use, transposed));
    const count = section.count * times;
    const rest = isBand ? section.rest : [];
    return [
      { strip: stripWork(inSteps(run), height, segments, table), count },
      ...rest.flatMap((one) => ofSection(one, isBand ? section.restAcross : 0, transposed, count)),
    ];
  };
  return layouts.flatMap(({ sections, sheet, stock, firstCut, count }) => {
    const transposed = firstCut === "along";
    const cloth = stock === "sheet" ? sheets[sheet]! : { across: roll?.width ?? 0, along: 0 };
    const run = transposed ? cloth.along : cloth.across;
    return sections.flatMap((section) => ofSection(section, run, transposed, count));
  });
}
