import { type Counts, sum } from "../problem/counts.ts";
import type { Kind } from "../problem/reduce.ts";
import type { StackLimit } from "../types.ts";
import {
  addLayer,
  addThing,
  type Choice,
  type Chosen,
  choicesIn,
  emptyLayers,
  type Laying,
  layingOf,
  listChoices,
  readOff,
  type Thing,
} from "./knapsack.ts";
import {
  countKinds,
  type Filling,
  type Listing,
  type Placed,
  plainStarters,
  type Segment,
  type StripOracle,
} from "./oracle.ts";
import { type Axis, axisOf, lastAtMost, normalPositions } from "./positions.ts";
import { listedHeights, NO_LIMIT } from "./stack-heights.ts";
import {
  floorsOfPart,
  narrowed,
  type RowFloor,
  rowsOf,
  type StackType,
  withoutDominated,
} from "./stack-rows.ts";

/** Equal segments of a row: as wide as `widths[j]`, at most so many. */
interface RowPart extends Thing {
  j: number;
  worth: number;
  most: number;
}

/** Sets of prices whose stack tables are kept: those of one listing, and of what was asked before it. */
const RECENT_TABLES = 4;

/** What all questions about strips of one run go by. */
interface Three {
  kinds: readonly Kind[];
  run: number;
  stacked: StackLimit;
  /** What may be laid in a stack. */
  choices: Choice[];
  widths: number[];
  choicesAt: Choice[][];
  across: Axis;
  upright: Axis;
  heights: number[];
  /** Position of each height among those of stacks. */
  positionOf: readonly number[];
  /** Tables of the prices last asked for. */
  recent: { prices: Float64Array; caps: Counts; tables: Float64Array[] }[];
  /** Every kind as often as it fits. One array, since tables are known by it. */
  loose: Counts;
}

/**
 * Fillings of strips-3: segments side by side, in each a stack of items no wider than the segment, every
 * item trimmed narrower where it is. Two levels of knapsack over normal positions: first the best stack of
 * every width and height, then the best row of stacks for every strip height.
 *
 * No strip higher than `longest` is asked about; higher than the heights listed, `tallRate` covers them.
 * Beyond the limit for stacks a segment holds one item, as in strips-2, and strips are as high as an item.
 */
export function oracleForThree(
  kinds: readonly Kind[],
  run: number,
  longest: number,
  stacked: StackLimit = NO_LIMIT,
): StripOracle {
  const choices = choicesIn(kinds, run, "height");
  const widths = [...new Set(choices.map((choice) => choice.width))].sort((a, b) => a - b);
  const choicesAt = widths.map((width) => choices.filter((choice) => choice.width === width));
  const across = axisOf(normalPositions(widths, run));
  const listed = listedHeights(choices, longest, widths.length * across.sums.length, stacked.height);
  const upright = axisOf(listed.upright);
  const heights = listed.at.map((v) => upright.sums[v]!);
  const three: Three = {
    ...{ kinds, run, stacked, choices, widths, choicesAt, across, upright, heights },
    ...{ positionOf: listed.at, recent: [], loose: kinds.map(() => Number.MAX_SAFE_INTEGER) },
  };
  const oracle: StripOracle = {
    ...{ kinds, run, heights, stripLevels: heights.length, listedTo: listed.listedTo },
    values: (prices, caps, levels) => valuesOf(three, prices, caps, levels),
    filling: (level, prices, caps) => bestFilling(three, level, prices, caps),
    fillings: (level, listing) => listFillings(three, level, listing),
    tallRate: (prices) => tallRate(three, prices),
    starters: (caps) => plainStarters(oracle, caps),
    stacks: (level, listing) => listStacks(three, level, listing)?.types ?? null,
  };
  return oracle;
}

/** Whether a segment as wide as `widths[j]` may be cut into a stack in strips so high. */
function mayStack({ widths, stacked }: Three, j: number, height: number): boolean {
  return widths[j]! <= stacked.width && height <= stacked.height;
}

/** The one item that is worth most in a segment of its own width; null when none is worth anything. */
function bestAlone(
  three: Three,
  j: number,
  height: number,
  prices: Float64Array,
  caps: Counts,
): Choice | null {
  let best: Choice | null = null;
  for (const choice of three.choicesAt[j]!) {
    const price = prices[choice.kind]!;
    if (choice.height > height || caps[choice.kind]! <= 0 || price <= 0) continue;
    if (best === null || price > prices[best.kind]!) best = choice;
  }
  return best;
}

