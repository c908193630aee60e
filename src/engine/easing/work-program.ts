import type { Filling } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import { type Counts, sum } from "../problem/counts.ts";
import type { Kind } from "../problem/reduce.ts";
import type { Entry, Solver } from "../solver/types.ts";
import type { CuttingTable } from "../types.ts";
import { fillingWork, type Measured, type StripWork, WORK_WEIGHTS, workOfStrip } from "./work-measure.ts";

/** Strips to choose from, and what choosing them must keep to. */
export interface WorkQuestion {
  kinds: readonly Kind[];
  run: number;
  demand: Counts;
  /** Most length the strips may take. */
  limit: number;
  /** Ruler settings the rest of the plan needs anyway. */
  paid: { widths: ReadonlySet<number>; sizes: ReadonlySet<number> };
}

/** A filling with its share of the work. */
export interface Column {
  filling: Filling;
  strip: StripWork;
  /** Work of every such strip. */
  each: number;
  /** Work of having such strips at all: of telling them apart and turning the mat for them. */
  once: number;
}

/** Columns to search among, and prices that bound from below what is left of the work. */
export interface PricedColumns {
  columns: readonly Column[];
  /** Least work per item and per step of length still free: dual values, used for pruning only. */
  prices: number[];
  perLength: number;
}

export function toColumn(kinds: readonly Kind[], run: number, table: CuttingTable, filling: Filling): Column {
  const strip = fillingWork(kinds, run, filling, table);
  const once = WORK_WEIGHTS.kinds + WORK_WEIGHTS.turns * strip.turns;
  return { filling, strip, each: workOfStrip(strip), once };
}

/** The ruler settings of strips that are cut anyway. */
export function paidFor(strips: readonly Measured[]): WorkQuestion["paid"] {
  return {
    widths: new Set(strips.map(({ strip }) => strip.height)),
    sizes: new Set(strips.flatMap(({ strip }) => strip.sizes)),
  };
}

/**
 * Whether a plan with such strips may be no more work than `bar`. Whatever the plan, a piece takes a cut or ends its
 * strip, the ruler is set to both measures of every piece, and widths side by side in strips are no longer than these.
 */
export function mayServe({ kinds, run, demand, paid }: WorkQuestion, isStacked: boolean, bar: number) {
  const wanted = kinds.map(({ lies }, k) => (demand[k]! > 0 ? lies.filter(({ width }) => width <= run) : []));
  const measures = wanted.flatMap((lies) => lies.flatMap(({ width, height }) => [width, height]));
  const needed = [...new Set(measures)].filter(
    (size) => size < run && !paid.sizes.has(size) && !paid.widths.has(size),
  );
  const narrowest = wanted.map((lies) => Math.min(...lies.map(({ width }) => width)));
  return ({ filling: { counts, height }, strip, each }: Column): boolean => {
    const left = demand.map((count, k) => Math.max(0, count - counts[k]!));
    const pieces = sum(left, (count) => count);
    const across = sum(left, (count, k) => (count > 0 ? count * narrowest[k]! : 0));
    const strips = isStacked ? Math.min(1, pieces) : Math.ceil(across / run);
    const fresh = strip.sizes.filter((size) => !paid.sizes.has(size));
    if (!paid.widths.has(height)) fresh.push(height);
    const settings = fresh.length + needed.filter((size) => !fresh.includes(size)).length;
    const { strips: ofStrip, settings: ofSetting, subcuts } = WORK_WEIGHTS;
    return each + ofSetting * settings + (ofStrip - subcuts) * strips + subcuts * pieces <= bar;
  };
}

/** The `most` columns that the linear program of strips and cuts alone likes best; the first `keep` always stay. */
export function priceColumns(
  question: WorkQuestion,
  columns: readonly Column[],
  { keep, most }: { keep: number; most: number },
  solver: Solver,
): PricedColumns {
  const { demand, limit } = question;
  const model = solver.linearModel();
  try {
    for (const wanted of demand) model.addRow(wanted, Infinity);
    const length = model.addRow(-Infinity, limit);
    // What is cut beyond the demand is taken out again, and its subcut with it.
    for (const k of demand.keys()) model.addColumn(-WORK_WEIGHTS.subcuts, 0, Infinity, [[k, -1]]);
    for (const { filling, each, once } of columns) {
      const { counts, height } = filling;
      const held = demand.flatMap((wanted, k): Entry[] =>
        counts[k]! > 0 ? [[k, Math.min(counts[k]!, wanted)]] : [],
      );
      model.addColumn(each + once / mostOf(question, filling), 0, Infinity, [...held, [length, height]]);
    }
    const { status, prices: duals } = model.solve(1000);
    if (status !== "optimal")
      return { columns: columns.slice(0, most), prices: demand.map(() => 0), perLength: 0 };
    const prices = demand.map((_, k) => Math.max(0, duals[k]!));
    const perLength = Math.max(0, -duals[demand.length]!);
    const reduced = ({ filling, each }: Column): number =>
      demand.reduce(
        (cost, wanted, k) => cost - prices[k]! * Math.min(filling.counts[k]!, wanted),
        each + perLength * filling.height,
      ) / each;
    const rest = columns
      .slice(keep)
      .map((column, at) => ({ column, at, cost: reduced(column) }))
      .sort((a, b) => a.cost - b.cost || a.at - b.at)
      .slice(0, Math.max(0, most - keep));
    const liked =
      columns.length <= most ? columns : [...columns.slice(0, keep), ...rest.map((r) => r.column)];
    return { columns: liked, prices, perLength };
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

const TEXTS = new WeakMap<Filling, string>();

/** Tells fillings apart: height and segments, in any order. Fillings are never written into, so a text is made once. */
export function textOf(filling: Filling): string {
  const known = TEXTS.get(filling) ?? textMade(filling);
  TEXTS.set(filling, known);
  return known;
}

function textMade(filling: Filling): string {
  const segments = filling.segments.map(({ stack }) =>
    stack
      .map(({ kind, lie }) => `${kind}.${lie}`)
      .sort()
      .join("+"),
  );
  return `${filling.height}:${segments.sort().join("|")}`;
}

/**
 * Equal fillings counted together, empty ones left out; in one order, the highest first, so that what is made of them is
 * the same however they came about.
 */
export function gather(strips: readonly StripCount[]): StripCount[] {
  const byText = new Map<string, StripCount>();
  for (const { filling, count } of strips) {
    if (count === 0 || filling.segments.length === 0) continue;
    const text = textOf(filling);
    const known = byText.get(text);
    byText.set(text, { filling: known?.filling ?? filling, count: (known?.count ?? 0) + count });
  }
  const texts = [...byText].sort(([a, p], [b, q]) => q.filling.height - p.filling.height || (a < b ? -1 : 1));
  return texts.map(([, strip]) => strip);
}
