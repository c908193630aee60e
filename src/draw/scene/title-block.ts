import type { Fact } from "../cutting/words.ts";
import { PAGE_WIDTH } from "./frame.ts";
import { INK, QUIET_INK, RULE } from "./palette.ts";
import { line, rect, type SceneNode } from "./scene.ts";
import { lineHeight, textIn } from "./text.ts";
import { wrap } from "./text-fit.ts";

export interface TitleWords {
  /** Small line above the name. */
  over: string;
  name: string;
  /** Of the swatch; null for none. */
  colour: string | null;
  facts: readonly Fact[];
}

const NAME_SIZE = 20;
const SWATCH = 30;
const COLUMNS = 3;
const CAPTION = 9;
const VALUE = 11;

/** The head of a drawing: what it shows and the facts to know before cutting. Starts at 0, 0. */
export function titleBlock(words: TitleWords): { nodes: SceneNode[]; height: number } {
  const left = words.colour === null ? 0 : SWATCH + 12;
  const room = PAGE_WIDTH - left;
  const over = { x: left, y: 0, width: room, height: 11 };
  const nodes: SceneNode[] = [textIn(words.over, over, { size: CAPTION, fill: QUIET_INK })];
  if (words.colour !== null) {
    const swatch = { x: 1, y: 2, width: SWATCH, height: SWATCH };
    nodes.push(rect(swatch, { fill: words.colour, stroke: INK, strokeWidth: 1 }, 4));
  }
  let y = 12;
  for (const text of wrap(words.name, room, NAME_SIZE, 2, true)) {
    const high = lineHeight(NAME_SIZE) + 2;
    nodes.push(textIn(text, { x: left, y, width: room, height: high }, { size: NAME_SIZE, bold: true }));
    y += high;
  }
  y += 8;
  const wide = (PAGE_WIDTH - (COLUMNS - 1) * 16) / COLUMNS;
  for (let first = 0; first < words.facts.length; first += COLUMNS) {
    let deepest = 0;
    for (const [i, fact] of words.facts.slice(first, first + COLUMNS).entries()) {
      const x = i * (wide + 16);
      const caption = { x, y, width: wide, height: lineHeight(CAPTION) };
      nodes.push(textIn(fact.caption, caption, { size: CAPTION, fill: QUIET_INK }));
      const lines = wrap(fact.value, wide, VALUE, 2, true);
      for (const [n, text] of lines.entries()) {
        const high = lineHeight(VALUE) + 1;
        const frame = { x, y: y + caption.height + 1 + n * high, width: wide, height: high };
        nodes.push(textIn(text, frame, { size: VALUE, bold: true }));
      }
      deepest = Math.max(deepest, caption.height + 1 + lines.length * (lineHeight(VALUE) + 1));
    }
    y += deepest + 6;
  }
  nodes.push(line(0, y + 1, PAGE_WIDTH, y + 1, { stroke: RULE, strokeWidth: 1 }));
  return { nodes, height: y + 12 };
}
