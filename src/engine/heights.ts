import type { StripCount } from "./assemble.ts";
import type { Clock } from "./clock.ts";
import { fillByStacks } from "./fill-by-stacks.ts";
import { searchFill } from "./fill-search.ts";
import { type HeightCut, type Master, wantedOfStrips } from "./master.ts";
import type { Solver } from "./solver/types.ts";
import type { SearchStats } from "./types.ts";
import {
  type FillingLists,
  type FillOutcome,
  fillingsWithin,
  fillVector,
  tightestCuts,
} from "./vector-fill.ts";

/** What the search over strip heights came to. */
export interface HeightSearch {
  /** No plan is shorter than this. */
  lower: number;
  /** A plan of exactly `lower`, when one was found. */
  strips: StripCount[] | null;
  /** The search ran out of time or room before it could decide. */
  open: boolean;
}

/** Upper limit on table cells per length tried, so that memory stays small. */
const MOST_CELLS = 12_000_000;

/** Milliseconds a table cell and a node of the depth-first filling take, about; told to the clock. */
const CELL = 4e-6;
const FILL_NODE = 5e-4;

/**
 * Decides lengths one by one, from `lower` up. For each it looks for a vector of strip heights of exactly
 * that length that satisfies every cut known so far (depth-first, bounded by a table per cut). A vector
 * found is put to the linear program: either it yields a new cut that kills it and its like, or its strips
 * are filled by a whole-number program over all fillings that can matter. A length whose vectors are all
 * dead is proved too short.
 *
 *     length V:  n1*H1 + n2*H2 + ... = V
 *     cut:       n1*G(H1) + n2*G(H2) + ... >= total     for every set of prices
 */
export function searchHeights(
  master: Master,
  solver: Solver,
  cuts: HeightCut[],
  given: readonly number[],
  lower: number,
  upper: number,
  clock: Clock,
  stats: SearchStats,
): HeightSearch {
  const lists: FillingLists = new Map();
  // A length left undecided holds the bound down, but longer plans may still be found.
  let firstOpen: number | null = null;
  for (let length = lower; length < upper; length++) {
    const verdict = decideLength(master, solver, cuts, given, lists, length, clock, stats);
    if (verdict.answer === "filled")
      return { lower: firstOpen ?? length, strips: verdict.strips, open: firstOpen !== null };
    if (verdict.answer === "unknown") firstOpen ??= length;
    if (verdict.answer === "stopped") return { lower: firstOpen ?? length, strips: null, open: true };
  }
  return { lower: firstOpen ?? upper, strips: null, open: firstOpen !== null };
}

function decideLength(
  master: Master,
  solver: Solver,
  cuts: HeightCut[],
  given: readonly number[],
  lists: FillingLists,
  length: number,
  clock: Clock,
  stats: SearchStats,
): { answer: "filled"; strips: StripCount[] } | { answer: "dead" } | { answer: "unknown" | "stopped" } {
  const heights = master.oracle.heights.slice(0, master.oracle.stripLevels);
  // A plan of this length might use a strip too high to be listed.
  if (length > master.oracle.listedTo) return { answer: "stopped" };
  if (heights.length * length * cuts.length > MOST_CELLS * 4 || clock.expired()) return { answer: "stopped" };
  clock.charge(heights.length * length * cuts.length * CELL);
  const wanted = cuts.map((cut) => wantedOfStrips(cut, given));
  const levels = relevantLevels(heights, cuts, wanted, length);
  if (levels.length === 0 && (length > 0 || wanted.some((total) => total > 0))) return { answer: "dead" };
  if (levels.length * length * cuts.length > MOST_CELLS) return { answer: "stopped" };
  // Highest first: few of them fit, so the tree is narrow at its root.
  levels.reverse();
  clock.charge(levels.length * length * cuts.length * CELL);
  const tables = cuts.map((cut) => suffixTables(heights, levels, cut, length));
  const gained: number[][] = cuts.map(() => []);
  const counts = new Array<number>(levels.length).fill(0);
  const pending: number[][] = [];
  let steps = 0;

  const gainAt = (c: number, depth: number): number => {
    // Gains are kept per depth; a cut added below is caught up here.
    const known = gained[c]!;
    while (known.length <= depth) {
      const d = known.length;
      known.push(d === 0 ? 0 : known[d - 1]! + counts[d - 1]! * cuts[c]!.values[levels[d - 1]!]!);
    }
    return known[depth]!;
  };

  const visit = (depth: number, room: number): StripCount[] | "stop" | null => {
    stats.nodes++;
    if ((stats.nodes & 15) === 0 && clock.expired()) return "stop";
    if (depth === levels.length) {
      if (room !== 0) return null;
      if (clock.expired()) return "stop";
      const vector = given.slice();
      levels.forEach((level, d) => {
        vector[level] = counts[d]!;
      });
      const test = master.testVector(vector, () => clock.expired());
      if (test.cut !== null) {
        cuts.push(test.cut);
        wanted.push(wantedOfStrips(test.cut, given));
        if (levels.length * length * cuts.length > MOST_CELLS) return "stop";
        clock.charge(levels.length * length * CELL);
        tables.push(suffixTables(heights, levels, test.cut, length));
        gained.push([]);
        return null;
      }
      const outcome = decideVector(master, solver, cuts, vector, lists, EASY, clock, stats);
      if (outcome.answer === "filled") return outcome.strips;
      if (outcome.answer === "unknown") pending.push(vector);
      return null;
    }
    const height = heights[levels[depth]!]!;
    for (let count = Math.floor(room / height); count >= 0; count--) {
      if ((++steps & 255) === 0 && clock.expired()) return "stop";
      const left = room - count * height;
      counts[depth] = count;
      let alive = true;
      for (let c = 0; c < cuts.length; c++) {
        gained[c]!.length = Math.min(gained[c]!.length, depth + 1);
        const gain = gainAt(c, depth) + count * cuts[c]!.values[levels[depth]!]!;
        const most = tables[c]![depth + 1]![left]!;
        if (gain + most < wanted[c]!) {
          alive = false;
          break;
        }
      }
      if (!alive) continue;
      const found = visit(depth + 1, left);
      if (found !== null) return found;
    }
    counts[depth] = 0;
    return null;
  };

  const found = visit(0, length);
  if (found === "stop") return { answer: "stopped" };
  if (found !== null) return { answer: "filled", strips: found };
  // The hard ones last: one that can be filled elsewhere would have made them needless.
  let undecided = false;
  for (const vector of pending) {
    if (clock.expired()) return { answer: "stopped" };
    const outcome = decideVector(master, solver, cuts, vector, lists, HARD, clock, stats);
    if (outcome.answer === "filled") return outcome;
    if (outcome.answer === "unknown") undecided = true;
  }
  return { answer: undecided ? "unknown" : "dead" };
}

