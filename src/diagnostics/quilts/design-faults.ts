import type { SpokenLength, SpokenSize } from "../../length/spoken.ts";
import type { BorderName } from "../purposes.ts";

/*
 * What can be wrong with a design, fault by fault: what a sentence needs to know, with sizes as they are to be said.
 */

/** Two sides, each said by itself. */
interface Sides {
  across: SpokenLength;
  down: SpokenLength;
}

/** Columns (`across`) or lines (`down`) of a block. */
type Axis = "across" | "down";

/** The four sides of a border by pairs. */
export type BorderPair = "sides" | "ends";

/** Why a unit of that size cannot be made, or why a drawing of patches is none. */
export type UnitFault =
  | { why: "not-square" }
  | { why: "goose-not-twice-as-wide" }
  /** Drawn patches. */
  | { why: "patches-count"; most: number }
  | { why: "patches-gap" }
  | { why: "patches-overlap"; first: string; second: string }
  | { why: "patch-corners"; role: string; spot: string; most: number }
  | { why: "patch-outside" | "patch-crossed"; role: string; spot: string }
  | { why: "patch-too-sharp"; spot: string }
  /** Log cabins. */
  | { why: "rounds"; most: number }
  | { why: "centre-size" }
  /** Rails. */
  | { why: "rails-count" | "rails-too-many"; most: number }
  | { why: "rail-width" | "rails-sum" | "rails-outgrow" }
  /** Snowballs. */
  | { why: "no-corner" | "corner-twice" | "corner-size" | "corners-overlap" }
  | { why: "triangles-too-many"; most: number };

/** Blocks that do not have the size their neighbours have. */
export type BlockSizesFault =
  | { why: "row-heights"; block: string; high: SpokenLength; begun: SpokenLength }
  /** Columns count from 1. */
  | { why: "column-widths"; block: string; column: number; wide: SpokenLength; first: SpokenLength };

/** Rows of cells or of blocks that differ. */
export type RowsFault =
  | { why: "cells"; block: string; cells: number; first: number }
  | { why: "lengths"; long: SpokenLength; blocks: number; begun: SpokenLength; first: number }
  | { why: "counts"; blocks: number; first: number };

/** Why a border cannot be sewn on as it is written. */
export type BorderFault =
  | { why: "nothing-to-fit"; border: BorderName }
  | { why: "block-height"; border: BorderName; width: SpokenLength; block: string; high: SpokenLength }
  | { why: "beside-on-point"; border: BorderName }
  | {
      why: "not-filled";
      border: BorderName;
      pair: BorderPair;
      long: SpokenLength;
      /** The border's drawing holds one block, or several that come again as a round of so much. */
      of: "block" | "round";
      round: SpokenLength;
      /** Blocks or rounds that would fill it, and how long each would be. */
      fits: readonly { count: number; long: SpokenLength }[];
      /** Widths of a plain border that would make it come out; null when none does. */
      coping: { side: SpokenLength; end: SpokenLength | null } | null;
    }
  | { why: "mitre"; border: BorderName }
  | { why: "corners-no-square"; border: BorderName }
  | { why: "corner-block"; border: BorderName; corners: Sides; block: string; is: Sides };

/** Sizes of the file that contradict each other. */
export type SumFault =
  | { why: "sizes-count"; block: string; axis: Axis; sizes: number; count: number }
  | { why: "sum"; block: string; axis: Axis; together: SpokenLength; size: SpokenLength }
  | { why: "filling"; place: "sash" | "cornerstone"; needs: Sides; block: string; is: Sides }
  | { why: "sashes-without-cornerstones" };

/** Why blocks on point cannot be set as they are drawn. */
export type OnPointFault =
  | { why: "block-size"; block: string; is: SpokenSize; side: SpokenLength }
  | { why: "rows-even"; rows: number }
  /** Rows count from 1. */
  | { why: "row-count"; row: number; blocks: number; expected: number }
  | { why: "sashing" };

/** A cell of a block's drawing; lines and cells count from 1. */
export interface CellPlace {
  line: number;
  cell: number;
}

/** Where to divide a unit of a block so that straight seams do; columns and lines count from 1. */
export interface DivideTold {
  unit: string;
  column: number;
  line: number;
  at: SpokenLength;
  from: "left" | "upper";
}

/** What goes onto one piece of foundation. */
export type FoundationArea = { block: string } | { row: number };

/** Why something does not go onto the foundation as asked. */
export type FoundationBlockFault =
  | { why: "nothing"; way: "pieced" | "folded" }
  | { why: "row-setting" }
  | { why: "row-with-other"; row: number; block: string }
  | { why: "off-squares" | "no-line"; area: FoundationArea }
  | { why: "not-one-piece"; block: string };
