import type { UnitRecord } from "../cutlist/record/unit-record.ts";
import type { BorderName, Purpose } from "../diagnostics/purposes.ts";
import type { Ticks } from "../length/types.ts";
import type { FoundationWork } from "../quilt/index.ts";
import type { PatchPlace } from "../quilt/types.ts";
import type { Finishing, QuiltingThread, ThreadEstimate } from "./finishing-types.ts";
import type { FoundationMaking } from "./foundation-types.ts";
import type { BlockKind, UnitPressing } from "./kind-types.ts";

export type * from "./finishing-types.ts";
export type { BlockKind, UnitPressing } from "./kind-types.ts";

/*
 * How the cut pieces become the quilt: the order of sewing, which way every seam is pressed, and what the
 * sewing takes. Plain data: it survives JSON unchanged.
 */

/** Where a seam's allowances are pressed, as the work lies right side up in front of the maker. */
export type Press = "left" | "right" | "up" | "down";

/** A finished seam and its way of pressing. Places are in ticks, to the nearest. */
export interface PressedSeam {
  x1: Ticks;
  y1: Ticks;
  x2: Ticks;
  y2: Ticks;
  press: Press;
  /** `unit`: inside a unit; `row`: joins units side by side; `rows`: joins what was joined before. */
  level: "unit" | "row" | "rows";
}

/** One way of pressing a block, in the block's own frame before it is turned. */
export interface BlockPressing {
  /** Index into the top's `designs`. */
  design: number;
  /** Empty when all blocks of the design are pressed alike; else `A` or `B`. */
  variant: "" | "A" | "B";
  /** How many of the blocks in the rows are pressed so. */
  count: number;
  seams: PressedSeam[];
}

/** How the seams between the blocks of one row are pressed, as the rows are drawn. */
export interface RowPressing {
  /** From 1 at the top; rows of sashes count too. */
  row: number;
  /** What the row holds. */
  of: "blocks" | "sashes";
  /** One way, or toward the sashes or plain blocks beside each seam; null when each differs, as drawn. */
  press: Press | "sashes" | "plain-blocks" | null;
}

/** A place where two seams meet across a joining seam and their allowances lie on one another. */
interface OpenJunction {
  /** In the top's frame, in ticks to the nearest. */
  x: Ticks;
  y: Ticks;
}

/** A place where seams meet and layers of cloth lie on one another. */
export interface BulkPoint {
  /** In the top's frame, in ticks to the nearest. */
  x: Ticks;
  y: Ticks;
  /** Most layers there, a slanted seam of a unit counted as pressed to its worse side. */
  layers: number;
  /** The same when the seam sewn last through it is pressed open there. */
  opened: number;
}

/** How thick the top gets where seams meet. */
export interface Bulk {
  /** Most layers the maker wants. */
  limit: number;
  /** Most there are anywhere; 1 when no seams meet. */
  most: number;
  /** Places where layers were counted, and how many of them have the most. */
  places: number;
  atMost: number;
  /** Places with more than `limit`, top to bottom; of many the first. */
  over: BulkPoint[];
  overCount: number;
  /** True when no pressing that nests as well, with the same seams pressed alike, has less; else the least found. */
  proven: boolean;
}

/** Where seams meet along one seam between two rows (or columns), in the order of pinning. */
export interface PinOrder {
  /** The seam between this row and the next, from 1. */
  row: number;
  /** Places along it, from the left (from the top, between columns), in the top's frame. */
  places: { x: Ticks; y: Ticks }[];
  /** Numbers of the places, from 1, in groups pinned one after another: the middle first, then out. */
  order: number[][];
}

