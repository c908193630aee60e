import { nth } from "../length/nth.ts";
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
export function letterPieces(
  pieces: readonly CutPiece[],
  first = 0,
  known: LettersOfFabric | null = null,
): CutPiece[] {
  return letterMarked(
    pieces.map((piece) => ({ piece, marks: [] })),
    first,
    known,
  ).map(({ piece }) => piece);
}

/** The same for pieces with marks. */
export function letterMarked(
  pieces: readonly Marked[],
  first: number,
  known: LettersOfFabric | null = null,
): Marked[] {
  const sorted = [...pieces].sort((a, b) => largestFirst(a.piece, b.piece));
  const named = known === null ? sorted.map(() => null) : lettersAgain(sorted, known);
  // No two fabrics begin new letters at the same place: `first` counts what those before have taken.
  const from = first + (known?.next ?? 0);
  return sorted.map(({ piece, marks }, index) => {
    const letter = named[index] ?? letterAt(from + index);
    return { piece: { ...piece, letter }, marks };
  });
}

/**
 * Letters that the bags of a fabric have already, and where new ones begin: a list that is made again, as for a narrower
 * bolt, keeps them.
 */
export interface LettersOfFabric {
  bags: readonly CutPiece[];
  /** How many letters the whole quilt has taken. */
  next: number;
}

/** The letter each piece had: that of the bag just like it, else of one for the same use; null for a new piece. */
function lettersAgain(pieces: readonly Marked[], { bags }: LettersOfFabric): (string | null)[] {
  const free = [...bags];
  const letters = pieces.map((): string | null => null);
  for (const keyOf of [bagKey, useKey]) {
    pieces.forEach(({ piece }, i) => {
      if (letters[i] !== null) return;
      const at = free.findIndex((bag) => keyOf(bag) === keyOf(piece));
      if (at < 0) return;
      letters[i] = nth(free, at).letter;
      free.splice(at, 1);
    });
  }
  return letters;
}

/** What tells one bag of a fabric from another, however wide the bolt is. */
export function bagKey(piece: CutPiece): string {
  const { across, along, fullWidth, turnable, cut, join, subcut, diagonal, trimTo, label, joined } = piece;
  const size = fullWidth ? [0, along] : turnable ? [across, along].sort((a, b) => a - b) : [across, along];
  return JSON.stringify([
    size,
    turnable,
    cut,
    join,
    subcut,
    diagonal,
    trimTo,
    label,
    joined?.whole,
    useKey(piece),
  ]);
}

function useKey({ uses }: CutPiece): string {
  return JSON.stringify(uses.map(({ purpose }) => purpose));
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
    inCodeOrder(JSON.stringify(a.notes), JSON.stringify(b.notes))
  );
}

/** Compares by code units: the same on every machine, whatever its language. */
function inCodeOrder(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
