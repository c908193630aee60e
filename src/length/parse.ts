import { familyOf, TICKS_PER } from "./measures.ts";
import type { Rational } from "./rational.ts";
import { add, fromInteger, mul, negate, rational } from "./rational.ts";
import { type Tidied, tidy } from "./tidy.ts";
import type { LengthUnit } from "./types.ts";

/** Why a text is not a length. `column` counts from 1 inside the text. */
export interface LengthProblem {
  /** The part that could not be read. */
  found: string;
  column: number;
  message: string;
  /** What a length looks like, with examples to copy. */
  hint: string;
}

export type ParsedLength =
  | { ok: true; value: Rational; unit: LengthUnit | null }
  | { ok: false; problem: LengthProblem };

const SPELLINGS: Readonly<Record<string, LengthUnit>> = {
  '"': "in",
  "''": "in",
  in: "in",
  ins: "in",
  inch: "in",
  inches: "in",
  yd: "yd",
  yds: "yd",
  yard: "yd",
  yards: "yd",
  mm: "mm",
  millimetre: "mm",
  millimetres: "mm",
  millimeter: "mm",
  millimeters: "mm",
  cm: "cm",
  centimetre: "cm",
  centimetres: "cm",
  centimeter: "cm",
  centimeters: "cm",
  m: "m",
  metre: "m",
  metres: "m",
  meter: "m",
  meters: "m",
};

