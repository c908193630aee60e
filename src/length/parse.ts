import { familyOf, TICKS_PER } from "./measures.ts";
import type { LengthFault, LengthProblem } from "./problem.ts";
import type { Rational } from "./rational.ts";
import { add, fromInteger, mul, negate, rational } from "./rational.ts";
import { type Tidied, tidy } from "./tidy.ts";
import type { LengthUnit } from "./types.ts";

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

class Reader {
  at = 0;
  private readonly source: Tidied;
  private readonly unit: LengthUnit;

  constructor(source: Tidied, unit: LengthUnit) {
    this.source = source;
    this.unit = unit;
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

  problem(fault: LengthFault, length = this.rest.trimEnd().length): LengthProblem {
    const column = this.source.columns[this.at] ?? 1;
    return { found: this.source.text.slice(this.at, this.at + length), column, fault, unit: this.unit };
  }
}

function isProblem(value: Rational | LengthProblem): value is LengthProblem {
  return "fault" in value;
}

function readFraction(
  reader: Reader,
  match: RegExpMatchArray,
  whole: bigint | null,
): Rational | LengthProblem {
  const [all, top = "", bottom = ""] = match;
  const denominator = BigInt(bottom);
  if (denominator === 0n) return reader.problem({ is: "zero-divisor", text: all }, all.length);
  if (whole !== null && BigInt(top) >= denominator) {
    return reader.problem({ is: "not-below-one", text: all }, all.length);
  }
  reader.at += all.length;
  return rational((whole ?? 0n) * denominator + BigInt(top), denominator);
}

function readNumber(reader: Reader): Rational | LengthProblem {
  const digits = /^[\d.,/ ]*/.exec(reader.rest)?.[0] ?? "";
  const longest = digits.match(/\d+/g)?.find((run) => run.length > MOST_DIGITS);
  if (longest !== undefined) return reader.problem({ is: "too-many-digits", text: longest }, longest.length);
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
      return reader.problem({ is: "thousands-or-tenths", text: all, whole, part }, all.length);
    }
    reader.at += all.length;
    return rational(BigInt(whole + part), 10n ** BigInt(part.length));
  }
  const plain = WHOLE.exec(reader.rest);
  if (plain) {
    if (/^ *\//.test(reader.rest.slice(plain[0].length))) {
      return reader.problem({ is: "no-fraction", text: reader.rest.trimEnd() });
    }
    reader.at += plain[0].length;
    return rational(BigInt(plain[0]));
  }
  return reader.problem({ is: "no-number", text: reader.rest.trimEnd() });
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
    return reader.problem({ is: "feet" });
  }
  const word = /^[a-z]+/i.exec(reader.rest)?.[0];
  if (word !== undefined && match) {
    return reader.problem({ is: "no-measure", text: word }, word.length);
  }
  const text = reader.rest.trimEnd();
  return reader.problem(reader.rest.includes("/") ? { is: "no-fraction", text } : { is: "left-over", text });
}

/**
 * Reads one length: `2 1/2`, `2-1/2`, `2½`, `2.5"`, `6,5 cm`, `1 1/4 yd`, `1 yd 9 in`. The value is exact, in
 * ticks. A bare number is in `defaultUnit`, and `unit` is then null. A leading minus is read, so that callers can say
 * what is wrong with a negative size. Never throws.
 */
export function parseLength(text: string, defaultUnit: LengthUnit): ParsedLength {
  if (text.length > LONGEST_TEXT) {
    const found = `${text.slice(0, 20)}...`;
    return { ok: false, problem: { found, column: 1, fault: { is: "length-too-long" }, unit: defaultUnit } };
  }
  const reader = new Reader(tidy(text), defaultUnit);
  reader.skipSpace();
  if (reader.atEnd) return { ok: false, problem: { ...reader.problem({ is: "no-length" }), found: "" } };
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
        problem: reader.problem({ is: "does-not-follow", text: reader.rest.trim(), after: previous }),
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
