import type { StripCount } from "../problem/assemble.ts";
import type { IntegerProgram } from "../solver/types.ts";

/**
 * One row for every kind that is wanted: the columns together hold at least the demand. `counts[c]` says what
 * column c holds of every kind; more than the demand counts no further. A kind of which nothing is wanted asks
 * for no row. Null when some kind that is wanted is in no column.
 */
export function coverRows(
  counts: readonly (readonly number[])[],
  demand: readonly number[],
): IntegerProgram["rows"] | null {
  const rows: IntegerProgram["rows"] = [];
  for (let k = 0; k < demand.length; k++) {
    const wanted = demand[k]!;
    if (wanted === 0) continue;
    const row = { lower: wanted, upper: Infinity, columns: [] as number[], values: [] as number[] };
    counts.forEach((column, c) => {
      const held = Math.min(column[k]!, wanted);
      if (held > 0) {
        row.columns.push(c);
        row.values.push(held);
      }
    });
    if (row.columns.length === 0) return null;
    rows.push(row);
  }
  return rows;
}

/** Counts again in whole numbers what the solver answered in floats: is the whole demand held? */
export function meetsDemand(strips: readonly StripCount[], demand: readonly number[]): boolean {
  const left = demand.slice();
  for (const { filling, count } of strips)
    filling.counts.forEach((copies, k) => {
      left[k]! -= copies * count;
    });
  return left.every((count) => count <= 0);
}
