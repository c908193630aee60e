import { formatLength } from "../length/format.ts";
import type { Ruler, Ticks } from "../length/types.ts";
import type { CutPiece } from "./types.ts";

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

/** True when the piece is longer than the fabric is wide and the maker allows it to be joined. */
export function needsJoin(piece: CutPiece, usable: Ticks): boolean {
  return piece.join !== "no" && !piece.fullWidth && Math.max(piece.across, piece.along) > usable;
}

/**
 * Turns a piece that is longer than the usable width into full-width strips to be sewn end to end. All
 * lengths of the piece are cut from one joined run, as binding is, so that no strip end is lost twice.
 * @returns null when its short side does not fit the width, or the strips are too short to join.
 */
export function joinFromStrips(piece: CutPiece, usable: Ticks, ruler: Ruler): CutPiece | null {
  if (piece.join === "no") return null;
  // A fixed piece must lie as written, so only its `across` can run along a strip.
  const run = piece.turnable ? Math.max(piece.across, piece.along) : piece.across;
  const stripWidth = piece.turnable ? Math.min(piece.across, piece.along) : piece.along;
  const loss = lossPerJoin(piece.join, stripWidth, ruler);
  const length = run * piece.count;
  const strips = stripsToJoin(length, usable, loss);
  if (strips === null) return null;
  return {
    ...piece,
    across: usable,
    along: stripWidth,
    fullWidth: true,
    count: strips,
    turnable: false,
    cut: "strips",
    uses: [{ text: usesOf(piece), count: strips }],
    note: joinNote(piece, strips, formatLength(run, ruler)),
    joined: { length, loss },
  };
}

function usesOf(piece: CutPiece): string {
  return piece.uses.map((use) => use.text).join("; ");
}

function joinNote(piece: CutPiece, strips: number, run: string): string {
  const joins = strips - 1;
  const seams = `${joins} ${piece.join} ${joins === 1 ? "join" : "joins"}`;
  const cut = piece.count === 1 ? `cut it ${run} long` : `cut ${piece.count} lengths of ${run} from the run`;
  const how = `Sew the ${strips} strips end to end (${seams}), then ${cut}.`;
  return piece.note === "" ? how : `${piece.note}; ${how}`;
}
