import type { Nest } from "./nested/nest.ts";

export type { Nest } from "./nested/nest.ts";

/**
 * The cutting engine's own words: items, rolls, sheets, strips, columns. It knows whole numbers and
 * nothing of quilts. `across` is the direction strips run on a roll; `along` is the roll's length.
 */

/**
 * `strips-2`: strip across the stock, segments across the strip, a segment trimmed down to its one item.
 * `strips-3`: a segment may be cut once more, parallel to the strip, into a stack of items, each of which
 * may then be trimmed narrower.
 */
export type CuttingStyle = "strips-2" | "strips-3";

/** One size, wanted `demand` times. */
export interface PackingItem {
  across: number;
  along: number;
  demand: number;
  /** May be cut turned a quarter. */
  turnable: boolean;
  /**
   * `strips`: only in strips. `bands`: only in lengthwise bands (its `along` lies along the roll).
   * `either`: whichever is shorter.
   */
  place: "strips" | "bands" | "either";
  /** What is made by joining strips; `across`, `demand` and `turnable` then say nothing. */
  run?: JoinedRun;
  /**
   * A shape, equal ones of which stand closer than their rectangles, in one of these lies. `across` and `along` are then
   * its rectangle, which only the rule of thumb goes by. It is cut in strips, in strips-2.
   */
  nest?: Nest;
}

/**
 * Strips of one width (the item's `along`) sewn end to end. Whole strips feed it, and what is left at the end of a strip
 * of exactly that width; each source is fed whole.
 *
 *     k sources make  their sum - (k - 1) x loss,  which must reach `length`
 */
export interface JoinedRun {
  length: number;
  /** What one join takes. */
  loss: number;
  /** Shorter ends are not joined. */
  leastEnd: number;
}

/** A bolt: fixed width, as long as wanted up to `available`. */
export interface RollStock {
  width: number;
  /** Longest usable length; null when there is no limit. */
  available: number | null;
  /** Cost of one step of length, a whole number. */
  costPerLength: number;
}

/** Fixed pieces of one size: fat quarters, precuts, scraps. */
export interface SheetStock {
  across: number;
  along: number;
  /** How many are to hand; null when there is no limit. */
  available: number | null;
  /** Cost of using one, a whole number; 0 for what is already owned. */
  cost: number;
  /** `either`: the first cut may run along as well (strips then run along). `none`: it is one strip already. */
  firstCut: "across" | "either" | "none";
}

/**
 * Where a strip may be cut into stacks: it lies open on the mat, and is cut once more along. A strip higher than `height`,
 * and a segment wider than `width`, hold one item above another in no style.
 */
export interface StackLimit {
  height: number;
  width: number;
}

/** The question put to the engine. Everything is a whole number of the caller's steps. */
export interface PackingProblem {
  style: CuttingStyle;
  /** Of account in strips-3 only. Default: none. */
  stacks?: StackLimit;
  items: PackingItem[];
  roll: RollStock | null;
  sheets: SheetStock[];
}

/** Items stacked in one segment, first listed lies first. */
export interface StackUse {
  /** Index into `problem.items`. */
  item: number;
  /** True when the item's `across` lies along the stock's length. */
  turned: boolean;
  count: number;
}

/** Equal segments of one strip. */
export interface SegmentUse {
  /** Size along the strip. */
  across: number;
  /** How many of them the strip holds. */
  count: number;
  /** Of an item that nests: the run, its shapes one after another along the strip. */
  stack: StackUse[];
}

/** One kind of strip (a pattern column of the cutting-stock model). */
export interface StripColumn {
  /** Strip width, measured square to its run. */
  along: number;
  segments: SegmentUse[];
  /** What is left of the strip, joined into a run: its item, and how long it is. */
  end?: { item: number; across: number };
}

export interface StripSection {
  kind: "strips";
  column: StripColumn;
  count: number;
}

/** A length of the stock cut lengthwise into bands, and the width that remains cut into strips. */
export interface BandSection {
  kind: "bands";
  along: number;
  count: number;
  bands: SegmentUse[];
  restAcross: number;
  rest: StripSection[];
}

export type Section = StripSection | BandSection;

/** How the roll, or `count` sheets of one kind, are cut. */
export interface StockLayout {
  stock: "roll" | "sheet";
  /** Index into `problem.sheets`; -1 for the roll. */
  sheet: number;
  count: number;
  /** `along`: strips run along the sheet; every size in `sections` is then in the strip's own frame. */
  firstCut: "across" | "along";
  sections: Section[];
}

/**
 * What was proved. `value` is a true lower bound on the objective over the whole model of the style;
 * `area` bounds hold for every style of cutting.
 */
export interface LowerBound {
  value: number;
  kind: "area" | "dual" | "exhausted";
  style: CuttingStyle;
}

/** What a search says of its own end. */
export interface SearchStats {
  milliseconds: number;
  /**
   * What ended the search before it could tell all: counted work, or time and the caller (on another machine it may
   * then end elsewhere). Null when it came to its own end.
   */
  cutShort: "work" | "clock" | null;
}

/** What the ruler on the table can do, in the problem's own steps. */
export interface CuttingTable {
  /** Longest cut across the stock in one go: twice the ruler where cloth is cut folded once. */
  across: number;
  /** Longest cut inside a strip, which lies open. */
  inside: number;
  /** Narrower parts are hard to hold beside the ruler. */
  narrow: number;
}

/** The engine's answer. */
export interface PackingResult {
  /**
   * Without a plan `missing` says which items the fullest attempt leaves over: `infeasible` when there is none, which is
   * proved, `none-found` when the search ended before it could tell.
   */
  status: "proven" | "best-found" | "infeasible" | "none-found";
  /** Roll length times its cost plus the cost of the sheets used. */
  objective: number;
  /** Length taken from the roll; 0 when none is. */
  rollLength: number;
  bound: LowerBound;
  layouts: StockLayout[];
  /** Items left over when there is no plan: index and how many, for the best that could be done. */
  missing: { item: number; count: number }[];
  stats: SearchStats;
  /** Where stock was chosen by several aims: what it comes to in each, and the least that is proved. */
  aims?: { value: number; bound: number }[];
}

/** Whether everything is placed. */
export function hasPlan({ status }: Pick<PackingResult, "status">): boolean {
  return status === "proven" || status === "best-found";
}

/** Limits and hooks for a search. All optional; without them the search runs to its own end. */
export interface SearchLimits {
  /**
   * Most work, counted so that it is the same on every machine: about as many milliseconds as it takes on a quiet
   * desktop. A search that ends by it gives the same answer everywhere.
   */
  effort?: number;
  /** Milliseconds after which the best so far is returned: by the clock on the wall, beside `effort` of processor time. */
  budget?: number;
  /** Asked now and then; true ends the search with the best so far. */
  shouldStop?: () => boolean;
  /** Good enough: stop at an objective no higher than this, or once the bound passes it. */
  target?: number;
}
