import { greedySheets } from "../filling/greedy.ts";
import { fillingLists } from "../filling/vector-fill.ts";
import { metered } from "../oracles/metered.ts";
import type { Filling, StripOracle } from "../oracles/oracle.ts";
import { jointOracle } from "../oracles/oracle-joint.ts";
import { sheetOracle } from "../oracles/oracle-sheet.ts";
import { dropSurplus, type Frames, type StripCount } from "../problem/assemble.ts";
import { type Clock, share } from "../problem/clock.ts";
import type { Kind } from "../problem/reduce.ts";
import { areaOfOne, transposeKinds } from "../problem/reduce.ts";
import type { SheetGroup } from "../problem/sheet-groups.ts";
import type { Solver } from "../solver/types.ts";
import type { CuttingStyle, SearchStats } from "../types.ts";
import { cheapestVector, type Offer } from "./cheapest-vector.ts";
import { decideVector, EASY, type Effort, HARD } from "./decide-vector.ts";
import { jitteredPrices } from "./jitter.ts";
import { createMaster, type HeightCut, heightCut } from "./master.ts";
import { wholePrices } from "./prices.ts";
import { stripsOnSheets } from "./strips-on-sheets.ts";

/** Greedy fillings tried for a choice of sheets before the exact search looks at it. */
const GREEDY_TRIES = 40;

/** From so many kinds of sheets on, none is tried on its own. */
const MOST_GROUPS = 4;

export interface SheetsQuestion {
  kinds: readonly Kind[];
  groups: readonly SheetGroup[];
  style: CuttingStyle;
  solver: Solver;
  clock: Clock;
  stats: SearchStats;
  target: number | null;
  report(cost: number, lower: number): void;
}

export interface SheetsAnswer {
  /** Sheet fillings; their index is that of the group. Null when no plan was found. */
  sheets: StripCount[] | null;
  cost: number;
  lower: number;
  /** Nothing can be cut from this stock: proved. */
  impossible: boolean;
  /** When there is no plan: the fullest attempt, and what it leaves over of every kind. */
  attempt: { sheets: StripCount[]; left: number[] };
}

/**
 * The cheapest choice of fixed sheets that holds everything. Choices are taken in order of cost (cheapest
 * first among those that satisfy every cut known); each is refuted by a new cut or by exhaustion, or it is
 * filled, and is then the optimum.
 */
