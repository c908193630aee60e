import type { StripOracle } from "../oracles/oracle.ts";
import { type Counts, sum } from "../problem/counts.ts";
import { addToPool, emptyPool, type Pool, usesIn } from "../search/pool.ts";
import { type WholePrices, wholePrices } from "../search/prices.ts";
import type { Entry, LinearOutcome, Solver } from "../solver/types.ts";
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
  readonly demand: Counts;
  /** Length of a plan that there is. */
  readonly longest: number;
  readonly steps: readonly number[];
  readonly pool: Pool;
  readonly levelRows: readonly number[];
  readonly tierColumns: readonly number[];
  /** Bounds the model has now. */
  readonly set: TierBounds;
}

interface TierQuestion {
  bounds: TierBounds;
  /** Copies of each kind that a new filling may hold. */
  caps: Counts;
  /** Pricing ends when the bound is at least this. */
  limit: number;
  rounds: number;
  stop: () => boolean;
}

/** New fillings taken up in one round of pricing. */
const PER_ROUND = 16;

export function createTierMaster(
  oracle: StripOracle,
  demand: Counts,
  longest: number,
  solver: Solver,
): TierMaster {
  const model = solver.linearModel();
  const steps = tierSteps(oracle.heights);
  const pool = emptyPool(model, demand);
  const levelRows = steps.map(() => model.addRow(0, Infinity));
  const tierColumns = steps.map((step, l) => {
    const below: Entry[] = l === 0 ? [] : [[levelRows[l - 1]!, -1]];
    return model.addColumn(step, 0, Infinity, [[levelRows[l]!, 1], ...below]);
  });
  // What is left out costs more than any plan: bounds that allow no plan show in the prices.
  for (const row of pool.itemRows) model.addColumn(10 * longest, 0, Infinity, [[row, 1]]);
  const set = { least: steps.map(() => 0), most: steps.map(() => Infinity) };
  return { oracle, demand, longest, steps, pool, levelRows, tierColumns, set };
}

/** At least so many strips of this filling in every plan from now on. */
export function fix({ pool }: TierMaster, index: number, count: number): void {
  pool.model.setColumnBounds(pool.columns[index]!, count, Infinity);
}

function run({ pool, steps, tierColumns, set }: TierMaster, { least, most }: TierBounds): LinearOutcome {
  for (let l = 0; l < steps.length; l++) {
    if (least[l] === set.least[l] && most[l] === set.most[l]) continue;
    pool.model.setColumnBounds(tierColumns[l]!, least[l]!, most[l]!);
    set.least[l] = least[l]!;
    set.most[l] = most[l]!;
  }
  return pool.model.solve(20_000);
}

function objectiveOf({ status, objective }: LinearOutcome): number {
  return status === "optimal" ? objective : Infinity;
}

/** Solves without pricing: about what the bounds would come to. */
export function glance(master: TierMaster, bounds: TierBounds): number {
  return objectiveOf(run(master, bounds));
}

/** Solves within the bounds, taking up fillings that pay. */
export function solveTiers(master: TierMaster, question: TierQuestion): TierOutcome {
  const { oracle, demand, longest, steps, pool, levelRows, tierColumns } = master;
  const { bounds, caps, limit, rounds, stop } = question;
  let best: { bound: number; cut: TierCut | null } = {
    bound: sum(bounds.least, (count, l) => count * steps[l]!),
    cut: null,
  };
  let outcome = run(master, bounds);
  for (let round = 0; outcome.status === "optimal"; round++) {
    const { prices } = outcome;
    const whole = wholePrices(prices, demand, Math.max(longest, outcome.objective));
    const worth = oracle.values(whole.prices, caps);
    const guide = levelRows.map((row) => Math.max(0, prices[row] ?? 0));
    const cut = tierCut(whole, worth, guide, steps);
    const bound = leastLength(cut, steps, bounds);
    if (best.cut === null || bound >= best.bound) best = { bound: Math.max(bound, best.bound), cut };
    if (best.bound >= limit) break;
    const gains = paying(worth, guide, whole);
    if (gains.length === 0 || round >= rounds || stop()) break;
    const before = pool.fillings.length;
    for (const level of gains.slice(0, PER_ROUND))
      addToPool(pool, oracle.filling(level, whole.prices, caps), 0, [[levelRows[level]!, -1]]);
    if (pool.fillings.length === before) break;
    outcome = run(master, bounds);
  }
  const tiers = tierColumns.map((column) => outcome.values[column] ?? 0);
  return { ...best, tiers, values: usesIn(pool, outcome), objective: objectiveOf(outcome) };
}

/** Levels whose best filling is worth more than is paid for it, most first. */
function paying(worth: Float64Array, guide: readonly number[], { scale, prices }: WholePrices): number[] {
  const gains = guide.flatMap((price, level) => {
    const more = worth[level]! - price * scale * (1 + 1e-7) - prices.length;
    return more > 0 ? [{ level, more }] : [];
  });
  return gains.sort((a, b) => b.more - a.more || a.level - b.level).map(({ level }) => level);
}
