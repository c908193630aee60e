import { together } from "../diagnostics/purposes.ts";
import { formatLength } from "../length/format.ts";
import type { Ruler, Ticks } from "../length/types.ts";
import type { CutPiece, JoinedRun } from "./types.ts";

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

/** Shorter ends of strips are not worth a join: 8 in, or 20 cm on a metric ruler. Common practice, no source. */
const LEAST_END = { in: 130_048, cm: 128_000, mm: 128_000 } as const;

/** The shortest end of a strip that is joined into a run. */
export function leastEnd({ unit }: Ruler): Ticks {
  return LEAST_END[unit];
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
  const { corners: _, seams, ...plain } = piece;
  const joined: JoinedRun = {
    length: run * piece.count,
    loss: lossPerJoin(piece.join, stripWidth, ruler),
    join: piece.join,
    leastEnd: leastEnd(ruler),
    lengths: [{ length: run, count: piece.count, said: formatLength(run, ruler) }],
    whole: "",
    note: piece.note,
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
    note: runNote(joined, strips, 0),
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
  const known = a.note === "" || b.note === "" || a.note.split("; ").includes(b.note);
  return {
    ...a,
    length: a.length + b.length,
    lengths: [...a.lengths, ...b.lengths],
    note: known ? a.note || b.note : `${a.note}; ${b.note}`,
    ...(a.finished === undefined || b.finished === undefined ? {} : { finished: a.finished + b.finished }),
  };
}

/** What is cut from a run: `2 lengths of 44 1/2 in and 2 of 45 1/2 in`. */
function lengthsSaid({ lengths }: JoinedRun): string {
  return listed(
    lengths.map(({ count, said }, i) => {
      if (i > 0) return `${count} of ${said}`;
      return count === 1 ? `1 length of ${said}` : `${count} lengths of ${said}`;
    }),
  );
}

/** How the run is sewn from so many whole strips and ends of strips. */
export function runNote(run: JoinedRun, strips: number, ends: number): string {
  const joins = strips + ends - 1;
  const seams = `${joins} ${run.join} ${joins === 1 ? "join" : "joins"}`;
  const strip = strips === 0 ? [] : [strips === 1 ? "1 strip" : `${strips} strips`];
  const end = ends === 0 ? [] : [ends === 1 ? "1 shorter strip" : `${ends} shorter strips`];
  const sources = listed([...strip, ...end]);
  if (run.whole !== "") {
    const which = ends === 0 ? "" : `${sources}, `;
    const how = joins === 0 ? `use it for ${run.whole}` : `sew end to end with ${seams} for ${run.whole}`;
    return withNote(run.note, `${which}${how}`);
  }
  const { lengths } = run;
  const single = lengths.length === 1 && lengths[0]!.count === 1;
  const cut = single ? `cut it ${lengths[0]!.said} long` : `cut ${lengthsSaid(run)} from the run`;
  if (joins === 0) return withNote(run.note, `${cut.charAt(0).toUpperCase()}${cut.slice(1)}.`);
  return withNote(run.note, `Sew the ${sources} end to end (${seams}), then ${cut}.`);
}

function withNote(note: string, how: string): string {
  return note === "" ? how : `${note}; ${how}`;
}

function listed(texts: readonly string[]): string {
  return texts.length < 2 ? texts.join("") : `${texts.slice(0, -1).join(", ")} and ${texts.at(-1)}`;
}
