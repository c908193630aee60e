import { isBetweenMarks, onMark } from "./marks.ts";
import { TICKS_PER } from "./measures.ts";
import type { DecimalMark, LengthUnit, Ruler, Ticks } from "./types.ts";
import { type Language, writingOf } from "./writing.ts";

/**
 * How a length is shown. `unit` (default true) adds the measure; `typeset` (default false) uses ½ and ×; `decimal`
 * (default a point) sets off tenths; `language` (default English) names the measure.
 */
export interface LengthStyle {
  unit?: boolean;
  typeset?: boolean;
  decimal?: DecimalMark | undefined;
  language?: Language | undefined;
}

/** Fractions printed of an inch and of a yard, first choice first: shops sell thirds of a yard too. */
const FRACTIONS = { in: [128], yd: [16, 12] } as const;
/** Decimals that show 0.05 mm exactly. */
const DECIMALS = { mm: 2, cm: 3, m: 5 } as const;

const GLYPHS: Readonly<Record<string, string>> = {
  "1/2": "½",
  "1/4": "¼",
  "3/4": "¾",
  "1/8": "⅛",
  "3/8": "⅜",
  "5/8": "⅝",
  "7/8": "⅞",
  "1/3": "⅓",
  "2/3": "⅔",
};
const RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const LOWERED = "₀₁₂₃₄₅₆₇₈₉";