/**
 * Best stack value for every segment width (outer) and height position (inner). Kept for the few prices last
 * asked for: fillings are read off right after the values, and listed height after height by the same prices.
 */
function stackTables(three: Three, prices: Float64Array, caps: Counts): Float64Array[] {
  const { widths, choicesAt, upright, recent } = three;
  const known = recent.find((entry) => entry.prices === prices && entry.caps === caps);
  if (known !== undefined) return known.tables;
  let table = new Float64Array(upright.sums.length);
  const tables = widths.map((_, j) => {
    table = table.slice();
    for (const choice of choicesAt[j]!) {
      const [price, most] = [prices[choice.kind]!, caps[choice.kind]!];
      if (price > 0 && most > 0 && choice.height <= upright.limit)
        addThing(table, upright, choice, price, most);
    }
    if (mayStack(three, j, upright.limit)) return table;
    return table.map((worth, v) => {
      const height = upright.sums[v]!;
      if (mayStack(three, j, height)) return worth;
      const alone = bestAlone(three, j, height, prices, caps);
      return alone === null ? 0 : prices[alone.kind]!;
    });
  });
  recent.unshift({ prices, caps, tables });
  if (recent.length > RECENT_TABLES) recent.pop();
  return tables;
}

/**
 * The segments that a row may need, and what each is worth: a wider one must be worth more than all narrower ones. Each
 * holds an item exactly as wide, which says how often it can be needed.
 */
function segmentsFor(three: Three, stacks: readonly Float64Array[], v: number, caps: Counts): RowPart[] {
  const { widths, choicesAt, run } = three;
  const parts: RowPart[] = [];
  let narrower = 0;
  let isFree = true;
  stacks.forEach((table, j) => {
    const worth = table[v]!;
    const most = sum(choicesAt[j]!, ({ kind }) => caps[kind]!);
    if (worth <= 0 || most <= 0 || (isFree && worth <= narrower)) return;
    parts.push({ j, takes: widths[j]!, worth, most });
    narrower = worth;
    isFree = most >= Math.floor(run / widths[j]!);
  });
  return parts;
}

function valuesOf(
  three: Three,
  prices: Float64Array,
  caps: Counts,
  levels?: readonly number[],
): Float64Array {
  const { heights, across, positionOf } = three;
  const result = new Float64Array(heights.length);
  const stacks = stackTables(three, prices, caps);
  const row = new Float64Array(across.sums.length);
  let previous = -1;
  for (const level of levels ?? heights.keys()) {
    const v = positionOf[level]!;
    if (previous >= 0 && stacks.every((table) => table[v] === table[positionOf[previous]!])) {
      result[level] = result[previous]!;
    } else {
      row.fill(0);
      for (const part of segmentsFor(three, stacks, v, caps))
        addThing(row, across, part, part.worth, part.most);
      result[level] = row.at(-1)!;
    }
    previous = level;
  }
  return result;
}

function buildStack(three: Three, j: number, height: number, prices: Float64Array, caps: Counts): Placed[] {
  const { choicesAt, upright } = three;
  if (!mayStack(three, j, height)) {
    const alone = bestAlone(three, j, height, prices, caps);
    return alone === null ? [] : [{ kind: alone.kind, lie: alone.lie }];
  }
  const layers = emptyLayers<Choice>(upright);
  for (const choice of choicesAt.slice(0, j + 1).flat())
    if (choice.height <= upright.limit)
      addLayer(layers, upright, choice, prices[choice.kind]!, caps[choice.kind]!);
  return readOff(layers, upright, lastAtMost(upright, height)).flatMap(({ thing: { kind, lie }, count }) =>
    Array.from({ length: count }, () => ({ kind, lie })),
  );
}

function bestFilling(three: Three, level: number, prices: Float64Array, caps: Counts): Filling {
  const { kinds, heights, across, positionOf } = three;
  const layers = emptyLayers<RowPart>(across);
  for (const part of segmentsFor(three, stackTables(three, prices, caps), positionOf[level]!, caps))
    addLayer(layers, across, part, part.worth, part.most);
  const row = readOff(layers, across, across.sums.length - 1);
  const segments = row.flatMap(({ thing: { j }, count }) => {
    const stack = buildStack(three, j, heights[level]!, prices, caps);
    return Array.from({ length: count }, () => narrowed(kinds, stack));
  });
  return fillingOf(three, level, segments);
}

