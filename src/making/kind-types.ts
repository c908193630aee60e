import type { BlockPressing, Press } from "./types.ts";

/**
 * One heap of finished blocks: of one design, out of the same units, pressed alike. Its name is the only one such a
 * block has.
 */
export interface BlockKind {
  /** The block's name, numbered where its design has several kinds: `pin 2`. */
  name: string;
  /** The number in it; 0 where its design has one kind only. */
  number: number;
  /** Index into `Making.blocks`. */
  making: number;
  variant: BlockPressing["variant"];
  count: number;
}

/**
 * How the seams inside the units of one record are pressed where the pressing of the blocks decides it; as the unit
 * lies at turn 0.
 */
export interface UnitPressing {
  /** Index into `Making.units`. */
  unit: number;
  /** One where all are pressed alike; else each for the kinds of block that take them. */
  ways: {
    /**
     * Kind of block (index into `kinds`), and which of its units of this record, from 1, counted along its rows from the
     * upper left as the block lies by itself; null: all of them.
     */
    places: { kind: number; which: number[] | null }[];
    count: number;
    /** What is sewn first: rows, joined one below another, or columns, joined side by side. */
    lines: "rows" | "columns";
    /** In each line the presses of its seams, from its start; empty where a line is one patch. */
    inner: Press[][];
    /** Of the seams between the lines, in order. */
    between: Press[];
  }[];
}
