import type { LengthFault } from "../length/problem.ts";
import type { SpokenLength } from "../length/spoken.ts";
import type { BorderName } from "./purposes.ts";
import { NOWHERE, tell } from "./tell.ts";
import type { Diagnostic, Nothing } from "./types.ts";

/** A quilt of so many blocks across and down, and the size it comes to. */
export interface InBlocksSaid {
  across: number;
  down: number;
  size: string;
}

/** Why a text is no size of a quilt. */
export type QuiltSizeFault =
  | { is: "none" }
  /** Blocks each way, out of bounds. */
  | { is: "blocks"; most: number }
  | { is: "size"; fault: LengthFault }
  | { is: "not-above-nothing" }
  /** No bed with a standard size; `near` is the one that may be meant. */
  | { is: "no-bed"; near: string | null }
  | { is: "no-length"; of: "drop" | "tuck"; fault: LengthFault }
  | { is: "below-nothing"; of: "drop" | "tuck" }
  | { is: "no-side"; found: string };

/** Sizes of the whole quilt. */
export type WholeQuilt =
  | "printed-squares"
  | "seam"
  | "oversize"
  | "straighten-sets"
  | "sashing"
  | "binding-width"
  | "binding-extra"
  | "backing-overhang"
  | "wadding-overhang"
  | "quilting-spacing"
  | "foundation-ease";

/** What a size is of that is restated for another ruler. */
export type Restatable =
  | { of: WholeQuilt }
  | { of: "block"; block: string; axis: "across" | "down" }
  | { of: "column" | "line"; block: string }
  | { of: "corner" | "centre" | "strip"; unit: string }
  | { of: "patch"; role: string }
  | { of: "border" | "border-ends" | "over-long"; border: BorderName };

/** What is told of each, to be put in words. */
export interface ChoicesFacts {
  sizeRestated: { what: Restatable; before: SpokenLength; after: SpokenLength };
  sizeNotMet: {
    asked: string;
    target: string;
    taken: InBlocksSaid;
    below: InBlocksSaid | null;
    above: InBlocksSaid | null;
  };
  arrangementUnknown: { found: string; known: readonly string[] };
  fatQuarterTooSmall: { fabric: string; piece: string | null; size: string };
  nothingToCompare: { found: "cut-list" | "one-way" };
  nothingToRestate: Nothing;
  nothingToRepeat: Nothing;
  nothingToTurn: Nothing;
  noMotifs: Nothing;
  quiltSizeUnreadable: { found: string; fault: QuiltSizeFault };
  /** `nearest` is null where no number of blocks can be made at all. */
  sizeOutOfReach: { asked: string; target: string; nearest: InBlocksSaid | null };
}

/** An arrangement that is none, on the command line. */
export function arrangementUnknown(found: string, known: readonly string[]): Diagnostic {
  return tell("ARRANGEMENT-UNKNOWN", "error", NOWHERE, "arrangementUnknown", { found, known });
}

/** A fabric that has a piece no fat quarter holds is bought from the bolt. */
export function fatQuarterTooSmall(fabric: string, piece: string | null, size: string): Diagnostic {
  return tell("FAT-QUARTER-TOO-SMALL", "info", NOWHERE, "fatQuarterTooSmall", { fabric, piece, size });
}

/** Methods are compared of quilts; a cut list has none. */
export function nothingToCompare(found: "cut-list" | "one-way"): Diagnostic {
  return tell("NOTHING-TO-COMPARE", "error", NOWHERE, "nothingToCompare", { found });
}

/** A quilt is restated in another system; a cut list says sizes as cut. */
export function nothingToRestate(): Diagnostic {
  return tell("NOTHING-TO-RESTATE", "error", NOWHERE, "nothingToRestate", {});
}

/** Quilts are made in other sizes by more or fewer blocks; a cut list has none. */
export function nothingToRepeat(): Diagnostic {
  return tell("NOTHING-TO-REPEAT", "error", NOWHERE, "nothingToRepeat", {});
}

/** Blocks are turned in quilts; a cut list has none. */
export function nothingToTurn(): Diagnostic {
  return tell("NOTHING-TO-TURN", "error", NOWHERE, "nothingToTurn", {});
}

/** Motifs are asked for, but no block has parts that are alike. */
export function noMotifs(): Diagnostic {
  return tell("NO-MOTIFS", "error", NOWHERE, "noMotifs", {});
}

/** A size of a quilt that cannot be read. */
export function quiltSizeUnreadable(found: string, fault: QuiltSizeFault): Diagnostic {
  return tell("QUILT-SIZE-UNREADABLE", "error", NOWHERE, "quiltSizeUnreadable", { found, fault });
}

/** A size smaller than one block or larger than any quilt of this design. */
export function sizeOutOfReach(asked: string, target: string, nearest: InBlocksSaid | null): Diagnostic {
  return tell("QUILT-SIZE-OUT-OF-REACH", "error", NOWHERE, "sizeOutOfReach", { asked, target, nearest });
}

/** A finished size that moved to a mark of the other ruler. */
export function sizeRestated(
  what: Restatable,
  before: SpokenLength,
  after: SpokenLength,
  path: string,
): Diagnostic {
  return tell("SIZE-RESTATED", "info", { path, at: null }, "sizeRestated", { what, before, after });
}

/** A size that whole blocks, and borders within reason, do not come to: the nearest was taken. */
export function sizeNotMet(
  asked: string,
  target: string,
  taken: InBlocksSaid,
  below: InBlocksSaid | null,
  above: InBlocksSaid | null,
): Diagnostic {
  const facts = { asked, target, taken, below, above };
  return tell("QUILT-SIZE-NOT-MET", "warning", NOWHERE, "sizeNotMet", facts);
}
