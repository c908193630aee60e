import { nestFits } from "../nested/nest.ts";
import type { Counts } from "../problem/counts.ts";
import { fitsRun, givenByEnd, type Kind, type RunKind } from "../problem/reduce.ts";
import {
  addLayer,
  addThing,
  type Choice,
  type Chosen,
  choicesIn,
  emptyLayers,
  layingOf,
  lengthOf,
  listChoices,
  readOff,
} from "./knapsack.ts";
import {
  countKinds,
  type Filling,
  type Listing,
  plainStarters,
  type Segment,
  type StripOracle,
} from "./oracle.ts";
import { type Axis, axisOf, normalPositions } from "./positions.ts";

/** Single rectangles, or one run of shapes; the whole strip holds at most so many. */
interface Laid extends Choice {
  most: number;
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
  const all = choicesIn(kinds, run, "width").map((choice): Laid => {
    const { takes, advances } = choice;
    const most = advances === undefined ? Math.floor(run / takes) : nestFits(takes, advances, run, Infinity);
    return { ...choice, most };
  });
  const heights = [...new Set([...all, ...joins.map((each) => each.run)].map(({ height }) => height))];
  heights.sort((a, b) => a - b);
  const things = heights.map((height) => {
    const fit = all.filter((lie) => lie.height <= height);
    return fit.filter(({ kind }, i) => kinds[kind]!.nested || fit[i - 1]?.kind !== kind);
  });
  const lengths = all.flatMap((thing) =>
    thing.advances === undefined
      ? [thing.takes]
      : Array.from({ length: thing.most }, (_, n) => lengthOf(thing, n + 1)),
  );
  const axis = axisOf(normalPositions(lengths, run));
  const joinsAt = heights.map((height) => joins.filter((each) => each.run.height === height));
  const two: Two = { kinds, run, heights, things, axis, joinsAt };

  const oracle: StripOracle = {
    ...{ kinds, run, heights, stripLevels: heights.length, listedTo: Infinity },
    values: (prices, caps, levels) => valuesOf(two, prices, caps, levels),
    filling: (level, prices, caps) => bestFilling(two, level, prices, caps),
    fillings: (level, listing) => listFillings(two, level, listing),
    tallRate: () => null,
    starters: (caps) => plainStarters(oracle, caps),
  };
  return oracle;
}

/** The best end of a strip at these prices: which run it is joined into, and the position it begins at. */
function bestEnd(two: Two, level: number, table: Float64Array, prices: Float64Array, caps: Counts) {
  const { sums } = two.axis;
  const last = sums.length - 1;
  let best = { value: table[last]!, kind: -1, at: last };
  for (const { k, run } of two.joinsAt[level]!)
    for (let at = 0; at <= last && prices[k]! > 0; at++) {
      const gives = Math.min(caps[k]!, givenByEnd(run, two.run - sums[at]!));
      if (gives <= 0) break;
      const value = table[at]! + prices[k]! * gives;
      if (value > best.value) best = { value, kind: k, at };
    }
  return best;
}

function valuesOf(two: Two, prices: Float64Array, caps: Counts, levels?: readonly number[]): Float64Array {
  const { heights, things, axis } = two;
  const result = new Float64Array(heights.length);
  let table = new Float64Array(axis.sums.length);
  let held: readonly Laid[] = [];
  for (const level of levels ?? heights.keys()) {
    // A narrower lie replaces the wider one, so the table is built afresh; otherwise it only grows.
    if (held.some((thing) => !things[level]!.includes(thing))) {
      table = new Float64Array(axis.sums.length);
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

function bestFilling(two: Two, level: number, prices: Float64Array, caps: Counts): Filling {
  const { things, axis } = two;
  const layers = emptyLayers<Laid>(axis);
  for (const thing of things[level]!)
    addLayer(layers, axis, thing, prices[thing.kind]!, Math.min(thing.most, caps[thing.kind]!));
  const joined = bestEnd(two, level, layers.table, prices, caps);
  const plain = fillingOf(two, level, readOff(layers, axis, joined.at));
  return joined.kind < 0 ? plain : withEnd(two, plain, joined.kind);
}

function fillingOf(two: Two, level: number, held: readonly { thing: Laid; count: number }[]): Filling {
  const segments = held.flatMap(({ thing, count }): Segment[] => {
    const placed = { kind: thing.kind, lie: thing.lie };
    if (thing.advances === undefined)
      return Array.from({ length: count }, () => ({ width: thing.width, stack: [placed] }));
    return [{ width: lengthOf(thing, count), stack: Array.from({ length: count }, () => placed) }];
  });
  return { level, height: two.heights[level]!, counts: countKinds(segments, two.kinds.length), segments };
}

/** The same with all that is left of the strip joined into a run. */
function withEnd({ kinds, run }: Two, filling: Filling, kind: number): Filling {
  const length = filling.segments.reduce((left, { width }) => left - width, run);
  const counts = filling.counts.slice();
  counts[kind] = givenByEnd(kinds[kind]!.run!, length);
  return { ...filling, counts, end: { kind, length } };
}

function listFillings(two: Two, level: number, listing: Listing): Filling[] | null {
  const { floors, caps, most } = listing;
  const order = two.things[level]!.filter(({ kind }) => caps[kind]! > 0);
  order.sort((a, b) => b.width - a.width || a.kind - b.kind || a.lie - b.lie);
  const joinable = two.joinsAt[level]!.filter(({ k }) => caps[k]! > 0);
  const ends = floors.map(({ prices }) => joinable.reduce((best, { k }) => Math.max(best, prices[k]!), 0));
  const found = new Map<string, Filling>();
  const current = ({ each }: Chosen): Filling => {
    const held = order.map((thing, d) => ({ thing, count: each[d]! }));
    return fillingOf(
      two,
      level,
      held.filter(({ count }) => count > 0),
    );
  };
  const keep = (filling: Filling): boolean => {
    const key = `${filling.end?.kind ?? ""}|${filling.counts.join(",")}`;
    if (!found.has(key)) found.set(key, filling);
    return found.size <= most;
  };
  const finish = (chosen: Chosen, room: number): boolean => {
    const { each, counts, worth } = chosen;
    for (const { k, run } of joinable) {
      const gives = givenByEnd(run, room);
      const held = Math.min(caps[k]!, gives);
      const isEnough = floors.every(({ prices, floor }, f) => worth[f]! + held * prices[k]! >= floor);
      if (gives > 0 && isEnough && !keep(withEnd(two, current(chosen), k))) return false;
    }
    if (floors.some(({ floor }, f) => worth[f]! < floor)) return true;
    const takesMore = order.some((thing, d) => {
      const one = lengthOf(thing, each[d]! + 1) - lengthOf(thing, each[d]!);
      return counts[thing.kind]! < caps[thing.kind]! && each[d]! < thing.most && one <= room;
    });
    return takesMore || keep(current(chosen));
  };
  const laying = layingOf(order, two.axis, two.run, floors, ends);
  const all = listChoices(laying, 0, listing, (d) => order[d]!.most, finish);
  return all ? [...found.values()] : null;
}
