import type { BatchRecord, LaidRecord, StepRecord, UnitRecord } from "../../../cutlist/record/unit-record.ts";
import type { Corner } from "../../quilt/patches.ts";
import { type ClothLayer, movedBy, type Segment } from "../cloth-layer.ts";
import { boundsOf, boxCorners, insideBox, type Line, offside } from "../geometry.ts";

/*
 * What is sewn before it is cut is sewn here as the hands do it: pieces as they lie, seams a seam allowance beside
 * the line, cut, folded out. So a picture cannot show what the record does not say.
 */

/** The cloth of a laid piece, its upper left corner at 0, 0. */
export function pieceLayer(laid: LaidRecord, side: ClothLayer["side"]): ClothLayer {
  return {
    corners: boxCorners({ x: 0, y: 0, right: laid.across, bottom: laid.along }),
    fabric: laid.fabric,
    letter: laid.letter,
    role: laid.role,
    up: side === "right" ? laid.up : laid.faceDown,
    side,
  };
}

/** A piece of a set by its index in the recipe. Throws where the record does not hold it. */
export function laidOf(batch: BatchRecord, piece: number, list = 0): LaidRecord {
  const found = batch.laid.find((laid) => laid.piece === piece && laid.list === list);
  if (found === undefined) throw new Error(`A set has no piece ${piece}, ${list}`);
  return found;
}

/** The stretch of a line that lies on an outline; null where it misses it. */
export function chord(corners: readonly Corner[], line: Line): Segment | null {
  const hits = corners.flatMap((from, i): number[] => {
    const to = corners[(i + 1) % corners.length] ?? from;
    const [a, b] = [offside(line, from), offside(line, to)];
    if (Math.abs(a - b) < 1e-9 || (a > 1e-6 && b > 1e-6) || (a < -1e-6 && b < -1e-6)) return [];
    const t = a / (a - b);
    const [x, y] = [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
    return [(x - line.at[0]) * line.run[0] + (y - line.at[1]) * line.run[1]];
  });
  if (hits.length < 2) return null;
  const place = (t: number): Corner => [line.at[0] + line.run[0] * t, line.at[1] + line.run[1] * t];
  return [place(Math.min(...hits)), place(Math.max(...hits))];
}

export function chords(outlines: readonly (readonly Corner[])[], line: Line): Segment[] {
  return outlines.map((corners) => chord(corners, line)).filter((found) => found !== null);
}

export function middleOf([a, b]: Segment): Corner {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

type Press = Extract<StepRecord, { press: unknown }>;

/**
 * Which way an opened seam is pressed.
 * @param seam walked with what lies below on its right-hand side, what was folded out on its left
 */
export function pressedAcross(
  seam: Line,
  on: Segment,
  step: Press,
  roles: { below: string; out: string },
): { at: Corner; to: Corner }[] {
  const below: Corner = [-seam.run[1], seam.run[0]];
  const out: Corner = [seam.run[1], -seam.run[0]];
  const at = middleOf(on);
  if (step.press.to === "open")
    return [
      { at, to: below },
      { at, to: out },
    ];
  return [{ at, to: step.pressTo?.part === roles.below && roles.below !== roles.out ? below : out }];
}

/** Cloth moved so that the middle of its bounds is the middle of the raw unit. */
export function centred(layers: readonly ClothLayer[], raw: UnitRecord["raw"]): ClothLayer[] {
  const box = boundsOf(layers.flatMap(({ corners }) => corners));
  const [dx, dy] = [(raw.across - box.x - box.right) / 2, (raw.along - box.y - box.bottom) / 2];
  return layers.map((layer) => movedBy(layer, dx, dy));
}

/** What is left of cloth inside a box from 0, 0. */
export function trimmedTo(
  layers: readonly ClothLayer[],
  size: { across: number; along: number },
): ClothLayer[] {
  const box = { x: 0, y: 0, right: size.across, bottom: size.along };
  return layers.flatMap((layer) => {
    const corners = insideBox(layer.corners, box);
    return corners.length < 3 ? [] : [{ ...layer, corners }];
  });
}
