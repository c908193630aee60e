import { PAGE_WIDTH } from "../scene/frame.ts";
import { numberMark } from "../scene/marks.ts";
import { textWidth } from "../scene/metrics.ts";
import { INK, PAPER, RULE } from "../scene/palette.ts";
import { line, path, rect, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { wrap } from "../scene/text-fit.ts";
import type { Figure } from "./cloth-layer.ts";
import { drawFigure, extentOf, hasRoom, type View } from "./draw-figure.ts";
import type { Panel } from "./panel.ts";

const COLUMNS = 3;
export const BETWEEN = 12;
/** A column, and what pictures leave free in it on either side. */
const COLUMN = (PAGE_WIDTH - (COLUMNS - 1) * BETWEEN) / COLUMNS;
const EDGE = 7;
const SIGN = 24;
const SAYS = 13;
/** Between two rows of pictures in a panel: an arrow down stands in it. */
const ROW_GAP = 18;
const HEAD_SIZE = 9.5;
const HEAD_LINE = 12.5;
/** Tallest picture, by the columns a panel takes, and the tallest of a pile of strips. */
const TALLEST = { 1: 140, 2: 430, 3: 640 } as const;
const TALLEST_PILE = 660;
/** Lowest strip that holds its letter. */
const LOWEST = 8.8;

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
  const under = lines.filter(says).length * SAYS + (lines.length - 1) * ROW_GAP;
  const across = Math.min(...lines.map((_, i) => (width - (signs[i] ?? 0) - 6) / (widest[i] ?? 1)));
  const down = (tallest - under - 10) / highest.reduce((a, b) => a + b, 0);
  return { lines, scale: Math.min(across, down, most) };
}

/** Room that cuts take beyond the cloth. */
const CUT_ROOM = 9;
/** Pictures of many parts may be larger than the rest. */
const BUSY = 5;

/** Steps by which a picture is enlarged until its numbers and letters find room. */
const LARGER = [1, 1.25, 1.6, 2, 2.6, 3.4, 4.5, 6] as const;

const widthOf = (columns: number): number => COLUMN * columns + BETWEEN * (columns - 1);

interface Chosen {
  columns: 1 | 2 | 3;
  lines: Figure[][];
  scale: number;
  pile: boolean;
}

/** How large a panel is drawn: as the others, or larger where its numbers and letters would find no room. */
function chosen(panel: Panel, most: number, fabrics: View["fabrics"]): Chosen {
  const { figures, lowest, columns: from = 1 } = panel;
  const inner = widthOf(from) - 2 * EDGE;
  const busy = figures.some(({ numbers, layers }) => numbers.length > 0 || layers.length >= BUSY);
  const pile = lowest !== undefined && lowest * fitted(figures, 1, inner, TALLEST[1], most).scale < LOWEST;
  const tries = pile ? [1] : [1, 2, 3].filter((rows) => rows <= figures.length);
  const [first, ...others] = tries.map((rows) =>
    fitted(figures, rows, inner, pile ? TALLEST_PILE : TALLEST[from], busy || from > 1 ? most * 2 : most),
  );
  if (first === undefined) throw new Error("A panel without a picture");
  const best = others.reduce((a, b) => (b.scale > a.scale * 1.35 ? b : a), first);
  if (pile || !busy) return { columns: from, ...best, pile };
  const largest = fitted(figures, best.lines.length, widthOf(COLUMNS) - 2 * EDGE, TALLEST[3], Infinity).scale;
  const scales = LARGER.map((factor) => best.scale * factor).filter((scale) => scale < largest);
  const found = [...scales, largest].map((scale): Chosen | null => {
    const columns = ([1, 2, 3] as const).find(
      (each) =>
        each >= from &&
        fitted(figures, best.lines.length, widthOf(each) - 2 * EDGE, TALLEST[3], scale).scale >=
          scale * 0.999,
    );
    return columns === undefined ? null : { columns, lines: best.lines, scale, pile };
  });
  const possible = found.filter((each) => each !== null);
  const enough = possible.find(({ scale }) =>
    figures.every((each) => hasRoom(each, { fabrics, x: 0, y: 0, across: scale, down: scale })),
  );
  return enough ?? possible.at(-1) ?? { columns: from, ...best, pile };
}

/** Lines of a panel's words where it is only as wide as it must be. */
const SNUG_LINES = 3;

