import * as z from "zod";
import * as say from "../../diagnostics/fields.ts";
import type { FileKey } from "../../diagnostics/file-keys.ts";
import type { InFile } from "../../diagnostics/reading.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { TICKS_PER } from "../../length/measures.ts";
import { parseLength } from "../../length/parse.ts";
import { compare, fromInteger, type Rational, sign } from "../../length/rational.ts";
import type { LengthUnit } from "../../length/types.ts";
import { readSize, type WrittenProblem, type WrittenSize } from "./piece-line.ts";

/** A length as written and as read. */
export interface WrittenLength {
  text: string;
  value: Rational;
  unit: LengthUnit | null;
}

/** What a custom issue carries: how to word it, and where in the value's text it is. */
export interface Wording {
  build: (where: InFile, field: string) => Diagnostic;
  column: number;
}

/** No cloth is longer. */
const LONGEST_METRES = 100;
const LONGEST = fromInteger(LONGEST_METRES * TICKS_PER.m);
export const MOST_PIECES = 200_000;

/** Text or number: YAML gives `24` as a number, and numbers reach us as they were written. */
export const text = () => z.union([z.string(), z.number()]);

type Context = z.RefinementCtx;

/** Refuses a value in words of our own. Returns zod's sign for "no value". */
export function refuse(context: Context, build: Wording["build"], column = 1): never {
  context.addIssue({ code: "custom", params: { build, column } satisfies Wording });
  return z.NEVER;
}

/** What the schema says of a key: a code that a language has words for, and what kind of value is written. */
export interface About {
  about: FileKey;
  /** Whether lengths are shown in inches where examples differ. Default true. */
  inches?: boolean;
  /** The part of a pattern it belongs to. */
  of?: string;
  /** The type of a value that is written as text or number. */
  written?: object;
}

/** Marks a schema with what it is about. */
export function describes(key: FileKey, more: Omit<About, "about"> = {}): About & Record<string, unknown> {
  return { about: key, ...more };
}

export const inInches = (unit: LengthUnit): boolean => unit === "in" || unit === "yd";

/** A leaf written as text or number and read by `read`, with what it is about and its place in the JSON Schema. */
export function leaf<T>(
  { type = {}, ...of }: Omit<About, "written"> & { type?: object },
  read: (written: string, context: Context) => T,
) {
  return text()
    .transform((value, context) => read(String(value).trim(), context))
    .meta({ ...of, written: type });
}

/** A piece line with the count it wants: the one written in front of the size, where that is what was meant. */
function withCount(written: string): string {
  const [, count, size] = /^(\d+)\s*(?:of|pieces of|pcs|Stück|mal)\s+(.+)$/iu.exec(written) ?? [];
  return count === undefined || size === undefined ? `${written}, 24` : `${size}, ${count}`;
}

export function refuseProblem(context: Context, written: string, problem: WrittenProblem, offset = 0): never {
  const column = problem.column + offset;
  if (problem.kind === "count-missing") {
    const help = { about: "count.on-line", example: withCount(written.slice(0, 40)) } as const;
    return refuse(context, (where) => say.fieldMissing(where, "count", help), column);
  }
  if (problem.kind === "line")
    return refuse(context, (where) => say.pieceLineUnreadable(where, written, problem.fault), column);
  const { fault, unit, found } = problem.problem;
  if (problem.kind === "mixed")
    return refuse(context, (where) => say.measuresMixed(where, written, problem.problem), column);
  if (problem.kind === "size")
    return refuse(context, (where) => say.sizeUnreadable(where, written, fault, { unit }), column);
  return refuse(
    context,
    (where) => say.lengthUnreadable(where, found === "" ? written : found, fault, unit),
    column,
  );
}

/** A length that may be zero unless `positive`, and is never negative or beyond all cloth. */
export function length(unit: LengthUnit, about: FileKey, positive = false) {
  return leaf({ about, inches: inInches(unit) }, (written, context): WrittenLength => {
    const read = parseLength(written, unit);
    if (!read.ok) {
      const { fault, column } = read.problem;
      return refuse(context, (where) => say.lengthUnreadable(where, written, fault, unit), column);
    }
    if (sign(read.value) < 0)
      return refuse(context, (where, field) => say.lengthNegative(where, field, written));
    if (positive && sign(read.value) === 0) {
      return refuse(context, (where, field) => say.sizeNotPositive(where, field, written));
    }
    if (compare(read.value, LONGEST) > 0) {
      return refuse(context, (where, field) => say.lengthTooLong(where, field, written, LONGEST_METRES));
    }
    return { text: written, value: read.value, unit: read.unit };
  });
}

/** Refuses a size with a side of nothing, or longer than any cloth. */
export function checkSize(size: WrittenSize, written: string, context: Context, column = 1): WrittenSize {
  const sides = size.fullWidth ? [size.along] : [size.across, size.along];
  if (sides.some((side) => sign(side) <= 0)) {
    return refuse(context, (where) => say.sizeNotPositive(where, "size", written), column);
  }
  if (sides.some((side) => compare(side, LONGEST) > 0)) {
    return refuse(context, (where) => say.lengthTooLong(where, "size", written, LONGEST_METRES), column);
  }
  return size;
}

export function size(unit: LengthUnit, about: FileKey) {
  return leaf({ about, inches: inInches(unit) }, (written, context): WrittenSize => {
    const read = readSize(written, unit);
    return read.ok ? checkSize(read.value, written, context) : refuseProblem(context, written, read.problem);
  });
}

/** A count as written; shared by the `count` field and the one-line piece. */
export function readCount(written: string, context: Context, column = 1): number {
  if (/^[1-9]\d{0,6}$/.test(written) && Number(written) <= MOST_PIECES) return Number(written);
  return refuse(context, (where) => say.countNotWhole(where, written, MOST_PIECES), column);
}

export function count(about: FileKey) {
  const type = { type: "integer", minimum: 1, maximum: MOST_PIECES };
  return leaf({ about, type }, (written, context) => readCount(written, context));
}

/** Characters that print as nothing, move the cursor or turn the writing round. Joiners of scripts are kept. */
const UNPRINTABLE = /[\p{Cc}\p{Cs}\p{Co}\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/u;
const LONGEST_NAME = 80;
const LONGEST_NOTE = 500;

/** A name or note, in one Unicode form so that equal-looking names are equal. */
export function words(about: FileKey, kind: "name" | "note" = "name") {
  return leaf({ about }, (written, context): string => readWords(written, kind, context));
}

export function readWords(written: string, kind: "name" | "note", context: Context, column = 1): string {
  const most = kind === "name" ? LONGEST_NAME : LONGEST_NOTE;
  const clean = written.normalize("NFC").trim().replace(/\s+/g, " ");
  if (kind === "name" && clean === "") {
    return refuse(context, (where, field) => say.nameUnusable(where, field, { is: "empty" }), column);
  }
  if (UNPRINTABLE.test(clean)) {
    return refuse(context, (where, field) => say.nameUnusable(where, field, { is: "unprintable" }), column);
  }
  if ([...clean].length > most) {
    return refuse(
      context,
      (where, field) => say.nameUnusable(where, field, { is: "too-long", most }),
      column,
    );
  }
  return clean;
}

/** One of a few words, whatever its capitals. */
export function choice<const T extends readonly [string, ...string[]]>(options: T, about: FileKey) {
  return leaf({ about, type: { type: "string", enum: [...options] } }, (written, context): T[number] => {
    const found = options.find((option) => option === written.toLowerCase().replace(/\s+/g, " "));
    return found ?? refuse(context, (where, field) => say.choiceUnknown(where, field, written, options));
  });
}
