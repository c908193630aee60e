import type { Language } from "./writing.ts";

/**
 * A whole number of ticks. One tick is 1/640 mm, so 1/128 in (127 ticks) and
 * 0.05 mm (32 ticks) are both whole. From the cut list on every length is one of these.
 */
export type Ticks = number;

/** The measures a maker writes and reads. `in` and `yd` belong together, as do `mm`, `cm` and `m`. */
export type LengthUnit = "in" | "yd" | "mm" | "cm" | "m";

/** The ruler on the maker's table: how lengths are shown and which marks a cut can be set to. */
export interface Ruler {
  /** The measure short lengths are printed in. */
  unit: "in" | "cm" | "mm";
  /** Distance between two usable marks, in ticks (1/8 in = 2032, 0.25 cm = 1600, 1 mm = 640). */
  mark: Ticks;
  /**
   * Where two seam allowances of the quilt lie off the marks: the longest length that divides both. What covers several
   * cells of a block cannot lie on the marks then as its neighbours do; it is measured between them, and told as exact.
   */
  between?: Ticks;
  /** The mark between whole and tenths where the maker writes a comma; a point where it is left out. */
  decimal?: DecimalMark;
  /** The language lengths are written in; English where it is left out. */
  language?: Language;
}

/** How tenths are set off where it is not with a point: `6,5 cm`. */
export type DecimalMark = "comma";
