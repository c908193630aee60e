import { alignedLines } from "./table.ts";

/** Parts the cells of a line that is a row of a table; the first of such lines says what the columns are. */
export const CELL = "\t";

/** Rows among lines: a table each. */
export function rowOf(line: string): string[] | null {
  return line.includes(CELL) ? line.trim().split(CELL) : null;
}

/** Lines with the rows of their tables set in columns, as far in as they stand. */
export function withTables(lines: readonly string[]): { line: string; row: boolean }[] {
  const told: { line: string; row: boolean }[] = [];
  for (let i = 0; i < lines.length; i += 1) {
    const rows: string[][] = [];
    const margin = /^ */.exec(lines[i] ?? "")?.[0] ?? "";
    for (let row = rowOf(lines[i] ?? ""); row !== null; row = rowOf(lines[i] ?? "")) {
      rows.push(row);
      i += 1;
    }
    const [headings = [], ...cells] = rows;
    if (rows.length > 0) {
      const columns = headings.map((heading) => ({ heading, align: "left" as const }));
      told.push(...alignedLines(columns, cells).map((line) => ({ line: margin + line, row: true })));
    }
    const line = lines[i];
    if (line !== undefined) told.push({ line, row: false });
  }
  return told;
}
