import type { UnitTold } from "../../diagnostics/quilts/quilt.ts";
import type { Ticks } from "../../length/types.ts";
import type { SeamName } from "../../quilt/terms/seam-names.ts";
import type { Corner, Eighth, RecipeStep } from "../../quilt/units/types.ts";
import type { Wanted } from "../../quilt/work-types.ts";

/*
 * How the units of a quilt are really made: worked out once, after the print directions are known, from the very
 * pieces that are cut. Cutting, sewing, drawings, counts and labels read it; nothing works it out again. Plain
 * data: it survives JSON unchanged.
 *
 * Directions are eighths of a turn clockwise from up, and null where a fabric has no direction. Bags are named by
 * their letter, which is the quilt's: one letter, one bag.
 */

/** What becomes of one piece while it is still single. */
export type PatchPart =
  /** The piece as it was cut. */
  | "whole"
  /** A half of it, cut once on the diagonal: the corner that its right angle is, as the piece lies on the bolt. */
  | Corner
  /** A quarter, cut twice: the side that its long edge is, as the piece lies on the bolt. */
  | "top"
  | "right"
  | "bottom"
  | "left"
  /** What is cut from it along a template. */
  | "template";

/** Pieces out of one bag that take one place in a set. */
export interface LaidRecord {
  /** Index of the recipe's piece, by which steps name it, and which of the like pieces of a set it is. */
  piece: number;
  list: number;
  role: string;
  fabric: string;
  letter: string;
  /** Size as it lies in the set. */
  across: Ticks;
  along: Ticks;
  /** Where its print's up points as it lies in the set, right side up. */
  up: Eighth | null;
  /** The same seen on its wrong side, where it is laid face down; null too where it lies face up. */
  faceDown: Eighth | null;
}

/** Sets that are laid alike. */
export interface BatchRecord {
  sets: number;
  laid: LaidRecord[];
  /** By unit of the set: the heap it goes to, as an index into `heaps`; null for one that is spare. */
  gives: (number | null)[];
}

/** Where the patches of one place in a unit come from. */
export interface PatchSource {
  letter: string;
  part: PatchPart;
  /** Quarter-turns clockwise from how it lies on the bolt to how it lies in the unit; null: as its shape fits. */
  turn: 0 | 1 | 2 | 3 | null;
  count: number;
}

/** One patch of the unit and the bags it comes out of. */
export interface PatchRecord {
  spot: string;
  role: string;
  fabric: string;
  /** Where its print's up points in the unit. */
  up: Eighth | null;
  /** Empty where it is cut from what was sewn before (strip sets, units sewn before they are cut). */
  from: PatchSource[];
  /** Every letter it may come from, in all ways of making. */
  letters: string[];
}

/** Finished units that are alike, the way their prints lie included. */
export interface HeapRecord {
  /** `U2` where the unit has one heap, else `U2a`, `U2b` ... */
  name: string;
  count: number;
  /** Role to direction of its print's up, as the unit lies at turn 0; only roles with a direction. */
  prints: Record<string, Eighth>;
  patches: PatchRecord[];
}

/** Strips sewn side by side and cut into segments, for units of one heap. */
export interface StripSetRecord {
  /** `A`, `B` within the unit. */
  name: string;
  heap: number;
  cut: "square" | "diamond-45" | "triangle-60";
  /** In sewing order, top to bottom as the set lies. */
  strips: {
    role: string;
    fabric: string;
    /** Bag of the full-width strips, and of those of the short set; null where there is none. */
    letter: string | null;
    lastLetter: string | null;
    /** By how much a full-width strip is longer than the set: it is cut to the set's length first. */
    beyond: Ticks;
    width: Ticks;
    up: Eighth | null;
  }[];
  /** Sets over the full width, and their strips' length. */
  fullSets: number;
  fullLength: Ticks;
  /** Strip length of the short set; 0 when there is none. */
  lastLength: Ticks;
  /** Height of the sewn set, raw edge to raw edge. */
  height: Ticks;
  /** Width of a segment along the strips. */
  segment: Ticks;
  /** Segments from a full set, from the short one, and wanted in all. */
  perFullSet: number;
  fromLast: number;
  segments: number;
  segmentsPerUnit: number;
  /** By segment of a unit: it stands half round, against how the strips lie. */
  turned: boolean[];
  /** Taken off one end of each set, to square it. */
  straighten: Ticks;
}

/** One thing to do, in order; the recipe's step with what it comes to. */
export type StepRecord = RecipeStep & {
  /** Role, spot or made part towards which the seam is pressed, and its fabric; null when told by `press` alone. */
  pressTo: { part: string; fabric: string } | null;
  /** Raw size of what the step leaves; null where it is no upright rectangle. */
  size: { across: Ticks; along: Ticks } | null;
};

/** A kind of seam and how often it is sewn for all these units. */
export interface SeamRecord {
  what: SeamName;
  /** The parts joined, the spot of a log, or the strip set. */
  parts?: readonly string[];
  length: Ticks;
  count: number;
  bias: boolean;
}

/** All units of one kind, size and set of fabrics that are made by one method. */
export interface UnitRecord {
  /** `U1`, `U2` ... in the order of the quilt; the bag's letter for a unit that is a single patch. */
  name: string;
  kind: string;
  method: string;
  /** Kind and finished size. */
  told: UnitTold;
  path: string;
  /** Index of the demand in the quilt's work, and of each heap's want among its wants. */
  demand: number;
  wants: number[];
  uses: Wanted[];
  /** Role to fabric. */
  fabrics: Record<string, string>;
  /** Raw size, and whether it is trimmed to it. */
  raw: { across: Ticks; along: Ticks };
  trimmed: boolean;
  unitsPerSet: number;
  /** True when every patch is cut to shape before anything is sewn. */
  loose: boolean;
  /** Units wanted, sets to make, and units that are over. */
  units: number;
  sets: number;
  spare: number;
  heaps: HeapRecord[];
  batches: BatchRecord[];
  stripSets: StripSetRecord[];
  steps: StepRecord[];
  seams: SeamRecord[];
  bonus: { kind: string; count: number; unfinished: Ticks }[];
}
