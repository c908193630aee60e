import { fitTo } from "../filling/greedy.ts";
import type { Frames } from "../problem/assemble.ts";
import { addCounts, type Counts, sum } from "../problem/counts.ts";
import { type CuttingRules, makeOracle, type SheetSize } from "../problem/roll-question.ts";
import { addLayer, addThing, emptyLayers, readOff, type Thing } from "./knapsack.ts";
import type { Filling, Listing, StripOracle } from "./oracle.ts";
import { type Axis, axisOf, lastAtMost, normalPositions } from "./positions.ts";
import { floorsOfPart, type RowFloor, type RowType, rowsOf, withoutDominated } from "./stack-rows.ts";

/** What a whole sheet can hold: the same questions as for one strip, a level of knapsack higher. */
export interface SheetOracle {
  /** Table cells that one question takes, about. */
  cells: number;
  value(prices: Float64Array, caps: Counts): number;
  filling(level: number, height: number, prices: Float64Array, caps: Counts): Filling;
  fillings(level: number, height: number, listing: Listing): Filling[] | null;
}

/** One way of cutting a sheet: strips of the oracle's run, one below another in `room`. */
interface SheetWay {
  transposed: boolean;
  oracle: StripOracle;
  room: number;
  /** The levels of strips that there is room for, what each takes, and the first that is of any use. */
  usable: number[];
  sizes: number[];
  lowest: number;
  axis: Axis;
}

/** The oracle of a sheet in a cutting style; `index` is written on its fillings. */
export function sheetOracle(
  rules: CuttingRules,
  frames: Frames,
  sheet: SheetSize,
  index: number,
): SheetOracle {
  const ways = [wayOf(rules, frames, sheet, false)];
  if (sheet.firstCut === "either") ways.push(wayOf(rules, frames, sheet, true));
  const kinds = frames.upright;
  const cells = sum(
    ways,
    ({ oracle, usable, axis }) =>
      usable.length * (Math.min(oracle.run, 4000) * kinds.length + axis.sums.length),
  );
  return {
    cells,
    value(prices, caps) {
      const most = ways.map((way) => table(way, prices, caps).at(-1) ?? 0);
      // No sheet can hold more than all that is wanted.
      return Math.min(
        Math.max(...most),
        sum(caps, (cap, k) => cap * prices[k]!),
      );
    },
    filling(level, height, prices, caps) {
      const { way, strips } = bestStrips(ways, prices, caps);
      return sheetFilling(level, height, { index, transposed: way.transposed, strips }, kinds.length);
    },
    fillings(level, height, listing) {
      const all: Filling[] = [];
      for (const way of ways) {
        const rows = listRows(way, listing);
        if (rows === null || all.length + rows.length > listing.most) return null;
        for (const strips of rows)
          all.push(sheetFilling(level, height, { index, transposed: way.transposed, strips }, kinds.length));
      }
      return all;
    },
  };
}

/** A sheet that is a strip is one as high as the room allows, which holds whatever a lower one does. */
function wayOf(rules: CuttingRules, frames: Frames, sheet: SheetSize, transposed: boolean): SheetWay {
  const kinds = transposed ? frames.transposed : frames.upright;
  const [run, length] = transposed ? [sheet.along, sheet.across] : [sheet.across, sheet.along];
  const single = sheet.firstCut === "none";
  // What is a strip already is on the mat, however high it is.
  const oracle = makeOracle(single ? { ...rules, stacks: undefined } : rules, kinds, run, length);
  const heights = oracle.heights.filter((height) => height <= length);
  const room = single ? (heights.at(-1) ?? 0) : length;
  // A run is joined from strips of just its own height: then a lower strip may hold what the highest does not.
  const joins = kinds.some((kind) => kind.run !== undefined);
  const lowest = single && !joins ? Math.max(0, heights.length - 1) : 0;
  const sizes = heights.map((height) => (single ? room : height));
  const axis = axisOf(normalPositions(sizes, room));
  return { transposed, oracle, room, lowest, usable: [...heights.keys()], sizes, axis };
}

interface Strips extends Thing {
  level: number;
  value: number;
}

/** Strips that are worth anything at these prices, as they come in one after another. */
function worthIn({ oracle, usable, lowest, sizes }: SheetWay, prices: Float64Array, caps: Counts): Strips[] {
  const values = oracle.values(prices, caps, usable);
  return usable.flatMap((level) =>
    values[level]! <= 0 || level < lowest ? [] : [{ level, takes: sizes[level]!, value: values[level]! }],
  );
}

function table(way: SheetWay, prices: Float64Array, caps: Counts): Float64Array {
  const best = new Float64Array(way.axis.sums.length);
  for (const strip of worthIn(way, prices, caps)) addThing(best, way.axis, strip, strip.value, Infinity);
  return best;
}

/** The way worth most and its strips, one after another with what is still wanted: equal strips need not hold the same few. */
function bestStrips(ways: readonly SheetWay[], prices: Float64Array, caps: Counts) {
  const tried = ways.map((way) => {
    const layers = emptyLayers<Strips>(way.axis);
    for (const strip of worthIn(way, prices, caps)) addLayer(layers, way.axis, strip, strip.value, Infinity);
    return { way, layers };
  });
  const { way, layers } = tried.reduce((a, b) => (b.layers.table.at(-1)! > a.layers.table.at(-1)! ? b : a));
  const strips: Filling[] = [];
  const left = caps.slice();
  for (const { thing, count } of readOff(layers, way.axis, way.axis.sums.length - 1))
    for (let n = 0; n < count; n++) {
      const strip = way.oracle.filling(thing.level, prices, left.slice());
      const kept = fitTo(way.oracle.kinds, strip, left);
      addCounts(left, kept.counts, -1);
      if (kept.segments.length > 0 || kept.end !== undefined) strips.push(kept);
    }
  return { way, strips };
}

/** Every set of strips that one way may be filled with. */
function listRows(way: SheetWay, listing: Listing): Filling[][] | null {
  const { room, usable, sizes, lowest, oracle, axis } = way;
  const loose = listing.caps.map(() => Number.MAX_SAFE_INTEGER);
  const floors = listing.floors.map(({ prices, floor }): RowFloor => {
    const best = table(way, prices, loose);
    return { prices, floor, beside: (left) => best[lastAtMost(axis, left)]! };
  });
  if (floors.some(({ floor, beside }) => beside(room) < floor)) return [];
  const types: (RowType & { strip: Filling })[] = [];
  for (let level = usable.length - 1; level >= lowest; level--) {
    const width = sizes[level]!;
    const strips = oracle.fillings(level, { ...listing, floors: floorsOfPart(floors, room - width) });
    if (strips === null) return null;
    for (const strip of strips) types.push({ width, counts: strip.counts, strip });
    if (types.length > listing.most || listing.stop()) return null;
  }
  const rows = rowsOf(room, { ...listing, floors }, withoutDominated(types));
  return rows?.map((row) => row.map(({ strip }) => strip)) ?? null;
}

/** A sheet of such strips. */
export function sheetFilling(
  level: number,
  height: number,
  sheet: NonNullable<Filling["sheet"]>,
  kinds: number,
): Filling {
  const counts = new Array<number>(kinds).fill(0);
  for (const strip of sheet.strips) addCounts(counts, strip.counts);
  return { level, height, counts, segments: [], sheet };
}
