import { type Coverage, coverageOf } from "../../draw/fonts/index.ts";
import { visualRuns } from "./direction.ts";

/** Faces a text is set in. `plain` and `plainBold` are those the drawings are measured in. */
export type Face = "plain" | "plainBold" | "body" | "bodyBold" | "title";

type FontName = "plain" | "plainBold" | "title";

export type FontFiles = Readonly<Record<FontName, Uint8Array>> & {
  /** Tried in order for letters the faces lack. */
  others: readonly Uint8Array[];
};

/** Fonts tried for a letter, first choice first; the other fonts follow. */
const CHAINS: Readonly<Record<Face, readonly FontName[]>> = {
  plain: ["plain"],
  plainBold: ["plainBold", "plain"],
  body: ["plain"],
  bodyBold: ["plainBold", "plain"],
  title: ["title", "plainBold", "plain"],
};

/** Percent of its own width a face is set in: the condensed one is the plain one at nine tenths, to the outline. */
const STRETCH: Readonly<Record<Face, number>> = {
  plain: 100,
  plainBold: 100,
  body: 90,
  bodyBold: 90,
  title: 100,
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
  for (const name of ["plain", "plainBold", "title"] as const) add(name, files[name]);
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
    const font = chain.find(has)?.name ?? CHAINS[face][0] ?? "plain";
    if (last?.font === font) last.text += segment;
    else parts.push({ text: segment, font });
  }
  return parts;
}

const LETTERS_TURNED = /[\p{L}\p{M}]/u;
/** Setting a run whole: word by word it would come out with its words in the wrong order. */
const asOne = (face: Face): PDFKit.Mixins.TextOptions => ({ ...setIn(face), features: [] });

/** How a face is set by a document that has its font. */
function setIn(face: Face): PDFKit.Mixins.TextOptions {
  return { lineBreak: false, ...(STRETCH[face] === 100 ? {} : { horizontalScaling: STRETCH[face] }) };
}

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
      return { text: said, font: part.font, width: document.widthOfString(said, asOne(face)) };
    });
  });
}

/** Width of a line of any writing. */
export function lineWidth(setter: Typesetter, line: string, face: Face, size: number): number {
  if (isEveryday(line)) {
    return setter.document
      .font(CHAINS[face][0] ?? "plain")
      .fontSize(size)
      .widthOfString(line, setIn(face));
  }
  return piecesOf(setter, line, face, size).reduce((sum, { width }) => sum + width, 0);
}

/** A line of everyday letters, its baseline at `y` and its left end at `x`: the document sets those by itself. */
export function setPlainly(
  { document }: Typesetter,
  line: string,
  at: { x: number; y: number },
  look: { face: Face; size: number; colour: string },
): void {
  document
    .font(CHAINS[look.face][0] ?? "plain")
    .fontSize(look.size)
    .fillColor(look.colour);
  document.text(line, at.x, at.y, { ...setIn(look.face), baseline: "alphabetic" });
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
    document.text(text, x, at.y, { ...asOne(look.face), baseline: "alphabetic" });
    x += width;
  }
}
