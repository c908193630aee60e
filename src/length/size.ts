import { familyOf, TICKS_PER } from "./measures.ts";
import { type LengthProblem, LONGEST_TEXT, parseLength } from "./parse.ts";
import type { Rational } from "./rational.ts";
import { div, fromInteger, mul } from "./rational.ts";
import type { LengthUnit } from "./types.ts";

/** One of the lengths cannot be read, there are not two of them, or their measures do not go together. */
type SizeFault = "length" | "size" | "mixed";

/** Two lengths in ticks, exact: across first, then along, each with the measure it was written in. */
export type ParsedSize =
  | { ok: true; across: Rational; along: Rational; units: [LengthUnit | null, LengthUnit | null] }
  | { ok: false; problem: LengthProblem; kind: SizeFault };

/** The sign between the two lengths of a size, with a figure or a measure on both sides of it. */
const BETWEEN = /\s*(?:(?<!\/)[x×✕*]|\bby\b)\s*/giu;
const SQUARE = /\s*\b(?:square|sq)\b\.?\s*$/i;

/** What a size looks like, in the measure of the file. */
export function sizeExamples(unit: LengthUnit): string {
  const example = familyOf(unit) === "imperial" ? "2 1/2 x 4 1/2 in" : "6.5 x 11.5 cm";
  return `A size is two lengths, across the fabric first: \`${example}\`.`;
}

function refuse(
  found: string,
  column: number,
  message: string,
  hint: string,
  kind: SizeFault = "size",
): ParsedSize {
  return { ok: false, problem: { found, column, message, hint }, kind };
}

function shifted(problem: LengthProblem, by: number): ParsedSize {
  return { ok: false, problem: { ...problem, column: problem.column + by }, kind: "length" };
}

/** A bare number beside a written measure takes that measure. */
function inUnit(value: Rational, from: LengthUnit, to: LengthUnit): Rational {
  return div(mul(value, fromInteger(TICKS_PER[to])), fromInteger(TICKS_PER[from]));
}

/**
 * Reads a size: `2 1/2 x 4 1/2 in`, `2.5" by 4.5"`, `6,5 × 11,5 cm`, `4 1/2 in square`. A measure written once holds for
 * both lengths, unless it is yd or m, where that would be a guess. Inches beside centimetres are refused. Never
 * throws.
 */
export function parseSize(text: string, defaultUnit: LengthUnit): ParsedSize {
  if (text.length > 2 * LONGEST_TEXT) {
    return refuse(
      `${text.slice(0, 20)}...`,
      1,
      "this text is too long to be a size",
      sizeExamples(defaultUnit),
    );
  }
  const square = SQUARE.exec(text);
  if (square) {
    const side = parseLength(text.slice(0, square.index), defaultUnit);
    if (!side.ok) return shifted(side.problem, 0);
    return { ok: true, across: side.value, along: side.value, units: [side.unit, side.unit] };
  }
  const signs = [...text.matchAll(BETWEEN)];
  const [between] = signs;
  if (between === undefined || signs.length > 1) {
    const message = between === undefined ? "only one length was found" : "more than two lengths were found";
    return refuse(text.trim(), 1, message, sizeExamples(defaultUnit));
  }
  const offset = between.index + between[0].length;
  const first = parseLength(text.slice(0, between.index), defaultUnit);
  if (!first.ok) return shifted(first.problem, 0);
  const second = parseLength(text.slice(offset), defaultUnit);
  if (!second.ok) return shifted(second.problem, offset);
  return agree(text, first, second, offset, defaultUnit);
}

interface Side {
  value: Rational;
  unit: LengthUnit | null;
}

function agree(text: string, first: Side, second: Side, offset: number, defaultUnit: LengthUnit): ParsedSize {
  let { value: across } = first;
  let { value: along } = second;
  const written = first.unit ?? second.unit;
  if (first.unit !== null && second.unit !== null && familyOf(first.unit) !== familyOf(second.unit)) {
    const message = `${first.unit} and ${second.unit} are mixed in one size`;
    const hint = "Write both lengths in inches, or both in centimetres.";
    return refuse(text.slice(offset).trim(), offset + 1, message, hint, "mixed");
  }
  if (written !== null && (first.unit === null || second.unit === null)) {
    if (written === "yd" || written === "m") {
      const message = `it is not clear whether both lengths are in ${written}`;
      return refuse(text.trim(), 1, message, "Write the measure after each length: `4 1/2 in x 2 yd`.");
    }
    if (first.unit === null) across = inUnit(across, defaultUnit, written);
    if (second.unit === null) along = inUnit(along, defaultUnit, written);
  }
  return { ok: true, across, along, units: [first.unit, second.unit] };
}
