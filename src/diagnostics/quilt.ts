import { nearest } from "./nearest.ts";
import type { Diagnostic, Place, Severity } from "./types.ts";

/** Where in the design a diagnostic speaks of. */
export interface InDesign {
  path: string;
  at: Place | null;
}

function say(code: string, severity: Severity, where: InDesign, message: string, hint = ""): Diagnostic {
  return { code, severity, message, hint, path: where.path, at: where.at };
}

/** "Did you mean" when a known word is near, else the list of known words. */
function suggest(word: string, known: readonly string[]): string {
  const near = nearest(word, [...known]);
  if (near !== null) return `Did you mean \`${near}\`?`;
  const shown = known.slice(0, 12).map((each) => `\`${each}\``);
  return shown.length === 0 ? "" : `Known here: ${shown.join(", ")}${known.length > 12 ? " ..." : ""}.`;
}

export function biasOutside(where: InDesign, what: string, hint: string): Diagnostic {
  return say(
    "BIAS-OUTSIDE",
    "warning",
    where,
    `${what} leaves bias edges on the outside, where they stretch.`,
    hint,
  );
}

export function blockSizeMissing(where: InDesign, block: string): Diagnostic {
  return say(
    "BLOCK-SIZE-MISSING",
    "error",
    where,
    `Block ${block} has no finished size.`,
    "Write its size, for example `size: 8`, or the sizes of its columns and lines.",
  );
}

export function blockSizesDiffer(where: InDesign, found: string, expected: string): Diagnostic {
  return say(
    "BLOCK-SIZES-DIFFER",
    "error",
    where,
    `${found}, but ${expected}.`,
    "Blocks of one row need one height; with sashing, blocks of one column need one width too.",
  );
}

export function blockUnknown(where: InDesign, word: string, known: readonly string[]): Diagnostic {
  return say("BLOCK-UNKNOWN", "error", where, `There is no block \`${word}\`.`, suggest(word, known));
}

export function blockUnused(where: InDesign, block: string): Diagnostic {
  return say("BLOCK-UNUSED", "warning", where, `Block ${block} is not used in the quilt.`);
}

export function borderDoesNotFit(where: InDesign, message: string, hint: string): Diagnostic {
  return say("BORDER-DOES-NOT-FIT", "error", where, message, hint);
}

export function cellEmpty(where: InDesign, cell: string, mark: string): Diagnostic {
  return say(
    "CELL-EMPTY",
    "error",
    where,
    `${cell} is marked \`${mark}\`, but no unit reaches it.`,
    "`-` continues the unit to the left, `|` the unit above; every other cell needs a code.",
  );
}

export function codeUnknown(where: InDesign, code: string, known: readonly string[]): Diagnostic {
  return say(
    "CODE-UNKNOWN",
    "error",
    where,
    `The drawing uses \`${code}\`, which \`cells\` does not explain.`,
    suggest(code, known),
  );
}

export function codeUnused(where: InDesign, code: string, block: string): Diagnostic {
  return say(
    "CODE-UNUSED",
    "warning",
    where,
    `Code \`${code}\` is explained but not drawn in block ${block}.`,
  );
}

export function colourwayCircular(where: InDesign, chain: readonly string[]): Diagnostic {
  return say(
    "COLOURWAY-CIRCULAR",
    "error",
    where,
    `These colours lead back to themselves: ${chain.join(" -> ")}.`,
    "Let one of them name a fabric.",
  );
}

export function colourwayUnknown(where: InDesign, word: string, known: readonly string[]): Diagnostic {
  return say("COLOURWAY-UNKNOWN", "error", where, `There is no colourway \`${word}\`.`, suggest(word, known));
}

/** `unit` is told by its kind and its text; `to` is null when no method keeps the direction at all. */
export function directionByOtherMethod(
  where: InDesign,
  unit: { kind: string; text: string },
  fabric: string,
  from: string,
  to: string | null,
): Diagnostic {
  const instead = to === null ? "No other method can do it either." : `Made ${to} instead.`;
  const why = `${unit.text}: made ${from}, the print of ${fabric} would not all point the way it should.`;
  return {
    ...say(
      "DIRECTION-OTHER-METHOD",
      "warning",
      where,
      `${why} ${instead}`,
      "To keep the first method, let the print turn with the unit: `prints: with unit`.",
    ),
    lost: { kind: unit.kind, why: to === null ? `${why} ${instead}` : why },
  };
}

export function directionSpares(where: InDesign, unit: string, method: string, spare: number): Diagnostic {
  return say(
    "DIRECTION-SPARES",
    "warning",
    where,
    `${unit}: made ${method}, ${spare} ${spare === 1 ? "unit is" : "units are"} left over with the print pointing the wrong way.`,
    "Another method may waste less.",
  );
}

export function fabricMissing(
  where: InDesign,
  word: string,
  block: string,
  known: readonly string[],
): Diagnostic {
  return say(
    "FABRIC-MISSING",
    "error",
    where,
    `${block}: \`${word}\` is neither a fabric nor a role with a fabric.`,
    suggest(word, known),
  );
}

export function fabricUnused(where: InDesign, fabric: string): Diagnostic {
  return say("FABRIC-UNUSED", "warning", where, `Fabric ${fabric} is not used in the quilt.`);
}

export function gridOffMarks(where: InDesign, message: string, below: string, above: string): Diagnostic {
  return say(
    "GRID-OFF-MARKS",
    "warning",
    where,
    message,
    `Nearest sizes that divide: ${below} or ${above}. Otherwise cut sizes are rounded up and units trimmed.`,
  );
}

