import type { Filling, StripOracle } from "../oracles/oracle.ts";
import type { Kind } from "../problem/reduce.ts";
import { wholePrices } from "../search/prices.ts";
import type { Solver } from "../solver/types.ts";
import type { CuttingTable, SearchStats } from "../types.ts";
import { shapeOf } from "./places.ts";
import { cutsOf, WORK_WEIGHTS, workOfStrip } from "./work-measure.ts";

/** Strips to choose from, and what choosing them must keep to. */
export interface WorkQuestion {
  kinds: readonly Kind[];
  run: number;
  demand: readonly number[];
  /** Most length the strips may take. */
  limit: number;
  /** In the same steps as the kinds. */
  table: CuttingTable;
  /** Ruler settings the rest of the plan needs anyway. */
  paid: { widths: ReadonlySet<number>; sizes: ReadonlySet<number> };
}

/** A filling with its share of the work and the subcut sizes it needs. */
export interface Column {
  filling: Filling;
  /** Work of every such strip. */
  each: number;
  /** Work of having such strips at all: of telling them apart and turning the mat for them. */
  once: number;
  sizes: number[];
}

/** Columns to search among, and prices that bound from below what is left of the work. */
export interface PricedColumns {
  columns: Column[];
  /** Least work per item and per step of length still free: dual values, used for pruning only. */
  prices: number[];
  perLength: number;
}

export function toColumn({ kinds, run, table }: WorkQuestion, filling: Filling): Column {
  const cuts = cutsOf(shapeOf(kinds, run, filling), table);
  const once = WORK_WEIGHTS.kinds + WORK_WEIGHTS.turns * cuts.turns;
  return { filling, each: workOfStrip(cuts), once, sizes: cuts.sizes };
}

/**
 * Column generation for strips and cuts alone, without the charges for settings: adds the oracle's strips
 * that lower the linear program, then keeps the `most` columns it likes best. The first `keep` always stay.
 */
export function priceColumns(
  question: WorkQuestion,
  oracle: StripOracle,
  columns: Column[],
  limits: { keep: number; most: number; rounds: number },
  solver: Solver,
  stats: SearchStats,
): PricedColumns {
  const { demand, limit } = question;
  const model = solver.linearModel();
  try {
    for (const wanted of demand) model.addRow(wanted, Infinity, [], []);
    model.addRow(-Infinity, limit, [], []);
    // What is cut beyond the demand is taken out again, and its subcut with it.
    demand.forEach((_, k) => {
      model.addColumn(-WORK_WEIGHTS.subcuts, 0, Infinity, [k], [-1]);
    });
    const add = ({ filling, each, once }: Column): void => {
      const rows = demand.flatMap((_, k) => (filling.counts[k]! > 0 ? [k] : []));
      const values = rows.map((k) => Math.min(filling.counts[k]!, demand[k]!));
      model.addColumn(
        each + once / mostOf(question, filling),
        0,
        Infinity,
        [...rows, demand.length],
        [...values, filling.height],
      );
    };
    const known = new Set(columns.map(({ filling }) => textOf(filling)));
    const all = columns.slice();
    for (const column of all) add(column);
    let prices: ArrayLike<number> = demand.map(() => 0);
    for (let round = 0; round < limits.rounds; round++) {
      stats.lpSolves++;
      const outcome = model.solve(1000);
      if (outcome.status !== "optimal")
        return { columns: columns.slice(0, limits.most), prices: demand.map(() => 0), perLength: 0 };
      prices = outcome.prices;
      // Every item costs at least one subcut, so its price beside that is what the oracle may earn.
      const net = demand.map((_, k) => Math.max(0, prices[k]! - WORK_WEIGHTS.subcuts));
      const whole = wholePrices(net, demand, limit);
      const perLength = Math.max(0, -prices[demand.length]!);
      const cost = (level: number) =>
        (WORK_WEIGHTS.strips + perLength * oracle.heights[level]!) * whole.scale;
      const values = oracle.values(whole.prices, demand);
      const gains = [...values.keys()]
        .filter((level) => values[level]! > cost(level) * (1 + 1e-6) + oracle.kinds.length)
        .sort((a, b) => values[b]! / cost(b) - values[a]! / cost(a) || a - b);
      let added = 0;
      for (const level of gains.slice(0, 6)) {
        const column = toColumn(question, oracle.filling(level, whole.prices, demand));
        const text = textOf(column.filling);
        if (known.has(text)) continue;
        known.add(text);
        all.push(column);
        add(column);
        added++;
      }
      if (added === 0) break;
    }
    const answer = (chosen: Column[]): PricedColumns => ({
      columns: chosen,
      prices: demand.map((_, k) => Math.max(0, prices[k]!)),
      perLength: Math.max(0, -prices[demand.length]!),
    });
    if (all.length <= limits.most) return answer(all);
    const reduced = ({ filling, each }: Column): number => {
      let cost = each - prices[demand.length]! * filling.height;
      for (let k = 0; k < demand.length; k++) cost -= prices[k]! * Math.min(filling.counts[k]!, demand[k]!);
      return cost / each;
    };
    const rest = all
      .slice(limits.keep)
      .map((column, at) => ({ column, at, cost: reduced(column) }))
      .sort((a, b) => a.cost - b.cost || a.at - b.at)
      .slice(0, limits.most - limits.keep);
    return answer([...all.slice(0, limits.keep), ...rest.map(({ column }) => column)]);
  } finally {
    model.dispose();
  }
}

/** How many strips of a filling could ever be wanted. */
function mostOf({ demand, limit }: WorkQuestion, filling: Filling): number {
  const needed = demand.map((wanted, k) =>
    filling.counts[k]! > 0 ? Math.ceil(wanted / filling.counts[k]!) : 0,
  );
  return Math.max(1, Math.min(Math.max(...needed), Math.floor(limit / filling.height)));
}

/** Tells fillings apart: height and segments, in any order. */
export function textOf(filling: Filling): string {
  const segments = filling.segments.map(({ stack }) =>
    stack
      .map(({ kind, lie }) => `${kind}.${lie}`)
      .sort()
      .join("+"),
  );
  return `${filling.height}:${segments.sort().join("|")}`;
}
