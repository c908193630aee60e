import { nestLength } from "../nested/nest.ts";
import type { Kind } from "../problem/reduce.ts";
import { type Listing, stepCounter, type ValueFloor } from "./oracle.ts";
import { type Axis, lastAtMost } from "./positions.ts";

/** Something that may be laid along an axis several times over. */
export interface Thing {
  /** What one takes. */
  takes: number;
  /** Of shapes that nest: how much further the next of a run begins. Others stand side by side. */
  advances?: readonly number[] | undefined;
}

/** A kind in one of its lies, laid along a strip or up a stack. */
export interface Choice extends Thing {
  kind: number;
  lie: number;
  width: number;
  height: number;
}

/** Every lie that is no wider than the run; `takes` says what one takes. */
export function choicesIn(kinds: readonly Kind[], run: number, takes: "width" | "height"): Choice[] {
  return kinds.flatMap(({ lies }, kind) =>
    lies.flatMap(({ width, height, advances }, lie): Choice[] =>
      width > run ? [] : [{ kind, lie, width, height, takes: takes === "width" ? width : height, advances }],
    ),
  );
}

/** What so many of them take. */
export function lengthOf({ takes, advances }: Thing, count: number): number {
  return advances === undefined ? takes * count : nestLength(takes, advances, count);
}

/** Adds up to `most` of a thing, each worth `price`, to a table of best values per position. */
export function addThing(best: Float64Array, axis: Axis, thing: Thing, price: number, most: number): void {
  const isFree = lengthOf(thing, most + 1) > axis.limit;
  if (thing.advances !== undefined) addRun(best, axis, thing, price, isFree ? Infinity : most);
  else if (isFree) addFree(best, axis.over(thing.takes), price);
  // Bundles of 1, 2, 4 ... and a remainder make every count up to the most.
  else
    for (let size = 1, left = most; left > 0; left -= size, size *= 2) {
      const copies = Math.min(size, left);
      addOnce(best, axis.over(thing.takes * copies), price * copies);
      if (copies < size) return;
    }
}

function addFree(best: Float64Array, back: Int32Array, value: number): void {
  for (let i = 0; i < best.length; i++) {
    const j = back[i]!;
    if (j >= 0 && best[j]! + value > best[i]!) best[i] = best[j]! + value;
  }
}

/** Positions are visited from the far end, so that nothing is taken twice. */
function addOnce(best: Float64Array, back: Int32Array, value: number): void {
  for (let i = best.length - 1; i >= 0; i--) {
    const j = back[i]!;
    if (j < 0) return;
    if (best[j]! + value > best[i]!) best[i] = best[j]! + value;
  }
}

/** One run of shapes: it is open at its first, and goes on by its advances in turn. */
function addRun(best: Float64Array, axis: Axis, thing: Thing, price: number, most: number): void {
  const before = best.slice();
  if (most < Infinity) {
    for (let count = 1; count <= most; count++) {
      const back = axis.over(lengthOf(thing, count));
      for (let i = 0; i < best.length; i++) {
        const j = back[i]!;
        if (j >= 0 && before[j]! + count * price > best[i]!) best[i] = before[j]! + count * price;
      }
    }
    return;
  }
  // odd[i]: the best of a run that ends at position i, whose next advance is the first; even[i]: the second.
  const [first, second] = thing.advances as readonly [number, number?];
  const [start, out, back] = [axis.over(thing.takes), axis.over(first), axis.over(second ?? first)];
  const odd = new Float64Array(best.length).fill(-1);
  const even = new Float64Array(best.length).fill(-1);
  for (let i = 0; i < best.length; i++) {
    const from = start[i]!;
    if (from < 0) continue;
    const [inner, outer] = [back[i]!, out[i]!];
    odd[i] = before[from]! + price;
    if (inner >= 0 && even[inner]! >= 0) odd[i] = Math.max(odd[i]!, even[inner]! + price);
    if (outer >= 0 && odd[outer]! >= 0) even[i] = odd[outer]! + price;
    best[i] = Math.max(best[i]!, odd[i]!, even[i]!);
  }
}

/** A table of best values as things came in one after another, so that the best filling can be read off it. */
export interface Layers<T extends Thing> {
  table: Float64Array;
  /** Things that came in, and the table before each. */
  layers: { thing: T; price: number; most: number; before: Float64Array }[];
}

export function emptyLayers<T extends Thing>(axis: Axis): Layers<T> {
  return { table: new Float64Array(axis.sums.length), layers: [] };
}

export function addLayer<T extends Thing>(to: Layers<T>, axis: Axis, thing: T, price: number, most: number) {
  if (price <= 0 || most <= 0) return;
  to.layers.push({ thing, price, most, before: to.table.slice() });
  addThing(to.table, axis, thing, price, most);
}

