import type { Making, PinOrder } from "../../making/types.ts";
import type { Exact, Patch, QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import {
  type Corner,
  centreOf,
  outlineNodes,
  outlineOf,
  type Placing,
  patchNodes,
  rectangle,
  ticksOf,
} from "../quilt/patches.ts";
import { spokenSizeNear } from "../quilt/quilt-words.ts";
import { arrowBoxes, tag, tagOfUnit } from "../quilt/unit-tags.ts";
import { toSvg } from "../scene/canvas.ts";
import { NO_HEAD, PAGE_WIDTH, type SewnQuilt, type Standing, TICKS_PER_MM } from "../scene/frame.ts";
import { INK, PAPER } from "../scene/palette.ts";
import { onPaper } from "../scene/paper.ts";
import { type Box, circle, type Scene, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText, wrap } from "../scene/text-fit.ts";
import { titleBlock } from "../scene/title-block.ts";

const LEFT = 26;
const TALLEST = 560;
/** Page units that open between two rows. */
const APART = 15;
/** Half the width of a pin's number. */
const PIN = 6.6;

/** Where the seams between rows (or columns) lie, measured from one to the next, in millimetres; on point, aslant. */
function rowLines(top: QuiltTop, making: Making, columns: boolean): number[] {
  const { x, y, across, down, onPoint } = top.centre;
  const [left, upper] = [Math.round(ticksOf(x)), Math.round(ticksOf(y))];
  const [right, lower] = [Math.round(ticksOf(x) + ticksOf(across)), Math.round(ticksOf(y) + ticksOf(down))];
  const seams = (making.pressing?.seams ?? []).filter(({ level, x1, x2, y1, y2 }) => {
    if (onPoint) return level === "rows";
    return columns
      ? x1 === x2 && y1 === upper && y2 === lower && x1 > left && x1 < right
      : level === "rows" && x1 === left && x2 === right && y1 > upper && y1 < lower;
  });
  const places = seams.map(
    ({ x1, y1 }) => (onPoint ? (y1 - x1) / Math.SQRT2 : columns ? x1 : y1) / TICKS_PER_MM,
  );
  const sorted = [...new Set(places.map((place) => Math.round(place * 10) / 10))].sort((a, b) => a - b);
  return sorted.filter((place, i) => i === 0 || place - (sorted[i - 1] ?? 0) > 1);
}

/** Middle of a patch as the row lines count. */
function depthOf(patch: Patch, tilted: boolean, columns: boolean): number {
  return middleDepth(outlineOf(patch.outline), tilted, columns);
}

function middleDepth(corners: readonly Corner[], tilted: boolean, columns: boolean): number {
  const depths = corners.map(([x, y]) => (tilted ? (y - x) / Math.SQRT2 : columns ? x : y));
  return depths.reduce((sum, depth) => sum + depth, 0) / depths.length;
}

/** What the rows call each block, on it: its kind, or the bag of a plain one. All, or none where a name has no room. */
function blockTags(
  top: QuiltTop,
  making: Making,
  at: Placing,
  arrows: readonly Box[],
  moved: (outline: readonly Corner[]) => Corner,
): SceneNode[] {
  const { centre } = top;
  const mm = (value: Exact): number => ticksOf(value) / TICKS_PER_MM;
  // Blocks of a pieced border are not in the rows.
  const inRows = (corners: readonly Corner[]): boolean => {
    const [x, y] = centreOf(corners);
    const [left, upper] = [mm(centre.x), mm(centre.y)];
    return x > left && y > upper && x < left + mm(centre.across) && y < upper + mm(centre.down);
  };
  const tags = top.blocks.flatMap(({ outline }, i): SceneNode[][] => {
    if (!inRows(outlineOf(outline))) return [];
    const kind = making.kinds[making.kindOf[i] ?? -1];
    const made = making.blocks[kind?.making ?? -1];
    const [only, more] = made?.units ?? [];
    const plain = only != null && more === undefined && making.units[only.unit]?.steps.length === 0;
    const corners = outlineOf(outline);
    const [dx, dy] = moved(corners);
    const xs = corners.map(([x]) => at.x + (x + dx) * at.scale);
    const ys = corners.map(([, y]) => at.y + (y + dy) * at.scale);
    const [left, upper] = [Math.min(...xs), Math.min(...ys)];
    const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - upper];
    // On point a block is widest at half its height.
    const box = top.centre.onPoint
      ? { x: left + wide / 4, y: upper + high * 0.3, width: wide / 2, height: high * 0.4 }
      : { x: left, y: upper, width: wide, height: high };
    return [tag(plain ? tagOfUnit(only, making) : cleanText(kind?.name ?? ""), box, arrows)];
  });
  return tags.every((nodes) => nodes.length > 0) ? tags.flat() : [];
}

