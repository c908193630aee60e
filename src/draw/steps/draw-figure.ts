import type { Corner } from "../quilt/patches.ts";
import { TICKS_PER_MM } from "../scene/frame.ts";
import { arrow, numberMark } from "../scene/marks.ts";
import { textWidth } from "../scene/metrics.ts";
import { INK, labelOn, mix, PAPER, safeColour } from "../scene/palette.ts";
import { type Box, circle, group, line, path, rect, region, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { type Tile, textureLines } from "../scene/texture-lines.ts";
import { fabricNodes, photoPaint } from "../scene/textures.ts";
import type { ClothLayer, Figure, Segment } from "./cloth-layer.ts";
import { meets, roomIn, type Taken } from "./find-room.ts";
import { boundsOf } from "./geometry.ts";
import type { StepFabric } from "./step-fabric.ts";

/** How cloth is seen: where ticks come to lie on the page. */
export interface View {
  fabrics: readonly StepFabric[];
  x: number;
  y: number;
  /** Page units to a tick, across and down; alike but in piles of many strips. */
  across: number;
  down: number;
}

/** Share of paper in the tint of a wrong side, and the sign that lies over it. */
const TINT = 0.72;
const LETTER_SIZES = [13, 11, 9.5, 8.3] as const;
const ARROWS = [9, 7, 5.5, 4.2] as const;

/** Small crosses all over: the sign of a wrong side, seen in grey print too. */
const WRONG = ((): Tile => {
  const stroke = { stroke: "#5c6670", strokeWidth: 0.7 };
  return {
    size: 11,
    nodes: [
      line(2, 2, 5, 5, stroke),
      line(5, 2, 2, 5, stroke),
      line(7.5, 7.5, 10.5, 10.5, stroke),
      line(10.5, 7.5, 7.5, 10.5, stroke),
    ],
  };
})();

/** What a reader writes on, for black or white letters. */
function groundOf(layer: ClothLayer, fabrics: readonly StepFabric[]): string {
  const colour = safeColour(fabrics.find(({ name }) => name === layer.fabric)?.colour ?? "");
  return layer.side === "right" ? colour : mix(colour, PAPER, TINT);
}

/** One piece of cloth in its fabric, its wrong side paler and under crosses. */
export function clothNodes(
  layer: ClothLayer,
  corners: readonly Corner[],
  view: Pick<View, "fabrics"> & Partial<Pick<View, "across">>,
): SceneNode {
  const { fabrics } = view;
  const index = fabrics.findIndex(({ name }) => name === layer.fabric);
  if (layer.side === "right" && fabrics[index]?.photo !== undefined)
    return photoNodes(layer, corners, fabrics, index, (view.across ?? 1 / TICKS_PER_MM) * TICKS_PER_MM);
  const nodes =
    layer.side === "wrong"
      ? [region([corners], { fill: groundOf(layer, fabrics) }), ...textureLines(WRONG, [corners], 1)]
      : fabricNodes(fabrics, index, [corners], 1);
  return group(nodes, { paint: { stroke: INK, strokeWidth: 0.7 } });
}

/** The right side of cloth that has a photo, in a group whose unit is a millimetre of cloth, so that the print is to scale. */
function photoNodes(
  { up }: ClothLayer,
  corners: readonly Corner[],
  fabrics: readonly StepFabric[],
  index: number,
  mm: number,
): SceneNode {
  const { colour = "", photo } = fabrics[index] ?? {};
  if (photo === undefined) return group([]);
  const inCloth = corners.map(([x, y]): Corner => [x / mm, y / mm]);
  return group(
    [
      region([[...corners]], { fill: safeColour(colour) }),
      group([region([inCloth], photoPaint(photo, up === null ? null : up * 45))], {
        move: { x: 0, y: 0, scale: mm },
        paint: { stroke: "none" },
      }),
      region([[...corners]], { fill: "none" }),
    ],
    { paint: { stroke: INK, strokeWidth: 0.7 } },
  );
}

/** A ground for letters and arrows that lie on a photo, in its colour. */
function plate(layer: ClothLayer, fabrics: readonly StepFabric[], box: Box): SceneNode[] {
  const pictured = fabrics.some(({ name, photo }) => name === layer.fabric && photo !== undefined);
  return pictured && layer.side === "right" ? [rect(box, { fill: groundOf(layer, fabrics) }, 3)] : [];
}

function stroked([a, b]: Segment, paint: { dash?: string; weight: number }): SceneNode[] {
  const [[x1, y1], [x2, y2]] = [a, b];
  return [
    line(x1, y1, x2, y2, { stroke: PAPER, strokeWidth: paint.weight + 1.6 }),
    line(x1, y1, x2, y2, {
      stroke: INK,
      strokeWidth: paint.weight,
      ...(paint.dash === undefined ? {} : { dash: paint.dash }),
    }),
  ];
}

export const ruledNodes = (on: Segment): SceneNode[] => stroked(on, { weight: 0.8 });
export const sewnNodes = (on: Segment): SceneNode[] => stroked(on, { weight: 1.3, dash: "4 2.4" });

/** A cut runs beyond the cloth, with a wheel at its end. */
export function cutNodes([a, b]: Segment): SceneNode[] {
  const run = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [ux, uy] = [((b[0] - a[0]) / run) * 5, ((b[1] - a[1]) / run) * 5];
  return [
    ...stroked(
      [
        [a[0] - ux, a[1] - uy],
        [b[0] + ux, b[1] + uy],
      ],
      { weight: 1.7 },
    ),
    circle(b[0] + ux * 1.5, b[1] + uy * 1.5, 2.6, { fill: PAPER, stroke: INK, strokeWidth: 1.2 }),
  ];
}

/** A broad arrow across a seam, edged in paper so that it stands on any cloth. */
export function pressNodes(at: Corner, to: Corner, size = 1): { nodes: SceneNode[]; reach: Segment } {
  const place = (along: number, beside: number): Corner => [
    at[0] + (to[0] * along - to[1] * beside) * size,
    at[1] + (to[1] * along + to[0] * beside) * size,
  ];
  const outline = [
    place(-7, -1.5),
    place(1, -1.5),
    place(1, -5),
    place(9, 0),
    place(1, 5),
    place(1, 1.5),
    place(-7, 1.5),
  ];
  return {
    nodes: [
      region([outline], { fill: INK, stroke: PAPER, strokeWidth: 1.6 }),
      region([outline], { fill: INK }),
    ],
    reach: [place(-7, 0), place(9, 0)],
  };
}

/** The way of a print: a filled head on its right side, an open one on its wrong side; two for two ways. */
export function printNodes(
  at: Corner,
  reach: number,
  ink: string,
  { up, side, twoWay }: { up: number; side: ClothLayer["side"]; twoWay: boolean },
): SceneNode[] {
  const angle = (up * Math.PI) / 4;
  const [ux, uy] = [Math.sin(angle) * reach, -Math.cos(angle) * reach];
  const [tail, tip]: [Corner, Corner] = [
    [at[0] - ux, at[1] - uy],
    [at[0] + ux, at[1] + uy],
  ];
  const weight = Math.min(1.1, Math.max(0.75, reach / 8));
  if (side === "right") return arrow(tail, tip, ink, twoWay ? 2 : 1, weight);
  const head = (end: Corner, sign: number): SceneNode => {
    const [x, y] = [(ux / reach) * sign, (uy / reach) * sign];
    const [bx, by] = [end[0] - x * 5 * weight, end[1] - y * 5 * weight];
    return path(
      [[bx - y * 2.8 * weight, by + x * 2.8 * weight], end, [bx + y * 2.8 * weight, by - x * 2.8 * weight]],
      false,
      {
        fill: "none",
        stroke: ink,
        strokeWidth: weight,
      },
    );
  };
  const shaft = line(tail[0], tail[1], tip[0], tip[1], { stroke: ink, strokeWidth: weight });
  return [shaft, head(tip, 1), ...(twoWay ? [head(tail, -1)] : [])];
}

function tornNodes([[x, y1], [, y2]]: Segment): SceneNode[] {
  const teeth = Math.max(4, Math.round((y2 - y1) / 10) * 2);
  const edge = Array.from(
    { length: teeth + 1 },
    (_, i): Corner => [x - 3 + (i % 2 === 0 ? 2 : -2), y1 - 1 + ((y2 - y1 + 2) * i) / teeth],
  );
  return [
    region([[...edge, [x + 3, y2 + 1], [x + 3, y1 - 1]]], { fill: PAPER, stroke: "none" }),
    path(edge, false, { fill: "none", stroke: INK, strokeWidth: 0.8 }),
  ];
}

/** A number on what it speaks of, or somewhere along its seam. */
function numberNodes(
  { text, on, along = [] }: { text: string; on: readonly Corner[]; along?: readonly Segment[] },
  above: readonly (readonly Corner[])[],
  taken: Taken,
): SceneNode[] {
  const words = textWidth(text, 8.5, true);
  const width = Math.max(12, words + 6);
  const place = (at: Corner, width: number): SceneNode[] => {
    const box = { x: at[0] - width / 2, y: at[1] - 6, width, height: 12 };
    taken.boxes.push(box);
    return numberMark(text, box);
  };
  if (on.length > 0) {
    for (const wide of [width, Math.max(11, words + 2)]) {
      const at = roomIn(on, above, taken, wide, 12);
      if (at !== null) return place(at, wide);
    }
    return [];
  }
  const free = [0.5, 0.35, 0.65, 0.2, 0.8]
    .flatMap((t) => along.map(([a, b]): Corner => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]))
    .find(
      ([x, y]) => !taken.boxes.some((box) => meets({ x: x - width / 2, y: y - 6, width, height: 12 }, box)),
    );
  return free === undefined ? [] : place(free, width);
}

