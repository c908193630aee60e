import type { Ruler } from "../../length/types.ts";
import type { Backing, Making } from "../../making/types.ts";
import type { Patch, QuiltTop } from "../../quilt/types.ts";
import { toSvg } from "./canvas.ts";
import { PAGE_WIDTH, TICKS_PER_MM } from "./frame.ts";
import { INK, PAPER, QUIET_INK } from "./palette.ts";
import { onPaper } from "./paper.ts";
import {
  type Corner,
  outlineNodes,
  outlineOf,
  type Placing,
  patchNodes,
  rectangle,
  ticksOf,
} from "./patches.ts";
import { spokenSizeNear } from "./quilt-words.ts";
import { line, rect, type Scene, type SceneNode } from "./scene.ts";
import { textIn } from "./text.ts";
import { cleanText } from "./text-fit.ts";
import { type DrawnFabric, fabricPatterns } from "./textures.ts";
import { titleBlock } from "./title-block.ts";

const LEFT = 26;
const TALLEST = 560;
const BACKING_TALLEST = 230;
/** Page units that open between two rows. */
const APART = 9;

export const ASSEMBLY_WORDS = {
  over: "Rows and backing",
  rows: "The rows, set apart: sew the blocks of each row, then row to row",
  diagonalRows: "The diagonal rows, set apart: sew the blocks of each row, then row to row",
  backing: (size: string) => `The backing, ${size}: its panels and seams; the dashed line is the quilt top`,
  panel: (number: number) => `panel ${number}`,
} as const;

/** Where the seams between rows lie, measured from row to row, in millimetres; on point, aslant. */
function rowLines(top: QuiltTop, making: Making): number[] {
  const { x, y, across, down, onPoint } = top.centre;
  const [left, upper] = [Math.round(ticksOf(x)), Math.round(ticksOf(y))];
  const [right, lower] = [Math.round(ticksOf(x) + ticksOf(across)), Math.round(ticksOf(y) + ticksOf(down))];
  const seams = (making.pressing?.seams ?? []).filter(({ level, x1, x2, y1 }) => {
    if (level !== "rows") return false;
    return onPoint || (x1 === left && x2 === right && y1 > upper && y1 < lower);
  });
  const places = seams.map(({ x1, y1 }) => (onPoint ? (y1 - x1) / Math.SQRT2 : y1) / TICKS_PER_MM);
  const sorted = [...new Set(places.map((place) => Math.round(place * 10) / 10))].sort((a, b) => a - b);
  return sorted.filter((place, i) => i === 0 || place - (sorted[i - 1] ?? 0) > 1);
}

/** Middle of a patch as the row lines count. */
function depthOf(patch: Patch, tilted: boolean): number {
  const corners = outlineOf(patch.outline);
  const depths = corners.map(([x, y]) => (tilted ? (y - x) / Math.SQRT2 : y));
  return depths.reduce((sum, depth) => sum + depth, 0) / depths.length;
}

function backingNodes(backing: Backing, top: QuiltTop, y: number): { nodes: SceneNode[]; height: number } {
  const [across, down] = [backing.across, backing.down];
  const scale = Math.min((PAGE_WIDTH - LEFT) / across, BACKING_TALLEST / down);
  const at = { x: LEFT, y };
  const box = { x: at.x, y: at.y, width: across * scale, height: down * scale };
  const inset = [(across - ticksOf(top.across)) / 2, (down - ticksOf(top.down)) / 2].map(
    (gap) => gap * scale,
  );
  const [dx = 0, dy = 0] = inset;
  const upright = backing.seams === "vertical";
  const edges = [0, ...backing.seamAt, upright ? across : down].map((place) => place * scale);
  const seams = backing.seamAt.map((place) =>
    upright
      ? line(at.x + place * scale, at.y, at.x + place * scale, at.y + box.height, {
          stroke: INK,
          strokeWidth: 1.6,
        })
      : line(at.x, at.y + place * scale, at.x + box.width, at.y + place * scale, {
          stroke: INK,
          strokeWidth: 1.6,
        }),
  );
  const named = edges.slice(1).map((edge, i): SceneNode => {
    const from = edges[i] ?? 0;
    const frame = upright
      ? { x: at.x + from, y: at.y + dy + 4, width: edge - from, height: 14 }
      : { x: at.x, y: at.y + (from + edge) / 2 - 7, width: box.width, height: 14 };
    return textIn(ASSEMBLY_WORDS.panel(i + 1), frame, { size: 9.5, anchor: "middle" });
  });
  return {
    nodes: [
      rect(box, { fill: PAPER, stroke: INK, strokeWidth: 1.2 }),
      rect(
        { x: box.x + dx, y: box.y + dy, width: box.width - 2 * dx, height: box.height - 2 * dy },
        { fill: "none", stroke: QUIET_INK, strokeWidth: 0.9, dash: "5 4" },
      ),
      ...seams,
      ...named,
    ],
    height: box.height,
  };
}

