import type { StripCount } from "../problem/assemble.ts";
import { sum } from "../problem/counts.ts";
import { WORK_WEIGHTS } from "./work-measure.ts";
import type { Column, PricedColumns, WorkQuestion } from "./work-program.ts";

/** Most ways of going on that are looked at from one partial plan. */
const MOST_WAYS = 10;

/** A column as the search looks it up again and again. */
interface Indexed extends Column {
  /** Ruler settings it needs that are not paid for, numbered. */
  settings: number[];
  /** Kinds it holds, and how many of each. */
  kinds: number[];
  copies: number[];
}

interface Step {
  column: number;
  count: number;
  /** Work of these strips and of the settings new with them. */
  cost: number;
  score: number;
}

/** Where a search stands. */
interface Look {
  question: WorkQuestion;
  priced: PricedColumns;
  columns: readonly Indexed[];
  /** For each kind the columns that hold it. */
  holding: readonly (readonly number[])[];
  /** Which item a plan is built around first. */
  order: readonly number[];
  /** Columns chosen already, and how many of them need each setting. */
  used: Uint8Array;
  inUse: Int32Array;
  left: number[];
  chosen: Step[];
  /** Plans offered already: a search with one departure more comes by the plans of all searches before it. */
  offered: Set<string>;
  bar: number;
  /** Partial plans seen, and how many may be. */
  seen: number;
  most: number;
  offer: (strips: StripCount[]) => number;
  stop: () => boolean;
}

/**
 * Builds plans from the columns and offers each that may be less work than `bar` (which `offer` lowers). Limited
 * discrepancy search (Harvey and Ginsberg 1995): first the plan that follows the best guess throughout, then those
 * that depart from it once, twice, ... until `most` partial plans have been seen; once for each order of the items.
 */
export function searchWork(
  question: WorkQuestion,
  priced: PricedColumns,
  most: number,
  bar: number,
  offer: (strips: StripCount[]) => number,
  stop: () => boolean,
): void {
  const { demand, limit } = question;
  const { columns, settings } = indexed(question, priced.columns);
  const holding = demand.map((_, k) => columns.flatMap(({ kinds }, p) => (kinds.includes(k) ? [p] : [])));
  const look: Look = {
    ...{ question, priced, columns, holding, order: [], left: demand.slice(), chosen: [], bar },
    ...{ used: new Uint8Array(columns.length), inUse: new Int32Array(settings), offered: new Set() },
    ...{ seen: 0, most, offer, stop },
  };
  for (const order of ordersOf(question)) {
    look.order = order;
    look.seen = 0;
    let before = -1;
    for (let departures = 0; departures <= 3 * MOST_WAYS && look.seen < most; departures++) {
      if (look.seen === before) break;
      before = look.seen;
      visit(look, 0, limit, departures);
    }
  }
}

/** The largest item first, then in another search the one needing most cloth, then the one needing least. */
function ordersOf({ kinds, demand }: WorkQuestion): number[][] {
  const largest = [...kinds.keys()].filter((k) => demand[k]! > 0);
  const cloth = (k: number): number => kinds[k]!.lies[0]!.width * kinds[k]!.lies[0]!.height * demand[k]!;
  const most = largest.slice().sort((a, b) => cloth(b) - cloth(a) || a - b);
  const orders = [largest, most, most.slice().reverse()];
  return orders.filter((order, i) => orders.findIndex((other) => other.join() === order.join()) === i);
}

function indexed({ paid }: WorkQuestion, list: readonly Column[]): { columns: Indexed[]; settings: number } {
  const names = new Map<string, number>();
  const nameOf = (name: string): number => {
    const known = names.get(name) ?? names.size;
    names.set(name, known);
    return known;
  };
  const columns = list.map((column): Indexed => {
    const { counts, height } = column.filling;
    const kinds = counts.flatMap((copies, k) => (copies > 0 ? [k] : []));
    const sizes = column.strip.sizes.filter((size) => !paid.sizes.has(size));
    const settings = [...(paid.widths.has(height) ? [] : [`w${height}`]), ...sizes.map((size) => `s${size}`)];
    return { ...column, settings: settings.map(nameOf), kinds, copies: kinds.map((k) => counts[k]!) };
  });
  return { columns, settings: names.size };
}