/**
 * Letter and arrow of one piece, side by side or one above the other where there is room; else what fits.
 * @param text its letter; empty where none is written
 * @param on.above outlines that lie over it
 */
function marksOf(
  layer: ClothLayer,
  text: string,
  { corners, above }: { corners: readonly Corner[]; above: readonly (readonly Corner[])[] },
  taken: Taken,
  view: View,
): SceneNode[] {
  const ink = labelOn(groundOf(layer, view.fabrics));
  const twoWay = view.fabrics.find(({ name }) => name === layer.fabric)?.print.kind === "two-way";
  const letterAt = (at: Corner, size: number, width: number): SceneNode[] => {
    const box = { x: at[0] - width / 2, y: at[1] - size * 0.52, width, height: size * 1.04 };
    taken.boxes.push(box);
    const written = textIn(text, box, { size, bold: true, anchor: "middle", fill: ink });
    return [...plate(layer, view.fabrics, box), written];
  };
  const arrowAt = (at: Corner, up: number, reach: number): SceneNode[] => {
    const [w, h] = arrowBox(up, reach);
    const box = { x: at[0] - w / 2, y: at[1] - h / 2, width: w, height: h };
    taken.boxes.push(box);
    const print = { up, side: layer.side, twoWay };
    return [...plate(layer, view.fabrics, box), ...printNodes(at, reach, ink, print)];
  };
  const { up } = layer;
  if (text !== "" && up !== null) {
    for (const [i, size] of LETTER_SIZES.entries()) {
      const reach = ARROWS[i] ?? 4.2;
      const [w, h] = arrowBox(up, reach);
      const [tw, th] = [textWidth(text, size, true) + 1, size * 1.04];
      for (const beside of [true, false]) {
        const [width, height] = beside ? [tw + w + 2, Math.max(th, h)] : [Math.max(tw, w), th + h + 2];
        const at = roomIn(corners, above, taken, width, height);
        if (at === null) continue;
        const letter: Corner = beside ? [at[0] - (w + 2) / 2, at[1]] : [at[0], at[1] - (h + 2) / 2];
        const mark: Corner = beside ? [at[0] + (tw + 2) / 2, at[1]] : [at[0], at[1] + (th + 2) / 2];
        return [...letterAt(letter, size, tw), ...arrowAt(mark, up, reach)];
      }
    }
  }
  const nodes: SceneNode[] = [];
  if (text !== "") {
    for (const size of LETTER_SIZES) {
      const width = textWidth(text, size, true) + 1;
      const at = roomIn(corners, above, taken, width, size * 1.04);
      if (at === null) continue;
      nodes.push(...letterAt(at, size, width));
      break;
    }
  }
  if (up !== null) {
    for (const reach of ARROWS) {
      const at = roomIn(corners, above, taken, ...arrowBox(up, reach));
      if (at === null) continue;
      nodes.push(...arrowAt(at, up, reach));
      break;
    }
  }
  return nodes;
}

