import { tell } from "./tell.ts";

import type { Diagnostic, InFile } from "./types.ts";

/** What a field is for and how it is written, from the schema. */
export interface FieldHelp {
  description: string;
  example: string;
}

/** What is told of each, to be put in words. */
export interface FieldsFacts {
  choiceUnknown: { field: string; found: string; options: readonly string[] };
  clothTooMuch: { fabric: string };
  colourUnreadable: { found: string };
  countNotWhole: { found: string; most: number };
  fieldEmpty: { field: string; help: FieldHelp };
  fieldMissing: { field: string; help: FieldHelp };
  fieldType: { field: string; found: string; expected: string; help: FieldHelp };
  keyUnknown: {
    key: string;
    known: readonly string[];
    hint?: string;
    /** The field of which the key is a value, where there is one. */
    takenBy?: string;
  };
  labelRepeated: { label: string; line: number | null };
  lengthNegative: { field: string; found: string };
  lengthOffMarks: { piece: string; size: string; mark: string };
  lengthRoundedUp: { piece: string; written: string; size: string };
  lengthTooLong: { field: string; found: string; most: string };
  lengthUnreadable: { written: string; why: string; hint: string };
  linesTooMany: { what: string; found: number; most: number };
  measuresMixed: { written: string; why: string; hint: string };
  minutesUnreadable: { field: string; found: string; most: number };
  nameRepeated: { name: string; line: number | null };
  nameUnusable: { field: string; why: string };
  partRepeated: { part: string };
  percentUnreadable: { found: string; most: number };
  pieceLineUnreadable: { written: string; why: string; hint: string };
  piecesTooMany: { found: number; most: number };
  priceUnreadable: { found: string };
  selvagesTooWide: { selvages: string; width: string };
  sizeNotPositive: { field: string; found: string };
  sizeUnreadable: { written: string; why: string; hint: string };
  soldUnreadable: { found: string; why: string };
  fullWidthLengthwise: { name: string; other: string };
}

export function choiceUnknown(
  where: InFile,
  field: string,
  found: string,
  options: readonly string[],
): Diagnostic {
  return tell("CHOICE-UNKNOWN", "error", where, "choiceUnknown", { field, found, options });
}

export function clothTooMuch(where: InFile, fabric: string): Diagnostic {
  return tell("CLOTH-TOO-MUCH", "error", where, "clothTooMuch", { fabric });
}

export function colourUnreadable(where: InFile, found: string): Diagnostic {
  return tell("COLOUR-UNREADABLE", "error", where, "colourUnreadable", { found });
}

export function countNotWhole(where: InFile, found: string, most: number): Diagnostic {
  return tell("COUNT-NOT-WHOLE", "error", where, "countNotWhole", { found, most });
}

/** A key with nothing after it. In YAML a bare `#` starts a comment, which empties colours. */
export function fieldEmpty(where: InFile, field: string, help: FieldHelp): Diagnostic {
  return tell("FIELD-EMPTY", "error", where, "fieldEmpty", { field, help });
}

export function fieldMissing(where: InFile, field: string, help: FieldHelp): Diagnostic {
  return tell("FIELD-MISSING", "error", where, "fieldMissing", { field, help });
}

export function fieldType(
  where: InFile,
  field: string,
  found: string,
  expected: string,
  help: FieldHelp,
): Diagnostic {
  return tell("FIELD-TYPE", "error", where, "fieldType", { field, found, expected, help });
}

export function keyUnknown(
  where: InFile,
  key: string,
  known: readonly string[],
  hint = "",
  takenBy = "",
): Diagnostic {
  return tell("KEY-UNKNOWN", "error", where, "keyUnknown", { key, known, hint, takenBy });
}

export function labelRepeated(where: InFile, label: string, line: number | null): Diagnostic {
  return tell("LABEL-REPEATED", "error", where, "labelRepeated", { label, line });
}

export function lengthNegative(where: InFile, field: string, found: string): Diagnostic {
  return tell("LENGTH-NEGATIVE", "error", where, "lengthNegative", { field, found });
}

