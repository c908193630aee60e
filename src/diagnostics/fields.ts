import { nearest } from "./nearest.ts";
import { quote } from "./quote.ts";
import type { InFile } from "./reading.ts";
import type { Diagnostic, Severity } from "./types.ts";

function say(code: string, severity: Severity, where: InFile, message: string, hint = ""): Diagnostic {
  return { code, severity, message, hint, path: where.path, at: where.at };
}

function list(options: readonly string[]): string {
  return options.map((option) => `\`${option}\``).join(", ");
}

/** What a field is for and how it is written, from the schema. */
export interface FieldHelp {
  description: string;
  example: string;
}

function exampleOf(help: FieldHelp): string {
  const [first = "", ...below] = help.example.split("\n").map((line) => line.trim());
  if (first === "") return "";
  return `For example \`${first}\`${below.map((line) => ` and on the next line \`${line}\``).join("")}.`;
}

export function choiceUnknown(
  where: InFile,
  field: string,
  found: string,
  options: readonly string[],
): Diagnostic {
  const near = nearest(found, options);
  const hint = near === null ? "" : `Did you mean \`${near}\`?`;
  return say(
    "CHOICE-UNKNOWN",
    "error",
    where,
    `\`${field}\` is ${quote(found)}; it can be ${list(options)}.`,
    hint,
  );
}

export function clothTooMuch(where: InFile, fabric: string): Diagnostic {
  const message = `${quote(fabric)}: its pieces come to more cloth than can be worked out at once.`;
  return say("CLOTH-TOO-MUCH", "error", where, message, "Check the sizes, the counts and their measures.");
}

export function colourUnreadable(where: InFile, found: string): Diagnostic {
  return say(
    "COLOUR-UNREADABLE",
    "error",
    where,
    `${quote(found)} is not a colour.`,
    'Write six figures in quotes, for example `"#1d3557"`, or a plain name such as `navy`.',
  );
}

export function countNotWhole(where: InFile, found: string, most: number): Diagnostic {
  return say(
    "COUNT-NOT-WHOLE",
    "error",
    where,
    `The count is ${quote(found)}; it must be a whole number from 1 to ${most}.`,
    "For example `24`.",
  );
}

/** A key with nothing after it. In YAML a bare `#` starts a comment, which empties colours. */
export function fieldEmpty(where: InFile, field: string, help: FieldHelp): Diagnostic {
  const colour = field === "colour" ? " A colour that starts with # needs quotes." : "";
  const hint = `${exampleOf(help)}${colour}`.trim();
  return say("FIELD-EMPTY", "error", where, `\`${field}\` has no value.`, hint);
}

export function fieldMissing(where: InFile, field: string, help: FieldHelp): Diagnostic {
  const what = help.description === "" ? "" : `: ${help.description}`;
  return say("FIELD-MISSING", "error", where, `\`${field}\` is missing${what}.`, exampleOf(help));
}

export function fieldType(
  where: InFile,
  field: string,
  found: string,
  expected: string,
  help: FieldHelp,
): Diagnostic {
  const message = `\`${field}\` is ${found}; it should be ${expected}.`;
  return say("FIELD-TYPE", "error", where, message, exampleOf(help));
}

export function keyUnknown(where: InFile, key: string, known: readonly string[], hint = ""): Diagnostic {
  const near = nearest(key, known);
  const help =
    hint !== "" ? hint : near === null ? `Known here: ${list(known)}.` : `Did you mean \`${near}\`?`;
  return say("KEY-UNKNOWN", "error", where, `There is no key ${quote(key)} here.`, help);
}

export function labelRepeated(where: InFile, label: string, line: number | null): Diagnostic {
  const before = line === null ? "" : ` (line ${line})`;
  return say(
    "LABEL-REPEATED",
    "error",
    where,
    `Two pieces of this fabric are labelled ${quote(label)}${before}.`,
    "Give each size its own label, or none: sizes without one are lettered for you.",
  );
}

export function lengthNegative(where: InFile, field: string, found: string): Diagnostic {
  return say(
    "LENGTH-NEGATIVE",
    "error",
    where,
    `\`${field}\` is ${quote(found)}; it cannot be less than zero.`,
  );
}

/** A cut that cannot be set on the maker's ruler. It is kept as written. */
export function lengthOffMarks(where: InFile, piece: string, size: string, mark: string): Diagnostic {
  return say(
    "LENGTH-OFF-MARKS",
    "warning",
    where,
    `${piece}: ${size} lies between the marks of the ruler (every ${mark}). It is kept as written.`,
    "Check the size, or name a ruler with finer marks, for example `ruler: 1/16 in` or `ruler: 1 mm`.",
  );
}

export function lengthRoundedUp(where: InFile, piece: string, written: string, size: string): Diagnostic {
  return say(
    "LENGTH-ROUNDED-UP",
    "info",
    where,
    `${piece}: ${quote(written)} is on no ruler exactly; it is rounded up to ${size}.`,
  );
}