/** A number on a small disc; where there is no room for one, nothing. */
function pinMark(number: number, x: number, y: number): SceneNode[] {
  return [
    circle(x, y, PIN, { fill: PAPER, stroke: INK, strokeWidth: 0.7 }),
    textIn(
      String(number),
      { x: x - PIN, y: y - PIN, width: 2 * PIN, height: 2 * PIN },
      { size: 8.3, anchor: "middle" },
    ),
  ];
}

/** Numbers in the gaps between rows: where to pin first, second and so on; none where they would touch. */
function pinNodes(pins: readonly PinOrder[], at: Placing, moved: (row: number) => Corner): SceneNode[] {
  return pins.flatMap(({ row, places, order }) => {
    const [a, b] = [moved(row - 1), moved(row)];
    const [dx, dy] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const found = places.map(
      ({ x, y }): Corner => [
        at.x + (x / TICKS_PER_MM + dx) * at.scale,
        at.y + (y / TICKS_PER_MM + dy) * at.scale,
      ],
    );
    const apart = found
      .slice(1)
      .map(([x, y], i) => Math.hypot(x - (found[i]?.[0] ?? 0), y - (found[i]?.[1] ?? 0)));
    if (Math.min(...apart) < 2 * PIN + 1) return [];
    return order.flatMap((round, n) =>
      round.flatMap((place) => {
        const [x, y] = found[place - 1] ?? [0, 0];
        return pinMark(n + 1, x, y);
      }),
    );
  });
}

/** Corner triangles of a top on point go on last and stand off from the rows. */
function cornerShift(patch: Patch, top: QuiltTop, far: number): Corner {
  if (patch.origin.place !== "setting-triangle" || patch.origin.part !== "corner") return [0, 0];
  const corners = outlineOf(patch.outline);
  const x = corners.reduce((sum, corner) => sum + corner[0], 0) / corners.length;
  const y = corners.reduce((sum, corner) => sum + corner[1], 0) / corners.length;
  const middle = (from: Exact, size: Exact): number => (ticksOf(from) + ticksOf(size) / 2) / TICKS_PER_MM;
  const { centre } = top;
  return [
    Math.sign(x - middle(centre.x, centre.across)) * far,
    Math.sign(y - middle(centre.y, centre.down)) * far,
  ];
}

/** Row numbers of a top on point, beside the upper left end of each row. */
function slantedNumbers(
  top: QuiltTop,
  making: Making,
  at: Placing,
  moved: (row: number) => Corner,
): SceneNode[] {
  const [cx, cy] = [ticksOf(top.centre.x), ticksOf(top.centre.y)];
  const rows = making.diagonal;
  const [first] = rows;
  if (first === undefined) return [];
  const high = first.high - 2 * making.seam;
  // Row 1 has one block, whose upper corner lies on the upper edge: there u = -v.
  const start = -first.upperEdge[0] / making.scale;
  return rows.map(({ row, upperEdge, lowerEdge }, i) => {
    const v = start + (i + 0.5) * high;
    const u = (upperEdge[0] + lowerEdge[0]) / 2 / making.scale;
    const [dx, dy] = moved(i);
    const x = at.x + ((cx + (u - v) / Math.SQRT2) / TICKS_PER_MM + dx) * at.scale;
    const y = at.y + ((cy + (u + v) / Math.SQRT2) / TICKS_PER_MM + dy) * at.scale;
    const frame = { x: x - 17, y: y - 15, width: 16, height: 12 };
    return textIn(String(row), frame, { size: 9, bold: true, anchor: "middle" });
  });
}

