import { BOLD_WIDTHS, REGULAR_WIDTHS, type WidthRun } from "./metrics-table.ts";

const UNITS_PER_EM = 2048;

/**
 * Widths are measured in DejaVu Sans, which is wider than the usual sans-serif faces. The factor leaves
 * room for another face or another way of rounding glyphs.
 */
const SAFETY = 1.04;

/** Widths, in em, of glyphs the table does not know: a square for wide scripts, else a generous letter. */
const WIDE_GLYPH = 1.02;
const UNKNOWN_GLYPH = 0.86;
const EMOJI_GLYPH = 1.4;

const COMBINING = /\p{M}|[\u200b-\u200f\u202a-\u202e\u2066-\u2069]|\ufe0e|\ufe0f/u;
const WIDE =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}]/u;
const EMOJI = /\p{Extended_Pictographic}|\p{Regional_Indicator}/u;

function readTable(runs: readonly WidthRun[]): ReadonlyMap<number, number> {
  const widths = new Map<number, number>();
  for (const [first, list] of runs) {
    for (const [i, text] of list.split(" ").entries()) {
      const width = Number(text);
      if (width >= 0) widths.set(first + i, width / UNITS_PER_EM);
    }
  }
  return widths;
}

const regular = readTable(REGULAR_WIDTHS);
const bold = readTable(BOLD_WIDTHS);

function glyphWidth(glyph: string, table: ReadonlyMap<number, number>): number {
  const known = table.get(glyph.codePointAt(0) ?? 0);
  if (known !== undefined) return known;
  if (COMBINING.test(glyph)) return 0;
  if (WIDE.test(glyph)) return WIDE_GLYPH;
  return EMOJI.test(glyph) ? EMOJI_GLYPH : UNKNOWN_GLYPH;
}

/** Width of one line of text, in the units of `size` (the font size). Never less than it will really be. */
export function textWidth(text: string, size: number, isBold = false): number {
  const table = isBold ? bold : regular;
  let em = 0;
  for (const glyph of text) em += glyphWidth(glyph, table);
  return em * size * SAFETY;
}

/** Height above and below the baseline that capitals, digits and descenders need, in em. */
export const ASCENT = 0.78;
export const DESCENT = 0.24;