export function solveSheets(question: SheetsQuestion): SheetsAnswer {
  const { kinds, groups, clock, stats, solver } = question;
  const demand = kinds.map((kind) => kind.demand);
  const frames: Frames = { upright: kinds, transposed: transposeKinds(kinds) };
  const pieces = demand.reduce((sum, count) => sum + count, 0);
  const offers: Offer[] = groups.map((group) => ({
    cost: group.cost,
    available: Math.min(group.available ?? pieces, pieces),
  }));
  const unit = Math.max(1, Math.max(...groups.map((group) => group.cost)) / 10_000);
  const joint = jointOracle(
    kinds,
    null,
    groups.map((group, index) => ({
      oracle: sheetOracle(question.style, frames, group, index),
      height: Math.max(1, Math.round(group.cost / unit)),
    })),
  );
  const oracle = metered(joint, clock);
  const all = offers.map(({ available }) => available);
  const areaDuals = kinds.map(areaOfOne);
  const areaTotal = areaDuals.reduce((sum, area, k) => sum + area * demand[k]!, 0);
  const areaWhole = wholePrices(
    areaDuals.map((area) => area / areaTotal),
    demand,
    1,
  );
  const cuts: HeightCut[] = [heightCut(oracle, demand, areaWhole)];
  let best: StripCount[] | null = null;
  let cost = Number.MAX_SAFE_INTEGER;
  const costOf = (sheets: readonly StripCount[]) =>
    sheets.reduce((sum, { filling, count }) => sum + groups[filling.sheet!.index]!.cost * count, 0);
  const offer = (sheets: readonly StripCount[]) => {
    const exact = dropSurplus(frames, demand, sheets);
    const total = costOf(exact);
    if (total >= cost) return;
    best = exact;
    cost = total;
  };
  const attempt = greedySheets(oracle, demand, areaWhole.prices, all);
  if (attempt.left.every((count) => count === 0)) offer(attempt.strips);
  if (question.style === "strips-3") {
    // A plan without stacks is a plan with them: the best of those found quickly is where this search starts.
    const two = solveSheets({
      ...question,
      style: "strips-2",
      clock: share(clock, 0.25, 1500),
      report: () => {},
    });
    if (two.sheets !== null) offer(two.sheets);
  }
  const answer = (lower: number, impossible: boolean): SheetsAnswer => ({
    sheets: best,
    cost,
    lower,
    impossible,
    attempt: { sheets: attempt.strips, left: attempt.left },
  });
  const master = createMaster(oracle, demand, solver);
  const lists = fillingLists(null);
  const failed: number[][] = [];
  let open = Number.MAX_SAFE_INTEGER;
  let lower = 0;
  try {
    const root = master.solveRoot(
      1,
      all.map(() => 0),
      () => clock.expired(),
    );
    cuts.push(root.cut);
    const full = master.testVector(all, () => clock.expired());
    if (full.cut !== null) return answer(0, true);
    const tryMany = (vector: readonly number[], goal: number) => {
      for (let n = 0; n < GREEDY_TRIES && cost > goal && !clock.expired(); n++) {
        const base = n % 2 === 0 ? areaWhole.prices : cuts[(n >> 1) % cuts.length]!.prices;
        const prices = n < 2 ? base : jitteredPrices(base, n, 0.15 + 0.05 * (n % 8));
        tryGreedy(oracle, demand, prices, vector, offer, master.add);
      }
    };
    tryMany(all, 0);
    let stripsTried = false;
    /** Proved from the length of the strips. */
    let floor = 0;
    for (;;) {
      const next = cheapestVector(offers, cuts, failed, cost, 2_000_000);
      if (!next.complete) open = Math.min(open, lower);
      if (next.vector === null) {
        if (best === null)
          return answer(Math.min(open, 0), next.complete && open === Number.MAX_SAFE_INTEGER);
        return answer(Math.min(cost, open), false);
      }
      const vector = next.vector;
      const price = vector.reduce((sum, count, level) => sum + count * groups[level]!.cost, 0);
      lower = Math.min(price, open);
      if (best !== null) question.report(cost, lower);
      if (
        clock.expired() ||
        (question.target !== null && (cost <= question.target || lower > question.target))
      )
        return answer(Math.min(lower, cost), false);
      const test = master.testVector(vector, () => clock.expired());
      if (test.cut !== null) {
        cuts.push(test.cut);
        continue;
      }
      tryMany(vector, price);
      if (cost > price && !stripsTried) {
        stripsTried = true;
        const inner = { ...question, clock: share(clock, 0.4, 6000) };
        groups.forEach((_, index) => {
          if (cost <= price || groups.length > MOST_GROUPS) return;
          const { plans, least } = stripsOnSheets(inner, index, frames);
          for (const plan of plans) offer(plan);
          if (groups.length === 1) floor = least * groups[0]!.cost;
        });
      }
      if (price < floor && cost > price) {
        failed.push(vector);
        continue;
      }
      if (cost <= price) continue;
      let outcome = decideVector(master, solver, cuts, vector, lists, EASY, clock, stats);
      if (outcome.answer === "unknown" && !clock.expired())
        outcome = decideVector(master, solver, cuts, vector, lists, hard(clock), clock, stats);
      if (outcome.answer === "filled") offer(outcome.strips);
      else {
        failed.push(vector);
        if (outcome.answer === "unknown") open = Math.min(open, price);
      }
    }
  } finally {
    stats.columns += master.counts.columns;
    stats.lpSolves += master.counts.lpSolves;
    master.dispose();
  }
}

/** The hard look takes a share of what is left, so that one stubborn choice does not eat the whole budget. */
function hard(clock: Clock): Effort {
  return { ...HARD, solver: Math.min(HARD.solver, Math.max(200, clock.left() / 3)) };
}

function tryGreedy(
  oracle: StripOracle,
  demand: readonly number[],
  prices: Float64Array,
  sheets: readonly number[],
  offer: (sheets: readonly StripCount[]) => void,
  keep: (filling: Filling) => void,
): void {
  const { strips, left } = greedySheets(oracle, demand, prices, sheets);
  for (const { filling } of strips) keep(filling);
  if (left.every((count) => count === 0)) offer(strips);
}
