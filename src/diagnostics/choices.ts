import { quote } from "./quote.ts";
import type { Diagnostic } from "./types.ts";

function note(code: string, message: string): Diagnostic {
  return { code, severity: "info", message, hint: "", path: "", at: null };
}

function error(code: string, message: string, hint: string): Diagnostic {
  return { code, severity: "error", message, hint, path: "", at: null };
}

/** A fabric that has a piece no fat quarter holds is bought from the bolt. */
export function fatQuarterTooSmall(fabric: string, piece: string, size: string): Diagnostic {
  return note(
    "FAT-QUARTER-TOO-SMALL",
    `${fabric} is cut from the bolt: ${piece} is more than a fat quarter of ${size} holds.`,
  );
}

/** Methods are compared of quilts; a cut list has none. */
export function nothingToCompare(found: "cut-list" | "one-way"): Diagnostic {
  const why =
    found === "cut-list"
      ? "A cut list says what to cut, not how it is sewn"
      : "Every unit of this quilt can be made in one way only";
  return error(
    "NOTHING-TO-COMPARE",
    `${why}: there is nothing to compare.`,
    "Give a quilt file, with blocks and their units.",
  );
}

/** Blocks are turned in quilts; a cut list has none. */
export function nothingToTurn(): Diagnostic {
  return error(
    "NOTHING-TO-TURN",
    "A cut list has no blocks to turn.",
    "Give a quilt file, with blocks and the rows they are set in.",
  );
}

/** A finished size that no whole number of blocks makes. */
export function sizeUnreadable(found: string): Diagnostic {
  return error(
    "QUILT-SIZE-UNREADABLE",
    `${quote(found)} is not a size of a quilt in blocks.`,
    "Write blocks across and down, for example 4x5; several with commas: 3x3,4x5,6x7.",
  );
}
