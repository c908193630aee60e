import type { LengthUnit, Ruler, Ticks } from "./types.ts";

/** Ticks in one of each measure: an inch is 25.4 mm exactly, a yard is 36 in. */
export const TICKS_PER: Readonly<Record<LengthUnit, Ticks>> = {
  in: 16256,
  yd: 585216,
  mm: 640,
  cm: 6400,
  m: 640000,
};

export const INCH: Ticks = TICKS_PER.in;
export const YARD: Ticks = TICKS_PER.yd;
export const MILLIMETRE: Ticks = TICKS_PER.mm;
export const CENTIMETRE: Ticks = TICKS_PER.cm;
export const METRE: Ticks = TICKS_PER.m;

/** Inches and yards are one family, millimetres to metres the other. */
export type MeasureFamily = "imperial" | "metric";

export function familyOf(unit: LengthUnit): MeasureFamily {
  return unit === "in" || unit === "yd" ? "imperial" : "metric";
}

/** The usual inch ruler, marked in eighths. */
export const EIGHTH_INCH_RULER: Ruler = { unit: "in", mark: INCH / 8 };
/** The usual metric ruler for patchwork, marked every quarter centimetre. */
export const QUARTER_CENTIMETRE_RULER: Ruler = { unit: "cm", mark: CENTIMETRE / 4 };