/** The centre with its rows (or columns) set apart, in millimetres of cloth but for distances on the page. */
interface RowsApart {
  /** Where the seams between rows lie. */
  lines: readonly number[];
  columns: boolean;
  tilted: boolean;
  left: number;
  upper: number;
  across: number;
  down: number;
  /** Between two rows, and what all of them open together, in page units. */
  apart: number;
  opened: Corner;
  at: Placing;
  /** How far a row stands off. */
  moved(row: number): Corner;
}

/** Sets the rows apart below a height `y`; however many there are, the cloth keeps most of the room. */
function setRowsApart(
  top: QuiltTop,
  lines: readonly number[],
  columns: boolean,
  { width, tallest }: { width: number; tallest: number },
  y: number,
): RowsApart {
  const tilted = top.centre.onPoint;
  const [left, upper] = [ticksOf(top.centre.x) / TICKS_PER_MM, ticksOf(top.centre.y) / TICKS_PER_MM];
  const [across, down] = [ticksOf(top.centre.across) / TICKS_PER_MM, ticksOf(top.centre.down) / TICKS_PER_MM];
  const apart = Math.min(lines.length > 24 ? 9 : APART, (tallest * 0.4) / lines.length);
  const step: Corner = tilted ? [-Math.SQRT1_2, Math.SQRT1_2] : columns ? [1, 0] : [0, 1];
  const opened: Corner = [lines.length * apart * step[0], lines.length * apart * step[1]];
  const wide = Math.abs(opened[0]) + (tilted ? 2 * APART : 0);
  const scale = Number(
    Math.min((width - LEFT - 4 - wide) / across, (tallest - opened[1]) / down, 1).toFixed(6),
  );
  const at: Placing = {
    x: LEFT + (tilted ? APART : 0) + Math.max(0, -opened[0]) - left * scale,
    y: y + (columns ? 16 : 0) - upper * scale,
    scale,
  };
  const moved = (row: number): Corner => [(row * apart * step[0]) / scale, (row * apart * step[1]) / scale];
  return { lines, columns, tilted, left, upper, across, down, apart, opened, at, moved };
}

/** The edges of rows that are not tilted, and their numbers beside them; `y`: where the picture begins. */
function straightRows(rows: RowsApart, y: number): SceneNode[] {
  const { lines, columns, left, upper, across, down, at, moved } = rows;
  const { scale } = at;
  const edges = columns ? [left, ...lines, left + across] : [upper, ...lines, upper + down];
  const parts = edges.slice(1).map((edge, row) => {
    const from = edges[row] ?? 0;
    const [dx, dy] = moved(row);
    return columns
      ? { outline: rectangle(from + dx, upper, edge - from, down), from: from + dx, long: edge - from }
      : { outline: rectangle(left, from + dy, across, edge - from), from: from + dy, long: edge - from };
  });
  const outlines = parts.map(({ outline }) => outline);
  const numbers = parts.flatMap(({ from, long }, row): SceneNode[] => {
    if (long * scale < 8) return [];
    const frame = columns
      ? { x: at.x + from * scale, y: y - 2, width: long * scale, height: 14 }
      : { x: 0, y: at.y + (from + long / 2) * scale - 7, width: LEFT - 6, height: 14 };
    const anchor = columns ? "middle" : "end";
    return [textIn(String(row + 1), frame, { size: 10, bold: true, anchor })];
  });
  return [...outlineNodes(outlines, at, 1.2, "row-edges"), ...numbers];
}

