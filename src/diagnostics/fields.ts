import type { LengthFault, LengthProblem } from "../length/problem.ts";
import type { LengthUnit } from "../length/types.ts";
import type { FileKey } from "./file-keys.ts";
import { tell } from "./tell.ts";

import type { Diagnostic, InFile } from "./types.ts";

/** What a field is for and how it is written: by the code of the schema. */
export interface FieldHelp {
  /** Null where the schema knows no such field. */
  about: FileKey | null;
  /** Examples in inches, where measures have examples of their own. */
  inches?: boolean;
  /** Of the part of a pattern that the field is named after. */
  of?: string;
  /** The value stands under its key; not so in a list. */
  keyed?: boolean;
  /** An example made of what is written, in place of the usual one. */
  example?: string;
}

/** Of what kind a value is. */
export type FoundKind = "empty-list" | "list" | "group" | "true" | "false" | "text";

/** Of what kind a value should be. */
export type ExpectedKind =
  | { is: "other" }
  | { is: "list" }
  | { is: "group" }
  | { is: "boolean" }
  | { is: "one-of"; options: readonly string[] }
  | { is: "whole-number" }
  | { is: "line-or-group" }
  | { is: "number-or-text" };

/** A length or size that is read, and is nothing or less. */
export const NOT_ABOVE_ZERO = { is: "not-above-zero" } as const;
export type MeasureFault = LengthFault | typeof NOT_ABOVE_ZERO;

/** Which examples of a size help: those of pieces in a measure, of a key of the file, or of finished units. */
export type SizeLike = { unit: LengthUnit } | { like: FileKey } | { like: "finished-unit" };

export type NameFault = { is: "empty" } | { is: "unprintable" } | { is: "too-long"; most: number };

export type SoldFault = LengthFault | { is: "not-understood" } | { is: "step-zero" };

/** What is wrong with a piece on one line. */
export type PieceFault =
  | { is: "no-size"; unit: LengthUnit }
  | { is: "too-long" }
  | { is: "empty" }
  | { is: "word-unknown"; word: string; known: readonly string[] };

/** What must be made of a fabric or of a block: `index` of a border, from 1. */
export type MadeOf = { what: "sashing" } | { what: "border"; index: number };

