import type { CutPiece } from "./types.ts";

/** The name of the piece at `index` in a cut list: A ... Z, then AA, AB ... */
export function letterAt(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letterAt(Math.floor(index / 26) - 1) + last;
}

/**
 * Puts pieces in the order makers cut them, largest first, and names them in that order. The order has a
 * full tie-break, so that the same list always gets the same letters.
 */
export function letterPieces(pieces: readonly CutPiece[]): CutPiece[] {
  return letterOrder(pieces).map((at, index) => ({ ...pieces[at]!, letter: letterAt(index) }));
}

/** The order in which pieces are lettered, as indices into them. */
export function letterOrder(pieces: readonly CutPiece[]): number[] {
  return pieces.map((_, index) => index).sort((a, b) => largestFirst(pieces[a]!, pieces[b]!));
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
