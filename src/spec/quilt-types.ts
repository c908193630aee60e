import type { BorderName } from "../diagnostics/purposes.ts";
import type { Place } from "../diagnostics/types.ts";
import type { Ticks } from "../length/types.ts";
import type { ClassSpec } from "./class-types.ts";
import type { FoundationSpec } from "./foundation-types.ts";
import type { PatternSpec } from "./pattern-types.ts";
import type { StepMinutes } from "./step-minutes.ts";
import type { CutListSpec } from "./types.ts";

/** An exact finished size in ticks, `n / d` in lowest terms: thirds and fifths of an inch are exact here. */
export interface FractionTicks {
  n: number;
  d: number;
}

/** Degrees clockwise as seen. */
export type QuarterTurn = (typeof QUARTER_TURNS)[number];

export const QUARTER_TURNS = [0, 90, 180, 270] as const;

/**
 * Which way a directional print points: `quilt` upright in the finished quilt, `block` upright in its block
 * and turning with it, `unit` turning with its unit (round the block).
 */
export type PrintsFollow = "quilt" | "block" | "unit";

/**
 * How a directional print lies in a border: upright in the quilt; `round`, a stripe (a print of two ways) along the
 * border and heads outwards; `outwards`, the up of either kind out of the quilt.
 */
export type BorderPrints = "upright" | "round" | "outwards";

/** A word standing for a fabric: a fabric's name, or a role that a colourway gives a fabric. */
export interface FabricWord {
  word: string;
  path: string;
  at: Place | null;
}

/** A patch drawn by its corners, measured from the unit's top left corner: finished lengths, or squares. */
export interface PatchSpec {
  role: string;
  corners: { x: FractionTicks; y: FractionTicks }[];
  path: string;
  at: Place | null;
}

/** What the cells of one code hold. */
export interface CellSpec {
  code: string;
  /** Unit kind as written; known kinds are the quilt room's business. */
  unit: string;
  /** Fabric words by role of the unit, or by place in the unit's usual order when written as a list. */
  byRole: Record<string, FabricWord>;
  inOrder: FabricWord[];
  /** Turn of every cell with this code, before the turn marked in the drawing. */
  turn: QuarterTurn;
  /** Cells covered, when written; null: as the drawing shows. */
  span: { columns: number; rows: number } | null;
  /** As written; null: the file's method for the kind, or the kind's usual one. */
  method: string | null;
  /** Null: the file's. */
  prints: PrintsFollow | null;
  /** What some kinds need besides; null when not written. */
  corner: FractionTicks | null;
  corners: ("top-left" | "top-right" | "bottom-right" | "bottom-left")[] | null;
  strips: FractionTicks[] | null;
  count: number | null;
  centre: FractionTicks | null;
  leaning: "rising" | "falling" | null;
  patches: PatchSpec[] | null;
  /** Squares the unit is divided into, in which corners of patches are counted; null: corners are lengths. */
  drawnOn: { columns: number; rows: number } | null;
  path: string;
  at: Place | null;
}

/** One mark in a text drawing: a code with its turn (and colourway, in the rows of a setting). */
export interface DrawnCell {
  /** `-`: covered by what stands to the left; `|`: by what stands above; `.`: by either. */
  code: string;
  turn: QuarterTurn;
  colourway: string;
}

export interface DrawnRow {
  cells: DrawnCell[];
  path: string;
  at: Place | null;
}

/** A block design on a grid. */
export interface BlockSpec {
  /** The word used in the rows of the setting. */
  key: string;
  /** The name printed; the key when none was written. */
  name: string;
  /** Finished size; null when it follows from `columns` and `lines`. */
  across: FractionTicks | null;
  down: FractionTicks | null;
  /** Finished sizes of the grid's columns and lines when they are not all alike; else null. */
  columns: FractionTicks[] | null;
  lines: FractionTicks[] | null;
  grid: DrawnRow[];
  cells: CellSpec[];
  /** Role to fabric word, for this block's own colours. */
  roles: Record<string, FabricWord>;
  /** Which parts of it are turned by themselves; null: the largest that are alike. */
  motifs: MotifsSpec | null;
  path: string;
  at: Place | null;
}

/** The parts of a block that `arrange` turns: so many across and down, or the units of some codes. */
export interface MotifsSpec {
  /** 0 when codes are named. */
  columns: number;
  rows: number;
  codes: string[];
  path: string;
  at: Place | null;
}

/** One set of colours for any block. */
export interface ColourwaySpec {
  name: string;
  /** Another colourway this one starts from; empty when none. */
  like: string;
  roles: Record<string, FabricWord>;
  path: string;
  at: Place | null;
}

