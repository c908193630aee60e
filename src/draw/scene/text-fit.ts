import { textWidth } from "./metrics.ts";

const ELLIPSIS = "…";

/** Characters XML cannot carry, and the invisible ones that would turn neighbouring text round. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to take out
const UNFIT = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069\ufffe\uffff]/g;
const LONE_SURROGATE = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** A text set apart from the direction of its neighbours, as `isolated` does it. */
const APART = /\u2068([^\u202a-\u202e\u2066-\u2069]*)\u2069/;

/** Text without what a page or drawing cannot carry; its spaces stay as they are, and so do isolated names. */
export function fitText(text: string): string {
  return text
    .split(APART)
    .map((part, i) => {
      const fit = part.replace(UNFIT, " ").replace(LONE_SURROGATE, "\ufffd");
      return i % 2 === 1 ? `\u2068${fit}\u2069` : fit;
    })
    .join("");
}

/** A name to stand inside a sentence of ours: one read from right to left leaves the words around it in place. */
export function isolated(name: string): string {
  return turns(name) ? `\u2068${name.replace(UNFIT, " ")}\u2069` : name;
}

/** Text from a file made safe for a drawing: no control characters, single spaces, no ends of space. */
export function cleanText(text: string): string {
  return fitText(text).replace(/\s+/g, " ").trim();
}

const TURNS = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;

/** Whether any of a text is read from right to left. */
export function turns(text: string): boolean {
  return TURNS.test(text);
}

/**
 * Whether a text as a whole is read from right to left: its first letter decides, names set apart aside (Unicode
 * Standard Annex 9, P2), so that a name does not turn the sentence round that begins with it.
 */
export function startsRightToLeft(text: string): boolean {
  if (!turns(text)) return false;
  const around = text.split(APART).filter((_, i) => i % 2 === 0);
  const first = /\p{L}/u.exec(around.join(""))?.[0] ?? /\p{L}/u.exec(text)?.[0];
  return turns(first ?? "");
}

const graphemes = new Intl.Segmenter("en", { granularity: "grapheme" });

function glyphsOf(text: string): string[] {
  return Array.from(graphemes.segment(text), (part) => part.segment);
}

/** `text` cut short with an ellipsis so that it is no wider than `width`. */
export function shorten(text: string, width: number, size: number, bold = false): string {
  if (textWidth(text, size, bold) <= width) return text;
  let kept = "";
  for (const glyph of glyphsOf(text)) {
    if (textWidth(kept + glyph + ELLIPSIS, size, bold) > width) break;
    kept += glyph;
  }
  return kept.trimEnd() + ELLIPSIS;
}

/** Pieces a line may be broken between: words, or single glyphs of a word that is too wide for a line. */
function breakable(text: string, width: number, size: number, bold: boolean): string[] {
  return text.split(" ").flatMap((word) => {
    if (textWidth(word, size, bold) <= width) return [`${word} `];
    const glyphs = glyphsOf(word);
    return glyphs.map((glyph, i) => (i === glyphs.length - 1 ? `${glyph} ` : glyph));
  });
}

/** `text` broken into at most `most` lines no wider than `width`; the last is shortened if it must be. */
export function wrap(text: string, width: number, size: number, most: number, bold = false): string[] {
  const lines: string[] = [];
  let line = "";
  const parts = breakable(text, width, size, bold);
  for (const [i, part] of parts.entries()) {
    if (line === "" || textWidth((line + part).trimEnd(), size, bold) <= width) {
      line += part;
    } else if (lines.length === most - 1) {
      return [...lines, shorten(line + parts.slice(i).join("").trimEnd(), width, size, bold)];
    } else {
      lines.push(line.trimEnd());
      line = part;
    }
  }
  return line === "" ? lines : [...lines, line.trimEnd()];
}
