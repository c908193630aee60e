import { nestFits } from "../nested/nest.ts";
import { fitsRun, givenByEnd, type Kind, type RunKind } from "../problem/reduce.ts";
import { addLayer, addThing, emptyLayers, lengthOf, readOff, type Thing } from "./knapsack.ts";
import {
  countKinds,
  type Filling,
  type ListingLimit,
  type Placed,
  plainStarters,
  type Segment,
  type StripOracle,
  stepCounter,
  type ValueFloor,
} from "./oracle.ts";
import { type Axis, axisOf, lastAtMost, normalPositions } from "./positions.ts";

/** What a strip may hold of one kind in one lie: single rectangles, or one run of shapes. */
interface Laid extends Thing {
  kind: number;
  lie: number;
  height: number;
  /** How many the whole strip holds. */
  most: number;
}

/** All that strips of the run may hold, kind by kind. */
function laidIn(kinds: readonly Kind[], run: number): Laid[][] {
  return kinds.map(({ lies }, kind) =>
    lies.flatMap(({ width, height, advances }, lie) => {
      const most =
        advances === undefined ? Math.floor(run / width) : nestFits(width, advances, run, Infinity);
      return width > run ? [] : [{ kind, lie, width, height, advances, most }];
    }),
  );
}

/** What all questions about strips of one run go by. */
interface Two {
  kinds: readonly Kind[];
  run: number;
  heights: number[];
  /** What strips of each level may hold. */
  things: Laid[][];
  axis: Axis;
  /** Runs that what is left of a strip of each level may be joined into. */
  joinsAt: { k: number; run: RunKind }[][];
}

/**
 * Fillings of strips-2: rectangles side by side, one item each, and of every lie of a shape that nests one run; two runs
 * take no less than one of as many. In a strip of height H a rectangle has one useful lie, the narrowest that is no higher
 * than H; a shape may lie in any that is. Heights other than those of lies are never needed.
 */
export function oracleForTwo(kinds: readonly Kind[], run: number): StripOracle {
  const joins = kinds.flatMap((kind, k) =>
    kind.run !== undefined && fitsRun(kind, run) ? [{ k, run: kind.run }] : [],
  );
  const all = laidIn(kinds, run);
  const heights = [
    ...new Set([...all.flat().map(({ height }) => height), ...joins.map((each) => each.run.height)]),
  ].sort((a, b) => a - b);
  const things = heights.map((height) =>
    all.flatMap((lies, k) => {
      const fit = lies.filter((lie) => lie.height <= height);
      return kinds[k]!.nested ? fit : fit.slice(0, 1);
    }),
  );
  const lengths = all
    .flat()
    .flatMap((thing) =>
      thing.advances === undefined
        ? [thing.width]
        : Array.from({ length: thing.most }, (_, n) => lengthOf(thing, n + 1)),
    );
  const axis = axisOf(normalPositions(lengths, run));
  const joinsAt = heights.map((height) => joins.filter((each) => each.run.height === height));
  const two: Two = { kinds, run, heights, things, axis, joinsAt };

  const oracle: StripOracle = {
    ...{ kinds, run, heights, stripLevels: heights.length, listedTo: Infinity },
    values: (prices, caps, levels) => valuesOf(two, prices, caps, levels),
    filling: (level, prices, caps) => bestFilling(two, level, prices, caps),
    fillings: (level, floors, caps, limit) => listFillings(two, level, floors, caps, limit),
    tallRate: () => null,
    starters: (caps) => plainStarters(oracle, caps),
  };
  return oracle;
}

/** The best end of a strip at these prices: which run it is joined into, and the position it begins at. */
function bestEnd(
  { joinsAt, axis: { sums }, run }: Two,
  level: number,
  table: Float64Array,
  prices: Float64Array,
  caps: readonly number[],
) {
  const size = sums.length;
  let best = { value: table[size - 1]!, kind: -1, at: size - 1 };
  for (const { k, run: joined } of joinsAt[level]!)
    for (let at = 0; at < size && prices[k]! > 0; at++) {
      const gives = Math.min(caps[k]!, givenByEnd(joined, run - sums[at]!));
      if (gives <= 0) break;
      const value = table[at]! + prices[k]! * gives;
      if (value > best.value) best = { value, kind: k, at };
    }
  return best;
}

function valuesOf(
  two: Two,
  prices: Float64Array,
  caps: readonly number[],
  levels?: readonly number[],
): Float64Array {
  const { heights, things, axis } = two;
  const size = axis.sums.length;
  const result = new Float64Array(heights.length);
  let table = new Float64Array(size);
  let held: readonly Laid[] = [];
  for (const level of levels ?? heights.keys()) {
    // A narrower lie replaces the wider one, so the table is built afresh; otherwise it only grows.
    if (held.some((thing) => !things[level]!.includes(thing))) {
      table = new Float64Array(size);
      held = [];
    }
    for (const thing of things[level]!) {
      const [price, most] = [prices[thing.kind]!, Math.min(thing.most, caps[thing.kind]!)];
      if (price > 0 && most > 0 && !held.includes(thing)) addThing(table, axis, thing, price, most);
    }
    held = things[level]!;
    result[level] = bestEnd(two, level, table, prices, caps).value;
  }
  return result;
}

