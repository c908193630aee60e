import type {
  CuttingTable,
  PackingProblem,
  PackingResult,
  Section,
  StockLayout,
  StripSection,
} from "../types.ts";
import { type StripShape, segmentShape, shapesOf } from "./work-measure.ts";

/** Strips that can be rearranged among themselves only, as a roll of their own. */
export interface WorkPart {
  problem: PackingProblem;
  result: PackingResult;
  /** The strips may take so much. */
  length: number;
  /** The shapes of all else in the plan. */
  beside: { shape: StripShape; count: number }[];
  /** The whole plan with these strips cut as the answer says. */
  putBack(answer: PackingResult): PackingResult;
}

/** Where some strips lie, and how to take others in their place. */
interface Place {
  strips: readonly StripSection[];
  run: number;
  length: number;
  transposed: boolean;
  replace(strips: StripSection[]): StockLayout[];
}

/** The strips beside every group of bands, and those of every sheet. */
export function partsOf(problem: PackingProblem, result: PackingResult): WorkPart[] {
  return placesOf(problem, result).map(({ strips, run, length, transposed, replace }): WorkPart => {
    const held = problem.items.map(() => 0);
    for (const { column, count } of strips)
      for (const segment of column.segments)
        for (const use of segment.stack) held[use.item]! += use.count * segment.count * count;
    const items = problem.items.map((item, i) => ({
      ...item,
      across: transposed ? item.along : item.across,
      along: transposed ? item.across : item.along,
      demand: held[i]!,
      place: "strips" as const,
    }));
    const rollLength = lengthOf(strips);
    return {
      problem: {
        style: problem.style,
        ...(problem.stacks === undefined ? {} : { stacks: problem.stacks }),
        items,
        roll: { width: run, available: null, costPerLength: 1 },
        sheets: [],
      },
      result: {
        status: "best-found",
        objective: rollLength,
        rollLength,
        bound: { value: 0, kind: "area", style: problem.style },
        layouts: [{ stock: "roll", sheet: -1, count: 1, firstCut: "across", sections: [...strips] }],
        missing: [],
        stats: { ...result.stats },
      },
      length,
      beside: shapesBeside(problem, replace([])),
      putBack: (answer) => ({ ...result, layouts: replace(stripsIn(answer)) }),
    };
  });
}

function placesOf(problem: PackingProblem, result: PackingResult): Place[] {
  return result.layouts.flatMap((layout, l): Place[] => {
    const put = (sections: Section[]): StockLayout[] =>
      result.layouts.map((other, i) => (i === l ? { ...layout, sections } : other));
    const { sections } = layout;
    const transposed = layout.firstCut === "along";
    const sheet = layout.stock === "sheet" ? problem.sheets[layout.sheet] : undefined;
    if (sheet !== undefined) {
      const strips = sections.filter((section) => section.kind === "strips");
      if (strips.length < sections.length) return [];
      const [run, length] = transposed ? [sheet.along, sheet.across] : [sheet.across, sheet.along];
      return [{ strips, run, length, transposed, replace: put }];
    }
    return sections.flatMap((section, at): Place[] => {
      if (section.kind !== "bands" || section.count !== 1) return [];
      const strips = section.rest.filter((rest) => rest.kind === "strips");
      if (strips.length === 0 || strips.length < section.rest.length) return [];
      const replace = (rest: StripSection[]): StockLayout[] =>
        put(sections.map((other, i) => (i === at ? { ...section, rest } : other)));
      return [{ strips, run: section.restAcross, length: section.along, transposed: false, replace }];
    });
  });
}

function stripsIn({ layouts }: PackingResult): StripSection[] {
  return layouts.flatMap(({ sections }) => sections.filter((section) => section.kind === "strips"));
}

function lengthOf(strips: readonly StripSection[]): number {
  return strips.reduce((sum, { column, count }) => sum + column.along * count, 0);
}

function shapesBeside(problem: PackingProblem, layouts: readonly StockLayout[]): WorkPart["beside"] {
  return layouts.flatMap((layout) => {
    const transposed = layout.firstCut === "along";
    const sheet = layout.stock === "sheet" ? problem.sheets[layout.sheet] : undefined;
    const width = sheet ? (transposed ? sheet.along : sheet.across) : (problem.roll?.width ?? 0);
    return shapesOf(problem, layout.sections, width, transposed, layout.count);
  });
}

/** A shape with its sizes divided, and the text it is told by along with them. */
export function inSteps(shape: StripShape, step: number): StripShape {
  const { run, height, segments } = shape;
  return {
    run: Math.floor(run / step),
    height: Math.floor(height / step),
    segments: segments.map(({ width, count, rows }) =>
      segmentShape(
        Math.floor(width / step),
        count,
        rows.map((row) => ({
          width: Math.floor(row.width / step),
          height: Math.floor(row.height / step),
          count: row.count,
        })),
      ),
    ),
  };
}

export function tableIn({ across, inside, narrow }: CuttingTable, step: number): CuttingTable {
  return { across: across / step, inside: inside / step, narrow: narrow / step };
}
