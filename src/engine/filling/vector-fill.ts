import type { Filling, ListingLimit, ValueFloor } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import { type HeightCut, levelsUsed, type Master } from "../search/master.ts";
import type { ProgramSolver } from "../solver/types.ts";
import { coverRows, meetsDemand } from "./cover.ts";

export type FillOutcome =
  | { answer: "filled"; strips: StripCount[] }
  | { answer: "impossible" }
  | { answer: "unknown" };

/**
 * Whole-number question for strips of given heights: can they hold the demand with these fillings?
 * `complete` says that the fillings are all that could matter, so that a no is a no.
 */
export function fillVector(
  fillings: readonly Filling[],
  vector: readonly number[],
  demand: readonly number[],
  complete: boolean,
  solve: ProgramSolver,
): FillOutcome {
  const usable = fillings.filter((filling) => (vector[filling.level] ?? 0) > 0);
  if (usable.length === 0) return complete ? { answer: "impossible" } : { answer: "unknown" };
  const rows = coverRows(
    usable.map((filling) => filling.counts),
    demand,
  );
  if (rows === null) return complete ? { answer: "impossible" } : { answer: "unknown" };
  for (const level of levelsUsed(vector)) {
    const columns = usable.flatMap((filling, p) => (filling.level === level ? [p] : []));
    if (columns.length > 0)
      rows.push({ lower: -Infinity, upper: vector[level]!, columns, values: columns.map(() => 1) });
  }
  const outcome = solve({
    costs: usable.map(() => 0),
    lower: usable.map(() => 0),
    upper: usable.map((filling) => vector[filling.level]!),
    whole: usable.map(() => true),
    rows,
  });
  if (outcome.values !== null) {
    const strips = usable
      .map((filling, p) => ({ filling, count: Math.round(outcome.values![p]!) }))
      .filter(({ count }) => count > 0);
    return holds(strips, vector, demand) ? { answer: "filled", strips } : { answer: "unknown" };
  }
  if (outcome.status === "infeasible" && complete) return { answer: "impossible" };
  return { answer: "unknown" };
}

/** No more strips of any height than there are, and the whole demand in them. */
function holds(strips: readonly StripCount[], vector: readonly number[], demand: readonly number[]): boolean {
  const used = new Map<number, number>();
  for (const { filling, count } of strips) used.set(filling.level, (used.get(filling.level) ?? 0) + count);
  for (const [level, count] of used) if (count > vector[level]!) return false;
  return meetsDemand(strips, demand);
}

/** Lists of fillings already made. */
export interface FillingLists {
  byLevel: Map<number, KnownList[]>;
  /** Fillings that some other plan does without; left out of the lists. */
  needless: ((filling: Filling) => boolean) | null;
}

export function fillingLists(needless: FillingLists["needless"]): FillingLists {
  return { byLevel: new Map(), needless };
}

/** What came of listing the fillings of one level down to these floors: null when they were more than `most`. */
interface KnownList {
  floors: readonly CutFloor[];
  most: number;
  fillings: Filling[] | null;
}

export interface CutFloor extends ValueFloor {
  cut: HeightCut;
}

/** Cuts a filling or a stack must be worth enough for to be listed. */
export const LISTING_CUTS = 3;

/** Lists kept for each level: a listing of other strips seldom serves, so the newest will do. */
const KEPT_LISTS = 6;

/** What a strip of this level must be worth, so that it may stand among strips that hold so little too much. */
export function floorsAt(level: number, tight: readonly TightCut[]): CutFloor[] {
  return tight.map(({ cut, slack }) => ({ cut, prices: cut.prices, floor: cut.values[level]! - slack }));
}

/**
 * Every filling that could take part in a plan with these strips. At the prices of a cut the strips hold
 * `slack` more than is wanted, so no strip may fall short of its best value by more than that (reduced-cost
 * fixing), whatever the cut. None at all when some strip can hold none that is worth enough. Null when there are
 * too many to list.
 */
export function fillingsWithin(
  master: Master,
  vector: readonly number[],
  tight: readonly TightCut[],
  lists: FillingLists,
  limit: ListingLimit,
): Filling[] | null {
  const all: Filling[] = [];
  for (const level of levelsUsed(vector)) {
    const floors = floorsAt(level, tight);
    const found = listLevel(master, level, floors, lists, limit);
    if (found === null) return null;
    // A strip that need hold nothing is no reason to give up.
    if (found.length === 0 && floors.some(({ floor }) => floor > 0)) return [];
    for (const filling of found) all.push(filling);
    if (all.length > limit.most) return null;
  }
  return all;
}

export function listLevel(
  master: Master,
  level: number,
  floors: readonly CutFloor[],
  lists: FillingLists,
  limit: ListingLimit,
): Filling[] | null {
  const known = lists.byLevel.get(level) ?? [];
  for (const list of known) {
    if (list.fillings === null) {
      // One that grew too long down to higher floors would do so again.
      if (list.most >= limit.most && asHighAs(list.floors, floors)) return null;
    } else if (asHighAs(floors, list.floors))
      return list.fillings.filter((filling) => floors.every((floor) => worthEnough(filling, floor)));
  }
  const all = master.oracle.fillings(level, floors, master.demand, limit);
  const { needless } = lists;
  const fillings = all === null || needless === null ? all : all.filter((filling) => !needless(filling));
  // A listing broken off for want of time says nothing about its length.
  if (fillings !== null || !limit.stop())
    lists.byLevel.set(level, [{ floors, most: limit.most, fillings }, ...known].slice(0, KEPT_LISTS));
  return fillings;
}

/** For each of `lower` there is a floor of the same cut among `floors` that is no lower. */
function asHighAs(floors: readonly CutFloor[], lower: readonly CutFloor[]): boolean {
  return lower.every(({ cut, floor }) => floors.some((other) => other.cut === cut && other.floor >= floor));
}

function worthEnough(filling: Filling, { prices, floor }: ValueFloor): boolean {
  let value = 0;
  for (let k = 0; k < filling.counts.length; k++) value += filling.counts[k]! * prices[k]!;
  return value >= floor;
}

export interface TightCut {
  cut: HeightCut;
  slack: number;
  /** The slack as a part of what is wanted. */
  part: number;
}

/** The cuts these strips satisfy by the smallest part, tightest first. */
export function tightestCuts(
  vector: readonly number[],
  cuts: readonly HeightCut[],
  most: number,
): TightCut[] {
  const levels = levelsUsed(vector);
  return cuts
    .map((cut, index) => {
      let held = 0;
      for (const level of levels) held += vector[level]! * cut.values[level]!;
      return { cut, index, slack: held - cut.total, part: (held - cut.total) / Math.max(1, cut.total) };
    })
    .sort((a, b) => a.part - b.part || a.index - b.index)
    .slice(0, most);
}
