import type { StripCount } from "./assemble.ts";
import { WORK_WEIGHTS } from "./work-measure.ts";
import type { PricedColumns, WorkQuestion } from "./work-program.ts";

/** Most ways of going on that are looked at from one partial plan. */
const MOST_WAYS = 10;

interface Step {
  column: number;
  count: number;
  /** Work of these strips and of the settings new with them. */
  cost: number;
  score: number;
}

/**
 * Builds plans from the columns, items in the given order, and offers each that may be less work than `most` (which
 * `offer` lowers). Limited discrepancy search (Harvey and Ginsberg 1995): first the plan that follows the best
 * guess throughout, then those that depart from it once, twice, ... until `nodes` partial plans have been seen.
 * Counted work only, so that the answer does not depend on the machine.
 */
export function searchWork(
  question: WorkQuestion,
  priced: PricedColumns,
  nodes: number,
  most: number,
  offer: (strips: StripCount[]) => number,
  stop: () => boolean,
  order: readonly number[],
): void {
  const { kinds, run, demand, limit, paid } = question;
  const { columns, prices, perLength } = priced;
  const area = kinds.map(({ lies }) => lies[0]!.width * lies[0]!.height);
  const holding = demand.map((_, k) =>
    columns.flatMap(({ filling }, p) => (filling.counts[k]! > 0 ? [p] : [])),
  );
  const names = new Map<string, number>();
  const nameOf = (name: string): number => {
    const known = names.get(name) ?? names.size;
    names.set(name, known);
    return known;
  };
  const settings = columns.map(({ filling: { height }, sizes }) => [
    ...(paid.widths.has(height) ? [] : [nameOf(`w${height}`)]),
    ...sizes.filter((size) => !paid.sizes.has(size)).map((size) => nameOf(`s${size}`)),
  ]);
  const inUse = new Int32Array(names.size);
  const used = new Uint8Array(columns.length);
  const left = demand.slice();
  const chosen: Step[] = [];
  let bar = most;
  let seen = 0;

  const stepOf = (p: number, count: number): Step => {
    const { filling, each } = columns[p]!;
    let worth = 1e-9;
    let surplus = 0;
    for (let k = 0; k < left.length; k++) {
      const held = filling.counts[k]! * count;
      worth += Math.min(held, left[k]!) * prices[k]!;
      if (held > left[k]!) surplus += held - left[k]!;
    }
    let cost = each * count + WORK_WEIGHTS.kinds - surplus * WORK_WEIGHTS.subcuts;
    for (const name of settings[p]!) if (inUse[name] === 0) cost += WORK_WEIGHTS.settings;
    return { column: p, count, cost, score: (cost + perLength * filling.height * count) / worth };
  };

  const ways = (kind: number, room: number): Step[] => {
    const found: Step[] = [];
    for (const p of holding[kind]!) {
      if (used[p] === 1) continue;
      const { counts, height } = columns[p]!.filling;
      const fits = Math.floor(room / height);
      const all = Math.ceil(left[kind]! / counts[kind]!);
      let exact = all;
      for (let k = 0; k < left.length; k++)
        if (counts[k]! > 0) exact = Math.min(exact, Math.floor(left[k]! / counts[k]!));
      for (const count of new Set([all, exact, exact - 1]))
        if (count > 0 && count <= fits) found.push(stepOf(p, count));
    }
    return found
      .sort((a, b) => a.score - b.score || a.column - b.column || b.count - a.count)
      .slice(0, MOST_WAYS);
  };

  const visit = (cost: number, room: number, departures: number): void => {
    if (seen >= nodes || (seen % 64 === 0 && stop())) return;
    seen++;
    const kind = order.find((k) => left[k]! > 0);
    if (kind === undefined) {
      bar = Math.min(
        bar,
        offer(chosen.map(({ column, count }) => ({ filling: columns[column]!.filling, count }))),
      );
      return;
    }
    let least = cost - perLength * room;
    let covered = 0;
    for (let k = 0; k < left.length; k++) {
      least += prices[k]! * left[k]!;
      covered += area[k]! * left[k]!;
    }
    if (least > bar + 1e-6 || covered > room * run) return;
    const list = ways(kind, room);
    for (let rank = 0; rank < list.length && rank <= departures; rank++) {
      const step = list[rank]!;
      const before = left.slice();
      take(step, 1);
      visit(cost + step.cost, room - columns[step.column]!.filling.height * step.count, departures - rank);
      take(step, -1);
      for (let k = 0; k < left.length; k++) left[k] = before[k]!;
    }
  };
  const take = (step: Step, sign: 1 | -1): void => {
    const { filling } = columns[step.column]!;
    used[step.column] = sign > 0 ? 1 : 0;
    for (const name of settings[step.column]!) inUse[name]! += sign;
    if (sign < 0) {
      chosen.pop();
      return;
    }
    chosen.push(step);
    for (let k = 0; k < left.length; k++) left[k] = Math.max(0, left[k]! - filling.counts[k]! * step.count);
  };
  for (let departures = 0; departures <= 3 * MOST_WAYS && seen < nodes; departures++) {
    const before = seen;
    visit(0, limit, departures);
    if (seen === before) return;
  }
}
