import type { BorderName } from "../diagnostics/purposes.ts";
/**
 * The finished quilt top: where every patch lies, what it is made of and where it came from.
 * The frame is the quilt as it hangs: x runs to the right, y runs down, the origin is the top left corner
 * of the finished top. Sizes are finished sizes, without seam allowance.
 */

/**
 * An exact length in ticks: `(n + r * sqrt(root)) / d`, with whole numbers and `d` above zero; `root` is 2 when
 * absent. `r` is 0 except in tops set on point and in units with 45 or 60 degree angles. A drawing may take
 * `(n + r * Math.sqrt(root ?? 2)) / d`.
 */
export interface Exact {
  n: number;
  r: number;
  d: number;
  root?: 3;
}

export interface Point {
  x: Exact;
  y: Exact;
}

/** What a patch belongs to. */
export type PatchPlace = "block" | "sash" | "cornerstone" | "setting-triangle" | "border";

/** Where a patch came from, so that a drawing can name it and the cut list can count it. */
interface PatchOrigin {
  place: PatchPlace;
  /** Index into `blocks` when `place` is `block`; else null. */
  block: number | null;
  /** Index into that block's design's `units`; for a pieced border into the border's; else null. */
  unit: number | null;
  /** The part of the unit in trade words: `goose`, `sky`, `square`, `side`, `corner`, `left`. */
  part: string;
  /** Index into `borders` when `place` is `border`; else null. */
  border: number | null;
}

/** One finished patch: a simple polygon, its corners in order clockwise as seen. */
export interface Patch {
  outline: Point[];
  /** Name of the fabric. */
  fabric: string;
  /**
   * Which way the print's up points in the quilt, in degrees clockwise from the top of the quilt (0 is
   * upright); null when the fabric has no direction.
   */
  up: number | null;
  origin: PatchOrigin;
}

/** One unit of a block design, in the block's own frame before it is turned. */
export interface DesignUnit {
  kind: string;
  method: string;
  /** Cell of the unit's top left corner, from 0, and how many cells it covers. */
  column: number;
  row: number;
  columns: number;
  rows: number;
  x: Exact;
  y: Exact;
  across: Exact;
  down: Exact;
  /** Quarter-turn of the unit within the block, in degrees clockwise. */
  turn: number;
  /** The code it has in the text drawing of the block. */
  code: string;
}

/** A block as drawn by itself: upright, in one colourway. */
export interface BlockDesign {
  name: string;
  /** Name of the colourway; empty for the block's own. */
  colourway: string;
  across: Exact;
  down: Exact;
  columns: number;
  rows: number;
  units: DesignUnit[];
  /** Patches in the block's frame; `origin.block` is null. */
  patches: Patch[];
  /**
   * Where its columns and its lines end as they finish (`at`) and as they are sewn (`to`), in ticks: it is sewn larger
   * and then trimmed alike on all sides. Absent where its cells lie on the ruler's marks.
   */
  sewn?: { across: SewnStop[]; down: SewnStop[] };
  /** How many of it the quilt holds, in any turn. */
  count: number;
}

/** The end of a column or line of a block, in ticks from its edge. */
export interface SewnStop {
  at: { n: number; d: number };
  to: { n: number; d: number };
}

export interface PlacedBlock {
  /** `block` in the rows of the setting; else the block makes a sash, a cornerstone or part of a border. */
  place: PatchPlace;
  /** Index into `designs`. */
  design: number;
  /** Place in the rows of the setting, from 0. */
  row: number;
  column: number;
  /** Degrees clockwise the block is turned (without the eighth-turn of an on-point setting). */
  turn: number;
  /** The four corners, clockwise from the one that was top left before turning. */
  outline: Point[];
}

export interface TopBorder {
  /** From the inside, counting from 1. */
  number: number;
  name: BorderName;
  kind: "butted-sides-first" | "butted-tops-first" | "mitred" | "cornerstones" | "pieced";
  /** Finished width of the sides, and of the top and bottom. */
  side: Exact;
  end: Exact;
  /** Outer edge of the border: its size and the offset of its top left corner. */
  x: Exact;
  y: Exact;
  across: Exact;
  down: Exact;
}

/** A seam of the top that is sewn in one go, for the order of piecing. */
interface TopSeam {
  from: Point;
  to: Point;
  /** 1 joins units into rows of a block, 2 block rows, 3 rows of the quilt, 4 rows together, 5 borders. */
  stage: 1 | 2 | 3 | 4 | 5;
}

/** Where the blocks, sashes and setting triangles lie inside the borders. */
interface TopCentre {
  x: Exact;
  y: Exact;
  across: Exact;
  down: Exact;
  onPoint: boolean;
  blocksAcross: number;
  blocksDown: number;
}

/** The whole top, ready to draw and to cut from. Plain data: it survives JSON unchanged. */
export interface QuiltTop {
  name: string;
  /** Finished size, without binding. */
  across: Exact;
  down: Exact;
  designs: BlockDesign[];
  blocks: PlacedBlock[];
  centre: TopCentre;
  borders: TopBorder[];
  patches: Patch[];
  seams: TopSeam[];
}
