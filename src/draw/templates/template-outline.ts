import type { Template } from "../../plan/template-types.ts";
import { arrow } from "../scene/marks.ts";
import { textWidth } from "../scene/metrics.ts";
import { INK, PAPER } from "../scene/palette.ts";
import { type Box, circle, line, path, type SceneNode } from "../scene/scene.ts";
import { lineHeight, textIn } from "../scene/text.ts";

export type Spot = readonly [number, number];

/** Page units to the tick at full size: 96 to the inch of 16256 ticks. */
const PER_TICK = 96 / 16256;

/** A template in page units at full size, its box at the origin. */
export interface FullSize {
  name: string;
  cut: Spot[];
  seam: Spot[];
  marks: Spot[];
  width: number;
  height: number;
  /** Lies on the sheet a quarter clockwise of how the cloth lies. */
  turned: boolean;
  /** Where the print's up points on the sheet; null where it does not matter. */
  up: Spot | null;
  twoWay: boolean;
}

/** The template at full size, as the cloth lies or turned a quarter clockwise. */
export function fullSize(template: Template, turned: boolean): FullSize {
  const { across, along, print, name } = template;
  const place = ({ x, y }: { x: number; y: number }): Spot =>
    turned ? [(along - y) * PER_TICK, x * PER_TICK] : [x * PER_TICK, y * PER_TICK];
  const up: Spot = (print.axis === "along") === turned ? [1, 0] : print.axis === "along" ? [0, -1] : [0, 1];
  const [width, height] = turned ? [along, across] : [across, along];
  return {
    name,
    cut: template.cut.map(place),
    seam: template.seam.map(place),
    marks: template.marks.map(place),
    width: width * PER_TICK,
    height: height * PER_TICK,
    turned,
    up: print.kind === "none" ? null : up,
    twoWay: print.kind === "two-way",
  };
}

const CUT = { fill: "none", stroke: INK, strokeWidth: 1 } as const;
const SEAM = { fill: "none", stroke: INK, strokeWidth: 0.8, dash: "5 3" } as const;

function moved(points: readonly Spot[], x: number, y: number): Spot[] {
  return points.map(([px, py]) => [px + x, py + y] as const);
}

/** Cut line, seam line, dots and rings of a whole template at a place. */
export function outlineLines(shape: FullSize, x: number, y: number): SceneNode[] {
  return [
    path(moved(shape.cut, x, y), true, CUT),
    path(moved(shape.seam, x, y), true, SEAM),
    ...pointMarks(moved(shape.seam, x, y), moved(shape.marks, x, y)),
  ];
}

function pointMarks(corners: readonly Spot[], marks: readonly Spot[]): SceneNode[] {
  return [
    ...corners.map(([x, y]) => circle(x, y, 1.3, { fill: INK })),
    ...marks.map(([x, y]) => circle(x, y, 2, { fill: PAPER, stroke: INK, strokeWidth: 0.8 })),
  ];
}

/** The part of a stretch inside a box (Liang and Barsky 1984); null when it misses it. */
export function clipped([a, b]: readonly [Spot, Spot], box: Box): [Spot, Spot] | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  let [from, to] = [0, 1];
  const limits: [number, number][] = [
    [-dx, a[0] - box.x],
    [dx, box.x + box.width - a[0]],
    [-dy, a[1] - box.y],
    [dy, box.y + box.height - a[1]],
  ];
  for (const [rate, room] of limits) {
    if (rate === 0 && room < 0) return null;
    if (rate < 0) from = Math.max(from, room / rate);
    if (rate > 0) to = Math.min(to, room / rate);
  }
  if (from > to) return null;
  const at = (t: number): Spot => [a[0] + t * dx, a[1] + t * dy];
  return [at(from), at(to)];
}

export function stretches(closed: readonly Spot[]): [Spot, Spot][] {
  return closed.map((from, i) => [from, closed[(i + 1) % closed.length] ?? from]);
}

/** Cut and seam line as far as they lie in a box, moved by `x` and `y`. */
export function clippedLines(shape: FullSize, box: Box, x: number, y: number): SceneNode[] {
  const within = ([px, py]: Spot): boolean =>
    px >= box.x && px <= box.x + box.width && py >= box.y && py <= box.y + box.height;
  const drawn = (closed: readonly Spot[], paint: typeof CUT | typeof SEAM): SceneNode[] =>
    stretches(closed).flatMap((stretch) => {
      const part = clipped(stretch, box);
      return part === null
        ? []
        : [line(part[0][0] + x, part[0][1] + y, part[1][0] + x, part[1][1] + y, paint)];
    });
  return [
    ...drawn(shape.cut, CUT),
    ...drawn(shape.seam, SEAM),
    ...pointMarks(moved(shape.seam.filter(within), x, y), moved(shape.marks.filter(within), x, y)),
  ];
}

function holds(closed: readonly Spot[], [x, y]: Spot): boolean {
  let inside = false;
  for (const [[ax, ay], [bx, by]] of stretches(closed))
    if (ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay)) inside = !inside;
  return inside;
}

function overlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** Steps across and down in which places inside an outline are looked for. */
const STEPS = 28;