export function methodUnknown(
  where: InDesign,
  unit: string,
  word: string,
  known: readonly string[],
): Diagnostic {
  return say(
    "METHOD-UNKNOWN",
    "error",
    where,
    `There is no method \`${word}\` for ${unit}.`,
    suggest(word, known),
  );
}

/** Why parts of a block that a file names are none that can be turned. */
export type NotMotifs =
  | { why: "no code"; code: string; known: readonly string[] }
  | { why: "one only" | "same all round" | "units across" | "not alike" };

export function motifsNotAlike(where: InDesign, block: string, found: NotMotifs): Diagnostic {
  const said: Readonly<Record<NotMotifs["why"], string>> = {
    "no code": found.why === "no code" ? `\`${found.code}\` is no code of its grid` : "",
    "one only": "there is only one of them, and it turns with the block",
    "same all round": "they look the same whichever way they are turned",
    "units across": "a unit lies across the line between two of them",
    "not alike": "they are not all alike, however they are turned",
  };
  const hint =
    found.why === "no code"
      ? suggest(found.code, found.known)
      : "Write how many there are across and down, `motifs: 2 x 2`, or codes of the grid, `motifs: g`; or leave it out.";
  return say("MOTIFS-NOT-ALIKE", "error", where, `The motifs of block ${block}: ${said[found.why]}.`, hint);
}

export function onPointUneven(where: InDesign, message: string, hint: string): Diagnostic {
  return say("ON-POINT-UNEVEN", "error", where, message, hint);
}

/** @param divides units to divide so that straight seams would do; empty when none were found */
export function partialSeam(where: InDesign, block: string, divides: readonly string[]): Diagnostic {
  return say(
    "PARTIAL-SEAM",
    "warning",
    where,
    `Block ${block} cannot be joined in straight seams alone: one seam is sewn part way and finished later.`,
    divides.length === 0 ? "" : `For straight seams throughout divide ${divides.join(", and ")}.`,
  );
}

export function printTilted(where: InDesign, fabric: string): Diagnostic {
  return say(
    "PRINT-TILTED",
    "warning",
    where,
    `${fabric}: in blocks set on point its print leans with the block; upright it would have to be cut on the bias.`,
    "Use a fabric without direction there, or set the blocks straight.",
  );
}

export function quiltTooLarge(where: InDesign, patches: string, most: string): Diagnostic {
  return say(
    "QUILT-TOO-LARGE",
    "error",
    where,
    `The design has ${patches} patches; at most ${most} can be worked out at once.`,
    "Plan one part of it, or give the pieces as a cut list.",
  );
}

export function roleUnknown(
  where: InDesign,
  unit: string,
  role: string,
  known: readonly string[],
): Diagnostic {
  return say("ROLE-UNKNOWN", "error", where, `A ${unit} has no part \`${role}\`.`, suggest(role, known));
}

export function rolesUncovered(
  where: InDesign,
  unit: string,
  role: string,
  known: readonly string[],
): Diagnostic {
  return say(
    "ROLE-WITHOUT-FABRIC",
    "error",
    where,
    `The ${role} of this ${unit} has no fabric.`,
    `Give one for each part: ${known.map((each) => `\`${each}\``).join(", ")}.`,
  );
}

export function rowsUneven(where: InDesign, found: string, expected: string): Diagnostic {
  return say(
    "ROWS-UNEVEN",
    "error",
    where,
    `${found}, but ${expected}.`,
    "Every row must come to the same length.",
  );
}

export function seamsDoNotMeet(where: InDesign, message: string): Diagnostic {
  return say(
    "SEAMS-DO-NOT-MEET",
    "warning",
    where,
    message,
    "Check that it is meant; otherwise give the blocks one width.",
  );
}

/** @param cuts how many cuts through patches of which part would do away with them; empty when none were found */
export function setInSeam(where: InDesign, unit: string, cuts: readonly string[]): Diagnostic {
  return say(
    "SET-IN-SEAM",
    "warning",
    where,
    `${unit} has patches set into corners: seams that stop one allowance short and turn.`,
    cuts.length === 0
      ? ""
      : `For straight seams alone draw it as \`drawn patches\` with ${cuts.join(" and ")}, a seam in the place of each.`,
  );
}

export function sizesDoNotAddUp(where: InDesign, message: string, hint: string): Diagnostic {
  return say("SIZES-DO-NOT-ADD-UP", "error", where, message, hint);
}

export function spanOffGrid(where: InDesign, code: string, cell: string, span: string): Diagnostic {
  return say(
    "SPAN-OFF-GRID",
    "error",
    where,
    `\`${code}\` at ${cell} covers ${span} cells and runs off the grid.`,
    "Move it, make it smaller, or draw more cells.",
  );
}

export function unitUnknown(where: InDesign, word: string, known: readonly string[]): Diagnostic {
  return say("UNIT-UNKNOWN", "error", where, `There is no unit \`${word}\`.`, suggest(word, known));
}

export function unitUnsuited(
  where: InDesign,
  unit: string,
  size: string,
  reason: string,
  hint: string,
): Diagnostic {
  return say("UNIT-UNSUITED", "error", where, `${unit} ${size}: ${reason}`, hint);
}

export function unitsOverlap(where: InDesign, code: string, other: string, cell: string): Diagnostic {
  return say(
    "UNITS-OVERLAP",
    "error",
    where,
    `\`${code}\` covers ${cell}, where \`${other}\` is drawn.`,
    "Mark cells that a unit covers with `-` (from the left) or `|` (from above).",
  );
}
