import type { Filling } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import { addCounts, type Counts, isEmpty } from "../problem/counts.ts";
import type { IntegerProgram } from "../solver/types.ts";

/** Something that holds copies of the kinds, what one of it costs and how many of it there may be. */
interface Column {
  counts: Counts;
  /** Default: nothing. */
  cost?: number;
  /** Default: no limit. */
  most?: number;
}

/** The whole-number program in which the columns hold the demand; null when some kind that is wanted is in none. */
export function coverProgram(columns: readonly Column[], demand: Counts): IntegerProgram | null {
  const rows = coverRows(
    columns.map(({ counts }) => counts),
    demand,
  );
  if (rows === null) return null;
  const program: IntegerProgram = { costs: [], lower: [], upper: [], whole: [], rows };
  for (const { cost = 0, most = Infinity } of columns) addColumn(program, cost, 0, most, true);
  return program;
}

/** Adds a column that is in no row yet; returns its index. */
export function addColumn(
  program: IntegerProgram,
  cost: number,
  lower: number,
  upper: number,
  whole: boolean,
): number {
  program.lower.push(lower);
  program.upper.push(upper);
  program.whole.push(whole);
  return program.costs.push(cost) - 1;
}

/** Of these columns no more than so many, or so much where each counts for its value. */
export function addLimit(
  { rows }: IntegerProgram,
  upper: number,
  columns: number[],
  values = columns.map(() => 1),
): void {
  rows.push({ lower: -Infinity, upper, columns, values });
}

/**
 * One row for every kind that is wanted: the columns together hold at least the demand. `counts[c]` says what
 * column c holds of every kind; more than the demand counts no further. A kind of which nothing is wanted asks
 * for no row. Null when some kind that is wanted is in no column.
 */
export function coverRows(counts: readonly Counts[], demand: Counts): IntegerProgram["rows"] | null {
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

/** The strips a solver's answer has of every filling. */
export function stripsIn(fillings: readonly Filling[], values: ArrayLike<number>): StripCount[] {
  return fillings.flatMap((filling, p) => {
    const count = Math.round(values[p]!);
    return count > 0 ? [{ filling, count }] : [];
  });
}

/** Counts again in whole numbers what the solver answered in floats: is the whole demand held? */
export function meetsDemand(strips: readonly StripCount[], demand: Counts): boolean {
  const left = demand.slice();
  for (const { filling, count } of strips) addCounts(left, filling.counts, -count);
  return isEmpty(left);
}
