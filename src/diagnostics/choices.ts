import { nearest } from "./nearest.ts";
import { quote } from "./quote.ts";
import type { Diagnostic } from "./types.ts";

function note(code: string, message: string): Diagnostic {
  return { code, severity: "info", message, hint: "", path: "", at: null };
}

function error(code: string, message: string, hint: string): Diagnostic {
  return { code, severity: "error", message, hint, path: "", at: null };
}

/** An arrangement that is none, on the command line. */
export function arrangementUnknown(found: string, known: readonly string[]): Diagnostic {
  const near = nearest(found, known);
  const likely = near === null ? "" : `Did you mean \`${near}\`? `;
  return error(
    "ARRANGEMENT-UNKNOWN",
    `There is no arrangement ${quote(found)}.`,
    `${likely}There are: ${known.join(", ")}.`,
  );
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

/** A finished size that moved to a mark of the other ruler. */
export function sizeRestated(what: string, before: string, after: string, path: string): Diagnostic {
  return { ...note("SIZE-RESTATED", `${what}: ${before} is now ${after}.`), path };
}

/** A quilt is restated in another system; a cut list says sizes as cut. */
export function nothingToRestate(): Diagnostic {
  return error(
    "NOTHING-TO-RESTATE",
    "A cut list holds sizes as cut, seams included: they cannot be restated for another ruler.",
    "Give a quilt file, whose finished sizes can move to other marks, or leave `--ruler` out.",
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
