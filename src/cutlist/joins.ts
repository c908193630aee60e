import { together } from "../diagnostics/purposes.ts";
import type { Ruler, Ticks } from "../length/types.ts";
import type { CutListSpec } from "../spec/types.ts";
import type { CutPiece, JoinedRun, PieceNote } from "./types.ts";

/** Seam allowance taken for a straight join: 1/4 in, or 0.75 cm on a metric ruler. Common practice. */
const SEAM = { in: 4064, cm: 4800, mm: 4800 } as const;

/**
 * Length one join takes from the joined run.
 *
 *     straight:  two seam allowances             diagonal:  strips crossed at right angles overlap in a
 *                                                           square as long as the strip is wide
 *
 * derived geometry: two strips of length L and width w make 2L - 2s joined straight, 2L - w diagonally.
 */
export function lossPerJoin(join: "straight" | "diagonal", stripWidth: Ticks, ruler: Ruler): Ticks {
  return join === "straight" ? 2 * SEAM[ruler.unit] : stripWidth;
}

/**
 * How many strips, each `usable` long, make at least `length` when joined end to end.
 * @returns null when a strip is no longer than the join takes.
 */
export function stripsToJoin(length: Ticks, usable: Ticks, loss: Ticks): number | null {
  if (length <= usable) return 1;
  return usable > loss ? Math.ceil((length - loss) / (usable - loss)) : null;
}

/**
 * True when the piece is longer than the fabric is wide and the maker allows it to be joined. One that must lie as
 * written is joined across only: along the selvage it may be as long as it likes.
 */
export function needsJoin(piece: CutPiece, usable: Ticks): boolean {
  const run = piece.turnable ? Math.max(piece.across, piece.along) : piece.across;
  return piece.join !== "no" && !piece.fullWidth && run > usable;
}

/** What the maker says of joining. */
export type Joining = Pick<CutListSpec, "ruler" | "joinFrom">;

/** The shortest strip or end of one that is joined into a run so long: no shorter than the maker joins, except where all is. */
export function leastEnd({ joinFrom }: Joining, usable: Ticks, length: Ticks): Ticks {
  return Math.max(1, Math.min(joinFrom, usable, length));
}

/**
 * Turns a piece that is longer than the usable width into full-width strips to be sewn end to end. All
 * lengths of the piece are cut from one joined run, as binding is, so that no strip end is lost twice.
 * @returns null when its short side does not fit the width, or the strips are too short to join.
 */
export function joinFromStrips(piece: CutPiece, usable: Ticks, joining: Joining): CutPiece | null {
  if (piece.join === "no") return null;
  // A fixed piece must lie as written, so only its `across` can run along a strip.
  const run = piece.turnable ? Math.max(piece.across, piece.along) : piece.across;
  const stripWidth = piece.turnable ? Math.min(piece.across, piece.along) : piece.along;
  const { corners: _, seams, ...plain } = piece;
  const joined: JoinedRun = {
    length: run * piece.count,
    loss: lossPerJoin(piece.join, stripWidth, joining.ruler),
    join: piece.join,
    leastEnd: leastEnd(joining, usable, run * piece.count),
    lengths: [{ length: run, count: piece.count }],
    whole: null,
    notes: piece.notes,
    ...(seams === undefined ? {} : { finished: run * stripWidth * piece.count - seams }),
  };
  return fromWholeStrips({
    ...plain,
    across: usable,
    along: stripWidth,
    fullWidth: true,
    turnable: false,
    cut: "strips",
    joined,
  });
}

/** The piece as so many whole strips as its run needs; null when they are too short to join. */
export function fromWholeStrips(piece: CutPiece): CutPiece | null {
  const { joined, across, along } = piece;
  if (joined === undefined) return piece;
  const strips = stripsToJoin(joined.length, across, joined.loss);
  if (strips === null) return null;
  return {
    ...piece,
    count: strips,
    uses: [{ purpose: together(piece.uses.map(({ purpose }) => purpose)), count: strips }],
    notes: runNotes(joined, strips, 0),
    ...lostInRun(joined, along, strips * across * along),
  };
}

/** Square ticks cut off and hidden in seams, when strips of so much area make the run. */
export function lostInRun(
  { lengths, finished }: JoinedRun,
  width: Ticks,
  cut: number,
): { corners?: number; seams?: number } {
  if (finished === undefined) return {};
  const area = width * lengths.reduce((sum, { length, count }) => sum + length * count, 0);
  // What is joined is cut to length again: only the seams and offcuts change, not the finished border.
  return { corners: Math.max(0, cut - area), seams: Math.min(cut, area) - finished };
}

/** Two runs of one width as one: its lengths are sewn in the order given. */
export function runsTogether(a: JoinedRun, b: JoinedRun): JoinedRun {
  return {
    ...a,
    length: a.length + b.length,
    leastEnd: Math.max(a.leastEnd, b.leastEnd),
    lengths: [...a.lengths, ...b.lengths],
    notes: notesTogether(a.notes, b.notes),
    ...(a.finished === undefined || b.finished === undefined ? {} : { finished: a.finished + b.finished }),
  };
}

/** How the run is sewn from so many whole strips and ends of strips, after what else is said of its pieces. */
export function runNotes(run: JoinedRun, strips: number, ends: number): PieceNote[] {
  const { length, join, lengths, whole, notes } = run;
  return [...notes, { is: "run", strips, ends, length, join, lengths, whole }];
}

/** All notes, each once, in the order met. */
export function notesTogether(a: readonly PieceNote[], b: readonly PieceNote[]): PieceNote[] {
  const known = new Set(a.map((note) => JSON.stringify(note)));
  return [...a, ...b.filter((note) => !known.has(JSON.stringify(note)))];
}
