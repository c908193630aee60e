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

/** Quilts are made in other sizes by more or fewer blocks; a cut list has none. */
export function nothingToRepeat(): Diagnostic {
  return error(
    "NOTHING-TO-REPEAT",
    "A cut list has no blocks to make more or fewer of.",
    "Give a quilt file, with blocks and the rows they are set in, or leave `--sizes` out.",
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

/** Motifs are asked for, but no block has parts that are alike. */
export function noMotifs(): Diagnostic {
  return error(
    "NO-MOTIFS",
    "No block of this quilt has alike parts that can be turned by themselves.",
    "Name them in the file, in a block: `motifs: 2 x 2` for so many across and down, or `motifs: g` for a code of its grid.",
  );
}

/** Why motifs that are not square cannot be turned by quarters. */
export const onlyHalves = (blocks: readonly string[]): string =>
  `the motifs of ${blocks.join(", ")} are not square and can only be turned by halves.`;

const SIZES_HELP =
  "Write blocks across and down (4x5), a finished size with its measure (60 x 80 in), or a bed " +
  "(queen, queen drop 12 in, single drop 30 cm at sides and foot); several with commas between them, or semicolons.";

/** A size of a quilt that cannot be read. */
export function sizeUnreadable(
  found: string,
  why = "is not a size of a quilt",
  near: string | null = null,
): Diagnostic {
  const likely = near === null ? "" : `Did you mean \`${near}\`? `;
  return error("QUILT-SIZE-UNREADABLE", `${quote(found)} ${why}.`, `${likely}${SIZES_HELP}`);
}

/** A size that whole blocks, and borders within reason, do not come to: the nearest was taken. */
export function sizeNotMet(
  asked: string,
  target: string,
  taken: string,
  below: string | null,
  above: string | null,
): Diagnostic {
  const others = [
    below === null ? [] : [`smaller: ${below}`],
    above === null ? [] : [`larger: ${above}`],
  ].flat();
  return {
    ...note("QUILT-SIZE-NOT-MET", ""),
    severity: "warning",
    message: `${quote(asked)} asks for ${target}; the nearest in whole blocks is ${taken}.`,
    hint:
      `Nearest are ${others.join("; ")}. Ask for one of them in blocks, or give the quilt a plain outer border: ` +
      "one can be made to fit from half as wide to twice as wide as it is drawn.",
  };
}

/** A size smaller than one block or larger than any quilt of this design. */
export function sizeOutOfReach(asked: string, target: string, nearest: string): Diagnostic {
  return error(
    "QUILT-SIZE-OUT-OF-REACH",
    `${quote(asked)} asks for ${target}, which no number of these blocks comes to.`,
    `The nearest is ${nearest}.`,
  );
}