function visit(look: Look, cost: number, room: number, departures: number): void {
  const { question, priced, columns, left, chosen } = look;
  if (look.seen >= look.most || (look.seen % 64 === 0 && look.stop())) return;
  look.seen++;
  const kind = look.order.find((k) => left[k]! > 0);
  if (kind === undefined) {
    const name = chosen.map(({ column, count }) => `${column}*${count}`).join();
    if (look.offered.has(name)) return;
    look.offered.add(name);
    const strips = chosen.map(({ column, count }) => ({ filling: columns[column]!.filling, count }));
    look.bar = Math.min(look.bar, look.offer(strips));
    return;
  }
  const least = cost - priced.perLength * room + sum(left, (count, k) => count * priced.prices[k]!);
  const area = sum(left, (count, k) => {
    const [lie] = question.kinds[k]!.lies;
    return count * lie!.width * lie!.height;
  });
  if (least > look.bar + 1e-6 || area > room * question.run) return;
  for (const [rank, step] of waysOn(look, kind, room).entries()) {
    if (rank > departures) break;
    const { filling, settings, kinds, copies } = columns[step.column]!;
    const before = kinds.map((k) => left[k]!);
    look.used[step.column] = 1;
    for (const name of settings) look.inUse[name]!++;
    chosen.push(step);
    kinds.forEach((k, i) => {
      left[k] = Math.max(0, left[k]! - copies[i]! * step.count);
    });
    visit(look, cost + step.cost, room - filling.height * step.count, departures - rank);
    kinds.forEach((k, i) => {
      left[k] = before[i]!;
    });
    chosen.pop();
    for (const name of settings) look.inUse[name]!--;
    look.used[step.column] = 0;
  }
}

/** The best ways of going on with strips that hold a kind: as many as it needs, or as many as hold nothing too much. */
function waysOn(look: Look, kind: number, room: number): Step[] {
  const { columns, left } = look;
  const found: Step[] = [];
  for (const p of look.holding[kind]!) {
    if (look.used[p] === 1) continue;
    const { filling, kinds, copies } = columns[p]!;
    const fits = Math.floor(room / filling.height);
    const all = Math.ceil(left[kind]! / filling.counts[kind]!);
    let exact = all;
    for (let i = 0; i < kinds.length; i++) exact = Math.min(exact, Math.floor(left[kinds[i]!]! / copies[i]!));
    if (all <= fits) keepBest(found, stepOf(look, p, all));
    if (exact !== all && exact > 0 && exact <= fits) keepBest(found, stepOf(look, p, exact));
    if (exact > 1 && exact - 1 <= fits) keepBest(found, stepOf(look, p, exact - 1));
  }
  return found;
}

/** So many strips of a column, with what they cost beside what is chosen and what is still wanted. */
function stepOf({ columns, priced, left, inUse }: Look, column: number, count: number): Step {
  const { filling, each, once, settings, kinds, copies } = columns[column]!;
  let worth = 1e-9;
  let surplus = 0;
  for (let i = 0; i < kinds.length; i++) {
    const all = copies[i]! * count;
    const wanted = left[kinds[i]!]!;
    worth += Math.min(all, wanted) * priced.prices[kinds[i]!]!;
    if (all > wanted) surplus += all - wanted;
  }
  let cost = each * count + once - surplus * WORK_WEIGHTS.subcuts;
  for (const name of settings) if (inUse[name] === 0) cost += WORK_WEIGHTS.settings;
  return { column, count, cost, score: (cost + priced.perLength * filling.height * count) / worth };
}

function isBefore(a: Step, b: Step): boolean {
  if (a.score !== b.score) return a.score < b.score;
  return a.column === b.column ? a.count > b.count : a.column < b.column;
}

/** Puts a step in its place among the best. */
function keepBest(found: Step[], step: Step): void {
  if (found.length === MOST_WAYS && !isBefore(step, found[MOST_WAYS - 1]!)) return;
  let at = found.length === MOST_WAYS ? MOST_WAYS - 1 : found.length;
  for (; at > 0 && isBefore(step, found[at - 1]!); at--) found[at] = found[at - 1]!;
  found[at] = step;
}
