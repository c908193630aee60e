/** A rectangle of cells. */
export interface Cells {
  column: number;
  row: number;
  columns: number;
  rows: number;
}

/**
 * True when units can be joined in straight seams alone: some line runs through the whole block without
 * cutting a unit, and the same holds for both parts. A pinwheel of rectangles round a square has no such line.
 */
export function straightSeams(units: readonly Cells[]): boolean {
  if (units.length < 2) return true;
  return split(units, "column", "columns") || split(units, "row", "rows");
}

function split(units: readonly Cells[], at: "column" | "row", size: "columns" | "rows"): boolean {
  const first = Math.min(...units.map((unit) => unit[at]));
  const lines = new Set(units.map((unit) => unit[at]).filter((line) => line > first));
  for (const line of [...lines].sort((a, b) => a - b)) {
    const before = units.filter((unit) => unit[at] < line);
    if (before.some((unit) => unit[at] + unit[size] > line)) continue;
    // Any line that cuts no unit will do: parts of a block with straight seams have straight seams.
    return straightSeams(before) && straightSeams(units.filter((unit) => unit[at] >= line));
  }
  return false;
}
