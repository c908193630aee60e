import type { StripCount } from "./assemble.ts";
import { coverRows, meetsDemand } from "./cover.ts";
import type { HeightCut, Master } from "./master.ts";
import type { Filling, ListingLimit } from "./oracle.ts";
import type { Solver } from "./solver/types.ts";
import type { SearchStats } from "./types.ts";

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
  solver: Solver,
  milliseconds: number,
  stats: SearchStats,
): FillOutcome {
  const usable = fillings.filter((filling) => (vector[filling.level] ?? 0) > 0);
  if (usable.length === 0) return complete ? { answer: "impossible" } : { answer: "unknown" };
  const rows = coverRows(
    usable.map((filling) => filling.counts),
    demand,
  );
  if (rows === null) return complete ? { answer: "impossible" } : { answer: "unknown" };
  vector.forEach((count, level) => {
    if (count === 0) return;
    const columns = usable.flatMap((filling, p) => (filling.level === level ? [p] : []));
    if (columns.length > 0)
      rows.push({ lower: -Infinity, upper: count, columns, values: columns.map(() => 1) });
  });
  stats.mipSolves++;
  const outcome = solver.integer(
    {
      costs: usable.map(() => 0),
      lower: usable.map(() => 0),
      upper: usable.map((filling) => vector[filling.level]!),
      whole: usable.map(() => true),
      rows,
    },
    milliseconds,
  );
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

/** Lists of fillings already made, by level and cut: a list down to a lower value serves a higher one. */
export type FillingLists = Map<string, { floor: number; most: number; fillings: Filling[] | null }>;

/**
 * Every filling that could take part in a plan with these strips. At the prices of a cut the strips hold
 * `slack` more than is wanted, so no strip may fall short of its best value by more than that (reduced-cost
 * fixing). Null when there are too many to list.
 */
export function fillingsWithin(
  master: Master,
  vector: readonly number[],
  cuts: readonly HeightCut[],
  lists: FillingLists,
  limit: ListingLimit,
): Filling[] | null {
  const all: Filling[] = [];
  const tight = tightestCuts(vector, cuts, 3);
  for (let level = 0; level < vector.length; level++) {
    if (vector[level] === 0) continue;
    const found = listLevel(master, level, tight, lists, limit);
    if (found === null) return null;
    for (const filling of found) all.push(filling);
    if (all.length > limit.most) return null;
  }
  return all;
}

function listLevel(
  master: Master,
  level: number,
  tight: readonly TightCut[],
  lists: FillingLists,
  limit: ListingLimit,
): Filling[] | null {
  for (const { cut, slack, index } of tight) {
    const floor = cut.values[level]! - slack;
    const key = `${level}/${index}`;
    let entry = lists.get(key);
    // A list serves every higher floor; one that grew too long says nothing of a higher floor or a longer list.
    const serves =
      entry !== undefined &&
      (entry.fillings !== null ? entry.floor <= floor : entry.floor >= floor && entry.most >= limit.most);
    if (entry === undefined || !serves) {
      entry = {
        floor,
        most: limit.most,
        fillings: master.oracle.fillings(level, cut.prices, master.demand, floor, limit),
      };
      // A listing broken off for want of time says nothing about its length.
      if (entry.fillings !== null || !limit.stop()) lists.set(key, entry);
    }
    if (entry.fillings === null) continue;
    return entry.fillings.filter((filling) =>
      tight.every((other) => worthAtLeast(filling, other.cut, other.cut.values[level]! - other.slack)),
    );
  }
  return null;
}

function worthAtLeast(filling: Filling, cut: HeightCut, floor: number): boolean {
  let value = 0;
  for (let k = 0; k < filling.counts.length; k++) value += filling.counts[k]! * cut.prices[k]!;
  return value >= floor;
}

export interface TightCut {
  cut: HeightCut;
  slack: number;
  /** Its place in the list of cuts, which only ever grows. */
  index: number;
}

/** The cuts these strips satisfy by the smallest part, tightest first. */
export function tightestCuts(
  vector: readonly number[],
  cuts: readonly HeightCut[],
  most: number,
): TightCut[] {
  return cuts
    .map((cut, index) => {
      const held = vector.reduce(
        (sum, count, level) => (count > 0 ? sum + count * cut.values[level]! : sum),
        0,
      );
      return { cut, index, slack: held - cut.total, part: (held - cut.total) / Math.max(1, cut.total) };
    })
    .sort((a, b) => a.part - b.part || a.index - b.index)
    .slice(0, most);
}
