import type { Ticks } from "../../length/types.ts";

/*
 * What is made on gridded foundation. Squares are printed squares; places are in ticks from the top left corner of
 * the finished part, so that the allowance lies outside. Plain data: it survives JSON.
 */

/** A size in printed squares: whole, or halves where seams may lie half-way between lines. */
interface Squares {
  across: number;
  down: number;
}

/** A patch of a part, numbered in the order it is added. */
export interface FoundationPatch {
  /** From 1. */
  number: number;
  /** Kind of unit it belongs to, and what it is there: `flying geese`, `sky left`. */
  unit: string;
  part: string;
  fabric: string;
  /** Where a print's up points in the part as it is told, in degrees clockwise; null without direction. */
  up: number | null;
  /** The place it is to cover, with its seam allowance all round. */
  corners: { x: Ticks; y: Ticks }[];
  /**
   * How its cloth is laid: `first`, over its squares; `edge`, an edge of it one seam allowance beyond the line;
   * `crease`, over its place and creased along the line, because no edge of it runs along that.
   */
  lay: "first" | "edge" | "crease";
  /** Where the cloth lies, as cut, once it is pressed over: to the nearest tick. */
  laid: { x: Ticks; y: Ticks }[];
}

/** A seam of a part, in the order of sewing: it adds the patch of the next number. */
export interface FoundationSeam {
  /** From 1. */
  number: number;
  /** Number of the patch it adds. */
  adds: number;
  x1: Ticks;
  y1: Ticks;
  x2: Ticks;
  y2: Ticks;
  /** Finished length, to the nearest tick. */
  length: Ticks;
  /** Runs from corner to corner of printed squares instead of along a line. */
  slanting: boolean;
  /** Which way the added patch, and so the seam allowance, lies: signs of a direction. */
  toward: { x: -1 | 0 | 1; y: -1 | 0 | 1 };
}

/** Where a part lies in a block design, and how it is turned there against the part as it is told. */
export interface FoundationPlace {
  /** Index into the top's `designs`. */
  design: number;
  /** Units of that design it holds. */
  units: number[];
  x: Ticks;
  y: Ticks;
  across: Ticks;
  down: Ticks;
  /** Degrees clockwise. */
  turn: 0 | 90 | 180 | 270;
  /**
   * Only in the design's blocks that are turned so in the quilt, in degrees clockwise: their prints lie otherwise
   * than in the others. Null: in all of them.
   */
  blockTurns: number[] | null;
}

/** A part pieced patch by patch on one piece of foundation. */
export interface PiecedPart {
  kind: "pieced";
  /** A, B, ... */
  letter: string;
  /** How many of it the quilt takes: so many pieces of foundation. */
  count: number;
  finished: Squares;
  /** Size the foundation is cut, its allowance included: whole squares. */
  cut: Squares;
  places: FoundationPlace[];
  patches: FoundationPatch[];
  seams: FoundationSeam[];
}

/** One of the parts laid edge to edge on a foundation that is folded. */
export interface FoldedCell {
  /** Index into the top's `designs`, and the units of it that are sewn together before they are laid. */
  design: number;
  units: number[];
  /** Equal for parts that are alike but for a turn, from 1 in all that is made on the foundation. */
  like: number;
  x: Ticks;
  y: Ticks;
  across: Ticks;
  down: Ticks;
  /** What is laid there: patches as finished, for the picture. */
  patches: { fabric: string; corners: { x: Ticks; y: Ticks }[] }[];
}

/** A block, or a row of blocks, whose lines are folded and sewn. */
export interface FoldedPart {
  kind: "folded";
  letter: string;
  count: number;
  /** Design of every block on it, from the left, and how each is turned. */
  blocks: { design: number; turn: 0 | 90 | 180 | 270 }[];
  finished: Squares;
  /** Size the foundation is cut: every column and row with its seam allowances. */
  cut: Squares;
  /** Finished widths of the columns and heights of the rows of parts, in squares. */
  columns: number[];
  rows: number[];
  /** Line by line from the top left. */
  cells: FoldedCell[];
}

export type FoundationPart = PiecedPart | FoldedPart;

/** Everything that is made on the foundation. */
export interface FoundationWork {
  fabric: string;
  /** Side of one printed square. */
  grid: Ticks;
  halves: boolean;
  way: "pieced" | "folded";
  per: "unit" | "motif" | "block" | "row";
  /** Squares between the outermost seam line and the edge of the foundation. */
  allowance: number;
  ease: Ticks;
  hold: "fusible" | "sew-in";
  after: "left in" | "torn away";
  parts: FoundationPart[];
}
