import type { LengthUnit, Ruler, Ticks } from "./types.ts";

/*
 * Lengths as they are to be said, before a language says them: what a ruler shows, what is about the nearest mark,
 * a common fraction that no ruler shows, a decimal. Plain data.
 */

/** A length, and how it is said. */
export type SpokenLength =
  /** As the ruler reads. */
  | { as: "marks"; ticks: Ticks; ruler: Ruler }
  /** Near that. */
  | { as: "about"; ticks: Ticks; ruler: Ruler }
  /** `n / d` of the unit, in lowest terms: thirds, fifths, twelfths. */
  | { as: "share"; n: number; d: number; unit: LengthUnit }
  /** About so many of the unit, to so many digits behind the point. */
  | { as: "decimal"; value: number; digits: number; unit: LengthUnit };

/** Two sides, across first, and how they are said. */
export type SpokenSize =
  /** As the ruler reads. */
  | { as: "marks"; across: Ticks; along: Ticks; ruler: Ruler }
  /** Near that. */
  | { as: "about"; across: Ticks; along: Ticks; ruler: Ruler }
  /** About so many of the unit, to so many digits behind the point. */
  | { as: "decimal"; across: number; along: number; digits: number; unit: LengthUnit }
  /** Each side by itself. */
  | { as: "sides"; across: SpokenLength; along: SpokenLength };
