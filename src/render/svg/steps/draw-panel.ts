import { PAGE_WIDTH } from "../frame.ts";
import { numberMark } from "../marks.ts";
import { textWidth } from "../metrics.ts";
import { INK, PAPER, RULE } from "../palette.ts";
import { line, path, rect, type SceneNode } from "../scene.ts";
import { textIn } from "../text.ts";
import { wrap } from "../text-fit.ts";
import type { Figure } from "./cloth-layer.ts";
import { extentOf, figureNodes } from "./draw-figure.ts";
import type { Panel } from "./panel.ts";
import type { StepFabric } from "./step-fabric.ts";

export const COLUMNS = 3;
export const BETWEEN = 12;
/** A column, and what pictures leave free in it on either side. */
const COLUMN = (PAGE_WIDTH - (COLUMNS - 1) * BETWEEN) / COLUMNS;
const EDGE = 9;
const SIGN = 24;
const SAYS = 13;
const HEAD_SIZE = 9.5;
const HEAD_LINE = 12.5;
/** Tallest picture, by the columns a panel takes, and the tallest of a pile of strips. */
const TALLEST = { 1: 140, 2: 430, 3: 690 } as const;
const TALLEST_PILE = 720;
/** Lowest strip that holds its letter. */
const LOWEST = 9.5;

export interface LaidPanel {
  width: number;
  height: number;
  draw(x: number, y: number, height: number): SceneNode[];
}

interface Row {
  figures: Figure[];
  widths: number[];
  heights: number[];
}

const says = (rows: readonly Figure[]): boolean => rows.some((each) => each.says !== "");

/** The largest scale at which figures fit in so many rows; a figure is never narrower than what it says. */
function fitted(figures: readonly Figure[], rows: number, width: number, tallest: number, most: number) {
  const per = Math.ceil(figures.length / rows);
  const lines = Array.from({ length: rows }, (_, i) => figures.slice(i * per, (i + 1) * per)).filter(
    (each) => each.length > 0,
  );
  const highest = lines.map((each) => Math.max(...each.map((one) => extentOf(one).bottom - extentOf(one).y)));
  const widest = lines.map((each) =>
    each.reduce((sum, one) => sum + extentOf(one).right - extentOf(one).x, 0),
  );
  const signs = lines.map((each, i) => each.length * (i === 0 ? SIGN : SIGN) - SIGN);
  const under = lines.filter(says).length * SAYS + (lines.length - 1) * 8;
  const across = Math.min(...lines.map((_, i) => (width - (signs[i] ?? 0) - 6) / (widest[i] ?? 1)));
  const down = (tallest - under - 10) / highest.reduce((a, b) => a + b, 0);
  return { lines, scale: Math.min(across, down, most) };
}

/** Room that cuts take beyond the cloth. */
const CUT_ROOM = 9;
/** Pictures of many parts may be larger than the rest. */
const BUSY = 5;

