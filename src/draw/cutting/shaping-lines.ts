import type { CutPiece } from "../../cutlist/types.ts";
import type { Part } from "../../plan/types.ts";
import { TICKS_PER_MM } from "../scene/frame.ts";
import { type PathNode, path, type SceneNode } from "../scene/scene.ts";

/*
 * Where a piece is cut further once it is free, drawn inside it: its diagonals, or the line of its template. They lie
 * as the cloth does, so the half with its right angle at the lower left is at the lower left here too.
 */

type Line = { points: PathNode["points"]; closed: boolean };

/** The lines inside a piece on a part of cloth, in millimetres of the lay. Empty for a piece that stays whole. */
function linesIn(part: Part, piece: CutPiece): Line[] {
  const [x, y] = [part.x / TICKS_PER_MM, part.y / TICKS_PER_MM];
  const [right, bottom] = [x + part.across / TICKS_PER_MM, y + part.along / TICKS_PER_MM];
  const rising: Line = {
    points: [
      [x, bottom],
      [right, y],
    ],
    closed: false,
  };
  const falling: Line = {
    points: [
      [x, y],
      [right, bottom],
    ],
    closed: false,
  };
  switch (piece.subcut) {
    case "none":
      return [];
    case "twice-diagonal":
      return [rising, falling];
    case "once-diagonal":
      // A piece that lies turned a quarter has its diagonal turned with it.
      return [(piece.diagonal === "falling") !== part.turned ? falling : rising];
    case "template": {
      const cut = piece.shape?.cut ?? [];
      const across = part.across / TICKS_PER_MM;
      const points = cut.map((point): readonly [number, number] => {
        const [px, py] = [point.x / TICKS_PER_MM, point.y / TICKS_PER_MM];
        // Turned clockwise: what was at the top is at the right.
        return part.turned ? [x + across - py, y + px] : [x + px, y + py];
      });
      return points.length < 3 ? [] : [{ points, closed: true }];
    }
  }
}

/** The same as drawing, for the parts that hold pieces. */
export function shapingLines(parts: readonly Part[], pieces: readonly CutPiece[]): SceneNode[] {
  return parts.flatMap((part) => {
    const piece = pieces[part.piece ?? -1];
    if (piece === undefined || part.parts.length > 0) return [];
    return linesIn(part, piece).map(({ points, closed }) => path(points, closed));
  });
}

/** Whether any piece of a list is cut further in a way the drawing shows. */
export function anyShaped(pieces: readonly CutPiece[]): boolean {
  return pieces.some(({ subcut }) => subcut !== "none");
}
