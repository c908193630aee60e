import { fillByStacks } from "../filling/fill-by-stacks.ts";
import { searchFill } from "../filling/fill-search.ts";
import {
  type FillingLists,
  type FillOutcome,
  fillingsWithin,
  fillVector,
  LISTING_CUTS,
  tightestCuts,
} from "../filling/vector-fill.ts";
import type { Clock } from "../problem/clock.ts";
import type { Solver } from "../solver/types.ts";
import type { SearchStats } from "../types.ts";
import type { HeightCut, Master } from "./master.ts";

/** Milliseconds a node of the depth-first filling takes, about; told to the clock. */
const FILL_NODE = 5e-4;

/** Stacks listed for the program over stacks before giving up. */
const STACKS_LISTED = 5_000;

export interface Effort {
  /** Fillings listed before giving up. */
  fillings: number;
  /** Nodes of the depth-first filling. */
  nodes: number;
  /** Milliseconds for the solver, over fillings and over stacks; none at all to do without it. */
  solver: number;
  stacks: number;
}

export const QUICK: Effort = { fillings: 1_000, nodes: 2_000, solver: 0, stacks: 0 };
export const EASY: Effort = { fillings: 3_000, nodes: 20_000, solver: 200, stacks: 80 };
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
  const tight = tightestCuts(vector, cuts, 6);
  const all = fillingsWithin(master, vector, tight.slice(0, LISTING_CUTS), lists, {
    most: effort.fillings,
    stop: () => clock.expired(),
  });
  if (effort.solver === 0 && all === null) return { answer: "unknown" };
  if (all === null) {
    const listing = { most: STACKS_LISTED, stop: () => clock.expired() };
    const stacked = fillByStacks(
      master,
      vector,
      tight.slice(0, LISTING_CUTS),
      listing,
      solver,
      Math.min(effort.stacks, limit),
      stats,
    );
    if (stacked.answer !== "unknown") return stacked;
    const some = fillVector(master.pool, vector, master.demand, false, solver, Math.min(200, limit), stats);
    return some.answer === "filled" ? some : { answer: "unknown" };
  }
  const searched = searchFill(
    all,
    vector,
    master.demand,
    tight.map(({ cut }) => cut),
    effort.nodes,
  );
  if (searched.answer !== "unknown") return searched;
  clock.charge(effort.nodes * FILL_NODE);
  if (effort.solver === 0) return searched;
  return fillVector(all, vector, master.demand, true, solver, limit, stats);
}
