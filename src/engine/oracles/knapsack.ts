import { nestLength } from "../nested/nest.ts";
import type { Axis } from "./positions.ts";

/** Something that may be laid along an axis several times over. */
export interface Thing {
  /** What one takes. */
  width: number;
  /** Of shapes that nest: how much further the next of a run begins. Others stand side by side. */
  advances?: readonly number[] | undefined;
}

/** What so many of them take. */
export function lengthOf({ width, advances }: Thing, count: number): number {
  return advances === undefined ? width * count : nestLength(width, advances, count);
}

/** Adds up to `most` of a thing, each worth `price`, to a table of best values per position. */
export function addThing(best: Float64Array, axis: Axis, thing: Thing, price: number, most: number): void {
  const isFree = lengthOf(thing, most + 1) > axis.limit;
  if (thing.advances !== undefined) addRun(best, axis, thing, price, isFree ? Infinity : most);
  else if (isFree) addFree(best, axis.over(thing.width), price);
  // Bundles of 1, 2, 4 ... and a remainder make every count up to the most.
  else
    for (let size = 1, left = most; left > 0; left -= size, size *= 2) {
      const copies = Math.min(size, left);
      addOnce(best, axis.over(thing.width * copies), price * copies);
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
  const [start, out, back] = [axis.over(thing.width), axis.over(first), axis.over(second ?? first)];
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
      if (++count > most) throw new Error("a best value comes from no count of what it holds");
      from = axis.over(lengthOf(thing, count))[at]!;
      // Beyond the axis no count is left to try.
      if (from < 0) throw new Error("a best value comes from no count of what it holds");
    }
    if (count > 0) held.push({ thing, count });
    value = before[from]!;
    at = from;
  }
  return held;
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
