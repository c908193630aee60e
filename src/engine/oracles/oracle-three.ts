import type { Kind } from "../problem/reduce.ts";
import type { StackLimit } from "../types.ts";
import { addLayer, addThing, emptyLayers, readOff, type Thing } from "./knapsack.ts";
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
import { type Choice, listedHeights, NO_LIMIT } from "./stack-heights.ts";
import {
  countStack,
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
  choices: Choice[];
  widths: number[];
  choicesAt: Choice[][];
  across: Axis;
  upright: Axis;
  tallest: number;
  heights: number[];
  /** Position of each height among those of stacks. */
  positionOf: readonly number[];
  /** Tables of the prices last asked for. */
  recent: { prices: Float64Array; caps: readonly number[]; tables: Float64Array[] }[];
  /** Every kind as often as it fits. One array, since tables are known by it. */
  loose: readonly number[];
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
  const choices: Choice[] = kinds.flatMap((kind, k) =>
    kind.lies
      .map((lie, l) => ({ kind: k, lie: l, width: lie.width, height: lie.height }))
      .filter((choice) => choice.width <= run),
  );
  const widths = [...new Set(choices.map((choice) => choice.width))].sort((a, b) => a - b);
  const choicesAt = widths.map((width) => choices.filter((choice) => choice.width === width));
  const across = axisOf(normalPositions(widths, run));
  const listed = listedHeights(choices, longest, widths.length * across.sums.length, stacked.height);
  const upright = axisOf(listed.upright);
  const heights = listed.at.map((v) => upright.sums[v]!);
  const three: Three = {
    ...{ kinds, run, stacked, choices, widths, choicesAt, across, upright, heights },
    positionOf: listed.at,
    tallest: upright.limit,
    recent: [],
    loose: kinds.map(() => Number.MAX_SAFE_INTEGER),
  };
  const oracle: StripOracle = {
    ...{ kinds, run, heights, stripLevels: heights.length, listedTo: listed.listedTo },
    values: (prices, caps, levels) => valuesOf(three, prices, caps, levels),
    filling: (level, prices, caps) => bestFilling(three, level, prices, caps),
    fillings: (level, floors, caps, limit) => listFillings(three, level, floors, caps, limit),
    tallRate: (prices) => tallRate(three, prices),
    starters: (caps) => plainStarters(oracle, caps),
    stacks: (level, floors, caps, limit) => listStacks(three, level, floors, caps, limit)?.types ?? null,
  };
  return oracle;
}

/** Whether a segment as wide as `widths[j]` may be cut into a stack in strips so high. */
function mayStack({ widths, stacked }: Three, j: number, height: number): boolean {
  return widths[j]! <= stacked.width && height <= stacked.height;
}

/** The one item that is worth most in a segment of its own width; null when none is worth anything. */
function bestAlone(
  { choicesAt }: Three,
  j: number,
  height: number,
  prices: Float64Array,
  caps: readonly number[],
): Choice | null {
  return choicesAt[j]!.reduce<Choice | null>((best, choice) => {
    const price = prices[choice.kind]!;
    if (choice.height > height || caps[choice.kind]! <= 0 || price <= 0) return best;
    return best === null || price > prices[best.kind]! ? choice : best;
  }, null);
}

/** How often a segment as wide as `widths[j]` can be needed: each holds an item exactly that wide. */
function segmentCap({ choicesAt }: Three, j: number, caps: readonly number[]): number {
  return choicesAt[j]!.reduce((sum, choice) => sum + caps[choice.kind]!, 0);
}

/**
 * Best stack value for every segment width (outer) and height position (inner). Kept for the few prices last
 * asked for: fillings are read off right after the values, and listed height after height by the same prices.
 */