function inDigits(value: number, digits: string): string {
  return [...String(value)].map((digit) => digits[Number(digit)] ?? digit).join("");
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

function asFraction(parts: number, finest: number, typeset: boolean): string {
  const whole = Math.floor(parts / finest);
  const rest = parts % finest;
  if (rest === 0) return String(whole);
  const common = gcd(rest, finest);
  const [top, bottom] = [rest / common, finest / common];
  const plain = `${top}/${bottom}`;
  if (!typeset) return whole === 0 ? plain : `${whole} ${plain}`;
  const glyph = GLYPHS[plain] ?? `${inDigits(top, RAISED)}⁄${inDigits(bottom, LOWERED)}`;
  return whole === 0 ? glyph : `${whole}${glyph}`;
}

function asDecimal(scaled: number, decimals: number): string {
  const digits = String(scaled).padStart(decimals + 1, "0");
  const fraction = digits.slice(-decimals).replace(/0+$/, "");
  const whole = digits.slice(0, -decimals);
  return fraction === "" ? whole : `${whole}.${fraction}`;
}

/** The number alone when `size` can be said exactly in `unit`, else null. */
function numberIn(size: Ticks, unit: LengthUnit, typeset: boolean): string | null {
  if (unit === "in" || unit === "yd") {
    const finest = FRACTIONS[unit].find((parts) => size % (TICKS_PER[unit] / parts) === 0);
    return finest === undefined ? null : asFraction(size / (TICKS_PER[unit] / finest), finest, typeset);
  }
  const step = TICKS_PER[unit] / 10 ** DECIMALS[unit];
  const scaled = size / step;
  return Number.isSafeInteger(scaled) ? asDecimal(scaled, DECIMALS[unit]) : null;
}

/** Where to turn when a length cannot be said exactly in the measure wanted. */
const OTHERS: Readonly<Record<LengthUnit, readonly LengthUnit[]>> = {
  in: ["mm"],
  yd: ["in", "cm"],
  mm: ["in"],
  cm: ["in"],
  m: ["cm", "in"],
};

/** Five decimals of an inch and four of a millimetre are each finer than a tick. */
function nearly(size: Ticks, unit: LengthUnit): string {
  const imperial = unit === "in" || unit === "yd";
  const value = size / TICKS_PER[imperial ? "in" : "mm"];
  return `${value.toFixed(imperial ? 5 : 4).replace(/0+$/, "")} ${imperial ? "in" : "mm"}`;
}

interface Spoken {
  number: string;
  unit: LengthUnit;
}

function speak(ticks: Ticks, unit: LengthUnit, typeset: boolean): Spoken {
  const minus = ticks < 0 ? (typeset ? "−" : "-") : "";
  const size = Math.abs(ticks);
  // A cloth sold as 112 cm is told so, not as 1120 mm.
  const wholeCentimetres = size % TICKS_PER.cm === 0;
  for (const other of [unit, ...OTHERS[unit]]) {
    const candidate = other === "mm" && unit === "in" && wholeCentimetres ? "cm" : other;
    const number = numberIn(size, candidate, typeset);
    if (number !== null) return { number: minus + number, unit: candidate };
  }
  const [number = "", last] = nearly(size, unit).split(" ");
  return { number: minus + number, unit: last as LengthUnit };
}

/** What a measure is called behind a number. */
export function measureName(unit: LengthUnit, language: Language | undefined): string {
  return unit === "in" ? writingOf(language).inch : unit;
}

function marked(number: string, decimal: DecimalMark | undefined): string {
  return decimal === "comma" ? number.replace(".", ",") : number;
}

/** A number with so many decimals, as the maker writes them: `18.9`, `18,9`. */
export function formatNumber(value: number, decimals: number, ruler: Pick<Ruler, "decimal">): string {
  return marked(value.toFixed(decimals), ruler.decimal);
}

/**
 * A length in one measure: `1 3/8 yd`, `1.2 m`. A length that measure cannot say exactly is printed in
 * one that can, so that nothing is moved silently; its measure is then always named.
 */
export function formatMeasure(ticks: Ticks, unit: LengthUnit, style: LengthStyle = {}): string {
  const spoken = speak(ticks, unit, style.typeset ?? false);
  const bare = style.unit === false && spoken.unit === unit;
  const number = marked(spoken.number, style.decimal);
  return bare ? number : `${number} ${measureName(spoken.unit, style.language)}`;
}

/** How lengths are written: a ruler, or one with the measure of the shop in place of its own. */
type Measured = Partial<Omit<Ruler, "unit">> & { unit: LengthUnit };

/** A length as the maker's ruler reads: `2 1/2 in`, `6.5 cm`; typeset `2½ in`. The ruler says the decimal mark. */
export function formatLength(ticks: Ticks, ruler: Measured, style: LengthStyle = {}): string {
  return formatMeasure(ticks, ruler.unit, { decimal: ruler.decimal, language: ruler.language, ...style });
}

/** A size, across first: `2 1/2 x 4 1/2 in`; typeset `2½ × 4½ in`. */
export function formatSize(across: Ticks, along: Ticks, ruler: Ruler, style: LengthStyle = {}): string {
  const typeset = style.typeset ?? false;
  const by = typeset ? "×" : "x";
  const decimal = "decimal" in style ? style.decimal : ruler.decimal;
  const say = (ticks: Ticks): Spoken => {
    const spoken = speak(ticks, ruler.unit, typeset);
    return { ...spoken, number: marked(spoken.number, decimal) };
  };
  const named = (unit: LengthUnit): string => measureName(unit, style.language ?? ruler.language);
  const [first, second] = [say(across), say(along)];
  if (first.unit !== second.unit) {
    return `${first.number} ${named(first.unit)} ${by} ${second.number} ${named(second.unit)}`;
  }
  const numbers = `${first.number} ${by} ${second.number}`;
  return style.unit === false && first.unit === ruler.unit ? numbers : `${numbers} ${named(first.unit)}`;
}

/** Set before a length between the ruler's marks. */
const exactly = ({ language }: Ruler): string => `${writingOf(language).exactly} `;

/** A length on the cloth: one between the marks that the seam allowances ask for is marked as exact. */
export function formatExact(ticks: Ticks, ruler: Ruler, style: LengthStyle = {}): string {
  return (isBetweenMarks(ticks, ruler) ? exactly(ruler) : "") + formatLength(ticks, ruler, style);
}

/** A size on the cloth, across first; the same. */
export function formatExactSize(across: Ticks, along: Ticks, ruler: Ruler, style: LengthStyle = {}): string {
  const between = isBetweenMarks(across, ruler) || isBetweenMarks(along, ruler);
  return (between ? exactly(ruler) : "") + formatSize(across, along, ruler, style);
}

/**
 * A length to cut, as the ruler reads: the one place that prints what a blade is set to. One that the seam allowances ask
 * for between the marks is marked as exact.
 * @throws Error for any other length off the marks, which no ruler can set: a promise of ours is broken then, as everything that
 *   derives from a design is rounded up to a mark
 */
export function formatCut(ticks: Ticks, ruler: Ruler, style: LengthStyle = {}): string {
  if (!onMark(ticks, ruler) && !isBetweenMarks(ticks, ruler)) {
    const said = formatLength(ticks, ruler);
    throw new Error(`${said} is no mark of a ruler with marks every ${formatLength(ruler.mark, ruler)}`);
  }
  return formatExact(ticks, ruler, style);
}

/** A size to cut or to trim to, across first; the same promise. */
export function formatCutSize(across: Ticks, along: Ticks, ruler: Ruler, style: LengthStyle = {}): string {
  for (const side of [across, along]) formatCut(side, ruler);
  return formatExactSize(across, along, ruler, style);
}

/** The nearest mark, and whether that is the length itself: for what is measured and not cut. */
export function nearestMark(ticks: Ticks, ruler: Ruler): { ticks: Ticks; exact: boolean } {
  if (onMark(ticks, ruler) || isBetweenMarks(ticks, ruler) || ticks < ruler.mark)
    return { ticks, exact: true };
  return { ticks: Math.round(ticks / ruler.mark) * ruler.mark, exact: false };
}
