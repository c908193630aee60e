import type { Filling } from "../oracles/oracle.ts";
import type { Counts } from "../problem/counts.ts";
import type { Entry, LinearModel, LinearOutcome } from "../solver/types.ts";

/** Fillings known to a linear program that holds the demand, each with a column of its own. */
export interface Pool {
  model: LinearModel;
  itemRows: readonly number[];
  fillings: Filling[];
  columns: number[];
  known: Set<string>;
}

/** Begins a program with a row for every kind. */
export function emptyPool(model: LinearModel, demand: Counts): Pool {
  const itemRows = demand.map((wanted) => model.addRow(wanted, Infinity));
  return { model, itemRows, fillings: [], columns: [], known: new Set() };
}

/**
 * Takes up a filling unless there is one of the same height and counts; `beside` are its entries in other rows. Counts
 * beyond the demand stay as they are: the oracle prices them so, and only then does pricing end.
 */
export function addToPool(pool: Pool, filling: Filling, cost: number, beside: readonly Entry[]): void {
  const key = `${filling.level}:${filling.counts.join(",")}`;
  if (pool.known.has(key)) return;
  pool.known.add(key);
  const items = filling.counts.flatMap((count, k): Entry[] =>
    count > 0 ? [[pool.itemRows[k]!, count]] : [],
  );
  pool.fillings.push(filling);
  pool.columns.push(pool.model.addColumn(cost, 0, Infinity, [...items, ...beside]));
}

/** Use of every filling in a solution. */
export function usesIn({ columns }: Pool, { values }: LinearOutcome): Float64Array {
  return Float64Array.from(columns, (column) => Math.max(0, values[column] ?? 0));
}
