import { INK, PAPER } from "./palette.ts";
import { type Box, circle, line, type Paint, path, rect, type SceneNode } from "./scene.ts";
import { textIn } from "./text.ts";

type Point = readonly [number, number];

/** An arrow from `tail` to `tip`; `ends` 2 puts a head on both. */
export function arrow(tail: Point, tip: Point, colour: string, ends: 1 | 2, weight = 1): SceneNode[] {
  const run = Math.hypot(tip[0] - tail[0], tip[1] - tail[1]);
  const [ux, uy] = [(tip[0] - tail[0]) / run, (tip[1] - tail[1]) / run];
  const head = ([x, y]: Point, sign: 1 | -1): SceneNode => {
    const [back, side] = [4.5 * weight, 2.4 * weight];
    const base: Point = [x - sign * ux * back, y - sign * uy * back];
    return path(
      [
        [x, y],
        [base[0] - uy * side, base[1] + ux * side],
        [base[0] + uy * side, base[1] - ux * side],
      ],
      true,
      { fill: colour },
    );
  };
  const shaft = line(tail[0], tail[1], tip[0], tip[1], { stroke: colour, strokeWidth: weight });
  return ends === 2 ? [shaft, head(tip, 1), head(tail, -1)] : [shaft, head(tip, 1)];
}

/** The edge of a break in the drawing: a row of teeth from `x1` to `x2` about the height `y`. */
export function breakEdge(x1: number, x2: number, y: number): Point[] {
  const teeth = Math.max(3, Math.round((x2 - x1) / 14)) * 2;
  return Array.from({ length: teeth + 1 }, (_, i): Point => {
    const lift = i === 0 || i === teeth ? 0 : i % 2 === 0 ? 2.5 : -2.5;
    return [x1 + ((x2 - x1) * i) / teeth, y + lift];
  });
}

/** A break: paper showing between two torn edges. */
export function breakMark(box: Box): SceneNode[] {
  const [left, right] = [box.x - 3, box.x + box.width + 3];
  const top = breakEdge(left, right, box.y);
  const bottom = breakEdge(left, right, box.y + box.height);
  const edge: Paint = { fill: "none", stroke: INK, strokeWidth: 0.9 };
  return [
    path([...top, ...[...bottom].reverse()], true, { fill: PAPER }),
    path(top, false, edge),
    path(bottom, false, edge),
  ];
}

/** A strip's number in a dark lozenge; the box is the lozenge's own. */
export function numberMark(text: string, box: Box, upwards = false): SceneNode[] {
  return [
    rect(box, { fill: INK }, Math.min(box.width, box.height) / 2),
    textIn(text, box, { size: 8.5, bold: true, fill: PAPER, anchor: "middle" }, upwards),
  ];
}

/** The number of an entry in the key to small pieces, in an open square. */
export function keyMark(text: string, box: Box): SceneNode[] {
  return [
    rect(box, { fill: PAPER, stroke: INK, strokeWidth: 0.9 }),
    textIn(text, box, { size: 8.5, bold: true, anchor: "middle" }),
  ];
}

/** A fine line with a dot on its first point: it ties a label to a piece too small to hold one. */
export function pointer(points: readonly Point[]): SceneNode[] {
  const [x, y] = points[0] ?? [0, 0];
  return [
    path(points, false, { fill: "none", stroke: PAPER, strokeWidth: 2.2 }),
    circle(x, y, 2.4, { fill: PAPER }),
    path(points, false, { fill: "none", stroke: INK, strokeWidth: 0.7 }),
    circle(x, y, 1.4, { fill: INK }),
  ];
}
