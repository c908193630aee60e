import type { StripCount } from "../problem/assemble.ts";
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

function isBefore(a: Step, b: Step): boolean {
  if (a.score !== b.score) return a.score < b.score;
  return a.column === b.column ? a.count > b.count : a.column < b.column;
}

function sumOf(each: readonly number[], counts: readonly number[]): number {
  let sum = 0;
  for (let k = 0; k < counts.length; k++) sum += each[k]! * counts[k]!;
  return sum;
}

/** As many strips of a column as all are wanted of, `all` at most. */
function exactly(
  { kindsOf, copiesOf }: ColumnIndex,
  left: readonly number[],
  p: number,
  all: number,
): number {
  const held = kindsOf[p]!;
  let exact = all;
  for (let i = 0; i < held.length; i++)
    exact = Math.min(exact, Math.floor(left[held[i]!]! / copiesOf[p]![i]!));
  return exact;
}

/** Puts a step in its place among the best. */
function keepBest(found: Step[], step: Step): void {
  if (found.length === MOST_WAYS && !isBefore(step, found[MOST_WAYS - 1]!)) return;
  let at = found.length === MOST_WAYS ? MOST_WAYS - 1 : found.length;
  for (; at > 0 && isBefore(step, found[at - 1]!); at--) found[at] = found[at - 1]!;
  found[at] = step;
}

/** What is looked up of columns again and again. */
interface ColumnIndex {
  area: number[];
  /** For each kind the columns that hold it. */
  holding: number[][];
  /** Ruler settings each column needs that are not paid for, numbered; how many there are in all. */
  settings: number[][];
  names: number;
  /** Kinds each column holds, and how many of each. */
  kindsOf: number[][];
  copiesOf: number[][];
}

function indexOf({ kinds, demand, paid }: WorkQuestion, columns: PricedColumns["columns"]): ColumnIndex {
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
  const kindsOf = columns.map(({ filling: { counts } }) =>
    counts.flatMap((copies, k) => (copies > 0 ? [k] : [])),
  );
  return {
    area: kinds.map(({ lies }) => lies[0]!.width * lies[0]!.height),
    holding: demand.map((_, k) => columns.flatMap(({ filling }, p) => (filling.counts[k]! > 0 ? [p] : []))),
    settings,
    names: names.size,
    kindsOf,
    copiesOf: columns.map(({ filling: { counts } }, p) => kindsOf[p]!.map((k) => counts[k]!)),
  };
}

/** So many strips of a column, with what they cost beside what is chosen and what is still wanted. */
function stepOf(
  { columns, prices, perLength }: PricedColumns,
  { settings, kindsOf, copiesOf }: ColumnIndex,
  { left, inUse }: { left: readonly number[]; inUse: Int32Array },
  p: number,
  count: number,
): Step {
  const { filling, each, once } = columns[p]!;
  const held = kindsOf[p]!;
  const copies = copiesOf[p]!;
  let worth = 1e-9;
  let surplus = 0;
  for (let i = 0; i < held.length; i++) {
    const all = copies[i]! * count;
    const wanted = left[held[i]!]!;
    worth += Math.min(all, wanted) * prices[held[i]!]!;
    if (all > wanted) surplus += all - wanted;
  }
  let cost = each * count + once - surplus * WORK_WEIGHTS.subcuts;
  for (const name of settings[p]!) if (inUse[name] === 0) cost += WORK_WEIGHTS.settings;
  return { column: p, count, cost, score: (cost + perLength * filling.height * count) / worth };
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
  const { run, demand, limit } = question;
  const { columns, prices, perLength } = priced;
  const index = indexOf(question, columns);
  const { area, holding, settings } = index;
  const inUse = new Int32Array(index.names);
  const used = new Uint8Array(columns.length);
  const left = demand.slice();
  const chosen: Step[] = [];
  const offered = new Set<string>();
  let bar = most;
  let seen = 0;

  const ways = (kind: number, room: number): Step[] => {
    const found: Step[] = [];
    const tryOut = (p: number, count: number): void =>
      keepBest(found, stepOf(priced, index, { left, inUse }, p, count));
    for (const p of holding[kind]!) {
      if (used[p] === 1) continue;
      const { counts, height } = columns[p]!.filling;
      const fits = Math.floor(room / height);
      const all = Math.ceil(left[kind]! / counts[kind]!);
      const exact = exactly(index, left, p, all);
      if (all <= fits) tryOut(p, all);
      if (exact !== all && exact > 0 && exact <= fits) tryOut(p, exact);
      if (exact > 1 && exact - 1 <= fits) tryOut(p, exact - 1);
    }
    return found;
  };

  const visit = (cost: number, room: number, departures: number): void => {
    if (seen >= nodes || (seen % 64 === 0 && stop())) return;
    seen++;
    const kind = order.find((k) => left[k]! > 0);
    if (kind === undefined) {
      // A search with one departure more comes by the plans of all searches before it.
      const name = chosen.map(({ column, count }) => `${column}*${count}`).join();
      if (offered.has(name)) return;
      offered.add(name);
      const strips = chosen.map(({ column, count }) => ({ filling: columns[column]!.filling, count }));
      bar = Math.min(bar, offer(strips));
      return;
    }
    const least = cost - perLength * room + sumOf(prices, left);
    if (least > bar + 1e-6 || sumOf(area, left) > room * run) return;
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
  let before = -1;
  for (let departures = 0; departures <= 3 * MOST_WAYS && seen < nodes && seen !== before; departures++) {
    before = seen;
    visit(0, limit, departures);
  }
}
