import type { FoundationMaking } from "../../making/foundation-types.ts";
import type { FoldedPart } from "../../quilt/foundation/types.ts";
import type { Words } from "../../words/index.ts";
import { patchNodes } from "../quilt/patches.ts";
import { PAGE_WIDTH } from "../scene/frame.ts";
import { keyMark, numberMark } from "../scene/marks.ts";
import { INK } from "../scene/palette.ts";
import { line, rect, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import {
  asPatch,
  COUNT_ROOM,
  onCloth,
  placingOn,
  printedGrid,
  type Sheet,
  sideFor,
  squareCount,
} from "./foundation-grid.ts";

const TALLEST = 430;
/** Room at the right and below for the numbers of the lines. */
const NUMBER_ROOM = 26;

/** Where parts begin and end, in squares from the edge of the foundation. */
function edgesOf(sizes: readonly number[], allowance: number): number[] {
  const edges = [0];
  for (const size of sizes) edges.push((edges.at(-1) ?? 0) + size + 2 * allowance);
  return edges;
}

/** Distance at which numbers side by side stand free. */
const LEAST_APART = 20;

/** Which of some places are numbered: all where there is room, else as many as stand free. */
function roomy(places: readonly number[]): boolean[] {
  let last = Number.NEGATIVE_INFINITY;
  return places.map((place) => {
    if (place - last < LEAST_APART) return false;
    last = place;
    return true;
  });
}

/**
 * The lines to fold, with a line to sew on either side of each, and their numbers: those that stand free. Pins are shown
 * where every number is.
 * @param edges where the parts begin and end, in squares
 * @param pins the columns' lines at which to pin, in order
 */
function linesToFold(
  { x: left, y: upper, across, down, side }: Sheet,
  { xs, ys }: { xs: readonly number[]; ys: readonly number[] },
  allowance: number,
  pins: readonly number[],
): { lines: SceneNode[]; badges: SceneNode[] } {
  const fold = { stroke: INK, strokeWidth: 1.8 };
  const sew = { stroke: INK, strokeWidth: 0.9, dash: "4 2.5" };
  const lines: SceneNode[] = [];
  const badges: SceneNode[] = [];
  const columns = xs.slice(1, -1).map((x) => left + x * side);
  const rows = ys.slice(1, -1).map((y) => upper + y * side);
  const [right, lower] = [left + across * side, upper + down * side];
  const columnNumbers = roomy(xs.slice(1, -1).map((x) => x * side));
  const rowNumbers = roomy(ys.slice(1, -1).map((y) => y * side));
  const besides = [-allowance * side, allowance * side];
  for (const [i, x] of columns.entries()) {
    lines.push(line(x, upper, x, lower, fold));
    for (const beside of besides) lines.push(line(x + beside, upper, x + beside, lower, sew));
    if (columnNumbers[i] === true)
      badges.push(...numberMark(String(i + 1), { x: x - 9, y: lower + 5, width: 18, height: 13 }));
  }
  const free = [...columnNumbers, ...rowNumbers].every((numbered) => numbered);
  for (const [i, y] of rows.entries()) {
    lines.push(line(left, y, right, y, fold));
    for (const beside of besides) lines.push(line(left, y + beside, right, y + beside, sew));
    const number = columns.length + i + 1;
    if (rowNumbers[i] === true)
      badges.push(...numberMark(String(number), { x: right + 5, y: y - 6.5, width: 18, height: 13 }));
    for (const [order, crossing] of (free ? pins : []).entries()) {
      const x = left + (xs[crossing] ?? 0) * side;
      badges.push(...keyMark(String(order + 1), { x: x - 6.5, y: y - 6.5, width: 13, height: 13 }));
    }
  }
  return { lines, badges };
}

/** A foundation with the parts laid on it, the lines to fold and the lines to sew. */
export function foldedNodes(
  part: FoldedPart,
  foundation: FoundationMaking,
  fabrics: readonly DrawnFabric[],
  top: number,
  words: Words,
): { nodes: SceneNode[]; bottom: number; scale: number } {
  const { cut } = part;
  const { allowance, grid } = foundation;
  const side = sideFor(cut.across, cut.down, PAGE_WIDTH - COUNT_ROOM - NUMBER_ROOM - 2, TALLEST);
  const upper = top + 20 + COUNT_ROOM;
  const sheet: Sheet = { x: COUNT_ROOM + 2, y: upper, across: cut.across, down: cut.down, side };
  const [xs, ys] = [edgesOf(part.columns, allowance), edgesOf(part.rows, allowance)];
  let scale = 1;
  const parts = part.cells.flatMap((cell, i): SceneNode[] => {
    const [row, column] = [Math.floor(i / part.columns.length), i % part.columns.length];
    const inset = { x: (xs[column] ?? 0) + allowance, y: (ys[row] ?? 0) + allowance };
    const placing = placingOn(sheet, inset, grid);
    scale = placing.scale;
    const own = cell.patches.map(({ fabric, corners }) =>
      asPatch({ fabric, corners: corners.map(({ x, y }) => ({ x: x - cell.x, y: y - cell.y })) }),
    );
    return patchNodes(own, fabrics, placing, { id: `part-${i + 1}` });
  });
  const pins = foundation.lines.find(({ letter }) => letter === part.letter)?.pins ?? [];
  const { lines, badges } = linesToFold(sheet, { xs, ys }, allowance, pins);
  const whole = { x: sheet.x, y: sheet.y, width: cut.across * side, height: cut.down * side };
  const bottom = upper + cut.down * side + NUMBER_ROOM;
  const note = { x: 0, y: bottom, width: PAGE_WIDTH, height: 13 };
  return {
    nodes: [
      textIn(
        words.drawings.foundation.laid,
        { x: 0, y: top, width: PAGE_WIDTH, height: 14 },
        { size: 9.5, bold: true },
      ),
      printedGrid(sheet, "grid"),
      ...squareCount(sheet),
      ...parts,
      onCloth(lines, "lines"),
      ...badges,
      rect(whole, { fill: "none", stroke: INK, strokeWidth: 1 }),
      textIn(words.drawings.foundation.fold, note, { size: 9.5 }),
    ],
    bottom: bottom + 22,
    scale,
  };
}
