import type { Place } from "../diagnostics/types.ts";
import type { Ticks } from "../length/types.ts";

/** Which strips of a cloth, or which pieces, something is said of. */
export type What =
  /** By number in the cutting diagram. */
  | { of: "strips"; numbers: number[]; cloth: string | null }
  /** All strips from the first to this one. */
  | { of: "to-strip"; last: number; cloth: string | null }
  /** All strips of a cloth; of all cloths when none is named. */
  | { of: "all"; cloth: string | null }
  /** So many of a bag. */
  | { of: "pieces"; count: number; letter: string };

/** One thing said of a fabric while it is cut. */
export type Fact =
  /** Cut and subcut; of pieces, so many in all lie in their bag. */
  | { kind: "cut"; what: What }
  /** Cut off the cloth, and not subcut yet. */
  | { kind: "cut-off"; what: What }
  /** So many lie in the bag, whatever was said before. */
  | { kind: "in-bag"; what: What & { of: "pieces" } }
  /** Cannot be used. */
  | { kind: "spoiled"; what: What }
  /** Usable width as measured. */
  | { kind: "wide"; width: Ticks }
  /** Length of the bolt as measured, from its straight end. */
  | { kind: "left"; length: Ticks }
  /** A piece of cloth that is there besides, usable size. */
  | { kind: "in-hand"; across: Ticks; along: Ticks; count: number };

/** Facts said of one fabric at one time, and the plan of it that they speak of. */
export interface SaidOf {
  /** As the quilt's file names it. */
  fabric: string;
  /** Fingerprint of the fabric's plan: numbers and letters are those of its diagram. */
  plan: string;
  facts: SaidFact[];
}

/** A fact as it is written, as it is read, and where it stands. */
export interface SaidFact {
  text: string;
  fact: Fact;
  path: string;
  at: Place | null;
}

/** How the plan was made that the work began with. Null and false: as usual. */
export interface Planned {
  kits: number;
  style: "strips-2" | "strips-3" | null;
  prefer: "sparing" | "simple" | null;
  thorough: boolean;
  fatQuarters: boolean;
  /** Usable width tried on every bolt. */
  width: Ticks | null;
  /** Where every bolt was taken to end. */
  bolt: Ticks | null;
  /** Ruler that the quilt was restated for. */
  ruler: "in" | "cm" | null;
  /** Seconds that each fabric was searched at most. */
  budget: number | null;
  /** Cloth from the drawer that was offered. */
  cloth: { fabric: string; name: string; across: Ticks; along: Ticks; count: number }[];
}

/** The file of the work: what was said, in order. Each entry speaks of the plan gone on with from those before. */
export interface WorkFile {
  planned: Planned;
  said: SaidOf[];
}

export const USUALLY_PLANNED: Planned = {
  kits: 1,
  style: null,
  prefer: null,
  thorough: false,
  fatQuarters: false,
  width: null,
  bolt: null,
  ruler: null,
  budget: null,
  cloth: [],
};
