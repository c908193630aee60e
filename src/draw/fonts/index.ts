import * as fontkit from "fontkit";

/** Tells which letters a font file can draw. */
export interface Coverage {
  /** Name of the face, where the file holds several and this is the first of them; else null. */
  face: string | null;
  has(codePoint: number): boolean;
}

/** Letters that are never drawn themselves: they join, part, turn or vary others. */
const UNSEEN = /[\p{Default_Ignorable_Code_Point}\p{Cc}\p{Cf}\s]/u;

/** A font file opened; null when it is none that can be read. */
export function coverageOf(file: Uint8Array): Coverage | null {
  try {
    const opened = fontkit.create(file);
    const font = "fonts" in opened ? opened.fonts[0] : opened;
    if (font === undefined) return null;
    const face = "fonts" in opened ? font.postscriptName : null;
    return { face, has: (codePoint) => font.hasGlyphForCodePoint(codePoint) };
  } catch {
    return null;
  }
}

/** Every letter of `text` that none of the fonts can draw, once, in order of appearance. */
export function lettersWithout(text: string, fonts: readonly Coverage[]): string[] {
  return [...new Set(text)].filter((letter) => {
    if (UNSEEN.test(letter)) return false;
    const codePoint = letter.codePointAt(0) ?? 0;
    return !fonts.some((font) => font.has(codePoint));
  });
}

/** Stands for a letter that no font at hand can draw; it is always told what it stands for. */
export const STAND_IN = "\u25af";

/** `text` with the stand-in for each of `letters`. */
export function withStandIns(text: string, letters: readonly string[]): string {
  if (letters.length === 0) return text;
  const without = new Set(letters);
  return Array.from(text, (letter) => (without.has(letter) ? STAND_IN : letter)).join("");
}
