import { countKinds, type Filling, type Segment } from "../oracles/oracle.ts";
import { dealer, type StripCount, toSections } from "../problem/assemble.ts";
import { type Counts, sum } from "../problem/counts.ts";
import { scale } from "../problem/layouts.ts";
import { gatherKinds, gcd, type Kind } from "../problem/reduce.ts";
import type {
  CuttingTable,
  PackingProblem,
  PackingResult,
  Section,
  SegmentUse,
  StockLayout,
  StripSection,
} from "../types.ts";
import { type Measured, stripsOf } from "./work-measure.ts";

/** Strips that may be rearranged among themselves: those of the roll, of one sheet, or beside one group of bands. */
export interface Place {
  kinds: readonly Kind[];
  run: number;
  /** Sizes are divided by this. */
  step: number;
  /** What the strips hold now: exactly what they must go on holding. */
  demand: Counts;
  strips: StripCount[];
  /** Length that they may take. */
  room: number;
  /** All else in the plan, its sizes divided likewise: its ruler settings are paid for already. */
  beside: Measured[];
  /** The whole plan with these strips in their place. */
  put(strips: readonly StripCount[]): PackingResult;
}

/** Where some strips lie, and how to take others in their place. */
export interface Spot {
  sections: readonly Section[];
  run: number;
  /** All that the sections may take. */
  length: number;
  transposed: boolean;
  replace(sections: Section[]): PackingResult;
}

/** The spots of a plan in turn, the roll first; it may be used up to `lengthLimit`. */
export function spotsOf(problem: PackingProblem, result: PackingResult, lengthLimit: number): Spot[] {
  const spots = result.layouts.map((layout, l): Spot[] => {
    const put = (sections: Section[]): StockLayout[] =>
      result.layouts.map((other, i) => (i === l ? { ...layout, sections } : other));
    const { sections } = layout;
    const transposed = layout.firstCut === "along";
    if (layout.stock === "sheet") {
      const { across, along } = problem.sheets[layout.sheet]!;
      const [run, length] = transposed ? [along, across] : [across, along];
      return [{ sections, run, length, transposed, replace: (s) => ({ ...result, layouts: put(s) }) }];
    }
    const run = problem.roll!.width;
    const replace = (changed: Section[]) => withRoll(problem, result, lengthOf(changed), put(changed));
    const beside = sections.flatMap((section, at): Spot[] => {
      if (section.kind !== "bands" || section.count !== 1) return [];
      const replaceRest = (rest: Section[]): PackingResult => {
        const strips = rest.filter((one) => one.kind === "strips");
        const changed = sections.map((other, i) => (i === at ? { ...section, rest: strips } : other));
        return { ...result, layouts: put(changed) };
      };
      const { rest, restAcross, along } = section;
      return [{ sections: rest, run: restAcross, length: along, transposed: false, replace: replaceRest }];
    });
    return layout.count === 1
      ? [{ sections, run, length: lengthLimit, transposed: false, replace }, ...beside]
      : beside;
  });
  return spots.flat();
}

function withRoll(
  { roll }: PackingProblem,
  result: PackingResult,
  rollLength: number,
  layouts: StockLayout[],
): PackingResult {
  const objective = result.objective + (rollLength - result.rollLength) * (roll?.costPerLength ?? 0);
  const status = objective === result.bound.value ? "proven" : "best-found";
  return { ...result, status, objective, rollLength, layouts };
}

function lengthOf(sections: readonly Section[]): number {
  return sum(
    sections,
    (section) => section.count * (section.kind === "strips" ? section.column.along : section.along),
  );
}

/**
 * The strips that may be rearranged at a spot; null when there are none. Those of the whole width, and those that hold a
 * run of shapes, stay as they are: what the work of others would be is not known.
 */
export function placeAt(problem: PackingProblem, spot: Spot, table: CuttingTable): Place | null {
  const { run, transposed, sections, replace } = spot;
  const isOpen = (section: Section): section is StripSection =>
    section.kind === "strips" && mayChange(problem, section, run);
  const open = sections.filter(isOpen);
  if (open.length === 0) return null;
  const kept = sections.filter((section) => !isOpen(section));
  const step = problem.items.reduce((g, item) => gcd(gcd(g, item.across), item.along), 0) || 1;
  const held = problem.items.map(() => 0);
  for (const { column, count } of open)
    for (const segment of column.segments)
      for (const use of segment.stack) held[use.item]! += use.count * segment.count * count;
  const items = problem.items.map(({ run: _, nest: __, ...item }, i) => ({
    ...item,
    across: (transposed ? item.along : item.across) / step,
    along: (transposed ? item.across : item.along) / step,
    demand: held[i]!,
    place: "strips" as const,
  }));
  const kinds = gatherKinds(items);
  const strips = open.map(({ column, count }) => ({
    filling: readStrip(kinds, column.along / step, column.segments, step),
    count,
  }));
  return {
    ...{ kinds, step, strips, run: Math.floor(run / step) },
    demand: kinds.map(({ demand }) => demand),
    room: Math.floor((spot.length - lengthOf(kept)) / step),
    beside: stripsOf(problem, replace(kept), step, table),
    put: (others) => replace([...kept, ...scale(toSections(kinds, others, dealer(kinds)), step)]),
  };
}

/** A strip of the whole width is what it is, and of one that holds a run of shapes or an end it is not known. */
function mayChange({ items }: PackingProblem, { column }: StripSection, run: number): boolean {
  const { segments, end } = column;
  const [only] = segments;
  const isWhole = segments.length === 1 && only!.count === 1 && only!.across === run;
  if (end !== undefined || (isWhole && only!.stack.length === 1 && only!.stack[0]!.count === 1)) return false;
  return segments.every(({ stack }) => stack.every(({ item }) => items[item]!.nest === undefined));
}

function readStrip(
  kinds: readonly Kind[],
  height: number,
  uses: readonly SegmentUse[],
  step: number,
): Filling {
  const segments: Segment[] = uses.flatMap(({ across, count, stack }) => {
    const placed = stack.flatMap((use) => {
      const kind = kinds.findIndex(({ sources }) => sources.some(({ item }) => item === use.item));
      const { lies, sources } = kinds[kind]!;
      const { swapped } = sources.find(({ item }) => item === use.item)!;
      const lie = lies.length === 1 ? 0 : lies.findIndex(({ turned }) => turned === (use.turned !== swapped));
      return Array.from({ length: use.count }, () => ({ kind, lie }));
    });
    return Array.from({ length: count }, () => ({ width: Math.floor(across / step), stack: placed }));
  });
  return { level: -1, height: Math.floor(height), counts: countKinds(segments, kinds.length), segments };
}
