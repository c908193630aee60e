import type { Filling, StripOracle } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import type { Clock } from "../problem/clock.ts";
import type { Counts } from "../problem/counts.ts";
import { addToPool } from "../search/pool.ts";
import type { Solver } from "../solver/types.ts";
import { dive } from "./tier-dive.ts";
import { createTierMaster, glance, solveTiers, type TierMaster, type TierOutcome } from "./tier-master.ts";
import { fillingsOfTiers, tierProgram } from "./tier-program.ts";
import { type TierBounds, type TierCut, tighten } from "./tiers.ts";

export interface TierTreeQuestion {
  oracle: StripOracle;
  demand: Counts;
  /** Fillings to start from. */
  pool: readonly Filling[];
  /** Proved, and reached. */
  lower: number;
  upper: number;
  solver: Solver;
  clock: Clock;
  /** Takes up a better plan; returns the length now reached. */
  offer(strips: StripCount[]): number;
  raise(lower: number): void;
}

/** One part of what is left to search. */
interface Node {
  bounds: TierBounds;
  /** No plan in this branch is shorter. */
  bound: number;
  depth: number;
}

/** Fillings listed for a whole-number program at most, and at least before it is given up for good. */
const LISTED = 800;
const FEW_LISTED = 60;
/** Milliseconds for a program, and more for each filling. */
const PROGRAM = 250;
const PROGRAM_EACH = 0.8;
/** Dives at the root, and after how many nodes there is another. */
const ROOT_DIVES = 4;
const DIVE_EVERY = 2;
/** Latest cuts kept for drawing bounds together. */
const CUTS = 4;
/** Tiers tried out before one is chosen to branch on. */
const TRIED = 4;

/**
 * Branch and price over the number of strips at least so high (branching on sums of columns, which leaves
 * the pricing as it is: Vanderbeck 1999). Returns true when the least length is proved.
 */
export function searchTiers(question: TierTreeQuestion): boolean {
  const { oracle, demand, solver } = question;
  const { upper } = question;
  const master = createTierMaster(oracle, demand, upper, solver);
  for (const filling of question.pool)
    addToPool(master.pool, filling, 0, [[master.levelRows[filling.level]!, -1]]);
  const state: State = { master, upper, open: [], stuck: Infinity, cuts: [], listed: LISTED, nodes: 0 };
  try {
    return search(question, state);
  } finally {
    master.pool.model.dispose();
  }
}

/** Where the search stands. */
interface State {
  master: TierMaster;
  /** Length reached. */
  upper: number;
  open: Node[];
  /** Least bound of the branches given up undecided. */
  stuck: number;
  /** Cuts that hold for every plan, latest first. */
  cuts: TierCut[];
  /** Fillings that the next whole-number program may have. */
  listed: number;
  nodes: number;
}

function search(question: TierTreeQuestion, state: State): boolean {
  const { demand, clock } = question;
  const { open, master } = state;
  const pieces = demand.reduce((sum, count) => sum + count, 0);
  const bounds: TierBounds = { least: master.steps.map(() => 0), most: master.steps.map(() => pieces) };
  const lowest = () => Math.min(state.upper, state.stuck, ...open.map((node) => node.bound));
  /** The branch just opened that promises more is followed down at once: whole tiers make good plans. */
  let next: Node | null = null;
  open.push({ bounds, bound: question.lower, depth: 0 });
  while (open.length > 0 && !clock.expired()) {
    question.raise(lowest());
    open.sort((a, b) => b.bound - a.bound || a.depth - b.depth);
    const node: Node = next ?? open.at(-1)!;
    open.splice(open.indexOf(node), 1);
    const parts: Node[] = node.bound < state.upper ? explore(question, state, node) : [];
    open.push(...parts);
    next = parts[0] ?? null;
  }
  question.raise(lowest());
  return state.upper <= lowest();
}

