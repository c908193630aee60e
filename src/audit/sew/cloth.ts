import type { LaidRecord, PatchPart } from "../../cutlist/record/unit-record.ts";
import { said } from "./compare.ts";
import type { Piece } from "./fold.ts";
import { between, NEAR, type Polygon, rectangleOf } from "./polygon.ts";
import type { Bag, Workroom } from "./types.ts";

export const bagOf = (letter: string, room: Workroom): Bag | null => room.bags.get(letter) ?? null;

const ON_DIAGONAL: Readonly<Record<string, "rising" | "falling">> = {
  "top-left": "rising",
  "bottom-right": "rising",
  "top-right": "falling",
  "bottom-left": "falling",
};

/** A part of a cut piece, as it lies on the bolt; or what is wrong with asking for it. */
export function partOf(bag: Bag, part: PatchPart): Polygon | string {
  const { across: w, along: h, subcut, shape, letter, fullWidth } = bag.piece;
  const [a, b, c, d] = rectangleOf(w, h);
  const middle = { x: w / 2, y: h / 2 };
  if (part === "whole")
    return subcut === "none" ? [a, b, c, d] : `takes pieces ${letter} whole, which are cut further`;
  if (part === "template")
    return subcut === "template" && shape !== undefined && !fullWidth
      ? shape.cut
      : `takes a shape from ${letter}, which has none`;
  if (part === "top" || part === "right" || part === "bottom" || part === "left") {
    if (subcut !== "twice-diagonal") return `takes quarters of ${letter}, which is not cut on both diagonals`;
    return { top: [a, b, middle], right: [b, c, middle], bottom: [c, d, middle], left: [d, a, middle] }[part];
  }
  if (subcut !== "once-diagonal") return `takes halves of ${letter}, which is not halved`;
  const { diagonal } = bag.piece;
  if (diagonal === "any" && (bag.same !== 0 || Math.abs(w - h) > NEAR))
    return `takes halves of ${letter}, and nobody says on which diagonal`;
  if (diagonal !== "any" && diagonal !== ON_DIAGONAL[part])
    return `takes the ${part} halves of ${letter}, which is cut on the ${diagonal} diagonal as it lies on the bolt`;
  return {
    "top-left": [a, b, d],
    "top-right": [a, b, c],
    "bottom-right": [b, c, d],
    "bottom-left": [a, c, d],
  }[part];
}

/** A piece of a set as it is laid, taken from its bag; faults are told under the name of the unit. */
export function laidPiece(laid: LaidRecord, unit: string, room: Workroom): Piece | null {
  const bag = bagOf(laid.letter, room);
  if (bag === null) {
    room.faults.push(`${unit} takes pieces ${laid.letter}, and there are none`);
    return null;
  }
  const { piece, fabric, same, boltUp } = bag;
  if (fabric !== laid.fabric)
    room.faults.push(`${unit} takes ${laid.fabric} from bag ${laid.letter}, which holds ${fabric}`);
  if (piece.subcut !== "none")
    room.faults.push(`${unit} sews pieces ${laid.letter} whole, which are cut further`);
  const up = laid.up === null ? null : laid.up * 45;
  const turns = up === null ? null : (up - boltUp + 720) / 90;
  if (turns !== null && !Number.isInteger(turns)) room.faults.push(`${unit} lays ${laid.letter} aslant`);
  const onSide = turns === null ? null : turns % 2 === 1;
  const matches = (a: number, b: number): boolean =>
    Math.abs(laid.across - a) <= NEAR && Math.abs(laid.along - b) <= NEAR;
  const upright = onSide !== true && matches(piece.across, piece.along);
  const turned = onSide !== false && matches(piece.along, piece.across);
  if (!upright && !turned)
    room.faults.push(
      `${unit} lays ${laid.letter} as ${said(laid.across)} x ${said(laid.along)}, and it is cut ${said(piece.across)} x ${said(piece.along)}`,
    );
  if (same === 0 && laid.up !== null)
    room.faults.push(`${unit} says where ${laid.letter} points, which has no direction`);
  return {
    across: laid.across,
    along: laid.along,
    fabric,
    up,
    faceDown: laid.faceDown === null ? null : laid.faceDown * 45,
  };
}

/** Whether a piece laid face down is what its `up` says once it is turned over that mirror. */
export function turnsOver(
  up: number | null,
  faceDown: number | null,
  mirrored: (angle: number) => number,
): boolean {
  return up === null || faceDown === null ? up === faceDown : between(mirrored(faceDown), up, 360) < 0.5;
}