/** Which way every seam is pressed, and how well the seams nest. */
export interface Pressing {
  /** Places where two seams meet across a joining seam. */
  junctions: number;
  /** Those that do not nest, left to right and top to bottom. */
  open: OpenJunction[];
  /** True when no pressing of this kind (`variants` of each block) leaves fewer. */
  proven: boolean;
  /** Ways of pressing each block: 1, or 2 where that nests more. */
  variants: 1 | 2;
  /** Where variant B stands, when there are two. */
  placed: "everywhere-alike" | "second-columns" | "second-rows" | "chequered" | "turned-blocks";
  /** Fewest un-nested places when every block of a design is pressed alike, and whether that is proved. */
  alike: { open: number; proven: boolean };
  blocks: BlockPressing[];
  /** By index into the top's `blocks`: its variant. */
  variantOf: ("" | "A" | "B")[];
  rows: RowPressing[];
  /** The top is sewn in rows, or in columns: then `rows` and `pins` speak of these. */
  lines: "rows" | "columns";
  /** Seams between blocks, sashes and borders; in the top's frame. */
  seams: PressedSeam[];
  bulk: Bulk;
  /** The seams between rows that others meet. */
  pins: PinOrder[];
}

/** A size as sewn, seam allowance included, in `1 / Making.scale` ticks. */
export interface RawSize {
  across: number;
  down: number;
}

/** What goes into a joining, as far as it was not made by an earlier one. */
export type JoinPart =
  /** Made by an earlier joining, or on foundation: told by its name in `from`. */
  | { of: "made" }
  /** Index of the unit in its design. */
  | { of: "unit"; unit: number }
  /** Index into the top's `blocks`. */
  | { of: "block"; block: number }
  /** One piece of cloth that is no block: a sash, a cornerstone, a plain square. */
  | { of: "cloth"; place: PatchPlace; fabric: string };

/** What is made by a joining, or goes into one: the same name is the same size and make. */
export type JoinName =
  /** A row or column of the whole, from 1. */
  | { is: "line"; line: "row" | "column"; number: number }
  /** A part of what has a name already. */
  | { is: "part"; line: "row" | "part"; number: number; of: JoinName }
  | { is: "strip"; side: "top" | "bottom" | "left" | "right" }
  /** What lies between two strips of a border, with what its other two sides have already. */
  | { is: "between"; with: "sides" | "ends" }
  /** Everything within a border. */
  | { is: "core" }
  | { is: "centre" }
  | { is: "top-with"; border: BorderName }
  | { is: "block"; name: string }
  | { is: "unit"; kind: string }
  /** Parts of blocks that are sewn alike before they are laid on a foundation. */
  | { is: "alike"; number: number }
  | { is: "foundation"; per: FoundationWork["per"]; letters: readonly string[] }
  | { is: "cloth"; place: PatchPlace };

/** One joining: parts side by side (`across`) or one below another (`down`). */
export interface JoinStep {
  stage: "unit" | "block" | "top" | "border";
  /** Index into the top's `designs`; null for the top. */
  design: number | null;
  makes: JoinName;
  from: JoinName[];
  /** What each part is, in the same order. */
  takes: JoinPart[];
  way: "across" | "down";
  /** How many are made. */
  count: number;
  /** Upper left corner of what is made, finished, in the block's or the top's frame, in `1 / Making.scale` ticks. */
  at: { x: number; y: number };
  /** Sizes of the parts, in order. */
  parts: RawSize[];
  /** As it is sewn. */
  size: RawSize;
  /** What it is trimmed to then, alike on all sides; absent where it comes out true. */
  trim?: RawSize;
  /** Seams in one of them, and the length of each, in ticks to the nearest. */
  seams: number;
  seamLength: Ticks;
}

/** A block that cannot be sewn in straight seams alone. */
export interface PartialSeam {
  design: number;
  /**
   * The sides of the unit in the middle in the order in which theirs are sewn on, the first one half-way; null when
   * it is another kind of whorl than four units round one.
   */
  order: ("upper" | "right" | "lower" | "left")[] | null;
  /** Seams of its whorls in one block, and their length together. */
  seams: number;
  seamLength: Ticks;
  /** Units to divide so that straight seams would do; empty when none were found. */
  divides: { unit: number; way: "upright" | "level"; at: Ticks }[];
}

