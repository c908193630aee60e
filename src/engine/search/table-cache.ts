import type { HeightCut } from "./master.ts";

/**
 * Tables over lengths, kept from one length to the next: a table made for a longer length serves every shorter one. Kept
 * where the roll is all there is; each cut keeps its newest.
 */
export interface TableCache {
  exact: Map<HeightCut, Kept<Float64Array>>;
  suffixes: Map<HeightCut, Kept<Float64Array[]>>;
  /** Cells made so far. */
  cells: number;
}

interface Kept<T> {
  levels: string;
  length: number;
  table: T;
}

/** A table is made a little longer than asked, for the lengths that come next. */
const AHEAD = 1 / 32;
/** No more cells than these are kept of one kind of table. */
const MOST_KEPT = 5_000_000;

export function tableCache(): TableCache {
  return { exact: new Map(), suffixes: new Map(), cells: 0 };
}

/**
 * The table of a cut, made by `make` for a length or found.
 * @param cells how many cells the table has for each step of length
 */
export function keptTable<T>(
  cache: TableCache,
  kept: Map<HeightCut, Kept<T>>,
  cut: HeightCut,
  levels: readonly number[],
  length: number,
  cells: number,
  make: (length: number) => T,
): T {
  const key = levels.join();
  const known = kept.get(cut);
  if (known !== undefined && known.levels === key && known.length >= length) return known.table;
  const longer = length + Math.ceil(length * AHEAD);
  cache.cells += longer * cells;
  if ((kept.size + 1) * longer * cells > MOST_KEPT) kept.clear();
  const table = make(longer);
  kept.set(cut, { levels: key, length: longer, table });
  return table;
}
