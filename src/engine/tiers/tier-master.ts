import type { Filling, StripOracle } from "../oracles/oracle.ts";
import { wholePrices } from "../search/prices.ts";
import type { LinearModel, Solver } from "../solver/types.ts";
import { leastLength, type TierBounds, type TierCut, tierCut, tierSteps } from "./tiers.ts";

/** What the linear program says within some bounds on the tiers. */
export interface TierOutcome {
  /** No plan within the bounds is shorter; Infinity when there is none. Proved. */
  bound: number;
  /** The cut that proves it; null when the solver failed. */
  cut: TierCut | null;
  /** Strips at least as high as each level, in fractions. */
  tiers: number[];
  /** Use of every filling in the pool. */
  values: Float64Array;
  /** Pricing found nothing more: the linear program is solved to its end. */
  converged: boolean;
  /** The program's own objective, not proof. */
  objective: number;
}

/**
 * The linear program over fillings in which the number of strips at least so high is a variable of its own,
 * so that a search can bound it from both sides without a change to the pricing:
 *
 *     minimise  sum steps(l) * y(l)
 *     fillings of level l  <=  y(l) - y(l + 1)
 *     fillings hold the demand
 */
export interface TierMaster {
  readonly oracle: StripOracle;
  readonly demand: readonly number[];
  readonly steps: readonly number[];
  readonly pool: readonly Filling[];
  add(filling: Filling): void;
  /** At least so many strips of this filling in every plan from now on. */
  fix(index: number, count: number): void;
  solve(question: TierQuestion): TierOutcome;
  /** Solves without pricing: about what the bounds would come to. */
  glance(bounds: TierBounds): number;
  dispose(): void;
}

interface TierQuestion {
  bounds: TierBounds;
  /** Copies of each kind that a new filling may hold. */
  caps: readonly number[];
  /** Pricing ends when the bound is at least this. */
  limit: number;
  rounds: number;
  stop: () => boolean;
}

/** New fillings taken up in one round of pricing. */
const PER_ROUND = 16;

export function createTierMaster(
  oracle: StripOracle,
  demand: readonly number[],
  longest: number,
  solver: Solver,
): TierMaster {
  const model: LinearModel = solver.linearModel();
  const steps = tierSteps(oracle.heights);
  const levels = steps.length;
  const pool: Filling[] = [];
  const known = new Set<string>();
  const itemRows = demand.map((wanted) => model.addRow(wanted, Infinity, [], []));
  const levelRows = steps.map(() => model.addRow(0, Infinity, [], []));
  const tierColumns = steps.map((step, l) =>
    model.addColumn(
      step,
      0,
      Infinity,
      l === 0 ? [levelRows[0]!] : [levelRows[l]!, levelRows[l - 1]!],
      l === 0 ? [1] : [1, -1],
    ),
  );
  // What is left out costs more than any plan: bounds that allow no plan show in the prices.
  for (const row of itemRows) model.addColumn(10 * longest, 0, Infinity, [row], [1]);
  const columnOf: number[] = [];

  const add = (filling: Filling): void => {
    const key = `${filling.level}:${filling.counts.join(",")}`;
    if (known.has(key)) return;
    known.add(key);
    pool.push(filling);
    const rows = [levelRows[filling.level]!];
    const values = [-1];
    filling.counts.forEach((count, k) => {
      if (count === 0) return;
      rows.push(itemRows[k]!);
      values.push(count);
    });
    columnOf.push(model.addColumn(0, 0, Infinity, rows, values));
  };

  const run = ({ least, most }: TierBounds) => {
    for (let l = 0; l < levels; l++) {
      if (least[l] === set.least[l] && most[l] === set.most[l]) continue;
      model.setColumnBounds(tierColumns[l]!, least[l]!, most[l]!);
      set.least[l] = least[l]!;
      set.most[l] = most[l]!;
    }
    return model.solve(20_000);
  };
  const set: TierBounds = { least: steps.map(() => 0), most: steps.map(() => Infinity) };

  const solve = ({ bounds, caps, limit, rounds, stop }: TierQuestion): TierOutcome => {
    let best: { bound: number; cut: TierCut | null } = {
      bound: bounds.least.reduce((sum, count, l) => sum + count * steps[l]!, 0),
      cut: null,
    };
    let converged = false;
    let outcome = run(bounds);
    for (let round = 0; outcome.status === "optimal"; round++) {
      const { prices } = outcome;
      const whole = wholePrices(prices, demand, Math.max(longest, outcome.objective));
      const worth = oracle.values(whole.prices, caps);
      const guide = levelRows.map((row) => Math.max(0, prices[row] ?? 0));
      const cut = tierCut(whole, worth, guide, steps);
      const bound = leastLength(cut, steps, bounds);
      if (best.cut === null || bound >= best.bound) best = { bound: Math.max(bound, best.bound), cut };
      if (best.bound >= limit) break;
      const gains = guide.flatMap((price, level) => {
        const more = worth[level]! - price * whole.scale * (1 + 1e-7) - demand.length;
        return more > 0 ? [{ level, more }] : [];
      });
      if (gains.length === 0) {
        converged = true;
        break;
      }
      if (round >= rounds || stop()) break;
      const before = pool.length;
      gains.sort((a, b) => b.more - a.more || a.level - b.level);
      for (const { level } of gains.slice(0, PER_ROUND)) add(oracle.filling(level, whole.prices, caps));
      if (pool.length === before) break;
      outcome = run(bounds);
    }
    const { values } = outcome;
    return {
      ...best,
      tiers: tierColumns.map((column) => values[column] ?? 0),
      values: Float64Array.from(columnOf, (column) => Math.max(0, values[column] ?? 0)),
      converged,
      objective: outcome.status === "optimal" ? outcome.objective : Infinity,
    };
  };

  return {
    oracle,
    demand,
    steps,
    pool,
    add,
    fix: (index, count) => model.setColumnBounds(columnOf[index]!, count, Infinity),
    solve,
    glance: (bounds) => {
      const outcome = run(bounds);
      return outcome.status === "optimal" ? outcome.objective : Infinity;
    },
    dispose: () => model.dispose(),
  };
}
