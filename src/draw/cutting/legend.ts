import type { WasteCause } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { type Frame, PAGE_WIDTH } from "../scene/frame.ts";
import { hatchLines } from "../scene/hatch.ts";
import { arrow, breakMark, keyMark, numberMark } from "../scene/marks.ts";
import { textWidth } from "../scene/metrics.ts";
import { INK, QUIET_INK, WASTE_GROUND, WASTE_INK } from "../scene/palette.ts";
import { type Cell, section } from "../scene/rows.ts";
import { type Box, cornersOf, group, line, rect, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText, wrap } from "../scene/text-fit.ts";
import { anyShaped } from "./shaping-lines.ts";
import { percent, pieceWords, stillWords } from "./words.ts";

const PRINT = 9.5;
const SMALL = 9;

function part(box: Box, from: number, to: number): Box {
  return {
    x: box.x + from,
    y: box.y,
    width: Math.max(0, Math.min(box.width, to) - from),
    height: box.height,
  };
}

/** One line per piece: letter, size, how many, and what the maker calls it. */
function pieceCells(frame: Frame, words: Words): Cell[] {
  const { pieces } = frame.fabric;
  const told = pieces.map((piece, i) => ({
    letter: piece.letter,
    size: pieceWords(piece, frame.ruler, words),
    count: stillWords(piece.count, frame.fabric.done?.cut[i] ?? 0, words),
    label: cleanText(piece.label),
  }));
  const letters = Math.max(16, ...told.map(({ letter }) => textWidth(letter, PRINT, true) + 8));
  const sizes = letters + Math.max(...told.map(({ size }) => textWidth(size, PRINT))) + 14;
  const counts = sizes + Math.max(...told.map(({ count }) => textWidth(count, PRINT))) + 14;
  return told.map(({ letter, size, count, label }) => (box) => {
    const nodes: SceneNode[] = [
      textIn(letter, part(box, 0, letters), { size: PRINT, bold: true }),
      textIn(size, part(box, letters, sizes), { size: PRINT }),
      textIn(count, part(box, sizes, counts), { size: PRINT }),
    ];
    const rest = part(box, counts, box.width);
    if (label !== "" && rest.width > 30) nodes.push(textIn(label, rest, { size: PRINT, fill: QUIET_INK }));
    return nodes;
  });
}

/** With a cause, hatched as its waste is; else the sign of what is kept. */
function swatch(box: Box, cause: WasteCause | null, scale: number): SceneNode {
  const at = { x: box.x + 1, y: box.y + 2, width: 26, height: box.height - 4 };
  // Drawn at the scale of the cloth, so that the textures are the very same.
  const inner = { x: 0, y: 0, width: at.width / scale, height: at.height / scale };
  const stroke =
    cause === null
      ? { stroke: INK, dash: `${(4 / scale).toFixed(2)} ${(3 / scale).toFixed(2)}` }
      : { stroke: WASTE_INK };
  const ground = rect(inner, { fill: WASTE_GROUND });
  const hatch = cause === null ? [] : hatchLines(cause, [cornersOf(inner)], scale);
  return group([ground, ...hatch, rect(inner, { fill: "none", ...stroke, strokeWidth: 0.7 / scale })], {
    move: { x: at.x, y: at.y, scale },
  });
}

function wasteCells(frame: Frame, words: Words): Cell[] {
  const { lines, bought } = frame.fabric.waste;
  return lines
    .filter(({ area }) => area > 0)
    .map(({ cause, area }) => (box) => [
      swatch(box, cause, frame.scale),
      textIn(
        `${words.drawings.cutting.waste[cause]}: ${percent(area, bought, frame.ruler)}`,
        part(box, 34, box.width),
        {
          size: PRINT,
        },
      ),
    ]);
}

/** Which signs the drawing holds. */
export interface SignsUsed {
  gathered: boolean;
  keys: boolean;
  keeps: boolean;
}

function signCells(frame: Frame, used: SignsUsed, words: Words): Cell[] {
  const sign =
    (mark: (box: Box) => SceneNode[], told: string): Cell =>
    (box) => [...mark(box), textIn(told, part(box, 34, box.width), { size: PRINT })];
  const middle = (box: Box): number => box.y + box.height / 2;
  const cells = [
    sign(
      (box) => numberMark("1", { x: box.x + 6, y: middle(box) - 6, width: 15, height: 12 }),
      words.drawings.cutting.signs.number,
    ),
    sign(
      (box) => arrow([box.x + 1, middle(box)], [box.x + 27, middle(box)], INK, 2),
      words.drawings.cutting.signs.grain,
    ),
  ];
  const { kind } = frame.fabric.print;
  if (kind !== "none") {
    const ends = kind === "one-way" ? 1 : 2;
    cells.push(
      sign(
        (box) => arrow([box.x + 1, middle(box)], [box.x + 27, middle(box)], INK, ends),
        words.drawings.cutting.signs[kind],
      ),
    );
  }
  if (used.gathered) {
    const mark = (box: Box): SceneNode[] =>
      breakMark({ x: box.x + 4, y: middle(box) - 3, width: 20, height: 6 });
    cells.push(sign(mark, words.drawings.cutting.signs.gap));
  }
  if (used.keeps)
    cells.push(sign((box) => [swatch(box, null, frame.scale)], words.drawings.cutting.signs.keep));
  if (anyShaped(frame.fabric.pieces)) {
    const mark = (box: Box): SceneNode[] => [
      rect(
        { x: box.x + 6, y: middle(box) - 6, width: 15, height: 12 },
        { fill: "none", stroke: INK, strokeWidth: 0.7 },
      ),
      line(box.x + 6, middle(box) + 6, box.x + 21, middle(box) - 6, {
        stroke: INK,
        strokeWidth: 0.8,
        dash: "3 2",
      }),
    ];
    cells.push(sign(mark, words.drawings.cutting.signs.shaping));
  }
  if (used.keys) {
    cells.push(
      sign(
        (box) => keyMark("A", { x: box.x + 6, y: middle(box) - 6, width: 15, height: 12 }),
        words.drawings.cutting.signs.key,
      ),
    );
  }
  return cells;
}

/** Everything below the cloth, from `top` down: pieces, waste, signs and the caution. */
export function legend(
  frame: Frame,
  used: SignsUsed,
  top: number,
  words: Words,
): { nodes: SceneNode[]; bottom: number } {
  const nodes: SceneNode[] = [];
  let y = top;
  const add = (heading: string, cells: Cell[], columns: number, cellHeight: number): void => {
    const made = section(heading, cells, { columns, cellHeight, top: y });
    nodes.push(...made.nodes);
    y = made.bottom;
  };
  add(
    words.drawings.cutting.headings.pieces,
    pieceCells(frame, words),
    frame.fabric.pieces.length > 3 ? 2 : 1,
    14,
  );
  add(words.drawings.cutting.headings.waste, wasteCells(frame, words), 3, 17);
  add(words.drawings.cutting.headings.signs, signCells(frame, used, words), 2, 17);
  for (const text of wrap(words.drawings.cutting.caution, PAGE_WIDTH, SMALL, 3)) {
    nodes.push(textIn(text, { x: 0, y, width: PAGE_WIDTH, height: 12 }, { size: SMALL, fill: QUIET_INK }));
    y += 12;
  }
  return { nodes, bottom: y };
}

/** Causes that need a texture: those told in the legend, drawn or not. */
export function causesOf(frame: Pick<Frame, "fabric">): WasteCause[] {
  return frame.fabric.waste.lines.filter(({ area }) => area > 0).map(({ cause }) => cause);
}