function fillingOf({ kinds, heights }: Three, level: number, segments: Segment[]): Filling {
  return { level, height: heights[level]!, counts: countKinds(segments, kinds.length), segments };
}

/** What may lie in stacks of strips so high, widest first. */
function stacking({ choices, upright }: Three, height: number, { floors, caps }: Listing): Laying {
  const order = choices
    .filter((choice) => choice.height <= height && caps[choice.kind]! > 0)
    .sort((a, b) => b.width - a.width || b.height - a.height || a.kind - b.kind);
  return layingOf(order, upright, height, floors);
}

/** All stacks as wide as `widths[j]` exactly that are worth enough and can take nothing more. */
function stacksOf(three: Three, j: number, laying: Laying, listing: Listing): StackType[] | null {
  const { order, room: height } = laying;
  const { caps } = listing;
  const width = three.widths[j]!;
  const first = order.findIndex((choice) => choice.width <= width);
  if (first < 0) return [];
  const found: { type: StackType; value: number }[] = [];
  const most = mayStack(three, j, height) ? Infinity : 1;
  const mostOf = (d: number, room: number, { total }: Chosen) => {
    // Nothing as wide as the segment is left to choose: the stack belongs to a narrower segment.
    if (total === 0 && order[d]!.width < width) return -1;
    return Math.min(most - total, Math.floor(room / order[d]!.height));
  };
  const finish = ({ each, counts, worth, total }: Chosen, room: number): boolean => {
    const takesMore = order.some(
      ({ kind, height, width: wide }) => wide <= width && height <= room && counts[kind]! < caps[kind]!,
    );
    if (total === 0 || (total < most && takesMore)) return true;
    const stack = order.flatMap(({ kind, lie }, d) =>
      Array.from({ length: each[d]! }, () => ({ kind, lie })),
    );
    found.push({ type: { width, stack, counts: counts.slice() }, value: worth[0]! });
    return found.length <= listing.most;
  };
  const all = listChoices(laying, first, listing, mostOf, finish);
  return all ? found.sort((a, b) => b.value - a.value).map(({ type }) => type) : null;
}

/** The most that fits beside, in any room of a strip of this height; how often a kind is wanted is left aside. */
function besideAt(three: Three, level: number, prices: Float64Array): (room: number) => number {
  const { widths, across, positionOf, loose } = three;
  const tables = stackTables(three, prices, loose);
  const row = new Float64Array(across.sums.length);
  widths.forEach((takes, j) => {
    addThing(row, across, { takes }, tables[j]![positionOf[level]!]!, Infinity);
  });
  return (room) => row[lastAtMost(across, room)]!;
}

/** Stacks that fillings worth enough may hold, and the floors with the most that fits beside them. */
function listStacks(
  three: Three,
  level: number,
  listing: Listing,
): { types: StackType[]; floors: RowFloor[] } | null {
  const { run, heights, widths } = three;
  const floors = listing.floors.map((floor) => ({ ...floor, beside: besideAt(three, level, floor.prices) }));
  const laying = stacking(three, heights[level]!, listing);
  const types: StackType[] = [];
  for (let j = widths.length - 1; j >= 0; j--) {
    const part = { ...listing, floors: floorsOfPart(floors, run - widths[j]!) };
    const list = stacksOf(three, j, laying, part);
    if (list === null) return null;
    types.push(...list);
  }
  return { types: withoutDominated(types), floors };
}

function listFillings(three: Three, level: number, listing: Listing): Filling[] | null {
  const listed = listStacks(three, level, listing);
  if (listed === null) return null;
  const rows = rowsOf(three.run, { ...listing, floors: listed.floors }, listed.types);
  if (rows === null) return null;
  return rows.map((stacks) =>
    fillingOf(
      three,
      level,
      stacks.map(({ stack }) => narrowed(three.kinds, stack)),
    ),
  );
}

function tallRate({ widths, choicesAt, across }: Three, prices: Float64Array) {
  const denominator = 10_000;
  const row = new Float64Array(across.sums.length);
  let rate = 0;
  widths.forEach((takes, j) => {
    for (const { kind, height } of choicesAt[j]!)
      rate = Math.max(rate, Math.ceil((prices[kind]! * denominator) / height));
    addThing(row, across, { takes }, rate, Infinity);
  });
  return { numerator: row.at(-1)!, denominator };
}
