import type { CutPiece } from "../../cutlist/types.ts";
import type { Part } from "../../plan/types.ts";
import { TICKS_PER_MM } from "../scene/frame.ts";
import type { Box, PathNode } from "../scene/scene.ts";

type Points = PathNode["points"];

/** The outlines of a run of shapes as they lie on the cloth, in millimetres of the lay. Empty for other parts. */
export function runOutlines(part: Part, pieces: readonly CutPiece[]): Points[] {
  const cut = pieces[part.piece ?? -1]?.shape?.cut ?? [];
  if (part.shapes === undefined || cut.length < 3) return [];
  const high = Math.max(...cut.map(({ y }) => y));
  // Turned clockwise: what was at the top is at the right.
  const laid = part.turned ? cut.map(({ x, y }) => ({ x: high - y, y: x })) : cut;
  const [right, bottom] = [Math.max(...laid.map(({ x }) => x)), Math.max(...laid.map(({ y }) => y))];
  return part.shapes.map((shape) =>
    laid.map(({ x, y }): readonly [number, number] => [
      (part.x + shape.x + (shape.halfTurned ? right - x : x)) / TICKS_PER_MM,
      (part.y + shape.y + (shape.halfTurned ? bottom - y : y)) / TICKS_PER_MM,
    ]),
  );
}

/** Where an outline without inward corners begins and ends at a height. */
function chordAt(points: Points, y: number): [number, number] {
  const found = points.flatMap((a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    if ((a[1] - y) * (b[1] - y) > 0) return [];
    return a[1] === b[1] ? [a[0], b[0]] : [a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1])];
  });
  return [Math.min(...found), Math.max(...found)];
}

/** A box for words about the middle of an outline, a third of its height, as wide as the outline there allows. */
export function boxWithin(points: Points): Box {
  const ys = points.map(([, y]) => y);
  const high = Math.max(...ys) - Math.min(...ys);
  let [area, y] = [0, 0];
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    const cross = a[0] * b[1] - b[0] * a[1];
    area += cross;
    y += (a[1] + b[1]) * cross;
  });
  const middle = y / (3 * area);
  const [top, bottom] = [middle - high / 6, middle + high / 6];
  const [upper, lower] = [chordAt(points, top), chordAt(points, bottom)];
  const x = Math.max(upper[0], lower[0]);
  return { x, y: top, width: Math.max(0, Math.min(upper[1], lower[1]) - x), height: bottom - top };
}