/** What the best filling up to a position holds, what came in last first; of equal counts the least. */
export function readOff<T extends Thing>({ table, layers }: Layers<T>, axis: Axis, at: number) {
  const held: { thing: T; count: number }[] = [];
  let value = table[at]!;
  for (const { thing, price, most, before } of layers.slice().reverse()) {
    let count = 0;
    let from = at;
    while (before[from]! + count * price !== value) {
      count++;
      from = axis.over(lengthOf(thing, count))[at]!;
      if (count > most || from < 0) throw new Error("a best value comes from no count of what it holds");
    }
    if (count > 0) held.push({ thing, count });
    value = before[from]!;
    at = from;
  }
  return held;
}

/** So many of every choice in turn, what they hold of every kind, and what they are worth to every floor. */
export interface Chosen {
  each: number[];
  counts: number[];
  worth: number[];
  total: number;
}

/** Choices to be laid in a room, in the order they are looked at. */
export interface Laying {
  order: readonly Choice[];
  axis: Axis;
  room: number;
  /** At each of the prices, the most that choices from each depth on are worth, by position. */
  beyond: readonly (readonly Float64Array[])[];
  /** At each of the prices, what a step of length is worth that no choice takes. */
  ends: readonly number[];
}

export function layingOf(
  order: readonly Choice[],
  axis: Axis,
  room: number,
  floors: readonly ValueFloor[],
  ends: readonly number[] = floors.map(() => 0),
): Laying {
  const size = lastAtMost(axis, room) + 1;
  const beyond = floors.map(({ prices }, f) => suffixTables(axis, size, order, prices, ends[f]!));
  return { order, axis, room, beyond, ends };
}

/**
 * Every number of each choice in turn, from depth `first` on, that may still be worth enough, the most first; `finish` is
 * shown each and told how much room is left. False when there were too many, or `finish` said so.
 * @param mostOf how many of a choice may be taken in a room; less than none ends the branch
 */
export function listChoices(
  { order, axis, room, beyond, ends }: Laying,
  first: number,
  listing: Listing,
  mostOf: (depth: number, room: number, chosen: Chosen) => number,
  finish: (chosen: Chosen, room: number) => boolean,
): boolean {
  const { floors, caps } = listing;
  const counts = caps.map(() => 0);
  const chosen: Chosen = { each: order.map(() => 0), counts, worth: floors.map(() => 0), total: 0 };
  const tired = stepCounter(listing, 50);
  const take = (d: number, count: number): void => {
    const { kind } = order[d]!;
    chosen.each[d]! += count;
    chosen.total += count;
    counts[kind]! += count;
    for (let f = 0; f < floors.length; f++) chosen.worth[f]! += count * floors[f]!.prices[kind]!;
  };
  const isEnough = (d: number, count: number, left: number): boolean => {
    const at = lastAtMost(axis, left);
    for (let f = 0; f < floors.length; f++) {
      const { prices, floor } = floors[f]!;
      const most = beyond[f]![d + 1]![at]! + ends[f]! * (left - axis.sums[at]!);
      if (chosen.worth[f]! + count * prices[order[d]!.kind]! + most < floor) return false;
    }
    return true;
  };
  const visit = (d: number, left: number): boolean => {
    if (tired()) return false;
    if (d === order.length) return finish(chosen, left);
    const { kind } = order[d]!;
    for (let n = Math.min(caps[kind]! - counts[kind]!, mostOf(d, left, chosen)); n >= 0; n--) {
      const after = left - lengthOf(order[d]!, n);
      if (after < 0 || !isEnough(d, n, after)) continue;
      take(d, n);
      const goesOn = visit(d + 1, after);
      take(d, -n);
      if (!goesOn) return false;
    }
    return true;
  };
  return visit(first, room);
}

/**
 * tables[d]: the most that choices d, d + 1 ... are worth per position, caps ignored: never too low. Every step of length
 * they leave is worth `end` as well.
 */
function suffixTables(
  axis: Axis,
  size: number,
  order: readonly Choice[],
  prices: Float64Array,
  end: number,
): Float64Array[] {
  const { sums } = axis;
  const tables = [new Float64Array(size)];
  for (const choice of order.slice().reverse()) {
    const table = tables[0]!.slice();
    if (prices[choice.kind]! > 0) addThing(table, axis, choice, prices[choice.kind]!, Infinity);
    tables.unshift(table);
  }
  if (end > 0)
    for (const table of tables)
      for (let at = 1; at < size; at++)
        table[at] = Math.max(table[at]!, table[at - 1]! + end * (sums[at]! - sums[at - 1]!));
  return tables;
}

/** The same over every length up to the last of the table: things of one size, as many as there is room for. */
export function addSize(best: Float64Array, size: number, value: number): void {
  for (let at = size; at < best.length; at++) {
    const held = best[at - size]! + value;
    if (held > best[at]!) best[at] = held;
  }
}

/** From the best of exactly each length to the best within each length. */
export function spread(best: Float64Array): Float64Array {
  for (let at = 1; at < best.length; at++) if (best[at - 1]! > best[at]!) best[at] = best[at - 1]!;
  return best;
}
