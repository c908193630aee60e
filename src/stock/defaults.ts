import { CENTIMETRE, INCH, METRE, type MeasureFamily, YARD } from "../length/measures.ts";
import type { Ticks } from "../length/types.ts";

/** What is taken for granted of a fabric when the maker does not say. */
export interface ClothDefaults {
  width: Ticks;
  selvage: Ticks;
  straighten: Ticks;
  /** Lost off one edge each way in squaring cloth of a fixed size. */
  squareUp: Ticks;
  /** Allowance of a seam: 1/4 in, 0.75 cm. Common practice, no source. */
  seam: Ticks;
  sold: { unit: "yd" | "m"; step: Ticks; least: Ticks };
  /** Where a bolt ends. */
  bolt: Ticks;
}

/**
 * Quilting cotton by the yard: 43 in with selvages of 1/2 in leaves 42 in, the middle of what ten published
 * sources count on (40 to 45 in: extension leaflets, magazines and teachers' handouts). An end cut at a counter is
 * up to an inch out of square; half an inch squares a fat quarter or a piece from the drawer (common practice, no source). Sold in eighths of a yard, from bolts
 * of 15 yd when new: common practice, no source.
 */
const IMPERIAL: ClothDefaults = {
  width: 43 * INCH,
  selvage: INCH / 2,
  straighten: INCH,
  squareUp: INCH / 2,
  seam: INCH / 4,
  sold: { unit: "yd", step: YARD / 8, least: YARD / 8 },
  bolt: 15 * YARD,
};

/**
 * Quilting cotton by the metre: 110 cm wide with selvages of 1.5 cm, 2.5 cm for straightening, 1 cm for squaring a piece, sold in steps of
 * 10 cm from bolts of 15 m: common practice, no source.
 */
const METRIC: ClothDefaults = {
  width: 110 * CENTIMETRE,
  selvage: (3 * CENTIMETRE) / 2,
  straighten: (5 * CENTIMETRE) / 2,
  squareUp: CENTIMETRE,
  seam: (3 * CENTIMETRE) / 4,
  sold: { unit: "m", step: METRE / 10, least: METRE / 10 },
  bolt: 15 * METRE,
};

export function clothDefaults(family: MeasureFamily): ClothDefaults {
  return family === "imperial" ? IMPERIAL : METRIC;
}