export function lengthTooLong(where: InFile, field: string, found: string, most: string): Diagnostic {
  const message = `\`${field}\` is ${quote(found)}; more than ${most} is not planned for.`;
  return say("LENGTH-TOO-LONG", "error", where, message, "Check its measure: in, yd, mm, cm or m.");
}

/** `why` says what was found; `hint` shows what a length looks like. */
export function lengthUnreadable(where: InFile, written: string, why: string, hint: string): Diagnostic {
  return say("LENGTH-UNREADABLE", "error", where, `${quote(written)} is not a length: ${why}.`, hint);
}

export function linesTooMany(where: InFile, what: string, found: number, most: number): Diagnostic {
  return say(
    "LINES-TOO-MANY",
    "error",
    where,
    `There are ${found} ${what}; at most ${most} can be worked out at once.`,
    "Pieces of one size go on one line with a count.",
  );
}

export function measuresMixed(where: InFile, written: string, why: string, hint: string): Diagnostic {
  return say("MEASURES-MIXED", "error", where, `${quote(written)}: ${why}.`, hint);
}

/** Minutes for one step, in the file or on the command line. */
export function minutesUnreadable(where: InFile, field: string, found: string, most: number): Diagnostic {
  return say(
    "MINUTES-UNREADABLE",
    "error",
    where,
    `\`${field}\` is ${quote(found)}, not minutes from 0 to ${most}.`,
    "Write a number without a unit, for example `seam: 0.5`.",
  );
}

export function nameRepeated(where: InFile, name: string, line: number | null): Diagnostic {
  const before = line === null ? "" : ` (line ${line})`;
  return say(
    "NAME-REPEATED",
    "error",
    where,
    `Two fabrics are called ${quote(name)}${before}.`,
    "Give each its own name, or put all pieces under one of them.",
  );
}

export function nameUnusable(where: InFile, field: string, why: string): Diagnostic {
  return say("NAME-UNUSABLE", "error", where, `\`${field}\` ${why}.`, "For example `Night sea`.");
}

/** A part of the pattern that is named twice. */
export function partRepeated(where: InFile, part: string): Diagnostic {
  return say(
    "PART-REPEATED",
    "error",
    where,
    `The part ${quote(part)} is named twice; a pattern has each part once.`,
    "Name every part once, in the order you want, for example `parts: [requirements, cutting, units]`.",
  );
}

export function percentUnreadable(where: InFile, found: string, most: number): Diagnostic {
  return say(
    "PERCENT-UNREADABLE",
    "error",
    where,
    `${quote(found)} is not a shrinkage from 0 to ${most} percent in steps of a tenth.`,
    "For example `3%` or `2.5%`.",
  );
}

export function pieceLineUnreadable(where: InFile, written: string, why: string, hint: string): Diagnostic {
  return say("PIECE-LINE-UNREADABLE", "error", where, `${quote(written)} is not a piece: ${why}.`, hint);
}

export function piecesTooMany(where: InFile, found: number, most: number): Diagnostic {
  return say(
    "PIECES-TOO-MANY",
    "error",
    where,
    `There are ${found} pieces in all; at most ${most} can be planned at once.`,
    "Check the counts, or plan the quilt in parts.",
  );
}

export function priceUnreadable(where: InFile, found: string): Diagnostic {
  return say(
    "PRICE-UNREADABLE",
    "error",
    where,
    `${quote(found)} is not a price.`,
    "For example `$12.50 per yd`, `18,90 EUR per m`, or `12.50` for the measure it is sold in.",
  );
}

export function selvagesTooWide(where: InFile, selvages: string, width: string): Diagnostic {
  return say(
    "SELVAGES-TOO-WIDE",
    "error",
    where,
    `The two selvages take ${selvages} of a fabric ${width} wide: nothing is left to cut.`,
    "`selvage` is the width of one selvage, usually about `1/2 in` or `1.5 cm`.",
  );
}

export function sizeNotPositive(where: InFile, field: string, found: string): Diagnostic {
  const message = `\`${field}\` is ${quote(found)}; every length in it must be more than zero.`;
  return say("SIZE-NOT-POSITIVE", "error", where, message, "Write the size as cut, seam allowance included.");
}

export function sizeUnreadable(where: InFile, written: string, why: string, hint: string): Diagnostic {
  return say("SIZE-UNREADABLE", "error", where, `${quote(written)} is not a size: ${why}.`, hint);
}

export function soldUnreadable(where: InFile, found: string, why: string): Diagnostic {
  return say(
    "SOLD-UNREADABLE",
    "error",
    where,
    `${quote(found)} does not say how the fabric is sold: ${why}.`,
    "For example `by 1/8 yd`, `by 10 cm in m` or `by 1/4 yd, least 1/2 yd`.",
  );
}

/** A strip of the whole width cannot lie along the selvage. `other` is the side that was given, as printed. */
export function fullWidthLengthwise(where: InFile, name: string, other: string): Diagnostic {
  return say(
    "WOF-LENGTHWISE",
    "error",
    where,
    `${name} runs across the whole width of fabric (\`WOF\`), so it cannot be cut lengthwise as well.`,
    `Leave out \`lengthwise\`, or say how long it is: \`${other} x 60 in, 3, cut lengthwise\`.`,
  );
}
