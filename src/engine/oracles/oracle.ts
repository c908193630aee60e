import type { Counts } from "../problem/counts.ts";
import type { Kind } from "../problem/reduce.ts";

/** A piece of a strip as wide as its widest item: what the first cut across the strip frees. */
export interface Segment {
  width: number;
  stack: Placed[];
}

export interface Placed {
  kind: number;
  /** Index into the kind's `lies`. */
  lie: number;
}

/** One way of filling a strip. */
export interface Filling {
  /** Index into the oracle's `heights`. */
  level: number;
  height: number;
  /** Copies of every kind it holds. */
  counts: number[];
  segments: Segment[];
  /** What is left of the strip, joined into a run: its kind, and how long it is. */
  end?: { kind: number; length: number };
  /** On a sheet: which of the sheets offered, its strips and the way they run; `segments` is then empty. */
  sheet?: { index: number; transposed: boolean; strips: Filling[] };
}

/**
 * Strips of a narrower run, so much length of which may be used at no further cost. It may be made longer, up to one of
 * `ends` (ascending, all beyond `length`), which takes as much of the roll.
 */
export interface RestLevels {
  /** Levels from `first` up to but not including `end`. */
  first: number;
  end: number;
  length: number;
  ends: readonly number[];
  /** No strip higher than this is listed. */
  listedTo: number;
  /** Rests that are alike have one number. */
  twin: number;
}

/** First level of whole sheets. */
export function firstSheet({ stripLevels, rests = [] }: Pick<StripOracle, "stripLevels" | "rests">): number {
  return rests.at(-1)?.end ?? stripLevels;
}

/** The level is one of the rest's strips. */
export function inRest(level: number, { first, end }: Pick<RestLevels, "first" | "end">): boolean {
  return level >= first && level < end;
}

/** What a filling must be worth at some prices to be of use. */
export interface ValueFloor {
  prices: Float64Array;
  floor: number;
}

/** When to give up listing fillings. */
export interface ListingLimit {
  most: number;
  stop: () => boolean;
}

/** What to list: all that is worth enough for every floor (one at least), more copies than the caps worth nothing. */
export interface Listing<F extends ValueFloor = ValueFloor> extends ListingLimit {
  floors: readonly F[];
  caps: Counts;
}

/** Counts the steps of a listing; true once it has gone on for too long. */
export function stepCounter({ most, stop }: ListingLimit, stepsEach: number): () => boolean {
  let steps = 0;
  return () => {
    steps++;
    return steps > most * stepsEach || ((steps & 511) === 0 && stop());
  };
}

/**
 * Answers, for whole-number prices of the kinds, what the best filling of a strip of each height is worth.
 * Exact over all fillings of its style (each kind at most `caps` times in a strip where the style can
 * say so, otherwise in a stack), so its values make true dual bounds.
 */
export interface StripOracle {
  readonly kinds: readonly Kind[];
  readonly run: number;
  /**
   * Candidate strip heights, ascending; no other height up to `listedTo` is ever needed. For a sheet, what
   * one more of it would count for in length (a nominal figure that no bound rests on).
   */
  readonly heights: readonly number[];
  /**
   * The first so many levels are strips of the roll; after them come the strips of every rest in turn, then whole
   * sheets.
   */
  readonly stripLevels: number;
  /** Widths beside something on the roll that may be cut into strips of their own; absent without such. */
  readonly rests?: readonly RestLevels[];
  /** Table cells that one question about a sheet takes, about, all sheets together; absent without sheets. */
  readonly sheetCells?: number;
  /** Strips higher than this are not listed; Infinity when every useful height is. */
  readonly listedTo: number;
  /**
   * Best value per height. Only `levels` (ascending) are filled in when given; the others stay 0.
   * Prices are whole numbers whose sums stay below 2^53; arrays passed in are never changed afterwards.
   */
  values(prices: Float64Array, caps: Counts, levels?: readonly number[]): Float64Array;
  /** One simple filling per kind and lie, so that a linear program has something to start from. */
  starters(caps: Counts): Filling[];
  /** A best filling for one height. It may hold a kind more often than wanted only where stacks combine. */
  filling(level: number, prices: Float64Array, caps: Counts): Filling;
  /**
   * Every filling of one height that is worth enough and that nothing more can be added to, fillings with equal counts
   * once. Null when there are too many to list.
   */
  fillings(level: number, listing: Listing): Filling[] | null;
  /**
   * The stacks that such fillings may hold, where a style has stacks; null when there are too many. Listing them is
   * far cheaper than listing the rows they make.
   */
  stacks?(level: number, listing: Listing): { width: number; counts: number[]; stack: Placed[] }[] | null;
  /**
   * For strips higher than the last of `heights`: best value per step of height is at most
   * numerator/denominator. Null when the list of heights is complete.
   */
  tallRate(prices: Float64Array): { numerator: number; denominator: number } | null;
}

/** Strips of each kind alone, in the height of each of its lies. */
export function plainStarters(oracle: StripOracle, caps: Counts): Filling[] {
  return oracle.kinds.flatMap((kind, k) => {
    const only = new Float64Array(oracle.kinds.length);
    only[k] = 1;
    const heights = kind.lies.filter((lie) => lie.width <= oracle.run).map(({ height }) => height);
    return [...heights, ...(kind.run === undefined ? [] : [kind.run.height])]
      .map((height) => oracle.heights.indexOf(height))
      .filter((level) => level >= 0)
      .map((level) => oracle.filling(level, only, caps));
  });
}

/** Counts of every kind in some segments. */
export function countKinds(segments: readonly Segment[], kinds: number): number[] {
  const counts = new Array<number>(kinds).fill(0);
  for (const segment of segments) for (const placed of segment.stack) counts[placed.kind]!++;
  return counts;
}