function bestFilling(two: Two, level: number, prices: Float64Array, caps: readonly number[]): Filling {
  const { things, axis } = two;
  const layers = emptyLayers<Laid>(axis);
  for (const thing of things[level]!)
    addLayer(layers, axis, thing, prices[thing.kind]!, Math.min(thing.most, caps[thing.kind]!));
  const joined = bestEnd(two, level, layers.table, prices, caps);
  const plain = fillingOf(two, level, readOff(layers, axis, joined.at));
  return joined.kind < 0 ? plain : withEnd(two, plain, joined.kind);
}

function fillingOf(
  { heights, kinds }: Two,
  level: number,
  held: readonly { thing: Laid; count: number }[],
): Filling {
  const segments = held.flatMap(({ thing, count }): Segment[] => {
    const placed: Placed = { kind: thing.kind, lie: thing.lie };
    if (thing.advances === undefined)
      return Array.from({ length: count }, () => ({ width: thing.width, stack: [placed] }));
    return [{ width: lengthOf(thing, count), stack: Array.from({ length: count }, () => placed) }];
  });
  return { level, height: heights[level]!, counts: countKinds(segments, kinds.length), segments };
}

/** The same with all that is left of the strip joined into a run. */
function withEnd({ kinds, run }: Two, filling: Filling, kind: number): Filling {
  const length = filling.segments.reduce((left, { width }) => left - width, run);
  const counts = filling.counts.slice();
  counts[kind] = givenByEnd(kinds[kind]!.run!, length);
  return { ...filling, counts, end: { kind, length } };
}

function listFillings(
  two: Two,
  level: number,
  floors: readonly ValueFloor[],
  caps: readonly number[],
  limit: ListingLimit,
): Filling[] | null {
  const { kinds, run, things, joinsAt, axis } = two;
  const { sums } = axis;
  const order = things[level]!.filter(({ kind }) => caps[kind]! > 0);
  order.sort((a, b) => b.width - a.width || a.kind - b.kind || a.lie - b.lie);
  const joinable = joinsAt[level]!.filter(({ k }) => caps[k]! > 0);
  const beyond = floors.map(({ prices }) => {
    const end = joinable.reduce((best, { k }) => Math.max(best, prices[k]!), 0);
    return { end, tables: suffixTables(axis, order, prices, end) };
  });
  const found = new Map<string, Filling>();
  const counts = new Array<number>(kinds.length).fill(0);
  const chosen = order.map(() => 0);
  const tired = stepCounter(limit, 50);
  const worth = floors.map(() => 0);
  const current = (): Filling =>
    fillingOf(
      two,
      level,
      order.flatMap((thing, d) => (chosen[d]! > 0 ? [{ thing, count: chosen[d]! }] : [])),
    );
  const keep = (filling: Filling): boolean => {
    const key = `${filling.end?.kind ?? ""}|${filling.counts.join(",")}`;
    if (!found.has(key)) found.set(key, filling);
    return found.size <= limit.most;
  };
  const finish = (room: number): boolean => {
    for (const { k, run: joined } of joinable) {
      const gives = givenByEnd(joined, room);
      const held = Math.min(caps[k]!, gives);
      const enough = floors.every(({ prices, floor }, f) => worth[f]! + held * prices[k]! >= floor);
      if (gives > 0 && enough && !keep(withEnd(two, current(), k))) return false;
    }
    if (floors.some(({ floor }, f) => worth[f]! < floor)) return true;
    const takesMore = order.some((thing, d) => {
      const one = lengthOf(thing, chosen[d]! + 1) - lengthOf(thing, chosen[d]!);
      return counts[thing.kind]! < caps[thing.kind]! && chosen[d]! < thing.most && one <= room;
    });
    return takesMore || keep(current());
  };
  const take = (d: number, count: number): void => {
    chosen[d]! += count;
    counts[order[d]!.kind]! += count;
    for (let f = 0; f < floors.length; f++) worth[f]! += count * floors[f]!.prices[order[d]!.kind]!;
  };
  const visit = (d: number, room: number): boolean => {
    if (tired()) return false;
    if (d === order.length) return finish(room);
    const thing = order[d]!;
    for (let count = Math.min(thing.most, caps[thing.kind]! - counts[thing.kind]!); count >= 0; count--) {
      const left = room - lengthOf(thing, count);
      if (left < 0) continue;
      const at = lastAtMost(axis, left);
      const isEnough = floors.every(({ prices, floor }, f) => {
        const { end, tables } = beyond[f]!;
        const most = tables[d + 1]![at]! + end * (left - sums[at]!);
        return worth[f]! + count * prices[thing.kind]! + most >= floor;
      });
      if (!isEnough) continue;
      take(d, count);
      const goesOn = visit(d + 1, left);
      take(d, -count);
      if (!goesOn) return false;
    }
    return true;
  };
  return visit(0, run) ? [...found.values()] : null;
}

/**
 * tables[d]: the most that things d, d + 1 ... are worth per position, caps ignored: never too low. Every step of length
 * they leave is worth `end` as well.
 */
function suffixTables(axis: Axis, order: readonly Laid[], prices: Float64Array, end: number): Float64Array[] {
  const { sums } = axis;
  const size = sums.length;
  const tables = [new Float64Array(size)];
  for (const thing of order.slice().reverse()) {
    const table = tables[0]!.slice();
    if (prices[thing.kind]! > 0) addThing(table, axis, thing, prices[thing.kind]!, Infinity);
    tables.unshift(table);
  }
  if (end > 0)
    for (const table of tables)
      for (let at = 1; at < size; at++)
        table[at] = Math.max(table[at]!, table[at - 1]! + end * (sums[at]! - sums[at - 1]!));
  return tables;
}
