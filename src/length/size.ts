import { familyOf, TICKS_PER } from "./measures.ts";
import { LONGEST_TEXT, parseLength } from "./parse.ts";
import type { LengthFault, LengthProblem } from "./problem.ts";
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

function refuse(
  found: string,
  column: number,
  fault: LengthFault,
  unit: LengthUnit,
  kind: SizeFault = "size",
): ParsedSize {
  return { ok: false, problem: { found, column, fault, unit }, kind };
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
    return refuse(`${text.slice(0, 20)}...`, 1, { is: "size-too-long" }, defaultUnit);
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
    return refuse(text.trim(), 1, { is: between === undefined ? "one-length" : "many-lengths" }, defaultUnit);
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
    const fault = { is: "families-mixed", first: first.unit, second: second.unit } as const;
    return refuse(text.slice(offset).trim(), offset + 1, fault, defaultUnit, "mixed");
  }
  if (written !== null && (first.unit === null || second.unit === null)) {
    if (written === "yd" || written === "m") {
      return refuse(text.trim(), 1, { is: "measure-once", measure: written }, defaultUnit);
    }
    if (first.unit === null) across = inUnit(across, defaultUnit, written);
    if (second.unit === null) along = inUnit(along, defaultUnit, written);
  }
  return { ok: true, across, along, units: [first.unit, second.unit] };
}
