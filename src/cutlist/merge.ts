import type { PatchShape } from "../quilt/units/types.ts";
import type { Print } from "../spec/types.ts";
import { fromWholeStrips, notesTogether, runsTogether } from "./joins.ts";
import { addShapes, shapeNumber } from "./shapes.ts";
import type { CutPiece, PieceUse } from "./types.ts";

/**
 * Gathers pieces that are cut alike: the same size, turn rule and way of cutting, and cut further in the
 * same way. Counts are added and every use is kept. A free piece written 4 x 2 is the same as one written
 * 2 x 4; the first one written decides how it is shown. Pieces cut to different outlines stay apart though
 * their rectangles are alike: each goes into a bag of its own, with its template.
 * @param print of the fabric: it says how a template may be turned
 */
export function mergePieces(pieces: readonly CutPiece[], print: Print): CutPiece[] {
  return mergeMarked(
    pieces.map((piece) => ({ piece, marks: [] })),
    print,
  ).map(({ piece }) => piece);
}

/** A piece and the numbers by which it is found again. */
export interface Marked {
  piece: CutPiece;
  marks: readonly number[];
}

/** The same, with the marks of all pieces gathered into one. */
export function mergeMarked(pieces: readonly Marked[], print: Print): Marked[] {
  const merged = new Map<string, CutPiece>();
  const found = new Map<string, number[]>();
  const shapes: PatchShape[] = [];
  for (const { piece, marks } of pieces) {
    const shape = piece.shape === undefined ? "" : shapeNumber(shapes, piece.shape, print);
    const key = `${sameness(piece)}${shape}`;
    const before = merged.get(key);
    found.set(key, [...(found.get(key) ?? []), ...marks]);
    if (before === undefined) merged.set(key, piece);
    else {
      const sum = together(before, piece);
      // One run saves strips; where a join more would take one more, runs stay apart.
      if (sum.joined !== undefined && sum.count > before.count + piece.count) {
        merged.set(`${key} ${merged.size}`, piece);
        continue;
      }
      if (before.shape !== undefined && piece.shape !== undefined)
        sum.shape = addShapes(before.shape, piece.shape, print);
      merged.set(key, sum);
    }
  }
  return [...merged].map(([key, piece]) => ({ piece, marks: found.get(key) ?? [] }));
}

function sameness(piece: CutPiece): string {
  const { across, along } = piece;
  const size = piece.turnable ? [Math.min(across, along), Math.max(across, along)] : [across, along];
  const trim = piece.trimTo === null ? [] : [piece.trimTo.across, piece.trimTo.along];
  const joined = piece.joined === undefined ? [] : [piece.joined.loss, piece.joined.join];
  return JSON.stringify([
    size,
    piece.turnable,
    piece.fullWidth,
    piece.cut,
    piece.join,
    piece.subcut,
    piece.diagonal,
    trim,
    joined,
    // Lengths of one width are cut from one run, sides and ends; a binding is a run of its own.
    piece.joined?.whole ?? "",
    // A run holds shapes of one hand only.
    piece.nest === undefined ? null : [piece.nest.halfTurns, piece.nest.spec?.lean ?? ""],
  ]);
}

function together(a: CutPiece, b: CutPiece): CutPiece {
  if (a.joined !== undefined && b.joined !== undefined) {
    const joined = runsTogether(a.joined, b.joined);
    const piece = { ...a, label: listOf(a.label, b.label, ", "), uses: [...a.uses, ...b.uses], joined };
    const whole = fromWholeStrips({ ...piece, roundedUp: a.roundedUp || b.roundedUp });
    if (whole !== null) return whole;
  }
  const merged: CutPiece = {
    ...a,
    label: listOf(a.label, b.label, ", "),
    count: a.count + b.count,
    uses: mergeUses([...a.uses, ...b.uses]),
    roundedUp: a.roundedUp || b.roundedUp,
    notes: notesTogether(a.notes, b.notes),
  };
  // What is joined for two purposes is as long as both.
  if (a.joined !== undefined && b.joined !== undefined)
    merged.joined = { ...a.joined, length: a.joined.length + b.joined.length };
  if (a.rests !== undefined || b.rests !== undefined) merged.rests = [...(a.rests ?? []), ...(b.rests ?? [])];
  if (a.pair === true || b.pair === true) merged.pair = true;
  if (a.corners !== undefined || b.corners !== undefined)
    merged.corners = (a.corners ?? 0) + (b.corners ?? 0);
  if (a.seams !== undefined || b.seams !== undefined) merged.seams = (a.seams ?? 0) + (b.seams ?? 0);
  return merged;
}

/** Both texts once each, in the order met. */
function listOf(a: string, b: string, separator: string): string {
  if (a === "" || b === "") return a + b;
  return a.split(separator).includes(b) ? a : a + separator + b;
}

/** Uses that are alike as one. */
export function mergeUses(uses: readonly PieceUse[]): PieceUse[] {
  const merged = new Map<string, PieceUse>();
  for (const use of uses) {
    const key = JSON.stringify([use.purpose, use.own === true]);
    merged.set(key, { ...use, count: (merged.get(key)?.count ?? 0) + use.count });
  }
  return [...merged.values()];
}
