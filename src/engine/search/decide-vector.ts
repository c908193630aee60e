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
import type { Vector } from "../problem/counts.ts";
import type { ProgramSolver, Solver } from "../solver/types.ts";
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
  /** Milliseconds for the solver, over fillings and over stacks. */
  solver: number;
  stacks: number;
}

export const EASY: Effort = { fillings: 3_000, nodes: 20_000, solver: 200, stacks: 80 };
export const HARD: Effort = { fillings: 40_000, nodes: 400_000, solver: 20_000, stacks: 5_000 };

/** What the question is asked with: the linear program, the cuts known and the lists made so far. */
export interface VectorQuestion {
  master: Master;
  solver: Solver;
  cuts: readonly HeightCut[];
  lists: FillingLists;
  clock: Clock;
}

/** Can these strips, which hold the demand in fractions, hold it in whole numbers? */
export function decideVector(
  { master, solver, cuts, lists, clock }: VectorQuestion,
  vector: Vector,
  effort: Effort,
): FillOutcome {
  const limit = Math.min(effort.solver, clock.left());
  const solve =
    (most: number): ProgramSolver =>
    (program) =>
      solver.integer(program, Math.min(most, limit));
  const stop = () => clock.expired();
  const tight = tightestCuts(vector, cuts, 6);
  const listing = tight.slice(0, LISTING_CUTS);
  const all = fillingsWithin(master, vector, listing, lists, { most: effort.fillings, stop });
  const { pool, demand } = master;
  if (all === null) {
    const most = { most: STACKS_LISTED, stop };
    const stacked = fillByStacks(master, vector, listing, most, solve(effort.stacks));
    if (stacked.answer !== "unknown") return stacked;
    return fillVector(pool.fillings, vector, demand, false, solve(200));
  }
  const within = tight.map(({ cut }) => cut);
  const searched = searchFill(all, vector, demand, within, effort.nodes);
  if (searched.answer !== "unknown") return searched;
  clock.charge(effort.nodes * FILL_NODE);
  return fillVector(all, vector, demand, true, solve(limit));
}
