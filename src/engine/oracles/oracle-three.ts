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
  type ValueFloor,
} from "./oracle.ts";
import { axisOf, lastAtMost, normalPositions } from "./positions.ts";
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
  const { at: positionOf, listedTo } = listed;
  const upright = axisOf(listed.upright);
  const tallest = upright.limit;
  const heights = positionOf.map((v) => upright.sums[v]!);
  const lastAcross = across.sums.length - 1;

  /** How often a segment as wide as `widths[j]` can be needed: each holds an item exactly that wide. */
  const mayStack = (j: number, height: number): boolean =>
    widths[j]! <= stacked.width && height <= stacked.height;
  /** The one item that is worth most in a segment of its own width; null when none is worth anything. */
  const bestAlone = (
    j: number,
    height: number,
    prices: Float64Array,
    caps: readonly number[],
  ): Choice | null =>
    choicesAt[j]!.reduce<Choice | null>((best, choice) => {
      const price = prices[choice.kind]!;
      if (choice.height > height || caps[choice.kind]! <= 0 || price <= 0) return best;
      return best === null || price > prices[best.kind]! ? choice : best;
    }, null);

  const segmentCap = (j: number, caps: readonly number[]): number =>
    choicesAt[j]!.reduce((sum, choice) => sum + caps[choice.kind]!, 0);

  const recent: { prices: Float64Array; caps: readonly number[]; tables: Float64Array[] }[] = [];
  /**
   * Best stack value for every segment width (outer) and height position (inner). Kept for the few prices last
   * asked for: fillings are read off right after the values, and listed height after height by the same prices.
   */
  const stackTables = (prices: Float64Array, caps: readonly number[]): Float64Array[] => {
    const known = recent.find((entry) => entry.prices === prices && entry.caps === caps);
    if (known !== undefined) return known.tables;
    let table = new Float64Array(upright.sums.length);
    const tables = widths.map((_, j) => {
      table = table.slice();
      for (const { kind, height } of choicesAt[j]!)
        if (prices[kind]! > 0 && caps[kind]! > 0 && height <= tallest)
          addThing(table, upright, { width: height }, prices[kind]!, caps[kind]!);
      if (mayStack(j, tallest)) return table;
      return table.map((worth, v) => {
        const height = upright.sums[v]!;
        if (mayStack(j, height)) return worth;
        const alone = bestAlone(j, height, prices, caps);
        return alone === null ? 0 : prices[alone.kind]!;
      });
    });
    recent.unshift({ prices, caps, tables });
    if (recent.length > RECENT_TABLES) recent.pop();
    return tables;
  };

  /** The segments that a row may need, and what each is worth: a wider one must be worth more than all narrower ones. */
  const segmentsFor = (stacks: readonly Float64Array[], v: number, caps: readonly number[]): RowPart[] => {
    const parts: RowPart[] = [];
    let narrower = 0;
    let isFree = true;
    stacks.forEach((table, j) => {
      const worth = table[v]!;
      const most = segmentCap(j, caps);
      if (worth <= 0 || most <= 0 || (isFree && worth <= narrower)) return;
      parts.push({ j, width: widths[j]!, worth, most });
      narrower = worth;
      isFree = most >= Math.floor(run / widths[j]!);
    });
    return parts;
  };

  const values = (
    prices: Float64Array,
    caps: readonly number[],
    levels?: readonly number[],
  ): Float64Array => {
    const result = new Float64Array(heights.length);
    const stacks = stackTables(prices, caps);
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
        for (const part of segmentsFor(stacks, v, caps)) addThing(row, across, part, part.worth, part.most);
        result[level] = row[lastAcross]!;
      }
      previous = level;
    }
    return result;
  };

  const buildStack = (j: number, height: number, prices: Float64Array, caps: readonly number[]): Placed[] => {
    if (!mayStack(j, height)) {
      const alone = bestAlone(j, height, prices, caps);
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
  };

  const filling = (level: number, prices: Float64Array, caps: readonly number[]): Filling => {
    const height = heights[level]!;
    const layers = emptyLayers<RowPart>(across);
    for (const part of segmentsFor(stackTables(prices, caps), positionOf[level]!, caps))
      addLayer(layers, across, part, part.worth, part.most);
    const segments = readOff(layers, across, lastAcross).flatMap(({ thing: { j }, count }): Segment[] => {
      const stack = buildStack(j, height, prices, caps);
      return Array.from({ length: count }, () => narrowed(kinds, stack));
    });
    return { level, height, counts: countKinds(segments, kinds.length), segments };
  };

  /** Every kind as often as it fits. One array, since tables are known by it. */
  const loose = kinds.map(() => Number.MAX_SAFE_INTEGER);
  /** One of each kind. */
  const one = kinds.map((_, k) => kinds.map((_, other) => (other === k ? 1 : 0)));
  /** The most that fits beside, in any room of a strip of this height; how often a kind is wanted is left aside. */
  const besideAt = (level: number, prices: Float64Array): ((room: number) => number) => {
    const tables = stackTables(prices, loose);
    const row = new Float64Array(across.sums.length);
    widths.forEach((width, j) => {
      addThing(row, across, { width }, tables[j]![positionOf[level]!]!, Infinity);
    });
    return (room) => row[lastAtMost(across, room)]!;
  };

  /** Stacks as wide as `widths[j]` exactly that are worth enough: rows of items, laid on end. */
  const stacksOf = (
    j: number,
    height: number,
    floors: readonly ValueFloor[],
    caps: readonly number[],
    limit: ListingLimit,
  ): Placed[][] | null => {
    const isWide = ({ width }: Choice) => width === widths[j];
    const fits = choicesAt
      .slice(0, j + 1)
      .flat()
      .filter((choice) => choice.height <= height && caps[choice.kind]! > 0)
      .reverse();
    if (!mayStack(j, height))
      return fits
        .filter((choice) => isWide(choice) && floors.every((f) => f.prices[choice.kind]! >= f.floor))
        .map(({ kind, lie }) => [{ kind, lie }]);
    const rowFloors = floors.map((floor): RowFloor => {
      const most = stackTables(floor.prices, loose)[j]!;
      return { ...floor, beside: (room) => most[lastAtMost(upright, room)]! };
    });
    const types = fits.map((choice) => ({ width: choice.height, counts: one[choice.kind]!, choice }));
    const rows = rowsOf({ run: height, caps, floors: rowFloors, limit }, types);
    // What is narrower belongs to a narrower segment, and is listed there.
    const wide = rows?.filter((row) => row.some(({ choice }) => isWide(choice)));
    return wide?.map((row) => row.map(({ choice: { kind, lie } }) => ({ kind, lie }))) ?? null;
  };

  /** Stacks that fillings worth enough may hold, and the floors with the most that fits beside them. */
  const listStacks = (
    level: number,
    floors: readonly ValueFloor[],
    caps: readonly number[],
    limit: ListingLimit,
  ): { types: StackType[]; rowFloors: RowFloor[] } | null => {
    const height = heights[level]!;
    const rowFloors = floors.map((floor) => ({ ...floor, beside: besideAt(level, floor.prices) }));
    const types: StackType[] = [];
    for (let j = widths.length - 1; j >= 0; j--) {
      if (widths[j]! > run) continue;
      const list = stacksOf(j, height, floorsOfPart(rowFloors, run - widths[j]!), caps, limit);
      if (list === null) return null;
      for (const stack of list)
        types.push({ width: widths[j]!, stack, counts: countStack(stack, kinds.length) });
    }
    return { types: withoutDominated(types), rowFloors };
  };

  const fillings = (
    level: number,
    floors: readonly ValueFloor[],
    caps: readonly number[],
    limit: ListingLimit,
  ): Filling[] | null => {
    const listed = listStacks(level, floors, caps, limit);
    if (listed === null) return null;
    const rows = rowsOf({ run, caps, floors: listed.rowFloors, limit }, listed.types);
    if (rows === null) return null;
    return rows.map((stacks): Filling => {
      const segments = stacks.map(({ stack }) => narrowed(kinds, stack));
      return { level, height: heights[level]!, counts: countKinds(segments, kinds.length), segments };
    });
  };

  const tallRate = (prices: Float64Array): { numerator: number; denominator: number } => {
    const denominator = 10_000;
    const row = new Float64Array(across.sums.length);
    let rate = 0;
    widths.forEach((width, j) => {
      for (const choice of choicesAt[j]!)
        rate = Math.max(rate, Math.ceil((prices[choice.kind]! * denominator) / choice.height));
      addThing(row, across, { width }, rate, Infinity);
    });
    return { numerator: row[lastAcross]!, denominator };
  };

  const oracle: StripOracle = {
    ...{ kinds, run, heights, stripLevels: heights.length, listedTo, values, filling, fillings, tallRate },
    starters: (caps) => plainStarters(oracle, caps),
    stacks: (...question) => listStacks(...question)?.types ?? null,
  };
  return oracle;
}

/** Sets of prices whose stack tables are kept: those of one listing, and of what was asked before it. */
const RECENT_TABLES = 4;
