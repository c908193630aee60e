import type { Filling, ListingLimit, ValueFloor } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import type { Counts, Vector } from "../problem/counts.ts";
import { type HeightCut, levelsUsed, type Master } from "../search/master.ts";
import type { ProgramSolver } from "../solver/types.ts";
import { addLimit, coverProgram, meetsDemand, stripsIn } from "./cover.ts";

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
  vector: Vector,
  demand: Counts,
  complete: boolean,
  solve: ProgramSolver,
): FillOutcome {
  const no: FillOutcome = { answer: complete ? "impossible" : "unknown" };
  const usable = fillings.filter((filling) => (vector[filling.level] ?? 0) > 0);
  const program = coverProgram(
    usable.map(({ counts, level }) => ({ counts, most: vector[level]! })),
    demand,
  );
  if (usable.length === 0 || program === null) return no;
  for (const level of levelsUsed(vector)) {
    const columns = usable.flatMap((filling, p) => (filling.level === level ? [p] : []));
    if (columns.length > 0) addLimit(program, vector[level]!, columns);
  }
  const { status, values } = solve(program);
  if (values === null) return status === "infeasible" ? no : { answer: "unknown" };
  const strips = stripsIn(usable, values);
  return holds(strips, vector, demand) ? { answer: "filled", strips } : { answer: "unknown" };
}

/** No more strips of any height than there are, and the whole demand in them. */
function holds(strips: readonly StripCount[], vector: Vector, demand: Counts): boolean {
  const left = vector.slice();
  for (const { filling, count } of strips) left[filling.level]! -= count;
  return left.every((count) => count >= 0) && meetsDemand(strips, demand);
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
  vector: Vector,
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
  { oracle, demand }: Master,
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
  const all = oracle.fillings(level, { ...limit, floors, caps: demand });
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

/** What it holds at these prices. */
export function worthOf({ counts }: Filling, prices: Float64Array): number {
  let value = 0;
  for (let k = 0; k < counts.length; k++) value += counts[k]! * prices[k]!;
  return value;
}

function worthEnough(filling: Filling, { prices, floor }: ValueFloor): boolean {
  return worthOf(filling, prices) >= floor;
}

export interface TightCut {
  cut: HeightCut;
  slack: number;
  /** The slack as a part of what is wanted. */
  part: number;
}

/** The cuts these strips satisfy by the smallest part, tightest first. */
export function tightestCuts(vector: Vector, cuts: readonly HeightCut[], most: number): TightCut[] {
  const levels = levelsUsed(vector);
  return cuts
    .map((cut, index) => {
      let slack = -cut.total;
      for (const level of levels) slack += vector[level]! * cut.values[level]!;
      return { cut, index, slack, part: slack / Math.max(1, cut.total) };
    })
    .sort((a, b) => a.part - b.part || a.index - b.index)
    .slice(0, most);
}