/** The least room between the edges of a panel in which its pictures, and what they say, stand whole. */
function leastInner(lines: readonly Figure[][], scale: number): number {
  const wideOf = (each: Figure): number => (extentOf(each).right - extentOf(each).x) * scale;
  return Math.max(
    ...lines.map((row) => {
      const pictures = row.reduce((sum, each) => sum + wideOf(each), (row.length - 1) * SIGN) + 6;
      const words = row.map((each) => {
        const said = each.says === "" ? 0 : textWidth(each.says, 9, false) + 4;
        return row.length > 1 && said <= wideOf(each) + SIGN - 2 ? 0 : said * row.length;
      });
      return Math.max(pictures, ...words);
    }),
  );
}

/** The narrowest of these widths that holds a panel as it was chosen, its words in few lines. */
function snugWidth(
  { says: said }: Panel,
  { lines, scale, columns }: Chosen,
  badge: number,
  widths: readonly number[],
): number {
  const least = leastInner(lines, scale);
  const holds = (width: number): boolean => {
    const inner = width - 2 * EDGE;
    const room = inner - badge;
    const words = said.split(" ").every((word) => textWidth(word, HEAD_SIZE, false) <= room);
    return (
      inner >= least && words && wrap(said, room, HEAD_SIZE, Number.POSITIVE_INFINITY).length <= SNUG_LINES
    );
  };
  return widths.find(holds) ?? widthOf(columns);
}

/** Pictures side by side with their sizes on the page, at a scale across and one down. */
function rowOf(figures: Figure[], across: number, down: number): Row {
  const boxes = figures.map(extentOf);
  return {
    figures,
    widths: boxes.map(({ x, right }) => (right - x) * across),
    heights: boxes.map(({ y, bottom }) => (bottom - y) * down),
  };
}

/** Above and below a row whose pictures are cut, for the signs of the cuts. */
const roomOf = (figures: readonly Figure[]): number =>
  figures.some(({ cuts }) => cuts.length > 0) ? CUT_ROOM : 0;

/**
 * A panel laid out: its words, its pictures in rows, and how high it is. It is as wide as its columns, or the narrowest of
 * `widths` that holds it.
 */
export function layPanel(
  panel: Panel,
  most: number,
  fabrics: View["fabrics"],
  widths: readonly number[] = [],
): LaidPanel {
  const best = chosen(panel, most, fabrics);
  const { lowest } = panel;
  const { pile } = best;
  const badge = panel.number === "" ? 0 : Math.max(16, textWidth(panel.number, 8.5, true) + 9);
  const beforeWords = badge === 0 ? 0 : badge + 6;
  const width = widths.length === 0 ? widthOf(best.columns) : snugWidth(panel, best, beforeWords, widths);
  const inner = width - 2 * EDGE;
  const down = pile && lowest !== undefined ? LOWEST / lowest : best.scale;
  const room = inner - beforeWords;
  const head = wrap(panel.says, room, HEAD_SIZE, widths.length === 0 ? 2 : SNUG_LINES);
  const headHeight = Math.max(badge === 0 ? 0 : 14, head.length * HEAD_LINE) + 6;
  const rows = best.lines.map((figures) => rowOf(figures, best.scale, down));
  const rowHeights = rows.map(
    ({ figures, heights }) => Math.max(...heights) + 2 * roomOf(figures) + (says(figures) ? SAYS + 3 : 0),
  );
  const height =
    EDGE + headHeight + rowHeights.reduce((a, b) => a + b, 0) + (rows.length - 1) * ROW_GAP + EDGE + 1;
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
        if (r > 0 && row.figures[0]?.sign === "then")
          nodes.push(...downNodes(x + width / 2, top - ROW_GAP + 3));
        const at = { left, top: top + roomOf(row.figures), inner };
        nodes.push(...rowNodes(row, at, { across: best.scale, down, fabrics }));
        top += (rowHeights[r] ?? 0) + ROW_GAP;
      }
      return nodes;
    },
  };
}

/** A row of pictures with their signs and words, side by side in the middle of a panel. */
function rowNodes(
  { figures, widths, heights }: Row,
  { left, top, inner }: { left: number; top: number; inner: number },
  view: Omit<View, "x" | "y">,
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
    nodes.push(...drawFigure(each, { ...view, x, y }));
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
            y: y + high + (each.cuts.length > 0 ? CUT_ROOM : 0) + 3,
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

/** From one row of pictures to the next. */
function downNodes(x: number, y: number): SceneNode[] {
  const ink = { stroke: INK, strokeWidth: 1.2 };
  const head = path(
    [
      [x - 3.6, y + 7],
      [x, y + 12],
      [x + 3.6, y + 7],
    ],
    false,
    { fill: "none", ...ink },
  );
  return [line(x, y, x, y + 12, ink), head];
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
