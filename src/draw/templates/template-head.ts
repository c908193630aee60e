import type { Words } from "../../words/index.ts";
import { INK, QUIET_INK } from "../scene/palette.ts";
import { type Box, rect, type SceneNode } from "../scene/scene.ts";
import { lineHeight, textIn } from "../scene/text.ts";
import { cleanText, wrap } from "../scene/text-fit.ts";

/** Page units: 96 to the inch. */
const INCH = 96;
const TWO_CENTIMETRES = (2 * INCH) / 2.54;

/** Height of the head: the larger square and a little room. */
export const HEAD = INCH + 14;
/** Least width the head needs to be read. */
export const HEAD_WIDTH = 470;

/** A text with its look. */
export interface Said {
  text: string;
  size: number;
  bold: boolean;
}

function square(x: number, y: number, side: number, text: string): SceneNode[] {
  const box: Box = { x, y, width: side, height: side };
  return [
    rect(box, { fill: "none", stroke: INK, strokeWidth: 0.8 }),
    textIn(text, box, { size: 13, bold: true, anchor: "middle" }),
  ];
}

/** Width of the column beside a template that takes the whole height of a sheet. */
export const COLUMN = 142;

/** The same as the head of a sheet, with a caption, in a column beside the template. At the origin. */
export function templateColumn(
  title: string,
  signs: readonly string[],
  caption: readonly Said[],
  words: Words,
): SceneNode[] {
  const lower = 1 + INCH + 10;
  const nodes = [
    ...square(1, 1, INCH, words.drawings.templates.inch),
    ...square(1, lower, TWO_CENTIMETRES, words.drawings.templates.centimetres),
  ];
  let y = lower + TWO_CENTIMETRES + 10;
  const say = ({ text, size, bold }: Said, most: number, fill = INK): void => {
    for (const lineText of wrap(cleanText(text), COLUMN, size, most, bold)) {
      const frame = { x: 0, y, width: COLUMN, height: lineHeight(size) + 0.6 };
      nodes.push(textIn(lineText, frame, { size, bold, fill }));
      y += frame.height;
    }
    y += 3;
  };
  for (const said of caption) say(said, 8);
  y += 8;
  say({ text: title, size: 9.5, bold: true }, 4);
  say({ text: words.drawings.templates.print, size: 9.5, bold: true }, 6);
  for (const sign of signs) say({ text: sign, size: 8, bold: false }, 8);
  say({ text: words.drawings.templates.caution, size: 8, bold: false }, 6, QUIET_INK);
  return nodes;
}

/** The squares to measure a print by, and what every template page must say. At the origin. */
export function templateHead(
  title: string,
  signs: readonly string[],
  width: number,
  words: Words,
): SceneNode[] {
  const left = 1 + INCH + 12 + TWO_CENTIMETRES + 16;
  const nodes = [
    ...square(1, 1, INCH, words.drawings.templates.inch),
    ...square(1 + INCH + 12, 1, TWO_CENTIMETRES, words.drawings.templates.centimetres),
  ];
  let y = 0;
  const say = (text: string, size: number, most: number, bold: boolean, fill = INK): void => {
    for (const lineText of wrap(cleanText(text), width - left, size, most, bold)) {
      const frame = { x: left, y, width: width - left, height: lineHeight(size) + 0.6 };
      nodes.push(textIn(lineText, frame, { size, bold, fill }));
      y += frame.height;
    }
    y += 1.5;
  };
  say(title, 11, 1, true);
  say(words.drawings.templates.print, 9.5, 3, true);
  say(signs.join(" "), 8, 5, false);
  say(words.drawings.templates.caution, 8, 2, false, QUIET_INK);
  return nodes;
}
