import { TICKS_PER } from "../../length/index.ts";
import type { FabricPlan, Plan, WasteCause, WasteSummary } from "../../plan/types.ts";
import { wholeShares } from "./shares.ts";
import { alignedLines } from "./table.ts";
import { words } from "./words.ts";

/** The waste of all fabrics together, causes in the order of the first. */
function addedUp(fabrics: readonly FabricPlan[]): WasteSummary {
  const sum = { bought: 0, pieces: 0, lines: [] as { cause: WasteCause; area: number }[] };
  for (const { waste } of fabrics) {
    sum.bought += waste.bought;
    sum.pieces += waste.pieces;
    for (const { cause, area } of waste.lines) {
      const line = sum.lines.find((known) => known.cause === cause);
      if (line === undefined) sum.lines.push({ cause, area });
      else line.area += area;
    }
  }
  return sum;
}

interface Row {
  name: string;
  waste: WasteSummary;
}

function areas(row: Row, causes: readonly WasteCause[]): number[] {
  const byCause = causes.map((cause) => row.waste.lines.find((line) => line.cause === cause)?.area ?? 0);
  return [row.waste.pieces, ...byCause];
}

/** One decimal; an empty share as a dash, so that the eye finds what matters. */
function tenths(value: number): string {
  return value === 0 ? "-" : (value / 10).toFixed(1);
}

function percentCells(row: Row, causes: readonly WasteCause[]): string[] {
  if (row.waste.bought === 0) return ["-", ...causes.map(() => "-"), "-"];
  const { parts, whole } = wholeShares(areas(row, causes), row.waste.bought / 1000);
  return [...parts, whole].map(tenths);
}

function areaCells(row: Row, causes: readonly WasteCause[], unit: number): string[] {
  const { parts, whole } = wholeShares(areas(row, causes), unit / 10);
  return [...parts, whole].map(tenths);
}

/**
 * Where the cloth of each fabric goes, by cause, in percent and in area. Each line adds up to what was
 * bought exactly: the last digits are shared out, not rounded one by one.
 */
export function wasteTable(plan: Plan): string {
  const rows: Row[] = plan.fabrics.map(({ name, waste }) => ({ name, waste }));
  if (rows.length > 1) rows.push({ name: words.total, waste: addedUp(plan.fabrics) });
  const causes = (plan.fabrics[0]?.waste.lines ?? [])
    .map((line) => line.cause)
    .filter((cause) =>
      rows.some(({ waste }) => waste.lines.some((line) => line.cause === cause && line.area > 0)),
    );
  const imperial = plan.ruler.unit === "in";
  const square = (imperial ? TICKS_PER.in : TICKS_PER.cm) ** 2;
  const columns = [
    { heading: words.columns.fabric, align: "left" as const },
    ...[words.columns.pieces, ...causes.map((cause) => words.causes[cause]), words.columns.cloth].map(
      (heading) => ({ heading, align: "right" as const }),
    ),
  ];
  const table = (cells: (row: Row) => string[]) =>
    alignedLines(
      columns,
      rows.map((row) => [row.name, ...cells(row)]),
    );
  return [
    words.wasteTitle(plan.name),
    "",
    words.inPercent,
    ...table((row) => percentCells(row, causes)),
    "",
    words.inArea(imperial ? words.squareInches : words.squareCentimetres),
    ...table((row) => areaCells(row, causes, square)),
    "",
  ].join("\n");
}