/** A box of that size wholly inside the outline and `room`, clear of `taken`, nearest the middle of both; or null. */
function boxInside(
  closed: readonly Spot[],
  size: { width: number; height: number },
  room: Box,
  taken: readonly Box[],
): Box | null {
  const [free, down] = [room.width - size.width, room.height - size.height];
  if (free < 0 || down < 0) return null;
  // The middle of the corners, or as near it as the room goes.
  const middleOf = (axis: 0 | 1, from: number, length: number): number => {
    const middle = closed.reduce((sum, spot) => sum + spot[axis], 0) / closed.length;
    return Math.min(from + 0.6 * length, Math.max(from + 0.4 * length, middle));
  };
  const middle: Spot = [middleOf(0, room.x, room.width), middleOf(1, room.y, room.height)];
  let best: Box | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= STEPS; i += 1)
    for (let j = 0; j <= STEPS; j += 1) {
      const box = { x: room.x + (free * i) / STEPS, y: room.y + (down * j) / STEPS, ...size };
      const far = Math.hypot(box.x + box.width / 2 - middle[0], box.y + box.height / 2 - middle[1]);
      if (far >= nearest || !holds(closed, [box.x, box.y])) continue;
      if (taken.some((each) => overlap(box, each))) continue;
      if (stretches(closed).some((stretch) => clipped(stretch, box) !== null)) continue;
      [best, nearest] = [box, far];
    }
  return best;
}

/** What is written in a template: its name, and below it lines that may be left out where there is no room. */
export interface InsideWords {
  name: string;
  more: readonly string[];
}

function wordsBox(lines: readonly string[], sizes: readonly number[]): { width: number; height: number } {
  const widths = lines.map((text, i) => textWidth(text, sizes[i] ?? 8, i === 0));
  return {
    width: Math.max(...widths) + 4,
    height: sizes.reduce((sum, size) => sum + lineHeight(size) + 1, 0) + 3,
  };
}

/** Name, counts, grain and print arrows inside the seam line as far as they fit, moved by `x` and `y`. */
export function insideMarks(
  shape: FullSize,
  words: InsideWords,
  room: Box,
  x: number,
  y: number,
): { nodes: SceneNode[]; grainDrawn: boolean } {
  const nodes: SceneNode[] = [];
  const taken: Box[] = [];
  const ways: [lines: string[], sizes: number[]][] = [
    [
      [words.name, ...words.more],
      [15, ...words.more.map(() => 8.5)],
    ],
    [
      [words.name, ...words.more.slice(0, 1)],
      [13, 8],
    ],
    [[words.name], [13]],
    [[words.name], [9]],
  ];
  for (const [lines, sizes] of ways) {
    const box = boxInside(shape.seam, wordsBox(lines, sizes), room, []);
    if (box === null) continue;
    let top = box.y + 1.5;
    for (const [i, text] of lines.entries()) {
      const size = sizes[i] ?? 8;
      const frame = { x: box.x + x, y: top + y, width: box.width, height: lineHeight(size) + 1 };
      nodes.push(textIn(text, frame, { size, bold: i === 0, anchor: "middle" }));
      top += frame.height;
    }
    taken.push({ x: box.x - 2, y: box.y - 2, width: box.width + 4, height: box.height + 4 });
    break;
  }
  const grainWay: Way = shape.turned
    ? { along: "width", to: [1, 0], ends: 2 }
    : { along: "height", to: [0, -1], ends: 2 };
  const grain = arrowBox(shape, room, taken, { ...grainWay, thick: 9, most: 150 });
  if (grain !== null) {
    nodes.push(...arrowIn(grain, grainWay, 0.9, [x, y]));
    taken.push(grain);
  }
  if (shape.up !== null) {
    const way: Way = {
      along: shape.up[0] === 0 ? "height" : "width",
      to: shape.up,
      ends: shape.twoWay ? 2 : 1,
    };
    const printed = arrowBox(shape, room, taken, { ...way, thick: 12, most: 60 });
    if (printed !== null) nodes.push(...arrowIn(printed, way, 2, [x, y]));
  }
  return { nodes, grainDrawn: grain !== null };
}

/** Which way an arrow runs and points, and how many heads it has. */
interface Way {
  along: "width" | "height";
  to: Spot;
  ends: 1 | 2;
}

/** The longest narrow box an arrow has room in. */
function arrowBox(
  shape: FullSize,
  room: Box,
  taken: readonly Box[],
  { along, thick, most }: Pick<Way, "along"> & { thick: number; most: number },
): Box | null {
  for (const share of [0.6, 0.45, 0.32, 0.22, 0.15]) {
    const length = Math.min(most, room[along] * share);
    if (length < 16) return null;
    const size = along === "width" ? { width: length, height: thick } : { width: thick, height: length };
    const box = boxInside(shape.seam, size, room, taken);
    if (box !== null) return box;
  }
  return null;
}

function arrowIn(box: Box, { to: [ux, uy], ends }: Way, weight: number, [x, y]: Spot): SceneNode[] {
  const [cx, cy] = [box.x + box.width / 2 + x, box.y + box.height / 2 + y];
  const [rx, ry] = [(Math.abs(ux) * box.width) / 2, (Math.abs(uy) * box.height) / 2];
  const [dx, dy] = [Math.sign(ux) * rx, Math.sign(uy) * ry];
  return arrow([cx - dx, cy - dy], [cx + dx, cy + dy], INK, ends, weight);
}