function arrowBox(up: number, reach: number): [number, number] {
  const angle = (up * Math.PI) / 4;
  return [Math.abs(Math.sin(angle)) * 2 * reach + 6, Math.abs(Math.cos(angle)) * 2 * reach + 6];
}

/** Everything a figure covers, in ticks. */
export function extentOf(drawn: Figure): ReturnType<typeof boundsOf> {
  return boundsOf([...drawn.layers.flatMap(({ corners }) => corners), ...(drawn.trim ?? [])]);
}

/** Arrows keep small where patches are. */
function arrowSize(outlines: readonly (readonly Corner[])[]): number {
  const narrowest = Math.min(
    ...outlines.map((corners) => {
      const { x, y, right, bottom } = boundsOf(corners);
      return Math.min(right - x, bottom - y);
    }),
  );
  return Math.min(1, Math.max(0.5, narrowest / 34));
}

/** One picture, its upper left corner at the view's place. */
export function drawFigure(drawn: Figure, view: View): SceneNode[] {
  return laidOut(drawn, view, false).nodes;
}

/** Whether every number, letter and print arrow of a picture finds room at this size. */
export function hasRoom(drawn: Figure, view: View): boolean {
  return laidOut(drawn, view, true).missing === 0;
}

/** The room an arrow from one corner to another takes. */
function boxRound([a, b]: Segment): Taken["boxes"][number] {
  return {
    x: Math.min(a[0], b[0]) - 5,
    y: Math.min(a[1], b[1]) - 5,
    width: Math.abs(a[0] - b[0]) + 10,
    height: Math.abs(a[1] - b[1]) + 10,
  };
}

