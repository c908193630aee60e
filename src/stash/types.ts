import type { DecimalMark, LengthUnit, Ticks } from "../length/types.ts";

/** Pieces of one cloth, one size. Usable size as it lies with its selvage upright, edges squared. */
export interface StashCloth {
  fabric: string;
  across: Ticks;
  along: Ticks;
  count: number;
  note: string;
}

/** One row of the maker's table, as it stands there. */
export interface StashRow {
  /** The row's own letters, its line end included. A row that is not changed is written back as this. */
  raw: string;
  cells: readonly string[];
  /** From 1, in the file. */
  line: number;
  /** Null for an empty row and for one that cannot be read. */
  cloth: StashCloth | null;
}

/** Where each column stands, from 0; null when the table has none of that kind. */
export interface StashColumns {
  fabric: number;
  width: number;
  length: number;
  count: number | null;
  note: number | null;
}

/** A table of cloth to hand, whole: printing it unchanged gives the same letters again. */
export interface Stash {
  /** Everything up to the first row: a byte order mark and the headings with their line end. */
  head: string;
  headings: readonly string[];
  columns: StashColumns;
  /** Measure named in the heading of the width and of the length; else null. */
  measures: { width: LengthUnit | null; length: LengthUnit | null };
  delimiter: "," | ";" | "\t";
  /** Mark before tenths in its sizes; absent for a point. */
  decimal?: DecimalMark;
  lineEnd: "\n" | "\r\n" | "\r";
  rows: readonly StashRow[];
}