/** Bounds one branch; what is left of it comes back in parts, the one that promises more first. */
function explore(question: TierTreeQuestion, state: State, node: Node): Node[] {
  const { demand, clock } = question;
  const stop = () => clock.expired();
  const { steps } = state.master;
  let bounds = tighten(state.cuts, steps, node.bounds, state.upper);
  if (bounds === null) return [];
  const limit = state.upper;
  const outcome = solveTiers(state.master, { bounds, caps: demand, limit, rounds: 400, stop });
  if (outcome.bound >= limit) return [];
  const bound = Math.max(node.bound, outcome.bound);
  const { cut } = outcome;
  if (cut === null || stop()) return undecided(state, bound);
  state.cuts = [cut, ...state.cuts].slice(0, CUTS);
  const branches = chooseBranch(state.master, bounds, outcome);
  plunge(question, state, bounds, bound, branches === null);
  if (bound >= state.upper) return [];
  bounds = tighten([cut], steps, bounds, state.upper);
  if (bounds === null || decide(question, state, bounds, cut)) return [];
  if (branches === null) return undecided(state, bound);
  return branches.map((part) => ({ bounds: part, bound, depth: node.depth + 1 }));
}

function undecided(state: State, bound: number): [] {
  state.stuck = Math.min(state.stuck, bound);
  return [];
}

/** Looks for better plans from here: always where all tiers are whole, elsewhere now and then. */
function plunge(
  question: TierTreeQuestion,
  state: State,
  bounds: TierBounds,
  bound: number,
  whole: boolean,
): void {
  const dives = state.nodes === 0 ? ROOT_DIVES : whole || state.nodes % DIVE_EVERY === 0 ? 1 : 0;
  state.nodes++;
  for (let skip = 0; skip < dives && state.upper > bound; skip++) {
    const strips = dive(state.master, bounds, state.upper, skip, () => question.clock.expired());
    if (strips !== null) state.upper = Math.min(state.upper, question.offer(strips));
  }
}

/** Settles a branch at once where few fillings can matter in it. */
function decide(question: TierTreeQuestion, state: State, bounds: TierBounds, cut: TierCut): boolean {
  const { solver, clock } = question;
  const { master } = state;
  const length = state.upper - 1;
  const listing = { most: state.listed, stop: () => clock.expired() };
  const list = fillingsOfTiers(master, cut, bounds, length, listing);
  if (list === null) return false;
  const limit = Math.min(PROGRAM + PROGRAM_EACH * list.length, clock.left());
  const result = tierProgram(master, list, bounds, length, (program) => solver.integer(program, limit));
  // A program that was too much says that shorter ones are to be tried only.
  if (result.answer === "unknown") state.listed = Math.max(FEW_LISTED, Math.ceil(list.length * 0.7));
  else state.listed = Math.min(LISTED, Math.ceil(state.listed * 1.2));
  if (result.answer === "filled") state.upper = Math.min(state.upper, question.offer(result.strips));
  return result.answer === "none" || (result.answer === "filled" && result.optimal);
}

/**
 * Splits what is left in two, the part that promises more first: so many strips at least as high as a level, or more
 * (strong branching over a few levels). Null when the linear plan gives nothing to split by.
 */
function chooseBranch(
  master: TierMaster,
  bounds: TierBounds,
  { tiers, objective }: TierOutcome,
): [TierBounds, TierBounds] | null {
  const candidates: { level: number; count: number; score: number }[] = [];
  for (let from = 0; from < tiers.length; ) {
    let to = from;
    let step = master.steps[from]!;
    while (to + 1 < tiers.length && Math.abs(tiers[to + 1]! - tiers[from]!) < 1e-6) {
      to++;
      step += master.steps[to]!;
    }
    const count = Math.floor(tiers[from]! + 1e-6);
    const part = tiers[from]! - count;
    if (part > 1e-5 && part < 1 - 1e-5) {
      const score = step * Math.min(part, 1 - part);
      candidates.push({ level: from, count, score });
      if (to > from) candidates.push({ level: to, count, score });
    }
    from = to + 1;
  }
  candidates.sort((a, b) => b.score - a.score || a.level - b.level);
  let best: [TierBounds, TierBounds] | null = null;
  let bestScore = -1;
  for (const { level, count } of candidates.slice(0, TRIED)) {
    const down = {
      least: bounds.least,
      most: bounds.most.map((m, l) => (l >= level ? Math.min(m, count) : m)),
    };
    const up = {
      least: bounds.least.map((m, l) => (l <= level ? Math.max(m, count + 1) : m)),
      most: bounds.most,
    };
    const below = glance(master, down);
    const above = glance(master, up);
    const score = Math.max(1e-6, below - objective) * Math.max(1e-6, above - objective);
    if (score <= bestScore) continue;
    best = above < below ? [up, down] : [down, up];
    bestScore = score;
  }
  return best;
}
