import type { StripCount } from "./assemble.ts";
import type { Clock } from "./clock.ts";
import type { Filling, StripOracle } from "./oracle.ts";
import type { Solver } from "./solver/types.ts";
import { type Branch, chooseBranch } from "./tier-branch.ts";
import { dive } from "./tier-dive.ts";
import { createTierMaster, type TierMaster, type TierOutcome } from "./tier-master.ts";
import { fillingsOfTiers, type TierProgramOutcome, tierProgram } from "./tier-program.ts";
import { type TierBounds, type TierCut, tighten } from "./tiers.ts";
import type { SearchStats } from "./types.ts";

export interface TierTreeQuestion {
  oracle: StripOracle;
  demand: readonly number[];
  /** Fillings to start from. */
  pool: readonly Filling[];
  /** Proved, and reached. */
  lower: number;
  upper: number;
  solver: Solver;
  clock: Clock;
  stats: SearchStats;
  /** Takes up a better plan; returns the length now reached. */
  offer(strips: StripCount[]): number;
  raise(lower: number): void;
}

interface Node extends Branch {
  /** No plan in this branch is shorter. */
  bound: number;
  depth: number;
}

/** Fillings listed for one whole-number program, and its time. */
const LISTED = 800;
const PROGRAM = 800;
/** Dives at the root, and after how many nodes there is another. */
const ROOT_DIVES = 4;
const DIVE_EVERY = 2;
/** Latest cuts kept for drawing bounds together. */
const CUTS = 4;

/**
 * Branch and price over the number of strips at least so high (branching on sums of columns, which leaves
 * the pricing as it is: Vance 1998), and where those are all whole, over the heights of strip an item may
 * lie in. Returns true when the least length is proved.
 */
export function searchTiers(question: TierTreeQuestion): boolean {
  const { oracle, demand, stats } = question;
  const master = createTierMaster(oracle, demand, question.upper, question.solver);
  try {
    for (const filling of question.pool) master.add(filling);
    return search(question, master);
  } finally {
    stats.columns += master.counts.columns;
    stats.lpSolves += master.counts.lpSolves;
    master.dispose();
  }
}

function search(question: TierTreeQuestion, master: TierMaster): boolean {
  const { demand, clock, stats } = question;
  const { steps } = master;
  const pieces = demand.reduce((sum, count) => sum + count, 0);
  const stop = () => clock.expired();
  const cuts: TierCut[] = [];
  let upper = question.upper;
  /** Least bound of the branches given up undecided. */
  let stuck = Infinity;
  const root: TierBounds = { least: steps.map(() => 0), most: steps.map(() => pieces) };
  const open: Node[] = [{ bounds: root, homes: null, bound: question.lower, depth: 0 }];
  const lowest = () => Math.min(upper, stuck, ...open.map((node) => node.bound));
  let nodes = 0;
  while (open.length > 0 && !stop()) {
    open.sort((a, b) => b.bound - a.bound || a.depth - b.depth);
    question.raise(lowest());
    const node = open.pop()!;
    if (node.bound >= upper) continue;
    stats.nodes++;
    const { homes } = node;
    let bounds = homes === null ? tighten(cuts, steps, node.bounds, upper) : node.bounds;
    if (bounds === null) continue;
    const outcome = master.solve({ bounds, caps: demand, homes, limit: upper, rounds: 400, stop });
    if (outcome.bound >= upper) continue;
    const bound = Math.max(node.bound, outcome.bound);
    const { cut } = outcome;
    if (cut === null || stop()) {
      stuck = Math.min(stuck, bound);
      continue;
    }
    if (homes === null) {
      cuts.unshift(cut);
      if (cuts.length > CUTS) cuts.pop();
    }
    const branches = chooseBranch(master, node.homes, bounds, outcome);
    const dives =
      nodes === 0 ? ROOT_DIVES : nodes % DIVE_EVERY === 0 || branches?.[0]?.homes !== null ? 1 : 0;
    nodes++;
    for (let skip = 0; skip < dives && upper > bound; skip++) {
      const strips = dive(master, bounds, homes, upper, skip, stop);
      if (strips !== null) upper = Math.min(upper, question.offer(strips));
    }
    if (bound >= upper) continue;
    bounds = tighten([cut], steps, bounds, upper);
    if (bounds === null) continue;
    const verdict = decide(question, master, { ...node, bounds }, cut, upper);
    if (verdict.answer === "none") continue;
    if (verdict.answer === "filled") {
      upper = Math.min(upper, question.offer(verdict.strips));
      if (verdict.optimal) continue;
    }
    if (branches === null) {
      stuck = Math.min(stuck, bound);
      continue;
    }
    for (const branch of branches) open.push({ ...branch, bound, depth: node.depth + 1 });
  }
  question.raise(lowest());
  return upper <= lowest();
}

function decide(
  { oracle, demand, solver, clock, stats }: TierTreeQuestion,
  { steps }: TierMaster,
  { bounds, homes }: Node,
  cut: TierCut,
  upper: number,
): TierProgramOutcome {
  const list = fillingsOfTiers(oracle, demand, cut, steps, bounds, homes, upper - 1, {
    most: LISTED,
    stop: () => clock.expired(),
  });
  if (list === null) return { answer: "unknown" };
  stats.mipSolves++;
  const limit = Math.min(PROGRAM, clock.left());
  return tierProgram(list, demand, steps, bounds, upper - 1, solver, limit);
}