/** @param trial gives up at the first mark that finds no room */
function laidOut(drawn: Figure, view: View, trial: boolean): { nodes: SceneNode[]; missing: number } {
  const { x, y } = extentOf(drawn);
  const put = ([px, py]: Corner): Corner => [view.x + (px - x) * view.across, view.y + (py - y) * view.down];
  const segment = ([a, b]: Segment): Segment => [put(a), put(b)];
  const outlines = drawn.layers.map(({ corners }) => corners.map(put));
  const lines = (all: readonly Segment[]): Segment[] => all.map(segment);
  const [ruled, sewn] = [lines(drawn.ruled), lines(drawn.sewn)];
  const [cuts, torn] = [lines(drawn.cuts), lines(drawn.torn)];
  const size = arrowSize(outlines);
  const pressed = drawn.pressed.map(({ at, to }) => pressNodes(put(at), to, size));
  const box = drawn.trim?.map(put) ?? [];
  const trim = box.map((a, i): Segment => [a, box[(i + 1) % box.length] ?? a]);
  const stops = drawn.stops.map(put);
  const reaches = pressed.map(({ reach }) => reach);
  const taken: Taken = {
    strokes: [...ruled, ...sewn, ...cuts, ...trim, ...reaches, ...torn],
    boxes: [
      ...stops.map(([sx, sy]) => ({ x: sx - 4, y: sy - 4, width: 8, height: 8 })),
      ...reaches.map(boxRound),
    ],
  };
  const cloth = drawn.layers.map((layer, i) => clothNodes(layer, outlines[i] ?? [], view));
  let missing = 0;
  const numbers = drawn.numbers.flatMap((number) => {
    if (trial && missing > 0) return [];
    const nodes = numberNodes(
      { ...number, on: number.on.map(put), along: (number.along ?? []).map(segment) },
      [],
      taken,
    );
    if (nodes.length === 0) missing += 1;
    return nodes;
  });
  const written = new Set<string>();
  const marks = drawn.layers.flatMap((layer, i) => {
    if (trial && missing > 0) return [];
    const on = { corners: outlines[i] ?? [], above: outlines.slice(i + 1) };
    const own = marksOf(layer, drawn.lettered ? layer.letter : "", on, taken, view);
    if (own.some(({ kind }) => kind === "text")) written.add(layer.letter);
    if (drawn.lettered && layer.up !== null && !own.some(({ kind }) => kind !== "text" && kind !== "rect"))
      missing += 1;
    return own;
  });
  if (drawn.lettered && drawn.layers.some(({ letter }) => letter !== "" && !written.has(letter)))
    missing += 1;
  const nodes = [
    ...cloth,
    ...torn.flatMap(tornNodes),
    ...ruled.flatMap(ruledNodes),
    ...sewn.flatMap(sewnNodes),
    ...cuts.flatMap(cutNodes),
    ...trim.flatMap((edge) => stroked(edge, { weight: 1.7 })),
    ...stops.flatMap(([sx, sy]) => [circle(sx, sy, 3, { fill: PAPER, stroke: INK, strokeWidth: 1.4 })]),
    ...pressed.flatMap(({ nodes }) => nodes),
    ...numbers,
    ...marks,
  ];
  return { nodes, missing };
}