/** What is told of each, to be put in words. */
export interface FieldsFacts {
  choiceUnknown: { field: string; found: string; options: readonly string[] };
  clothTooMuch: { fabric: string };
  colourUnreadable: { found: string };
  countNotWhole: { found: string; most: number };
  fieldEmpty: { field: string; help: FieldHelp };
  fieldMissing: { field: string; help: FieldHelp };
  fieldType: { field: string; found: FoundKind; expected: ExpectedKind; help: FieldHelp };
  madeOfBoth: MadeOf;
  madeOfNothing: MadeOf;
  keyUnknown: {
    key: string;
    known: readonly string[];
    /** The piece on one line that the key and its value are meant as. */
    line?: string;
    /** The field of which the key is a value, where there is one. */
    takenBy?: string;
  };
  labelRepeated: { label: string; line: number | null };
  lengthNegative: { field: string; found: string };
  lengthOffMarks: { piece: string; size: string; mark: string };
  lengthRoundedUp: { piece: string; written: string; size: string };
  lengthTooLong: { field: string; found: string; metres: number };
  lengthUnreadable: { written: string; fault: MeasureFault; unit: LengthUnit | null };
  linesTooMany: { what: "fabrics" | "sizes"; found: number; most: number };
  measuresMixed: { written: string; problem: LengthProblem };
  minutesUnreadable: { field: string; found: string; most: number };
  nameRepeated: { name: string; line: number | null };
  nameUnusable: { field: string; fault: NameFault };
  partRepeated: { part: string };
  percentUnreadable: { found: string; most: number };
  pieceLineUnreadable: { written: string; fault: PieceFault };
  piecesTooMany: { found: number; most: number };
  priceUnreadable: { found: string };
  selvagesTooWide: { selvages: string; width: string };
  sizeNotPositive: { field: string; found: string };
  sizeUnreadable: { written: string; fault: MeasureFault; like: SizeLike };
  soldUnreadable: { found: string; fault: SoldFault };
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

/** Something that has neither a fabric nor a block. */
export function madeOfNothing(where: InFile, of: MadeOf): Diagnostic {
  return tell("FIELD-MISSING", "error", where, "madeOfNothing", of);
}

export function fieldType(
  where: InFile,
  field: string,
  found: FoundKind,
  expected: ExpectedKind,
  help: FieldHelp,
): Diagnostic {
  return tell("FIELD-TYPE", "error", where, "fieldType", { field, found, expected, help });
}

export function keyUnknown(
  where: InFile,
  key: string,
  known: readonly string[],
  line = "",
  takenBy = "",
): Diagnostic {
  return tell("KEY-UNKNOWN", "error", where, "keyUnknown", { key, known, line, takenBy });
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

export function lengthTooLong(where: InFile, field: string, found: string, metres: number): Diagnostic {
  return tell("LENGTH-TOO-LONG", "error", where, "lengthTooLong", { field, found, metres });
}

/** @param unit measure to show examples in; null for none */
export function lengthUnreadable(
  where: InFile,
  written: string,
  fault: MeasureFault,
  unit: LengthUnit | null,
): Diagnostic {
  return tell("LENGTH-UNREADABLE", "error", where, "lengthUnreadable", { written, fault, unit });
}

export function linesTooMany(
  where: InFile,
  what: "fabrics" | "sizes",
  found: number,
  most: number,
): Diagnostic {
  return tell("LINES-TOO-MANY", "error", where, "linesTooMany", { what, found, most });
}

export function measuresMixed(where: InFile, written: string, problem: LengthProblem): Diagnostic {
  return tell("MEASURES-MIXED", "error", where, "measuresMixed", { written, problem });
}

/** Minutes for one step, in the file or on the command line. */
export function minutesUnreadable(where: InFile, field: string, found: string, most: number): Diagnostic {
  return tell("MINUTES-UNREADABLE", "error", where, "minutesUnreadable", { field, found, most });
}

export function nameRepeated(where: InFile, name: string, line: number | null): Diagnostic {
  return tell("NAME-REPEATED", "error", where, "nameRepeated", { name, line });
}

export function nameUnusable(where: InFile, field: string, fault: NameFault): Diagnostic {
  return tell("NAME-UNUSABLE", "error", where, "nameUnusable", { field, fault });
}

/** A part of the pattern that is named twice. */
export function partRepeated(where: InFile, part: string): Diagnostic {
  return tell("PART-REPEATED", "error", where, "partRepeated", { part });
}

export function percentUnreadable(where: InFile, found: string, most: number): Diagnostic {
  return tell("PERCENT-UNREADABLE", "error", where, "percentUnreadable", { found, most });
}

export function pieceLineUnreadable(where: InFile, written: string, fault: PieceFault): Diagnostic {
  return tell("PIECE-LINE-UNREADABLE", "error", where, "pieceLineUnreadable", { written, fault });
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

export function sizeUnreadable(
  where: InFile,
  written: string,
  fault: MeasureFault,
  like: SizeLike,
): Diagnostic {
  return tell("SIZE-UNREADABLE", "error", where, "sizeUnreadable", { written, fault, like });
}

/** Something that has both a fabric and a block. */
export function madeOfBoth(where: InFile, of: MadeOf): Diagnostic {
  return tell("SIZES-DO-NOT-ADD-UP", "error", where, "madeOfBoth", of);
}

export function soldUnreadable(where: InFile, found: string, fault: SoldFault): Diagnostic {
  return tell("SOLD-UNREADABLE", "error", where, "soldUnreadable", { found, fault });
}

/** A strip of the whole width cannot lie along the selvage. `other` is the side that was given, as printed. */
export function fullWidthLengthwise(where: InFile, name: string, other: string): Diagnostic {
  return tell("WOF-LENGTHWISE", "error", where, "fullWidthLengthwise", { name, other });
}
