import { dropSurplus, type StripCount } from "./assemble.ts";
import type { Clock } from "./clock.ts";
import { greedyStrips } from "./greedy.ts";
import { createMaster, type Master } from "./master.ts";
import type { StripOracle } from "./oracle.ts";
import { oracleForThree } from "./oracle-three.ts";
import { oracleForTwo } from "./oracle-two.ts";
import { wholePrices } from "./prices.ts";
import type { Kind } from "./reduce.ts";
import type { IntegerProgram, Solver } from "./solver/types.ts";
import type { CuttingStyle, SearchStats } from "./types.ts";

/** The least length of strips of one run that holds every kind, and how far it is proved. */
export interface RollAnswer {
  strips: StripCount[];
  length: number;
  lower: number;
  boundKind: "area" | "dual" | "exhausted";
}

export interface RollQuestion {
  kinds: readonly Kind[];
  run: number;
  style: CuttingStyle;
  solver: Solver;
  clock: Clock;
  stats: SearchStats;
  /** Good enough: the search ends at a plan no longer than this, or a bound beyond it. */
  target: number | null;
  report(length: number, lower: number): void;
}

export function makeOracle(
  style: CuttingStyle,
  kinds: readonly Kind[],
  run: number,
  tallest: number,
): StripOracle {
  return style === "strips-2" ? oracleForTwo(kinds, run) : oracleForThree(kinds, run, tallest);
}

export function lengthOf(strips: readonly StripCount[]): number {
  return strips.reduce((sum, { filling, count }) => sum + filling.height * count, 0);
}

/** Solves the roll problem. Every kind must fit the run in some lie (the caller has checked). */
export function solveRoll(question: RollQuestion): RollAnswer {
  const { kinds, run, clock, solver, stats } = question;
  const demand = kinds.map((kind) => kind.demand);
  if (kinds.length === 0) return { strips: [], length: 0, lower: 0, boundKind: "area" };
  const area = kinds.reduce((sum, kind) => sum + kind.lies[0]!.width * kind.lies[0]!.height * kind.demand, 0);
  const two = oracleForTwo(kinds, run);
  const areaPrice = wholePrices(
    kinds.map((kind) => (kind.lies[0]!.width * kind.lies[0]!.height) / run),
    demand,
    Math.ceil(area / run),
  );
  let best = greedyStrips(two, demand, areaPrice.prices, undefined)!;
  let length = lengthOf(best);
  const oracle = makeOracle(question.style, kinds, run, length);
  const master = createMaster(oracle, demand, solver);
  try {
    const root = master.solveRoot(length, () => clock.expired());
    const lower = Math.max(root.bound, Math.ceil(area / run));
    const offer = (strips: StripCount[] | null) => {
      if (strips === null) return;
      const exact = dropSurplus(kinds, demand, strips);
      const total = lengthOf(exact);
      if (total < length) {
        best = exact;
        length = total;
        question.report(length, lower);
      }
    };
    offer(greedyStrips(oracle, demand, root.cut.prices, undefined));
    if (length > lower) offer(poolProgram(master, solver, Math.min(1000, clock.left())));
    stats.columns += master.counts.columns;
    stats.lpSolves += master.counts.lpSolves;
    return { strips: best, length, lower: Math.min(lower, length), boundKind: "dual" };
  } finally {
    master.dispose();
  }
}

/** The best whole-number use of the fillings found so far. */
function poolProgram(master: Master, solver: Solver, milliseconds: number): StripCount[] | null {
  const { pool, demand } = master;
  const program: IntegerProgram = {
    costs: pool.map((filling) => filling.height),
    lower: pool.map(() => 0),
    upper: pool.map(() => Infinity),
    whole: pool.map(() => true),
    rows: demand.map((wanted, k) => {
      const columns: number[] = [];
      const values: number[] = [];
      pool.forEach((filling, p) => {
        if (filling.counts[k]! > 0) {
          columns.push(p);
          values.push(Math.min(filling.counts[k]!, wanted));
        }
      });
      return { lower: wanted, upper: Infinity, columns, values };
    }),
  };
  const outcome = solver.integer(program, milliseconds);
  if (outcome.values === null) return null;
  return pool
    .map((filling, p) => ({ filling, count: Math.round(outcome.values![p]!) }))
    .filter(({ count }) => count > 0);
}