/** A row of a top on point. It is as high as a block, and slants at its ends. */
export interface DiagonalRow {
  /** From 1 at the upper right corner. */
  row: number;
  blocks: number;
  /** Names of its blocks, or of the cloth between, from the left. */
  from: JoinName[];
  /** What they are, in the same order. */
  takes: JoinPart[];
  /** Where it begins from row to row in the frame of the rows, in `1 / Making.scale` ticks. */
  v: number;
  /** What is sewn to its left and right end. */
  ends: readonly ["side" | "corner", "side" | "corner"];
  /** Raw height, and raw length along its upper and its lower edge, tip to tip, to the nearest tick. */
  high: Ticks;
  upper: Ticks;
  lower: Ticks;
  /** Finished edges in the frame of the rows, in `1 / Making.scale` ticks: from, to. */
  upperEdge: readonly [number, number];
  lowerEdge: readonly [number, number];
}

/** One or two strips of a border that are sewn on together. */
export interface BorderStrips {
  sides: readonly ("left" | "right" | "top" | "bottom")[];
  /** Fabric, and what its pieces are for in the cut list; empty and null in a pieced border. */
  fabric: string;
  use: Purpose | null;
  /** Raw length it has once it is sewn: what is measured through the middle. */
  sewn: Ticks;
  /** As cut, over-long allowance included. */
  cut: Ticks;
  /** Raw width. */
  width: Ticks;
  /** Blocks side by side in a pieced border; 0 in a plain one. */
  blocks: number;
  /** Both rows of a pieced border are the same but for their turn; false where a print lies otherwise in them. */
  alike: boolean;
  /** A square is sewn to both ends first. */
  cornerstones: boolean;
}

/** One border, in the order of sewing. */
export interface BorderRound {
  number: number;
  name: BorderName;
  kind: "butted" | "cornerstones" | "mitred";
  pieced: boolean;
  /** Its width was worked out so that the pieced border outside it comes out. */
  fit: boolean;
  /** Spare length on every strip, trimmed once it is sewn. */
  extra: Ticks;
  strips: BorderStrips[];
  /** Raw size of the top before and after, to the nearest tick. */
  before: { across: Ticks; down: Ticks };
  after: { across: Ticks; down: Ticks };
}

export interface SeamTotals {
  units: Ticks;
  blocks: Ticks;
  top: Ticks;
  borders: Ticks;
  total: Ticks;
  seams: number;
}

/** A unit in its place in a block: which record it is made by, and which of its heaps it is taken from. */
export interface UnitInPlace {
  /** Index into `Making.units`, and into that record's `heaps`. */
  unit: number;
  heap: number;
  /** Degrees clockwise it is turned in the block as drawn; 0 where that cannot be seen. */
  turn: 0 | 90 | 180 | 270;
}

/** Blocks of one design that take the same units: they are sewn alike. */
export interface BlockMaking {
  /** Index into the top's `designs`. */
  design: number;
  /** Degrees clockwise in which such blocks are placed, each once, in the order met. */
  turns: number[];
  count: number;
  /** By unit of the design; null where nothing makes it. */
  units: (UnitInPlace | null)[];
}

export interface Making {
  seam: Ticks;
  /** What is made on gridded foundation; null when nothing is. */
  foundation: FoundationMaking | null;
  /** Parts of a tick that `RawSize` counts in. */
  scale: number;
  /** How every unit is made, from the pieces cut. */
  units: UnitRecord[];
  /** Which units go into the blocks; a design whose prints lie otherwise when it is turned has several. */
  blocks: BlockMaking[];
  /** The same told apart by how they are pressed too; and by index into the top's `blocks` which it is. */
  kinds: BlockKind[];
  kindOf: (number | null)[];
  unitPressing: UnitPressing[];
  joins: JoinStep[];
  partial: PartialSeam[];
  /** Rows of a top on point; empty for a straight one, whose rows are in `joins`. */
  diagonal: DiagonalRow[];
  borders: BorderRound[];
  /** Null when the top is not laid out in rows of whole blocks. */
  pressing: Pressing | null;
  finishing: Finishing;
  /** Raw size of the finished top, and from corner to corner: both ways alike when it is square. */
  square: { across: Ticks; down: Ticks; diagonal: Ticks };
  totals: SeamTotals;
  thread: ThreadEstimate;
  quilting: QuiltingThread;
}