/** What a sash, a cornerstone or a border corner is made of: plain cloth or a block design. */
export interface PlainOrBlock {
  fabric: FabricWord | null;
  /** Block key, when made of a block; with its turn and colourway. */
  block: string | null;
  turn: QuarterTurn;
  colourway: string;
  path: string;
  at: Place | null;
}

export interface SashingSpec {
  /** Finished width. */
  width: FractionTicks;
  of: PlainOrBlock;
  /** Null: long sashes run between the rows instead. */
  cornerstones: PlainOrBlock | null;
  /** Sashes all round the outside as well. */
  ring: boolean;
  path: string;
  at: Place | null;
}

export interface SettingSpec {
  layout: "straight" | "on-point";
  /**
   * The rows as drawn. On point the rows step: full rows of blocks, with one block fewer in the rows between.
   */
  rows: DrawnRow[];
  /** The drawing is repeated to fill this many blocks across and down; null: as drawn. */
  fill: { across: number; down: number } | null;
  /** Turn of the whole centre. */
  turn: QuarterTurn;
  sashing: SashingSpec | null;
  /** Fabric of side and corner setting triangles; null in a straight setting. */
  triangles: { sides: FabricWord; corners: FabricWord } | null;
  path: string;
  at: Place | null;
}

export interface BorderSpec {
  name: BorderName;
  /** Finished width of the sides, and of top and bottom; 0 when `fit`. */
  side: FractionTicks;
  end: FractionTicks;
  /** Its width follows from the pieced border outside it, which it makes come out. */
  fit: boolean;
  fabric: FabricWord | null;
  /**
   * Pieced: these blocks stand side by side along the border, clockwise, again and again, their tops to the
   * outside.
   */
  row: DrawnCell[] | null;
  corners: "sides-first" | "tops-first" | "mitred" | "cornerstones";
  cornerstones: PlainOrBlock | null;
  /** Extra length cut on each strip, to be trimmed after it is sewn. */
  extra: Ticks;
  cut: "strips" | "lengthwise" | "either";
  join: "no" | "straight" | "diagonal";
  /** Null: as the file says of all prints. */
  prints: BorderPrints | null;
  path: string;
  at: Place | null;
}

export interface BindingSpec {
  fabric: FabricWord;
  /** Cut width of the strips. */
  width: Ticks;
  fold: "double" | "single";
  cut: "straight" | "bias";
  join: "straight" | "diagonal";
  /** Length beyond the quilt's edges for corners and closing. */
  extra: Ticks;
  path: string;
  at: Place | null;
}

export interface BackingSpec {
  fabric: FabricWord;
  /** Beyond the quilt on each side. */
  overhang: Ticks;
  seams: "vertical" | "horizontal" | "either";
  path: string;
  at: Place | null;
}

export interface WaddingSpec {
  /** Null when it is not one of the file's fabrics: then only its size is told. */
  fabric: FabricWord | null;
  overhang: Ticks;
  path: string;
  at: Place | null;
}

/** How the three layers are quilted. */
export interface QuiltingSpec {
  by: "hand" | "machine" | "long-arm";
  lines: "parallel" | "crossed";
  /** From one line to the next. */
  spacing: Ticks;
  /** The maker wrote it; else what is usual is taken. */
  told: boolean;
}

/** A quilt design, validated, defaults filled in, nothing derived. */
export interface QuiltSpec extends Omit<CutListSpec, "kind"> {
  kind: "quilt";
  seam: Ticks;
  rounding: "exact" | "trade";
  /** Added to squares of units that are trimmed after sewing. */
  oversize: Ticks;
  /** Taken off one end of each strip set before its first segment; `told` when the maker wrote it. */
  straightenSets: { off: Ticks; told: boolean };
  prints: PrintsFollow;
  /** Method by unit kind, both as written. */
  methods: { unit: string; method: string; path: string; at: Place | null }[];
  blocks: BlockSpec[];
  colourways: ColourwaySpec[];
  setting: SettingSpec;
  quilting: QuiltingSpec;
  /** Most layers of cloth that should lie on one another where seams meet. */
  mostLayers: number;
  /** From the inside out. */
  borders: BorderSpec[];
  binding: BindingSpec | null;
  backing: BackingSpec | null;
  wadding: WaddingSpec | null;
  /** Gridded foundation some blocks are made on; null: none. */
  foundation: FoundationSpec | null;
  /** For estimates of time: the usual minutes with the maker's own in their place. */
  minutes: StepMinutes;
  /** The pattern to hand out. */
  pattern: PatternSpec;
  /** The class that sews it from kits. */
  class: ClassSpec;
}
