import type { StripCount } from "./assemble.ts";
import type { Filling, StripOracle } from "./oracle.ts";
import { wholePrices } from "./prices.ts";
import type { Kind } from "./reduce.ts";
import type { IntegerProgram, Solver } from "./solver/types.ts";
import type { SearchStats } from "./types.ts";
import { cutsOf, WORK_WEIGHTS } from "./work-measure.ts";
import { shapeOf } from "./work-plan.ts";

/** Strips to choose from, and what choosing them must keep to. */
export interface WorkQuestion {
  kinds: readonly Kind[];
  run: number;
  demand: readonly number[];
  /** Most length the strips may take. */
  limit: number;
  /** Ruler settings the rest of the plan needs anyway. */
  paid: { widths: ReadonlySet<number>; sizes: ReadonlySet<number> };
}

/** A filling with its share of the work and the subcut sizes it needs. */
export interface Column {
  filling: Filling;
  /** Work of every such strip. */
  each: number;
  sizes: number[];
}

export function toColumn({ kinds, run }: WorkQuestion, filling: Filling): Column {
  const { subcuts, trims, sizes } = cutsOf(shapeOf(kinds, run, filling));
  const each = WORK_WEIGHTS.strips + WORK_WEIGHTS.subcuts * subcuts + WORK_WEIGHTS.trims * trims;
  return { filling, each, sizes };
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
): Column[] {
  const { demand, limit } = question;
  const model = solver.linearModel();
  try {
    for (const wanted of demand) model.addRow(wanted, Infinity, [], []);
    model.addRow(-Infinity, limit, [], []);
    const add = ({ filling, each }: Column): void => {
      const rows = demand.flatMap((_, k) => (filling.counts[k]! > 0 ? [k] : []));
      const values = rows.map((k) => Math.min(filling.counts[k]!, demand[k]!));
      model.addColumn(each, 0, Infinity, [...rows, demand.length], [...values, filling.height]);
    };
    const known = new Set(columns.map(({ filling }) => textOf(filling)));
    const all = columns.slice();
    for (const column of all) add(column);
    let prices: ArrayLike<number> = [];
    for (let round = 0; round < limits.rounds; round++) {
      stats.lpSolves++;
      const outcome = model.solve(1000);
      if (outcome.status !== "optimal") return columns.slice(0, limits.most);
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
    if (all.length <= limits.most) return all;
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
    return [...all.slice(0, limits.keep), ...rest.map(({ column }) => column)];
  } finally {
    model.dispose();
  }
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

/**
 * The least work with these columns, charging each kind of strip and each ruler setting once. Null when the
 * solver finds nothing better than `incumbent` work or is not done in time: half an answer would depend
 * on the machine.
 */
export function leastWork(
  question: WorkQuestion,
  columns: readonly Column[],
  incumbent: number,
  solver: Solver,
  milliseconds: number,
  stats: SearchStats,
): StripCount[] | null {
  const { demand, limit, paid } = question;
  // Scaled so that the solver's absolute gap of one half is a twentieth of a percent of a large plan.
  const scale = Math.min(1, 1000 / Math.max(1, incumbent));
  const program: IntegerProgram = { costs: [], lower: [], upper: [], whole: [], rows: [] };
  const addColumn = (cost: number, upper: number, whole: boolean): number => {
    program.whole.push(whole);
    program.lower.push(0);
    program.upper.push(upper);
    return program.costs.push(cost * scale) - 1;
  };
  const atMost = (column: number, times: number, charge: number): void => {
    program.rows.push({ lower: -Infinity, upper: 0, columns: [column, charge], values: [1, -times] });
  };
  const settings = new Map<string, number>();
  const settingFor = (name: string, free: boolean): number | null => {
    if (free) return null;
    const known = settings.get(name);
    if (known !== undefined) return known;
    const column = addColumn(WORK_WEIGHTS.settings, 1, false);
    settings.set(name, column);
    return column;
  };
  const uses = columns.map((column) => {
    const { filling, each, sizes } = column;
    const needed = demand.map((wanted, k) =>
      filling.counts[k]! > 0 ? Math.ceil(wanted / filling.counts[k]!) : 0,
    );
    const most = Math.min(Math.max(...needed), Math.floor(limit / filling.height));
    const use = addColumn(each, most, true);
    const charge = addColumn(WORK_WEIGHTS.kinds, 1, true);
    atMost(use, most, charge);
    const asked = [
      settingFor(`w${filling.height}`, paid.widths.has(filling.height)),
      ...sizes.map((size) => settingFor(`s${size}`, paid.sizes.has(size))),
    ];
    for (const setting of asked) if (setting !== null) atMost(charge, 1, setting);
    return use;
  });
  demand.forEach((wanted, k) => {
    if (wanted === 0) return;
    const holding = columns.flatMap(({ filling }, p) => (filling.counts[k]! > 0 ? [p] : []));
    program.rows.push({
      lower: wanted,
      upper: Infinity,
      columns: holding.map((p) => uses[p]!),
      values: holding.map((p) => Math.min(columns[p]!.filling.counts[k]!, wanted)),
    });
  });
  program.rows.push({
    lower: -Infinity,
    upper: limit,
    columns: uses,
    values: columns.map(({ filling }) => filling.height),
  });
  stats.mipSolves++;
  const outcome = solver.integer(program, milliseconds);
  if (outcome.status !== "optimal" || outcome.values === null) return null;
  return columns
    .map(({ filling }, p) => ({ filling, count: Math.round(outcome.values![uses[p]!]!) }))
    .filter(({ count }) => count > 0);
}
