import { INK, QUIET_INK } from "./palette.ts";
import { type Box, rect, type SceneNode } from "./scene.ts";
import { TEMPLATE_WORDS as words } from "./template-words.ts";
import { lineHeight, textIn } from "./text.ts";
import { cleanText, wrap } from "./text-fit.ts";

/** Page units: 96 to the inch. */
export const INCH = 96;
const TWO_CENTIMETRES = (2 * INCH) / 2.54;

/** Height of the head: the larger square and a little room. */
export const HEAD = INCH + 14;
/** Least width the head needs to be read. */
export const HEAD_WIDTH = 470;

function square(x: number, side: number, text: string): SceneNode[] {
  const box: Box = { x, y: 1, width: side, height: side };
  return [
    rect(box, { fill: "none", stroke: INK, strokeWidth: 0.8 }),
    textIn(text, box, { size: 13, bold: true, anchor: "middle" }),
  ];
}

/** The squares to measure a print by, and what every template page must say. At the origin. */
export function templateHead(title: string, signs: readonly string[], width: number): SceneNode[] {
  const left = 1 + INCH + 12 + TWO_CENTIMETRES + 16;
  const nodes = [
    ...square(1, INCH, words.inch),
    ...square(1 + INCH + 12, TWO_CENTIMETRES, words.centimetres),
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
  say(words.print, 9.5, 3, true);
  say(signs.join(" "), 8, 5, false);
  say(words.caution, 8, 2, false, QUIET_INK);
  return nodes;
}
