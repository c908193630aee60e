import type { Ticks } from "../length/types.ts";
import type { Diagonal, Lie, Quarter, StripSetCount } from "../quilt/units/types.ts";
import type { CutShape, Subcut } from "./types.ts";

/** What the covering needs to know of the cloths. */
export interface Cloths {
  /** How a part's fabric reads; absent for one without direction. */
  direction(role: string): "one-way" | "two-way" | undefined;
  /** Whether the print's up of a part's fabric runs along the selvage. */
  axis(role: string): "along" | "across";
  usable(role: string): Ticks;
  /** Taken off one end of each strip set, to square it. */
  straightenSets: Ticks;
}

/** Pieces of one size for one part of the units. */
export interface CoverPiece {
  role: string;
  across: Ticks;
  along: Ticks;
  fullWidth: boolean;
  count: number;
  subcut: Subcut;
  diagonal: Diagonal;
  roundedUp: boolean;
  /** What is cut from it with a template, seen with the print's up at the top; null when it stays as it is. */
  shape: CutShape | null;
  /** What is made from all of them, by spot: more than needed when there are spares; parts of patches for strips. */
  made: { spot: string; count: number }[];
  /** The strip set it is sewn into; absent on what is no strip of one. */
  set?: { set: string; short: boolean };
  /** On a strip longer than the set it is sewn into: by how much. */
  beyond?: Ticks;
  /** Numbers by which the record finds the bag these pieces end up in. */
  marks: number[];
}

/** A piece of a set in its place. */
export interface LaidPiece {
  /** Index into the recipe's pieces, and which of the like pieces of a set. */
  piece: number;
  list: number;
  /** Quarter-turns clockwise of the print inside the piece, against turn 0; null where no print has a say. */
  turn: Quarter | null;
  mark: number;
}

/** Sets that are laid alike and sewn before they are cut. */
export interface LaidBatch {
  kind: "sets";
  sets: number;
  laid: LaidPiece[];
}

/** Pieces cut to shape before sewing: any of them may go into any unit. */
export interface LooseBatch {
  kind: "loose";
  count: number;
  laid: LaidPiece;
}

/** Strip sets for units wanted one way. */
export interface StripBatch {
  kind: "strips";
  /** Index into the recipe's strip sets, and into the wants covered. */
  set: number;
  want: number;
  counted: StripSetCount;
  /** By strip of the set: the bags of the full strips and of the short ones, and where its print's up points. */
  strips: {
    full: number | null;
    last: number | null;
    turn: Quarter | null;
    /** By how much a full strip is longer than the set. */
    beyond: Ticks;
  }[];
}

export type CoverBatch = LaidBatch | LooseBatch | StripBatch;

/** Hands out numbers for pieces, so that a bag is found again once sizes alike are gathered. */
export type NextMark = () => number;

/** How many of which pieces make the units wanted by one recipe. */
export interface Cover {
  pieces: CoverPiece[];
  /** How the same pieces are laid for sewing. */
  batches: CoverBatch[];
  /** Units that come out with a print pointing where none is wanted. */
  spare: number;
  /** Square ticks of cloth. */
  cloth: number;
}

export function sizedCover(pieces: CoverPiece[], batches: CoverBatch[], spare: number): Cover {
  return {
    pieces,
    batches,
    spare,
    cloth: pieces.reduce((sum, piece) => sum + piece.across * piece.along * piece.count, 0),
  };
}

/** Prints that read the same: a two-way print turned half round is not told from itself. */
export function sameness(direction: "one-way" | "two-way"): number {
  return direction === "two-way" ? 4 : 8;
}

export function made(lies: readonly Lie[], times: number): CoverPiece["made"] {
  const counts = new Map<string, number>();
  for (const { spot } of lies) counts.set(spot, (counts.get(spot) ?? 0) + times);
  return [...counts].map(([spot, count]) => ({ spot, count }));
}
