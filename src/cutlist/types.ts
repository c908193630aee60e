import type { Purpose } from "../diagnostics/purposes.ts";
import type { Ticks } from "../length/types.ts";
import type { NestRun } from "../quilt/units/outlines/nest.ts";
import type { PatchShape } from "../quilt/units/types.ts";
import type { FabricSpec, ShapeSpec } from "../spec/types.ts";

/** What a cut piece is for: printed on bag labels and in the cut list. */
export interface PieceUse {
  purpose: Purpose;
  count: number;
  /** Written in a quilt's file by the maker: no step of the quilt sews it. */
  own?: true;
}

/** How a cut rectangle is cut further once it is a rectangle (triangles), after the plan's cuts. */
export type Subcut = "none" | "once-diagonal" | "twice-diagonal" | "template";

/**
 * What a piece becomes that is cut to a line: the outline as the cloth lies, y along the selvage. On a print
 * whose up runs across the fabric, up is to the right.
 */
export interface CutShape extends PatchShape {
  /** How many are cut with the template as drawn, and how many with it turned face down. */
  asDrawn: number;
  reversed: number;
}

/** How the slanting cuts of a strip are set. */
export interface SlantSetting {
  /** Where the ruler has a line for it; null where two marks or a template say it. */
  angle: 30 | 45 | 60 | null;
  /**
   * `points`: from point to point, each cut the other way. `edge`: at every `step` along the edge that is the longer side of
   * the next, lower and upper edge in turn. `square`: at every `step` square to the cut before. `marks`: to marks at every
   * `step` along an edge, those of the upper edge half a step further. `rectangles`: rectangles `step` long, each cut from
   * corner to corner. `template`: beside a template.
   */
  by: "points" | "edge" | "square" | "marks" | "rectangles" | "template";
  /** What is measured, on the ruler's marks; 0 where nothing is. */
  step: Ticks;
}

/** How a shape stands in strips that run across the cloth, and along it. */
export interface NestedLie extends NestRun {
  /** The shape as its outline has it lies turned a quarter. */
  turned: boolean;
}

/** Equal shapes that stand alternately in strips. */
export interface NestedCut {
  /** As the maker wrote it; null for a piece that is cut by its template. */
  spec: ShapeSpec | null;
  setting: SlantSetting;
  /** Every second one may be turned half round: a print with an up forbids it. */
  halfTurns: boolean;
  across: readonly NestedLie[];
  along: readonly NestedLie[];
}

/** What is said of a piece beside its size and what it is for. */
export type PieceNote =
  /** In the maker's own words. */
  | { is: "own"; text: string }
  /** Trimmed once it is sewn. */
  | { is: "over-long" }
  /** A piece of printed foundation. */
  | { is: "printed-lines" }
  /** A strip of a strip set; `short`: of the one that is shorter than the others. */
  | { is: "set"; set: string; short: boolean }
  /** A square that is sewn into continuous bias so wide. */
  | { is: "bias"; width: Ticks }
  /** So large once its panels are sewn side by side. */
  | {
      is: "backing" | "wadding";
      across: Ticks;
      down: Ticks;
      panels: number;
      seams: "vertical" | "horizontal";
    }
  /** Strips and shorter ends of strips that are sewn end to end, and what becomes of the run. */
  | ({ is: "run"; strips: number; ends: number } & Pick<JoinedRun, "length" | "join" | "lengths" | "whole">);

/** One size to cut from one fabric. */
export interface CutPiece {
  /** A, B, ... Z, AA ...: largest first within the fabric. */
  letter: string;
  label: string;
  across: Ticks;
  along: Ticks;
  fullWidth: boolean;
  count: number;
  turnable: boolean;
  cut: "strips" | "lengthwise" | "either";
  join: "no" | "straight" | "diagonal";
  uses: PieceUse[];
  /** Cut after the piece is free, by hand: a square halved or quartered on its diagonals, or by template. */
  subcut: Subcut;
  /**
   * For `once-diagonal`: which diagonal, as the piece lies on the bolt, x across and y along the selvage, whichever
   * way the print's up runs. A piece that may be turned has its longer side along. `any` when it does not matter.
   */
  diagonal: "any" | "rising" | "falling";
  /** Size to trim the sewn unit to, for the maker's information; null when nothing is trimmed. */
  trimTo: { across: Ticks; along: Ticks } | null;
  /** True when exact geometry lay off the ruler marks and was rounded up. */
  roundedUp: boolean;
  notes: readonly PieceNote[];
  /**
   * Square ticks of all these pieces together that sewing throws away (flipped corners, oversize trimmed
   * off the sewn unit), and that end up hidden in seams. Absent in a plain cut list, where nobody knows.
   */
  corners?: number;
  seams?: number;
  /** For `template`, and for strips that are cut up aslant: the outline, seam line and count; absent otherwise. */
  shape?: CutShape;
  /** The shapes stand alternately in strips; absent where each is cut from a rectangle of its own. */
  nest?: NestedCut;
  /** Borders that face each other in the quilt: every two are cut from one grain. Absent elsewhere. */
  pair?: true;
  /** What sewing leaves of the pieces, each as long as they are; absent where nothing is. */
  rests?: PieceRest[];
  /** On strips that are sewn end to end: what they make together. Absent when the strips are used as they are. */
  joined?: JoinedRun;
  /** Cut for a class of several sorts of kits: of each sort how many kits there are, and how many pieces each gets. */
  inKits?: readonly { kits: number; each: number }[];
}

/**
 * Strips sewn end to end in one run. Whole strips feed it, and what is left at the end of a strip of just its width.
 *
 *     k strips and ends make  their sum - (k - 1) x loss
 */
export interface JoinedRun {
  /** What they must make together, and what each join takes. */
  length: Ticks;
  loss: Ticks;
  join: "straight" | "diagonal";
  /** Shorter ends of strips are not joined. */
  leastEnd: Ticks;
  /** What is cut from the run, in the order sewn. */
  lengths: { length: Ticks; count: number }[];
  /** The binding that the whole run is for, when nothing is cut from it. */
  whole: "single" | "double" | null;
  /** Square ticks of the lengths that show in the end; absent where nobody knows. */
  finished?: number;
  /** What else is said of the pieces, joined or not. */
  notes: readonly PieceNote[];
  /**
   * Set once it is settled how many strips and which ends make the run: the number of the run. Pieces of a fabric with
   * one number are joined together.
   */
  run?: number;
  /** Cut for several kits, each of which joins its own share to that length: then the strips stay as they are. */
  perKit?: true;
}

/**
 * Cloth of pieces that sewing leaves, so far across. `panel-side`: cut off panels once they are sewn side by side.
 * `set-end`: cut off strips that are longer than the set they are sewn into.
 */
interface PieceRest {
  cause: "panel-side" | "set-end";
  count: number;
  across: Ticks;
}

/** All that is cut from one fabric. */
export interface CutList {
  fabric: FabricSpec;
  pieces: CutPiece[];
}
