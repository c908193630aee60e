import type { Marked } from "./merge.ts";
import type { CutPiece } from "./types.ts";

/** U is left out: it begins the names of sewn units. */
const LETTERS = "ABCDEFGHIJKLMNOPQRSTVWXYZ";

/** The name of the piece at `index` in a cut list: A ... Z without U, then AA, AB ... */
export function letterAt(index: number): string {
  const last = LETTERS.charAt(index % LETTERS.length);
  return index < LETTERS.length ? last : letterAt(Math.floor(index / LETTERS.length) - 1) + last;
}

/**
 * Puts pieces in the order makers cut them, largest first, and names them in that order. The order has a
 * full tie-break, so that the same list always gets the same letters.
 * @param first how many letters the quilt's earlier fabrics have taken
 */
export function letterPieces(pieces: readonly CutPiece[], first = 0): CutPiece[] {
  return letterMarked(
    pieces.map((piece) => ({ piece, marks: [] })),
    first,
  ).map(({ piece }) => piece);
}

/** The same for pieces with marks. */
export function letterMarked(pieces: readonly Marked[], first: number): Marked[] {
  return [...pieces]
    .sort((a, b) => largestFirst(a.piece, b.piece))
    .map(({ piece, marks }, index) => ({ piece: { ...piece, letter: letterAt(first + index) }, marks }));
}

function largestFirst(a: CutPiece, b: CutPiece): number {
  return (
    b.across * b.along - a.across * a.along ||
    Math.max(b.across, b.along) - Math.max(a.across, a.along) ||
    b.across - a.across ||
    Number(b.fullWidth) - Number(a.fullWidth) ||
    Number(a.turnable) - Number(b.turnable) ||
    inCodeOrder(a.cut, b.cut) ||
    inCodeOrder(a.label, b.label) ||
    inCodeOrder(a.note, b.note)
  );
}

/** Compares by code units: the same on every machine, whatever its language. */
function inCodeOrder(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
