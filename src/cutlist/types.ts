import type { Ticks } from "../length/types.ts";
import type { PatchShape } from "../quilt/units/types.ts";
import type { FabricSpec } from "../spec/types.ts";

/** What a cut piece is for: printed on bag labels and in the cut list. */
export interface PieceUse {
  /** For example `block Harbour, half-square triangles` or the maker's own label. */
  text: string;
  count: number;
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
  note: string;
  /**
   * Square ticks of all these pieces together that sewing throws away (flipped corners, oversize trimmed
   * off the sewn unit), and that end up hidden in seams. Absent in a plain cut list, where nobody knows.
   */
  corners?: number;
  seams?: number;
  /** For `template`, and for strips that are cut up aslant: the outline, seam line and count; absent otherwise. */
  shape?: CutShape;
  /**
   * On full-width strips that are sewn end to end: the length they must make together and what each join
   * takes, so that a narrower bolt can be tried. Absent when the strips are used as they are. `perKit`: cut for several
   * kits, each of which joins its own share to that length; then the strips stay as they are.
   */
  joined?: { length: Ticks; loss: Ticks; perKit?: true };
}

/** All that is cut from one fabric. */
export interface CutList {
  fabric: FabricSpec;
  pieces: CutPiece[];
}
