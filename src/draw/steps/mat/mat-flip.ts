import type { BatchRecord, StepRecord } from "../../../cutlist/record/unit-record.ts";
import type { Corner as CornerName } from "../../../quilt/units/types.ts";
import type { Words } from "../../../words/index.ts";
import type { Corner } from "../../quilt/patches.ts";
import { type ClothLayer, figure, movedBy, opened } from "../cloth-layer.ts";
import { beside, boundsOf, type Line, lineThrough } from "../geometry.ts";
import type { Made, PanelDraft } from "../panel.ts";
import { chord, chords, laidOf, pieceLayer, pressedAcross } from "./mat.ts";

type Flip = Extract<StepRecord, { do: "flip" }>;

interface Placed {
  square: ClothLayer;
  /** Walked with the middle of the base on its right-hand side. */
  line: Line;
}

/** A small square face down on its corner, and the diagonal that does not touch that corner. */
function placed(square: ClothLayer, corner: CornerName, across: number, along: number): Placed {
  const own = boundsOf(square.corners);
  const right = corner.endsWith("right");
  const low = corner.startsWith("bottom");
  const moved = movedBy(square, right ? across - own.right : 0, low ? along - own.bottom : 0);
  const { x, y, right: far, bottom } = boundsOf(moved.corners);
  const ends: Record<CornerName, [Corner, Corner]> = {
    "top-left": [
      [x, bottom],
      [far, y],
    ],
    "top-right": [
      [x, y],
      [far, bottom],
    ],
    "bottom-right": [
      [far, y],
      [x, bottom],
    ],
    "bottom-left": [
      [far, bottom],
      [x, y],
    ],
  };
  return { square: moved, line: lineThrough(...ends[corner]) };
}

/** Squares on neighbouring corners that overlap; those on opposite ones never reach each other's seam. */
function overlap(a: ClothLayer, b: ClothLayer): boolean {
  const [p, q] = [boundsOf(a.corners), boundsOf(b.corners)];
  if (Math.abs(p.x - q.x) > 1 && Math.abs(p.y - q.y) > 1) return false;
  return p.x < q.right - 1 && q.x < p.right - 1 && p.y < q.bottom - 1 && q.y < p.bottom - 1;
}

/** Squares that can be laid at one time, since none reaches onto another. */
function rounds(all: readonly Placed[]): Placed[][] {
  const found: Placed[][] = [];
  for (const each of all) {
    const last = found.at(-1);
    if (last === undefined || last.some(({ square }) => overlap(square, each.square))) found.push([each]);
    else last.push(each);
  }
  return found;
}

/** Small squares on corners of a base, sewn corner to corner, cut a seam allowance outside, folded out. */
export function sewFlips(
  step: Flip,
  batch: BatchRecord,
  seam: number,
  words: Words,
): { panels: PanelDraft[]; made: Made[] } {
  const base = laidOf(batch, step.base);
  const all = step.squares.map(({ piece, corner }) =>
    placed(pieceLayer(laidOf(batch, piece), "wrong"), corner, base.across, base.along),
  );
  let layers = [pieceLayer(base, "right")];
  const panels = rounds(all).flatMap((round): PanelDraft[] => {
    const lines = round.flatMap(({ square, line }) => chords([square.corners], line));
    const before = layers;
    const laid = [...before, ...round.map(({ square }) => square)];
    const cuts = round.flatMap(({ square, line }) => chords([square.corners], beside(line, -seam)));
    for (const { square, line } of round) layers = opened(layers, [square], line);
    const pressed = round.flatMap(({ square, line }) => {
      const on = chord(square.corners, line);
      return on === null ? [] : pressedAcross(line, on, step, { below: base.role, out: square.role });
    });
    return [
      { says: words.drawings.steps.layCorner, figures: [figure(laid, { ruled: lines })] },
      {
        says: words.drawings.steps.sewCutFold,
        figures: [
          figure(laid, { sewn: lines, cuts, lettered: false }),
          figure(layers, { pressed, sign: "then", lettered: false }),
        ],
      },
    ];
  });
  return { panels, made: [{ layers }] };
}