const FRACTION = /^(\d+) *\/ *(\d+)/;
/** `2 1/2`, `2-1/2`, `2 - 1/2`, `2+1/2`; the fraction is looked at separately. */
const WHOLE_AND_FRACTION = /^(\d+)(?: *[-+] *| +)(?=\d+ *\/)/;
const DECIMAL = /^(\d*)[.,](\d+)/;
const WHOLE = /^\d+/;
const UNIT = /^ *('{2}|"|[a-z]+)\.?(?![a-z0-9/])/i;
/** More digits than any cloth needs; keeps hostile input from building huge fractions. */
const MOST_DIGITS = 12;
/** Longer texts are refused unread. */
export const LONGEST_TEXT = 120;

/** What a length looks like, in the measure of the file. */
function lengthExamples(unit: LengthUnit): string {
  if (familyOf(unit) === "imperial") {
    return "A length looks like `2 1/2`, `2.5 in` or `1 1/4 yd`.";
  }
  return "A length looks like `6.5 cm`, `65 mm` or `1.2 m`.";
}

class Reader {
  at = 0;
  private readonly source: Tidied;
  private readonly hint: string;

  constructor(source: Tidied, hint: string) {
    this.source = source;
    this.hint = hint;
  }

  get rest(): string {
    return this.source.text.slice(this.at);
  }

  get atEnd(): boolean {
    return this.rest.trim() === "";
  }

  skipSpace(): void {
    this.at += this.rest.length - this.rest.trimStart().length;
  }

  problem(message: string, length = this.rest.trimEnd().length, hint = this.hint): LengthProblem {
    const column = this.source.columns[this.at] ?? 1;
    return { found: this.source.text.slice(this.at, this.at + length), column, message, hint };
  }
}

function isProblem(value: Rational | LengthProblem): value is LengthProblem {
  return "message" in value;
}

function readFraction(
  reader: Reader,
  match: RegExpMatchArray,
  whole: bigint | null,
): Rational | LengthProblem {
  const [all, top = "", bottom = ""] = match;
  const denominator = BigInt(bottom);
  if (denominator === 0n) return reader.problem(`\`${all}\` divides by zero`, all.length);
  if (whole !== null && BigInt(top) >= denominator) {
    return reader.problem(`\`${all}\` after a whole number is not less than one`, all.length);
  }
  reader.at += all.length;
  return rational((whole ?? 0n) * denominator + BigInt(top), denominator);
}

function readNumber(reader: Reader): Rational | LengthProblem {
  const digits = /^[\d.,/ ]*/.exec(reader.rest)?.[0] ?? "";
  const longest = digits.match(/\d+/g)?.find((run) => run.length > MOST_DIGITS);
  if (longest !== undefined)
    return reader.problem(`\`${longest}\` has too many digits for a length`, longest.length);
  const mixed = WHOLE_AND_FRACTION.exec(reader.rest);
  if (mixed) {
    const start = reader.at;
    reader.at += mixed[0].length;
    const fraction = FRACTION.exec(reader.rest);
    if (fraction) return readFraction(reader, fraction, BigInt(mixed[1] ?? "0"));
    // The stroke has no denominator after it: let the plain number be read, and the rest be refused.
    reader.at = start;
  }
  const fraction = FRACTION.exec(reader.rest);
  if (fraction) return readFraction(reader, fraction, null);
  const decimal = DECIMAL.exec(reader.rest);
  if (decimal) {
    const [all, whole = "", part = ""] = decimal;
    if (all.includes(",") && part.length === 3 && !/^0*$/.test(whole)) {
      return reader.problem(
        `\`${all}\` could mean thousands or a decimal comma`,
        all.length,
        `Write \`${whole}.${part}\` or \`${whole}${part}\`.`,
      );
    }
    reader.at += all.length;
    return rational(BigInt(whole + part), 10n ** BigInt(part.length));
  }
  const plain = WHOLE.exec(reader.rest);
  if (plain) {
    if (/^ *\//.test(reader.rest.slice(plain[0].length))) {
      return reader.problem(`\`${reader.rest.trimEnd()}\` is not a fraction`);
    }
    reader.at += plain[0].length;
    return rational(BigInt(plain[0]));
  }
  return reader.problem(`\`${reader.rest.trimEnd()}\` is not a number`);
}

function readUnit(reader: Reader): LengthUnit | null | LengthProblem {
  if (reader.atEnd) return null;
  const match = UNIT.exec(reader.rest);
  const spelling = match?.[1]?.toLowerCase() ?? "";
  const unit = SPELLINGS[spelling];
  if (match && unit !== undefined) {
    reader.at += match[0].length;
    return unit;
  }
  reader.skipSpace();
  if (/^('|ft\b|feet\b|foot\b)/i.test(reader.rest)) {
    return reader.problem("feet are not read", undefined, "Write inches or yards: `18 in`, `1/2 yd`.");
  }
  const word = /^[a-z]+/i.exec(reader.rest)?.[0];
  if (word !== undefined && match) {
    return reader.problem(`\`${word}\` is not a measure; known are in, yd, mm, cm and m`, word.length);
  }
  const left = `\`${reader.rest.trimEnd()}\``;
  const stroke = reader.rest.includes("/");
  return reader.problem(stroke ? `${left} is not a fraction` : `${left} was left over after the number`);
}

/**
 * Reads one length: `2 1/2`, `2-1/2`, `2½`, `2.5"`, `6,5 cm`, `1 1/4 yd`, `1 yd 9 in`. The value is exact, in
 * ticks. A bare number is in `defaultUnit`, and `unit` is then null. A leading minus is read, so that callers can say
 * what is wrong with a negative size. Never throws.
 */
export function parseLength(text: string, defaultUnit: LengthUnit): ParsedLength {
  const hint = lengthExamples(defaultUnit);
  if (text.length > LONGEST_TEXT) {
    const message = "this text is too long to be a length";
    return { ok: false, problem: { found: `${text.slice(0, 20)}...`, column: 1, message, hint } };
  }
  const reader = new Reader(tidy(text), hint);
  reader.skipSpace();
  if (reader.atEnd)
    return { ok: false, problem: { ...reader.problem("there is no length here"), found: "" } };
  const negative = reader.rest.startsWith("-");
  if (negative) reader.at++;
  reader.skipSpace();
  let total = fromInteger(0);
  let previous: LengthUnit | null = null;
  do {
    const start = reader.at;
    const number = readNumber(reader);
    if (isProblem(number)) return { ok: false, problem: number };
    const unit = readUnit(reader);
    if (unit !== null && typeof unit !== "string") return { ok: false, problem: unit };
    if (previous !== null && !follows(previous, unit)) {
      reader.at = start;
      return {
        ok: false,
        problem: reader.problem(`\`${reader.rest.trim()}\` does not go on from ${previous}`),
      };
    }
    total = add(total, mul(number, fromInteger(TICKS_PER[unit ?? defaultUnit])));
    previous = unit;
    reader.skipSpace();
  } while (previous !== null && !reader.atEnd);
  return { ok: true, value: negative ? negate(total) : total, unit: previous };
}

/** A length in two parts runs from the larger measure to a smaller one of the same family. */
function follows(previous: LengthUnit, unit: LengthUnit | null): boolean {
  if (unit === null || familyOf(previous) !== familyOf(unit)) return false;
  return TICKS_PER[unit] < TICKS_PER[previous];
}
