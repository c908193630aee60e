import { fromWholeStrips } from "../cutlist/index.ts";
import type { CutPiece, JoinedRun } from "../cutlist/types.ts";
import type { Ticks } from "../length/types.ts";
import type { Rectangle } from "./rests.ts";

/** So many of a bag that lie cut. */
export interface Cut {
  piece: CutPiece;
  count: number;
}

/** A bag, or a run of joined strips, with what of it is cut. */
export interface Wanted {
  /** As the cut list has it: all that the quilt needs. */
  piece: CutPiece;
  /** How many lie in the bag; for a run, nothing. */
  cut: number;
  /** For a run: its strips and ends that are cut. */
  sources: Cut[];
  /** What is still to cut; null when all is. */
  still: CutPiece | null;
}

/** Cut pieces of one bag that serve for another of its size. */
export interface Served {
  from: string;
  to: string;
  count: number;
}

/** What is still to cut of a fabric. */
export interface StillWanted {
  wanted: Wanted[];
  served: Served[];
  /** Cut pieces that no bag needs, as cloth. */
  over: { rectangle: Rectangle; count: number }[];
}

/** A run of which strips and ends are joined as they are found. */
export function isRun({ joined }: CutPiece): boolean {
  return joined !== undefined && joined.perKit !== true;
}

/** Whether a piece in the plan is of this bag: a run has several, lettered A, A2, A3. */
export function isOfBag(bag: CutPiece, letter: string): boolean {
  if (letter === bag.letter) return true;
  return isRun(bag) && letter.startsWith(bag.letter) && /^\d+$/.test(letter.slice(bag.letter.length));
}

/** Whether a cut piece lies in this bag and is what the bag is for: on cloth of another width it may have another size. */
function fills(bag: CutPiece, cut: CutPiece): boolean {
  if (!isOfBag(bag, cut.letter)) return false;
  if (isRun(bag))
    return cut.along === bag.along && (cut.fullWidth || cut.across >= (bag.joined?.leastEnd ?? 0));
  if (bag.fullWidth || cut.fullWidth) return bag.fullWidth && cut.fullWidth && cut.along === bag.along;
  const upright = cut.across === bag.across && cut.along === bag.along;
  return upright || (bag.turnable && cut.across === bag.along && cut.along === bag.across);
}

/**
 * What is still to cut when so much lies in the bags. A bag's own pieces come first; what is over serves for other bags of
 * the size.
 * @param pieces the cut list, runs not settled
 * @param cut what lies cut, by bag
 */
export function stillWanted(pieces: readonly CutPiece[], cut: readonly Cut[]): StillWanted {
  const wanted = pieces.map((piece): Wanted => {
    const own = cut.filter(({ piece: made, count }) => count > 0 && fills(piece, made));
    if (isRun(piece)) return { piece, cut: 0, sources: own, still: null };
    const count = own.reduce((sum, each) => sum + each.count, 0);
    return { piece, cut: Math.min(count, piece.count), sources: [], still: null };
  });
  const served: Served[] = [];
  const over: StillWanted["over"] = [];
  for (const { piece, count } of cut) {
    const bag = wanted.find((each) => fills(each.piece, piece));
    if (bag !== undefined && isRun(bag.piece)) continue;
    let spare = count - (bag?.cut ?? 0);
    for (const other of wanted) {
      const open = other.piece.count - other.cut;
      if (spare <= 0 || open <= 0 || other === bag || !serves(piece, other.piece)) continue;
      const moved = Math.min(spare, open);
      other.cut += moved;
      spare -= moved;
      served.push({ from: piece.letter, to: other.piece.letter, count: moved });
    }
    if (spare > 0) over.push({ rectangle: { across: piece.across, along: piece.along }, count: spare });
  }
  return { wanted: wanted.map((each) => ({ ...each, still: stillOf(each) })), served, over };
}

/** Whether a piece that is cut can be a piece of another bag: the same size, and its grain where that matters. */
function serves(cut: CutPiece, bag: CutPiece): boolean {
  if (cut.fullWidth || bag.fullWidth || isRun(cut) || isRun(bag)) return false;
  const upright = cut.across === bag.across && cut.along === bag.along;
  const turned = cut.across === bag.along && cut.along === bag.across;
  // How a piece lay that was free to turn is not known.
  return bag.turnable ? upright || turned : upright && !cut.turnable;
}

function stillOf({ piece, cut, sources }: Wanted): CutPiece | null {
  const { joined } = piece;
  if (joined === undefined || !isRun(piece))
    return cut >= piece.count ? null : { ...piece, count: piece.count - cut };
  const length = stillInRun(joined, sources);
  return length === null ? null : fromWholeStrips({ ...piece, joined: { ...joined, length } });
}

/**
 * The length that further strips of a run must make among themselves; null when those cut make it. Derived geometry: k
 * strips together make their sum less (k - 1) joins, and k + m strips lose one join more between the two groups.
 */
export function stillInRun({ length, loss }: JoinedRun, sources: readonly Cut[]): Ticks | null {
  const strips = sources.reduce((sum, { count }) => sum + count, 0);
  if (strips === 0) return length;
  const made = sources.reduce((sum, { piece, count }) => sum + piece.across * count, 0);
  return made - (strips - 1) * loss >= length ? null : length - made + strips * loss;
}
