import { type Coverage, coverageOf } from "../fonts/index.ts";
import { visualRuns } from "./direction.ts";

/** Faces a text is set in. `plain` and `plainBold` are those the drawings are measured in. */
export type Face = "plain" | "plainBold" | "body" | "bodyBold" | "title";

export type FontFiles = Readonly<Record<Face, Uint8Array>> & {
  /** Tried in order for letters the faces lack. */
  others: readonly Uint8Array[];
};

/** Faces tried for a letter, first choice first; the other fonts follow. */
const CHAINS: Readonly<Record<Face, readonly Face[]>> = {
  plain: ["plain"],
  plainBold: ["plainBold", "plain"],
  body: ["body", "plain"],
  bodyBold: ["bodyBold", "plainBold", "plain"],
  title: ["title", "plainBold", "plain"],
};

/** Letters that every face has and that are read from left to right: no need to look closer. */
const EVERYDAY =
  /^[\u0020-\u007e\u00a0-\u017f\u2010-\u2015\u2018-\u201e\u2022\u2026\u2044\u2070-\u2089\u2150-\u215e\u2190-\u2193\u2212\u2248]*$/;

export interface Typesetter {
  document: PDFKit.PDFDocument;
  fonts: { name: string; coverage: Coverage }[];
}

/** Makes the fonts known to a document. A file that is no font is left out. */
export function openTypesetter(document: PDFKit.PDFDocument, files: FontFiles): Typesetter {
  const fonts: Typesetter["fonts"] = [];
  const add = (name: string, file: Uint8Array): void => {
    const coverage = coverageOf(file);
    if (coverage === null) return;
    fonts.push({ name, coverage });
    const bytes = Buffer.from(file);
    if (coverage.face === null) document.registerFont(name, bytes);
    else document.registerFont(name, bytes, coverage.face);
  };
  for (const face of Object.keys(CHAINS) as Face[]) add(face, files[face]);
  for (const [i, file] of files.others.entries()) add(`other-${i + 1}`, file);
  return { document, fonts };
}

/** Whether the document's own way of setting text does for this one. */
export function isEveryday(text: string): boolean {
  return EVERYDAY.test(text);
}

const graphemes = new Intl.Segmenter("en", { granularity: "grapheme" });
const JOINS_ANY = /^[\p{Cf}\s]*$/u;

interface Placed {
  text: string;
  font: string;
  width: number;
}

/** A stretch of text by the fonts that have its letters. */
function byFont(setter: Typesetter, text: string, face: Face): { text: string; font: string }[] {
  const tried = [
    ...CHAINS[face],
    ...setter.fonts.map(({ name }) => name).filter((name) => name.startsWith("other")),
  ];
  const chain = tried.flatMap((name) => setter.fonts.filter((font) => font.name === name));
  const parts: { text: string; font: string }[] = [];
  for (const { segment } of graphemes.segment(text)) {
    const last = parts.at(-1);
    if (last !== undefined && JOINS_ANY.test(segment)) {
      last.text += segment;
      continue;
    }
    const has = ({ coverage }: { coverage: Coverage }): boolean =>
      Array.from(segment).every(
        (letter) => JOINS_ANY.test(letter) || coverage.has(letter.codePointAt(0) ?? 0),
      );
    const font = chain.find(has)?.name ?? face;
    if (last?.font === font) last.text += segment;
    else parts.push({ text: segment, font });
  }
  return parts;
}

const LETTERS_TURNED = /[\p{L}\p{M}]/u;
/** Setting a run whole: word by word it would come out with its words in the wrong order. */
const WHOLE: PDFKit.Mixins.TextOptions = { lineBreak: false, features: [] };

function piecesOf(
  setter: Typesetter,
  line: string,
  face: Face,
  size: number,
  base?: "ltr" | "rtl",
): Placed[] {
  const { document } = setter;
  return visualRuns(line, base).flatMap(({ text, rightToLeft }) => {
    const parts = byFont(setter, text, face);
    const ordered = rightToLeft ? [...parts].reverse() : parts;
    return ordered.map((part): Placed => {
      // Signs alone are not turned by the shaper, which goes by the script of the letters.
      const turned = rightToLeft && !LETTERS_TURNED.test(part.text);
      const said = turned ? Array.from(part.text).reverse().join("") : part.text;
      document.font(part.font).fontSize(size);
      return { text: said, font: part.font, width: document.widthOfString(said, WHOLE) };
    });
  });
}

/** Width of a line of any writing. */
export function lineWidth(setter: Typesetter, line: string, face: Face, size: number): number {
  if (isEveryday(line)) {
    return setter.document.font(face).fontSize(size).widthOfString(line);
  }
  return piecesOf(setter, line, face, size).reduce((sum, { width }) => sum + width, 0);
}

/** A line of any writing with its baseline at `y`; `x` is its left end, middle or right end. */
export function setLine(
  setter: Typesetter,
  line: string,
  at: { x: number; y: number; anchor: "start" | "middle" | "end"; base?: "ltr" | "rtl" },
  look: { face: Face; size: number; colour: string },
): void {
  const { document } = setter;
  const pieces = piecesOf(setter, line, look.face, look.size, at.base);
  const whole = pieces.reduce((sum, { width }) => sum + width, 0);
  let x = at.x - (at.anchor === "start" ? 0 : at.anchor === "middle" ? whole / 2 : whole);
  for (const { text, font, width } of pieces) {
    document.font(font).fontSize(look.size).fillColor(look.colour);
    document.text(text, x, at.y, { ...WHOLE, baseline: "alphabetic" });
    x += width;
  }
}