function stackTables(three: Three, prices: Float64Array, caps: readonly number[]): Float64Array[] {
  const { widths, choicesAt, upright, tallest, recent } = three;
  const known = recent.find((entry) => entry.prices === prices && entry.caps === caps);
  if (known !== undefined) return known.tables;
  let table = new Float64Array(upright.sums.length);
  const tables = widths.map((_, j) => {
    table = table.slice();
    for (const { kind, height } of choicesAt[j]!)
      if (prices[kind]! > 0 && caps[kind]! > 0 && height <= tallest)
        addThing(table, upright, { width: height }, prices[kind]!, caps[kind]!);
    if (mayStack(three, j, tallest)) return table;
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

/** The segments that a row may need, and what each is worth: a wider one must be worth more than all narrower ones. */
function segmentsFor(
  three: Three,
  stacks: readonly Float64Array[],
  v: number,
  caps: readonly number[],
): RowPart[] {
  const { widths, run } = three;
  const parts: RowPart[] = [];
  let narrower = 0;
  let isFree = true;
  stacks.forEach((table, j) => {
    const worth = table[v]!;
    const most = segmentCap(three, j, caps);
    if (worth <= 0 || most <= 0 || (isFree && worth <= narrower)) return;
    parts.push({ j, width: widths[j]!, worth, most });
    narrower = worth;
    isFree = most >= Math.floor(run / widths[j]!);
  });
  return parts;
}

function valuesOf(
  three: Three,
  prices: Float64Array,
  caps: readonly number[],
  levels?: readonly number[],
): Float64Array {
  const { heights, across, positionOf } = three;
  const lastAcross = across.sums.length - 1;
  const result = new Float64Array(heights.length);
  const stacks = stackTables(three, prices, caps);
  const row = new Float64Array(across.sums.length);
  const count = levels === undefined ? heights.length : levels.length;
  let previous = -1;
  for (let n = 0; n < count; n++) {
    const level = levels === undefined ? n : levels[n]!;
    const v = positionOf[level]!;
    if (previous >= 0 && stacks.every((table) => table[v] === table[positionOf[previous]!])) {
      result[level] = result[previous]!;
    } else {
      row.fill(0);
      for (const part of segmentsFor(three, stacks, v, caps))
        addThing(row, across, part, part.worth, part.most);
      result[level] = row[lastAcross]!;
    }
    previous = level;
  }
  return result;
}

function buildStack(
  three: Three,
  j: number,
  height: number,
  prices: Float64Array,
  caps: readonly number[],
): Placed[] {
  const { choicesAt, upright, tallest } = three;
  if (!mayStack(three, j, height)) {
    const alone = bestAlone(three, j, height, prices, caps);
    return alone === null ? [] : [{ kind: alone.kind, lie: alone.lie }];
  }
  const layers = emptyLayers<Choice & Thing>(upright);
  for (const choice of choicesAt.slice(0, j + 1).flat())
    if (choice.height <= tallest)
      addLayer(
        layers,
        upright,
        { ...choice, width: choice.height },
        prices[choice.kind]!,
        caps[choice.kind]!,
      );
  return readOff(layers, upright, lastAtMost(upright, height)).flatMap(({ thing: { kind, lie }, count }) =>
    Array.from({ length: count }, () => ({ kind, lie })),
  );
}

function bestFilling(three: Three, level: number, prices: Float64Array, caps: readonly number[]): Filling {
  const { kinds, heights, across, positionOf } = three;
  const lastAcross = across.sums.length - 1;
  const height = heights[level]!;
  const layers = emptyLayers<RowPart>(across);
  for (const part of segmentsFor(three, stackTables(three, prices, caps), positionOf[level]!, caps))
    addLayer(layers, across, part, part.worth, part.most);
  const segments = readOff(layers, across, lastAcross).flatMap(({ thing: { j }, count }): Segment[] => {
    const stack = buildStack(three, j, height, prices, caps);
    return Array.from({ length: count }, () => narrowed(kinds, stack));
  });
  return { level, height, counts: countKinds(segments, kinds.length), segments };
}

/**
 * What the search for stacks goes by in strips of one height: the lies that fit, widest first, and the best value
 * of the lies from each on per position of height (`rests[f][d]`; caps ignored: never too low).
 */
function stackSearch(
  { choices, upright }: Three,
  height: number,
  floors: readonly ValueFloor[],
  caps: readonly number[],
) {
  const order = choices
    .filter((choice) => choice.height <= height && caps[choice.kind]! > 0)
    .sort((a, b) => b.width - a.width || b.height - a.height || a.kind - b.kind);
  const size = lastAtMost(upright, height) + 1;
  const rests = floors.map(({ prices }) => {
    const rest: Float64Array[] = [new Float64Array(size)];
    for (let d = order.length - 1; d >= 0; d--) {
      const table = rest.at(-1)!.slice();
      addThing(table, upright, { width: order[d]!.height }, prices[order[d]!.kind]!, Infinity);
      rest.push(table);
    }
    return rest.reverse();
  });
  return { height, order, rests, caps };
}

/** All stacks as wide as `widths[j]` exactly that are worth enough and can take nothing more. */
function stacksOf(
  three: Three,
  j: number,
  { height, order, rests, caps }: ReturnType<typeof stackSearch>,
  floors: readonly ValueFloor[],
  limit: ListingLimit,
): { stack: Placed[]; value: number }[] | null {
  const { kinds, widths, upright } = three;
  const first = order.findIndex(({ width }) => width <= widths[j]!);
  if (first < 0) return [];
  const found: { stack: Placed[]; value: number }[] = [];
  const used = kinds.map(() => 0);
  const stack: Placed[] = [];
  const tired = stepCounter(limit, 50);
  const worth = floors.map(() => 0);
  const most = mayStack(three, j, height) ? Infinity : 1;
  const visit = (d: number, room: number): boolean => {
    if (tired()) return false;
    const widest = stack.length > 0 ? kinds[stack[0]!.kind]!.lies[stack[0]!.lie]!.width : 0;
    if (d === order.length) {
      if (widest !== widths[j]) return true;
      for (let e = first; e < order.length && stack.length < most; e++)
        if (used[order[e]!.kind]! < caps[order[e]!.kind]! && order[e]!.height <= room) return true;
      found.push({ stack: stack.slice(), value: worth[0]! });
      return found.length <= limit.most;
    }
    const choice = order[d]!;
    // Nothing as wide as the segment is left to choose: the stack belongs to a narrower segment.
    if (choice.width < widths[j]! && widest < widths[j]!) return true;
    const fits = Math.min(caps[choice.kind]! - used[choice.kind]!, Math.floor(room / choice.height));
    const top = Math.min(fits, most - stack.length);
    for (let c = top; c >= 0; c--) {
      const left = room - c * choice.height;
      const at = lastAtMost(upright, left);
      let enough = true;
      for (let f = 0; enough && f < floors.length; f++) {
        const { prices, floor } = floors[f]!;
        enough = worth[f]! + c * prices[choice.kind]! + rests[f]![d + 1]![at]! >= floor;
      }
      if (!enough) continue;
      for (let f = 0; f < floors.length; f++) worth[f]! += c * floors[f]!.prices[choice.kind]!;
      used[choice.kind]! += c;
      for (let n = 0; n < c; n++) stack.push({ kind: choice.kind, lie: choice.lie });
      const going = visit(d + 1, left);
      for (let f = 0; f < floors.length; f++) worth[f]! -= c * floors[f]!.prices[choice.kind]!;
      stack.length -= c;
      used[choice.kind]! -= c;
      if (!going) return false;
    }
    return true;
  };
  return visit(first, height) ? found : null;
}

/** The most that fits beside, in any room of a strip of this height; how often a kind is wanted is left aside. */
function besideAt(three: Three, level: number, prices: Float64Array): (room: number) => number {
  const { widths, across, positionOf, loose } = three;
  const tables = stackTables(three, prices, loose);
  const row = new Float64Array(across.sums.length);
  widths.forEach((width, j) => {
    addThing(row, across, { width }, tables[j]![positionOf[level]!]!, Infinity);
  });
  return (room) => row[lastAtMost(across, room)]!;
}

/** Stacks that fillings worth enough may hold, and the floors with the most that fits beside them. */
function listStacks(
  three: Three,
  level: number,
  floors: readonly ValueFloor[],
  caps: readonly number[],
  limit: ListingLimit,
): { types: StackType[]; rowFloors: RowFloor[] } | null {
  const { kinds, run, heights, widths } = three;
  const height = heights[level]!;
  const rowFloors = floors.map((floor) => ({ ...floor, beside: besideAt(three, level, floor.prices) }));
  const search = stackSearch(three, height, floors, caps);
  const types: StackType[] = [];
  for (let j = widths.length - 1; j >= 0; j--) {
    if (widths[j]! > run) continue;
    const list = stacksOf(three, j, search, floorsOfPart(rowFloors, run - widths[j]!), limit);
    if (list === null) return null;
    list.sort((a, b) => b.value - a.value);
    for (const { stack } of list)
      types.push({ width: widths[j]!, stack, counts: countStack(stack, kinds.length) });
  }
  return { types: withoutDominated(types), rowFloors };
}

function listFillings(
  three: Three,
  level: number,
  floors: readonly ValueFloor[],
  caps: readonly number[],
  limit: ListingLimit,
): Filling[] | null {
  const { kinds, run, heights } = three;
  const listed = listStacks(three, level, floors, caps, limit);
  if (listed === null) return null;
  const rows = rowsOf({ run, caps, floors: listed.rowFloors, limit }, listed.types);
  if (rows === null) return null;
  return rows.map((stacks): Filling => {
    const segments = stacks.map(({ stack }) => narrowed(kinds, stack));
    return { level, height: heights[level]!, counts: countKinds(segments, kinds.length), segments };
  });
}

function tallRate(
  { widths, choicesAt, across }: Three,
  prices: Float64Array,
): { numerator: number; denominator: number } {
  const lastAcross = across.sums.length - 1;
  const denominator = 10_000;
  const row = new Float64Array(across.sums.length);
  let rate = 0;
  widths.forEach((width, j) => {
    for (const choice of choicesAt[j]!)
      rate = Math.max(rate, Math.ceil((prices[choice.kind]! * denominator) / choice.height));
    addThing(row, across, { width }, rate, Infinity);
  });
  return { numerator: row[lastAcross]!, denominator };
}