/** A cut that cannot be set on the maker's ruler. It is kept as written. */
export function lengthOffMarks(where: InFile, piece: string, size: string, mark: string): Diagnostic {
  return tell("LENGTH-OFF-MARKS", "warning", where, "lengthOffMarks", { piece, size, mark });
}

export function lengthRoundedUp(where: InFile, piece: string, written: string, size: string): Diagnostic {
  return tell("LENGTH-ROUNDED-UP", "info", where, "lengthRoundedUp", { piece, written, size });
}

export function lengthTooLong(where: InFile, field: string, found: string, most: string): Diagnostic {
  return tell("LENGTH-TOO-LONG", "error", where, "lengthTooLong", { field, found, most });
}

/** `why` says what was found; `hint` shows what a length looks like. */
export function lengthUnreadable(where: InFile, written: string, why: string, hint: string): Diagnostic {
  return tell("LENGTH-UNREADABLE", "error", where, "lengthUnreadable", { written, why, hint });
}

export function linesTooMany(where: InFile, what: string, found: number, most: number): Diagnostic {
  return tell("LINES-TOO-MANY", "error", where, "linesTooMany", { what, found, most });
}

export function measuresMixed(where: InFile, written: string, why: string, hint: string): Diagnostic {
  return tell("MEASURES-MIXED", "error", where, "measuresMixed", { written, why, hint });
}

/** Minutes for one step, in the file or on the command line. */
export function minutesUnreadable(where: InFile, field: string, found: string, most: number): Diagnostic {
  return tell("MINUTES-UNREADABLE", "error", where, "minutesUnreadable", { field, found, most });
}

export function nameRepeated(where: InFile, name: string, line: number | null): Diagnostic {
  return tell("NAME-REPEATED", "error", where, "nameRepeated", { name, line });
}

export function nameUnusable(where: InFile, field: string, why: string): Diagnostic {
  return tell("NAME-UNUSABLE", "error", where, "nameUnusable", { field, why });
}

/** A part of the pattern that is named twice. */
export function partRepeated(where: InFile, part: string): Diagnostic {
  return tell("PART-REPEATED", "error", where, "partRepeated", { part });
}

export function percentUnreadable(where: InFile, found: string, most: number): Diagnostic {
  return tell("PERCENT-UNREADABLE", "error", where, "percentUnreadable", { found, most });
}

export function pieceLineUnreadable(where: InFile, written: string, why: string, hint: string): Diagnostic {
  return tell("PIECE-LINE-UNREADABLE", "error", where, "pieceLineUnreadable", { written, why, hint });
}

export function piecesTooMany(where: InFile, found: number, most: number): Diagnostic {
  return tell("PIECES-TOO-MANY", "error", where, "piecesTooMany", { found, most });
}

export function priceUnreadable(where: InFile, found: string): Diagnostic {
  return tell("PRICE-UNREADABLE", "error", where, "priceUnreadable", { found });
}

export function selvagesTooWide(where: InFile, selvages: string, width: string): Diagnostic {
  return tell("SELVAGES-TOO-WIDE", "error", where, "selvagesTooWide", { selvages, width });
}

export function sizeNotPositive(where: InFile, field: string, found: string): Diagnostic {
  return tell("SIZE-NOT-POSITIVE", "error", where, "sizeNotPositive", { field, found });
}

export function sizeUnreadable(where: InFile, written: string, why: string, hint: string): Diagnostic {
  return tell("SIZE-UNREADABLE", "error", where, "sizeUnreadable", { written, why, hint });
}

export function soldUnreadable(where: InFile, found: string, why: string): Diagnostic {
  return tell("SOLD-UNREADABLE", "error", where, "soldUnreadable", { found, why });
}

/** A strip of the whole width cannot lie along the selvage. `other` is the side that was given, as printed. */
export function fullWidthLengthwise(where: InFile, name: string, other: string): Diagnostic {
  return tell("WOF-LENGTHWISE", "error", where, "fullWidthLengthwise", { name, other });
}
