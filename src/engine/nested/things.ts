import { type Positions, stepBack } from "../oracles/positions.ts";
import type { Kind } from "../problem/reduce.ts";
import { nestFits, nestLength } from "./nest.ts";

/** What a strip of some height may hold of one kind in one lie: single rectangles, or one run of shapes. */
export interface Thing {
  kind: number;
  lie: number;
  /** A rectangle's width, or what a run of one takes. */
  width: number;
  /** Of a run; null for rectangles. */
  advances: readonly number[] | null;
  /** How many the whole strip holds. */
  most: number;
}

/** What so many of them take along the strip. */
export function thingLength({ width, advances }: Pick<Thing, "width" | "advances">, count: number): number {
  return advances === null ? width * count : nestLength(width, advances, count);
}

/**
 * All that a strip of this height may hold, the widest first. A rectangle has one useful lie, the narrowest that is no
 * higher; a shape may lie in any that is.
 */
export function thingsOf(kinds: readonly Kind[], height: number, run: number): Thing[] {
  const found = kinds.flatMap((kind, k): Thing[] => {
    const fit = kind.lies.flatMap((lie, l) => (lie.height <= height && lie.width <= run ? [l] : []));
    return (kind.nested ? fit : fit.slice(0, 1)).map((l) => {
      const { width, advances } = kind.lies[l]!;
      const most =
        advances === undefined ? Math.floor(run / width) : nestFits(width, advances, run, Infinity);
      return { kind: k, lie: l, width, advances: advances ?? null, most };
    });
  });
  return found.sort((a, b) => b.width - a.width || a.kind - b.kind || a.lie - b.lie);
}

/** For each length the table of where a position less that length is; worked out once. */
export function stepsOver(positions: Positions): (length: number) => Int32Array {
  const known = new Map<number, Int32Array>();
  return (length) => {
    let back = known.get(length);
    if (back === undefined) {
      back = stepBack(positions, length);
      known.set(length, back);
    }
    return back;
  };
}

/** The table of best values per position when up to `most` of a thing may be taken as well. */
export function addThing(
  table: Float64Array,
  thing: Thing,
  price: number,
  most: number,
  over: (length: number) => Int32Array,
): Float64Array {
  if (most >= thing.most) return addUncapped(table, thing, price, over);
  const grown = table.slice();
  for (let count = 1; count <= most; count++) {
    const back = over(thingLength(thing, count));
    const worth = count * price;
    for (let i = 0; i < grown.length; i++) {
      const j = back[i]!;
      if (j >= 0 && table[j]! + worth > grown[i]!) grown[i] = table[j]! + worth;
    }
  }
  return grown;
}

/** The same where the strip is what limits them: a run is open at its first, and goes on by its advances in turn. */
function addUncapped(
  table: Float64Array,
  { width, advances }: Thing,
  price: number,
  over: (length: number) => Int32Array,
): Float64Array {
  const grown = table.slice();
  const start = over(width);
  if (advances === null) {
    for (let i = 0; i < grown.length; i++) {
      const j = start[i]!;
      if (j >= 0 && grown[j]! + price > grown[i]!) grown[i] = grown[j]! + price;
    }
    return grown;
  }
  // odd[i]: the best of a run that ends at position i, whose next advance is the first; even[i]: the second.
  const [out, back] = [over(advances[0]!), over(advances[1] ?? advances[0]!)];
  const odd = new Float64Array(grown.length).fill(-1);
  const even = new Float64Array(grown.length).fill(-1);
  for (let i = 0; i < grown.length; i++) {
    const from = start[i]!;
    if (from < 0) continue;
    let one = table[from]! + price;
    const second = back[i]!;
    if (second >= 0 && even[second]! >= 0) one = Math.max(one, even[second]! + price);
    odd[i] = one;
    const first = out[i]!;
    if (first >= 0 && odd[first]! >= 0) even[i] = odd[first]! + price;
    grown[i] = Math.max(grown[i]!, one, even[i]!);
  }
  return grown;
}

/** How many of a thing the best value of a position holds, by the table before the thing came in. */
export function bestCount(
  before: Float64Array,
  value: number,
  thing: Thing,
  price: number,
  most: number,
  at: number,
  over: (length: number) => Int32Array,
): number {
  for (let count = 0; count <= most; count++) {
    const from = count === 0 ? at : over(thingLength(thing, count))[at]!;
    if (from >= 0 && before[from]! + count * price === value) return count;
  }
  throw new Error("a best value comes from no count of what it holds");
}