/** The patches of the rows, the names of their blocks, and the numbers of the rows. */
function rowNodes({ top, making, fabrics }: SewnQuilt, rows: RowsApart, y: number): SceneNode[] {
  const { lines, columns, tilted, at, moved } = rows;
  const rowOf = (depth: number): number => lines.filter((edge) => edge < depth).length;
  const inside = top.patches.filter(({ origin }) => origin.border === null);
  const shift = (patch: Patch): Corner => {
    const [dx, dy] = moved(rowOf(depthOf(patch, tilted, columns)));
    const [ex, ey] = cornerShift(patch, top, APART / at.scale);
    return [dx + ex, dy + ey];
  };
  return [
    ...patchNodes(inside, fabrics, at, { id: "rows", shift }),
    ...blockTags(top, making, at, arrowBoxes(inside, at, shift), (outline) =>
      moved(rowOf(middleDepth(outline, tilted, columns))),
    ),
    ...(tilted ? slantedNumbers(top, making, at, moved) : straightRows(rows, y)),
  ];
}

/** The rows of the top set apart, with the places to pin first, as plain data; null when there are none. */
export function assemblyScene(
  quilt: SewnQuilt,
  words: Words,
  { bare = false, width = PAGE_WIDTH, tallest = TALLEST }: Standing = {},
): Scene | null {
  const { top, making, ruler } = quilt;
  const columns = making.pressing?.lines === "columns" && !top.centre.onPoint;
  const lines = rowLines(top, making, columns);
  if (lines.length === 0) return null;
  const tilted = top.centre.onPoint;
  const pins = making.pressing?.pins ?? [];
  const name = cleanText(top.name);
  const size = spokenSizeNear(ticksOf(top.across), ticksOf(top.down), ruler);
  const facts = [
    { caption: words.drawings.sewing.finishedSize, value: size },
    {
      caption: columns ? words.drawings.sewing.assembly.columnCount : words.drawings.sewing.assembly.rowCount,
      value: String(lines.length + 1),
    },
  ];
  const head = bare
    ? NO_HEAD
    : titleBlock({ over: words.drawings.sewing.assembly.over, name, colour: null, facts });
  const nodes: SceneNode[] = [...head.nodes];
  let y = head.height;
  const title = tilted
    ? words.drawings.sewing.assembly.diagonalRows
    : columns
      ? words.drawings.sewing.assembly.columns
      : words.drawings.sewing.assembly.rows;
  for (const text of wrap(title, width, 10, 3, true)) {
    nodes.push(textIn(text, { x: 0, y, width, height: 14 }, { size: 10, bold: true }));
    y += 15;
  }
  const below = y;
  const pinLines = pins.length > 0 ? wrap(words.drawings.sewing.assembly.pins, width, 9.5, 3) : [];
  y += 15 * pinLines.length;
  y += 8 + (tilted ? 2 * APART : 0);
  const rows = setRowsApart(top, lines, columns, { width, tallest }, y);
  const pinned = rows.apart < 2 * PIN ? [] : pinNodes(pins, rows.at, rows.moved);
  // Where no pin can be shown, none are spoken of.
  const told = (pinned.length > 0 ? pinLines : []).map((text, i) =>
    textIn(text, { x: 0, y: below + 15 * i, width, height: 14 }, { size: 9.5 }),
  );
  nodes.push(...told, ...rowNodes(quilt, rows, y), ...pinned);
  y += rows.down * rows.at.scale + rows.opened[1] + 18 + (tilted ? APART : 0) + (columns ? 16 : 0);
  return {
    idPrefix: "assembly-",
    title: `${words.drawings.sewing.assembly.over}: ${name}`,
    description: words.drawings.sewing.assembly.described(lines.length + 1, columns),
    ...onPaper(nodes, y, width),
  };
}

/** The rows set apart, as an SVG document; null when there is nothing to show. */
export function drawAssembly(quilt: SewnQuilt, words: Words): string | null {
  const scene = assemblyScene(quilt, words);
  return scene === null ? null : toSvg(scene);
}