/** A panel laid out: its words, its pictures in rows, and how high it is. */
export function layPanel(
  panel: Panel,
  most: number,
  view: { fabrics: readonly StepFabric[]; idPrefix: string },
): LaidPanel {
  const columns = panel.columns ?? 1;
  const width = COLUMN * columns + BETWEEN * (columns - 1);
  const inner = width - 2 * EDGE;
  const { lowest } = panel;
  const pile =
    lowest !== undefined && lowest * fitted(panel.figures, 1, inner, TALLEST[1], most).scale < LOWEST;
  const tries = pile ? [1] : [1, 2, 3].filter((rows) => rows <= panel.figures.length);
  const [first, ...others] = tries.map((rows) =>
    fitted(
      panel.figures,
      rows,
      inner,
      pile ? TALLEST_PILE : TALLEST[columns],
      columns === 1 ? most * (panel.figures.some(({ layers }) => layers.length >= BUSY) ? 2 : 1) : most * 4,
    ),
  );
  if (first === undefined) throw new Error("A panel without a picture");
  const best = others.reduce((a, b) => (b.scale > a.scale * 1.15 ? b : a), first);
  const down = pile && lowest !== undefined ? LOWEST / lowest : best.scale;
  const badge = panel.number === "" ? 0 : Math.max(16, textWidth(panel.number, 8.5, true) + 9);
  const room = inner - (badge === 0 ? 0 : badge + 6);
  const head = wrap(panel.says, room, HEAD_SIZE, 2);
  const headHeight = Math.max(badge === 0 ? 0 : 14, head.length * HEAD_LINE) + 9;
  const rows = best.lines.map((figures): Row => {
    const boxes = figures.map(extentOf);
    return {
      figures,
      widths: boxes.map(({ x, right }) => (right - x) * best.scale),
      heights: boxes.map(({ y, bottom }) => (bottom - y) * down),
    };
  });
  const roomOf = (figures: readonly Figure[]): number =>
    figures.some(({ cuts }) => cuts.length > 0) ? CUT_ROOM : 0;
  const rowHeights = rows.map(
    ({ figures, heights }) => Math.max(...heights) + 2 * roomOf(figures) + (says(figures) ? SAYS + 3 : 0),
  );
  const height = EDGE + headHeight + rowHeights.reduce((a, b) => a + b, 0) + (rows.length - 1) * 8 + EDGE + 4;
  return {
    width,
    height,
    draw(x, y, framed) {
      const nodes: SceneNode[] = [
        rect({ x, y, width, height: framed }, { fill: PAPER, stroke: RULE, strokeWidth: 0.7 }, 4),
      ];
      const left = x + EDGE;
      if (badge > 0)
        nodes.push(...numberMark(panel.number, { x: left, y: y + EDGE - 1, width: badge, height: 14 }));
      for (const [i, text] of head.entries())
        nodes.push(
          textIn(
            text,
            { x: left + inner - room, y: y + EDGE + i * HEAD_LINE, width: room, height: HEAD_LINE },
            { size: HEAD_SIZE },
          ),
        );
      let top = y + EDGE + headHeight;
      for (const [r, row] of rows.entries()) {
        nodes.push(...rowNodes(row, left, top + roomOf(row.figures), inner, best.scale, down, view));
        top += (rowHeights[r] ?? 0) + 8;
      }
      return nodes;
    },
  };
}

function rowNodes(
  { figures, widths, heights }: Row,
  left: number,
  top: number,
  inner: number,
  across: number,
  down: number,
  view: { fabrics: readonly StepFabric[]; idPrefix: string },
): SceneNode[] {
  const total = widths.reduce((a, b) => a + b, 0) + (figures.length - 1) * SIGN;
  const tallest = Math.max(...heights);
  const slots = inner / figures.length;
  const nodes: SceneNode[] = [];
  let x = left + (inner - total) / 2;
  for (const [i, each] of figures.entries()) {
    const [wide, high] = [widths[i] ?? 0, heights[i] ?? 0];
    if (i > 0) {
      nodes.push(...signNodes(each.sign, x, top + tallest / 2));
      x += SIGN;
    }
    const y = top + (tallest - high) / 2;
    nodes.push(...figureNodes(each, { ...view, x, y, across, down }));
    if (each.says !== "") {
      const need = Math.min(
        figures.length === 1 ? inner : Math.max(slots, wide + SIGN) - 2,
        textWidth(each.says, 9, false) + 2,
      );
      const middle = Math.min(Math.max(x + wide / 2, left + need / 2), left + inner - need / 2);
      nodes.push(
        textIn(
          each.says,
          {
            x: middle - need / 2,
            y: top + tallest + (figures.some(({ cuts }) => cuts.length > 0) ? CUT_ROOM : 0) + 3,
            width: need,
            height: SAYS,
          },
          { size: 9, anchor: "middle" },
        ),
      );
    }
    x += wide;
  }
  return nodes;
}

/** Between two pictures: what comes of it, one beside the other, one laid onto the other. */
function signNodes(sign: Figure["sign"], x: number, y: number): SceneNode[] {
  const [from, to] = [x + 5, x + SIGN - 5];
  const ink = { stroke: INK, strokeWidth: 1.2 };
  if (sign === "") return [];
  if (sign === "and")
    return [line(x + 8.5, y, x + 15.5, y, ink), line(x + 12, y - 3.5, x + 12, y + 3.5, ink)];
  const head = path(
    [
      [to - 5, y - 3.6],
      [to, y],
      [to - 5, y + 3.6],
    ],
    false,
    { fill: "none", ...ink },
  );
  // Laid onto: the arrow comes down over it.
  if (sign === "onto")
    return [
      path(
        [
          [from, y + 5],
          [from + 2, y - 4],
          [from + 7, y - 8],
          [to - 2, y - 6],
          [to, y + 1],
        ],
        false,
        { fill: "none", ...ink },
      ),
      path(
        [
          [to - 4.5, y - 2],
          [to, y + 2.5],
          [to + 3, y - 3],
        ],
        false,
        { fill: "none", ...ink },
      ),
    ];
  return [line(from, y, to, y, ink), head];
}
