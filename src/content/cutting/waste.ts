import { formatNumber, TICKS_PER } from "../../length/index.ts";
import type { Ruler } from "../../length/types.ts";
import type { FabricPlan, Plan, WasteCause } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { wholeShares } from "../buying/shares.ts";
import { alignedLines } from "../lines/table.ts";

/** One line of a table of areas: parts that make up a whole. Square ticks. */
interface Row {
  name: string;
  parts: readonly number[];
}

interface AreaTable {
  /** Of the parts, in order. */
  headings: readonly string[];
  /** Of the whole. */
  sum: string;
  rows: readonly Row[];
}

/** One decimal; an empty share as a dash, so that the eye finds what matters. */
function tenths(value: number, ruler: Ruler): string {
  return value === 0 ? "-" : formatNumber(value / 10, 1, ruler);
}

/** Areas as they are printed: the first cell of a row is a fabric's name. */
export interface PrintedTable {
  title: string;
  headings: string[];
  rows: string[][];
}

/** A table in a unit of area; `unit` null for percent of each line's whole. */
function printed(
  title: string,
  { headings, sum, rows }: AreaTable,
  unit: number | null,
  ruler: Ruler,
  words: Words,
): PrintedTable {
  const lines = rows.map(({ name, parts }) => {
    const whole = parts.reduce((total, part) => total + part, 0);
    if (whole === 0) return [name, ...parts.map(() => "-"), "-"];
    const shares = wholeShares(parts, unit === null ? whole / 1000 : unit / 10);
    return [name, ...[...shares.parts, shares.whole].map((value) => tenths(value, ruler))];
  });
  return { title, headings: [words.cutting.columns.fabric, ...headings, sum], rows: lines };
}

/** Rows for all fabrics, and their sum when there are several. */
function rowsOf(
  fabrics: readonly FabricPlan[],
  partsOf: (fabric: FabricPlan) => number[],
  words: Words,
): Row[] {
  const rows = fabrics.map((fabric) => ({ name: fabric.name, parts: partsOf(fabric) }));
  const [first] = rows;
  if (first === undefined || rows.length === 1) return rows;
  const sums = first.parts.map((_, i) => rows.reduce((total, { parts }) => total + (parts[i] ?? 0), 0));
  return [...rows, { name: words.cutting.total, parts: sums }];
}

/** All cloth bought, by where it goes; causes that take nothing from any fabric are left out. */
function boughtTable(fabrics: readonly FabricPlan[], words: Words): AreaTable {
  const areaOf = ({ waste }: FabricPlan, cause: WasteCause) =>
    waste.lines.find((line) => line.cause === cause)?.area ?? 0;
  const causes = (fabrics[0]?.waste.lines ?? [])
    .map(({ cause }) => cause)
    .filter((cause) => fabrics.some((fabric) => areaOf(fabric, cause) > 0));
  return {
    headings: [words.cutting.columns.pieces, ...causes.map((cause) => words.cutting.causes[cause])],
    sum: words.cutting.columns.cloth,
    rows: rowsOf(
      fabrics,
      (fabric) => [fabric.waste.pieces, ...causes.map((cause) => areaOf(fabric, cause))],
      words,
    ),
  };
}

/** The cloth in pieces, by what sewing makes of it. Null where the file is a cut list and nobody knows. */
function sewingTable(fabrics: readonly FabricPlan[], words: Words): AreaTable | null {
  const known = fabrics.filter(({ pieces }) =>
    pieces.some(({ corners, seams }) => corners !== undefined && seams !== undefined),
  );
  if (known.length === 0) return null;
  const rows = rowsOf(
    known,
    ({ pieces, waste }) => {
      const corners = pieces.reduce((sum, piece) => sum + (piece.corners ?? 0), 0);
      const seams = pieces.reduce((sum, piece) => sum + (piece.seams ?? 0), 0);
      return [waste.pieces - corners - seams, seams, corners];
    },
    words,
  );
  const { seen, seams, corners, pieces } = words.cutting.columns;
  return { headings: [seen, seams, corners], sum: pieces, rows };
}

/** Where the cloth of each fabric goes, as tables of printed cells. */
export function wasteTables(plan: Plan, words: Words): PrintedTable[] {
  const imperial = plan.ruler.unit === "in";
  const square = (imperial ? TICKS_PER.in : TICKS_PER.cm) ** 2;
  const bought = boughtTable(plan.fabrics, words);
  const sewing = sewingTable(plan.fabrics, words);
  const unit = imperial ? words.cutting.squareInches : words.cutting.squareCentimetres;
  return [
    printed(words.cutting.inPercent, bought, null, plan.ruler, words),
    printed(words.cutting.inArea(unit), bought, square, plan.ruler, words),
    ...(sewing === null ? [] : [printed(words.cutting.inSewing, sewing, null, plan.ruler, words)]),
  ];
}

/**
 * Where the cloth of each fabric goes, by cause, in percent and in area. Each line adds up to what was
 * bought exactly: the last digits are shared out, not rounded one by one.
 */
export function wasteTable(plan: Plan, words: Words): string {
  const tables = wasteTables(plan, words).flatMap(({ title, headings, rows }) => {
    const columns = headings.map((heading, i) => ({
      heading,
      align: i === 0 ? ("left" as const) : ("right" as const),
    }));
    return [title, ...alignedLines(columns, rows), ""];
  });
  return [words.cutting.wasteTitle(plan.name), "", ...tables].join("\n");
}