/** Stacks listed for the program over stacks before giving up. */
const STACKS_LISTED = 5_000;

export interface Effort {
  /** Fillings listed before giving up. */
  fillings: number;
  /** Nodes of the depth-first filling. */
  nodes: number;
  /** Milliseconds for the solver, over fillings and over stacks. */
  solver: number;
  stacks: number;
}

export const EASY: Effort = { fillings: 3_000, nodes: 20_000, solver: 200, stacks: 150 };
export const HARD: Effort = { fillings: 40_000, nodes: 400_000, solver: 20_000, stacks: 5_000 };

/** Can these strips, which hold the demand in fractions, hold it in whole numbers? */
export function decideVector(
  master: Master,
  solver: Solver,
  cuts: readonly HeightCut[],
  vector: readonly number[],
  lists: FillingLists,
  effort: Effort,
  clock: Clock,
  stats: SearchStats,
): FillOutcome {
  const limit = Math.min(effort.solver, clock.left());
  const all = fillingsWithin(master, vector, cuts, lists, {
    most: effort.fillings,
    stop: () => clock.expired(),
  });
  if (all === null) {
    const listing = { most: STACKS_LISTED, stop: () => clock.expired() };
    const tight = tightestCuts(vector, cuts, 1);
    const stacked = fillByStacks(
      master,
      vector,
      tight,
      listing,
      solver,
      Math.min(effort.stacks, limit),
      stats,
    );
    if (stacked.answer !== "unknown") return stacked;
    const some = fillVector(master.pool, vector, master.demand, false, solver, Math.min(200, limit), stats);
    return some.answer === "filled" ? some : { answer: "unknown" };
  }
  const tight = tightestCuts(vector, cuts, 6).map(({ cut }) => cut);
  const searched = searchFill(all, vector, master.demand, tight, effort.nodes);
  if (searched.answer !== "unknown") return searched;
  clock.charge(effort.nodes * FILL_NODE);
  return fillVector(all, vector, master.demand, true, solver, limit, stats);
}

/** Levels that some vector of this length could use without breaking a single cut. */
function relevantLevels(
  heights: readonly number[],
  cuts: readonly HeightCut[],
  wanted: readonly number[],
  length: number,
): number[] {
  const usable = heights.map((height, level) => ({ height, level })).filter(({ height }) => height <= length);
  const alive = usable.map(() => true);
  cuts.forEach((cut, c) => {
    const best = exactTable(
      usable.map(({ height, level }) => ({ height, value: cut.values[level]! })),
      length,
    );
    usable.forEach(({ height, level }, u) => {
      if (cut.values[level]! + best[length - height]! < wanted[c]!) alive[u] = false;
    });
  });
  return usable.filter((_, u) => alive[u]).map(({ level }) => level);
}

/** Best value of strips of exactly each length; -Infinity where no strips add up to it. */
function exactTable(things: readonly { height: number; value: number }[], length: number): Float64Array {
  const best = new Float64Array(length + 1).fill(-Infinity);
  best[0] = 0;
  for (const { height, value } of things)
    for (let at = height; at <= length; at++) {
      const candidate = best[at - height]! + value;
      if (candidate > best[at]!) best[at] = candidate;
    }
  return best;
}

/** tables[d][room]: best value of levels d, d+1, ... filling exactly `room`. */
function suffixTables(
  heights: readonly number[],
  levels: readonly number[],
  cut: HeightCut,
  length: number,
): Float64Array[] {
  const last = new Float64Array(length + 1).fill(-Infinity);
  last[0] = 0;
  const tables: Float64Array[] = [last];
  for (let d = levels.length - 1; d >= 0; d--) {
    const table = tables[0]!.slice();
    const height = heights[levels[d]!]!;
    const value = cut.values[levels[d]!]!;
    for (let at = height; at <= length; at++) {
      const candidate = table[at - height]! + value;
      if (candidate > table[at]!) table[at] = candidate;
    }
    tables.unshift(table);
  }
  return tables;
}
