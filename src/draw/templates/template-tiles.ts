import type { Template } from "../../plan/template-types.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { INK, PAPER, RULE } from "../scene/palette.ts";
import { type Box, circle, line, rect, type SceneNode } from "../scene/scene.ts";
import { lineHeight, textIn } from "../scene/text.ts";
import { cleanText, wrap } from "../scene/text-fit.ts";
import { insideWords } from "./template-cells.ts";
import {
  clipped,
  clippedLines,
  type FullSize,
  fullSize,
  insideMarks,
  stretches,
} from "./template-outline.ts";
import { countWords, fromWords } from "./template-words.ts";

/** Page units by which neighbouring parts overlap: 1 cm. */
export const OVERLAP = 96 / 2.54;
/** Room above a part for its name, what it is cut from and how the parts are joined. */
export const ABOVE = 46;

/** How a template too large for one sheet is divided. */
export interface Tiling {
  turned: boolean;
  columns: number;
  rows: number;
}

function parts(length: number, room: number): number {
  return length <= room ? 1 : Math.ceil((length - OVERLAP) / (room - OVERLAP));
}

/** The division into the fewest parts, each as large as `room`, upright or turned a quarter. */
export function tilingOf(template: Template, room: { width: number; height: number }): Tiling {
  const [upright, turned] = [false, true].map((isTurned): Tiling => {
    const { width, height } = fullSize(template, isTurned);
    return {
      turned: isTurned,
      columns: parts(width, room.width),
      rows: parts(height, room.height - ABOVE),
    };
  }) as [Tiling, Tiling];
  return turned.columns * turned.rows < upright.columns * upright.rows ? turned : upright;
}

/** Two parts that meet: where their common line runs on the whole template, and its letter. */
interface Join {
  letter: string;
  upright: boolean;
  /** Place of the line, and the stretch of it that both parts show. */
  at: number;
  from: number;
  to: number;
  sides: [number, number];
}

function windows(shape: FullSize, tiling: Tiling, room: { width: number; height: number }): Box[] {
  const [width, height] = [room.width, room.height - ABOVE];
  return Array.from({ length: tiling.columns * tiling.rows }, (_, i) => {
    const [column, row] = [i % tiling.columns, Math.floor(i / tiling.columns)];
    const [x, y] = [column * (width - OVERLAP), row * (height - OVERLAP)];
    return { x, y, width: Math.min(width, shape.width - x), height: Math.min(height, shape.height - y) };
  });
}

/** What is a part's own: the overlaps belong to the parts on the right and below, so that each place has one owner. */
function ownOf(box: Box, index: number, { columns, rows }: Tiling): Box {
  const [right, below] = [(index + 1) % columns !== 0, Math.floor(index / columns) + 1 < rows];
  return {
    ...box,
    width: box.width - (right ? OVERLAP : 0),
    height: box.height - (below ? OVERLAP : 0),
  };
}

/** Whether anything of the template is to be seen in a part. */
function shows(shape: FullSize, box: Box): boolean {
  return stretches(shape.cut).some((stretch) => clipped(stretch, box) !== null);
}

function joinsOf(boxes: readonly Box[], shown: readonly boolean[], { columns }: Tiling): Join[] {
  const joins: Join[] = [];
  const add = (a: number, b: number, upright: boolean): void => {
    const [one, two] = [boxes[a], boxes[b]];
    if (one === undefined || two === undefined || shown[a] !== true || shown[b] !== true) return;
    const letter = String.fromCharCode(97 + (joins.length % 26));
    joins.push(
      upright
        ? { letter, upright, at: two.x + OVERLAP / 2, from: one.y, to: one.y + one.height, sides: [a, b] }
        : { letter, upright, at: two.y + OVERLAP / 2, from: one.x, to: one.x + one.width, sides: [a, b] },
    );
  };
  for (const [i] of boxes.entries()) {
    if ((i + 1) % columns !== 0) add(i, i + 1, true);
    add(i, i + columns, false);
  }
  return joins;
}

/** Crosses on the common line, a letter between them, moved by `x` and `y`. */
function joinMarks(join: Join, x: number, y: number): SceneNode[] {
  const at = (along: number): [number, number] =>
    join.upright ? [join.at + x, along + y] : [along + x, join.at + y];
  const run = join.to - join.from;
  const thin = { stroke: INK, strokeWidth: 0.6 };
  const crosses = [0.2, 0.8].flatMap((share): SceneNode[] => {
    const [cx, cy] = at(join.from + run * share);
    return [
      line(cx - 9, cy, cx + 9, cy, thin),
      line(cx, cy - 9, cx, cy + 9, thin),
      circle(cx, cy, 4, { fill: "none", stroke: INK, strokeWidth: 0.6 }),
    ];
  });
  const letters = [0.2, 0.8].map((share): SceneNode => {
    const [cx, cy] = at(join.from + run * share);
    const box = { x: cx + 4, y: cy - 15, width: 12, height: 12 };
    return textIn(join.letter, box, { size: 10, bold: true, anchor: "middle" });
  });
  const [a, b] = [at(join.from), at(join.to)];
  return [
    line(a[0], a[1], b[0], b[1], { stroke: RULE, strokeWidth: 0.6, dash: "2 3" }),
    ...crosses,
    ...letters,
  ];
}

/** The parts of a template that needs more than one sheet, each as nodes below a sheet's head. */
export function templateTiles(
  template: Template,
  plan: Plan,
  tiling: Tiling,
  room: { width: number; height: number },
  words: Words,
): ((y: number) => SceneNode[])[] {
  const shape = fullSize(template, tiling.turned);
  const boxes = windows(shape, tiling, room);
  const shown = boxes.map((box, i) => shows(shape, ownOf(box, i, tiling)));
  const joins = joinsOf(boxes, shown, tiling);
  const count = shown.filter(Boolean).length;
  const told = template.uses
    .map((use) => `${fromWords(use, plan, words)}: ${countWords(use, words)}`)
    .join("; ");
  let number = 0;
  return boxes.flatMap((box, i) => {
    if (shown[i] !== true) return [];
    number += 1;
    const name = words.drawings.templates.part(template.name, number, count);
    return [
      (y: number): SceneNode[] => {
        const [dx, dy] = [1 - box.x, y + ABOVE - box.y];
        const rows = [
          { text: name, size: 13, bold: true },
          ...wrap(cleanText(told), room.width, 8.5, 1).map((text) => ({ text, size: 8.5, bold: false })),
          { text: words.drawings.templates.join, size: 8.5, bold: false },
        ];
        let top = y;
        const caption = rows.map(({ text, size, bold }): SceneNode => {
          const frame = { x: 0, y: top, width: room.width, height: lineHeight(size) + 0.8 };
          top += frame.height;
          return textIn(text, frame, { size, bold });
        });
        const inner = { x: box.x + OVERLAP, y: box.y + OVERLAP, width: box.width, height: box.height };
        const clear = {
          ...inner,
          width: Math.max(0, box.width - 2 * OVERLAP),
          height: Math.max(0, box.height - 2 * OVERLAP),
        };
        return [
          ...caption,
          rect(
            { x: 1, y: y + ABOVE, width: box.width, height: box.height },
            { fill: PAPER, stroke: RULE, strokeWidth: 0.5 },
          ),
          ...clippedLines(shape, box, dx, dy),
          ...joins.filter(({ sides }) => sides.includes(i)).flatMap((join) => joinMarks(join, dx, dy)),
          ...insideMarks(shape, insideWords(template, plan, words), clear, dx, dy).nodes,
        ];
      },
    ];
  });
}