/** The rows of the top set apart, and the backing with its seams, as plain data; null when there is neither. */
export function assemblyScene(
  top: QuiltTop,
  making: Making,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
): Scene | null {
  const lines = rowLines(top, making);
  const { backing } = making.finishing;
  if (lines.length === 0 && backing === null) return null;
  const tilted = top.centre.onPoint;
  const name = cleanText(top.name);
  const size = spokenSizeNear(ticksOf(top.across), ticksOf(top.down), ruler);
  const facts = [{ caption: "Finished size", value: size }];
  if (lines.length > 0) facts.push({ caption: "Rows", value: String(lines.length + 1) });
  const head = titleBlock({ over: ASSEMBLY_WORDS.over, name, colour: null, facts });
  const nodes: SceneNode[] = [...head.nodes];
  const idPrefix = "assembly-";
  let y = head.height;
  let scale = 1;
  const caption = (text: string): void => {
    nodes.push(textIn(text, { x: 0, y, width: PAGE_WIDTH, height: 14 }, { size: 10, bold: true }));
    y += 20;
  };
  if (lines.length > 0) {
    caption(tilted ? ASSEMBLY_WORDS.diagonalRows : ASSEMBLY_WORDS.rows);
    const [left, upper] = [ticksOf(top.centre.x) / TICKS_PER_MM, ticksOf(top.centre.y) / TICKS_PER_MM];
    const [across, down] = [
      ticksOf(top.centre.across) / TICKS_PER_MM,
      ticksOf(top.centre.down) / TICKS_PER_MM,
    ];
    const step: Corner = tilted ? [-Math.SQRT1_2, Math.SQRT1_2] : [0, 1];
    const opened: Corner = [lines.length * APART * -step[0], lines.length * APART * step[1]];
    scale = Number(
      Math.min((PAGE_WIDTH - LEFT - 4 - opened[0]) / across, (TALLEST - opened[1]) / down, 1).toFixed(6),
    );
    const at: Placing = { x: LEFT + opened[0] - left * scale, y: y - upper * scale, scale };
    const moved = (row: number): Corner => [(row * APART * step[0]) / scale, (row * APART * step[1]) / scale];
    const rowOf = (depth: number): number => lines.filter((edge) => edge < depth).length;
    const inside = top.patches.filter(({ origin }) => origin.border === null);
    const shift = (patch: Patch): Corner => moved(rowOf(depthOf(patch, tilted)));
    nodes.push(...patchNodes(inside, fabrics, at, { id: "rows", idPrefix, shift }));
    if (!tilted) {
      const edges = [upper, ...lines, upper + down];
      const rows = edges.slice(1).map((edge, row) => {
        const from = edges[row] ?? 0;
        const [dx, dy] = moved(row);
        return {
          outline: rectangle(left + dx, from + dy, across, edge - from),
          from: from + dy,
          high: edge - from,
        };
      });
      const outlines = rows.map(({ outline }) => outline);
      nodes.push(...outlineNodes(outlines, at, 1.2, "row-edges"));
      for (const [row, { from, high }] of rows.entries()) {
        if (high * scale < 8) continue;
        const frame = { x: 0, y: at.y + from * scale, width: LEFT - 6, height: high * scale };
        nodes.push(textIn(String(row + 1), frame, { size: 10, bold: true, anchor: "end" }));
      }
    }
    y += down * scale + opened[1] + 18;
  }
  if (backing !== null) {
    caption(ASSEMBLY_WORDS.backing(spokenSizeNear(backing.across, backing.down, ruler)));
    const drawn = backingNodes(backing, top, y);
    nodes.push(...drawn.nodes);
    y += drawn.height + 10;
  }
  return {
    idPrefix,
    title: `${ASSEMBLY_WORDS.over}: ${name}`,
    description: `${lines.length + 1} rows; ${backing?.panels ?? 0} backing panels.`,
    patterns: fabricPatterns(fabrics, scale),
    ...onPaper(nodes, y),
  };
}

/** The rows set apart and the backing, as an SVG document; null when there is nothing to show. */
export function drawAssembly(
  top: QuiltTop,
  making: Making,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
): string | null {
  const scene = assemblyScene(top, making, fabrics, ruler);
  return scene === null ? null : toSvg(scene);
}
