import { fitTo } from "../filling/greedy.ts";
import type { Frames } from "../problem/assemble.ts";
import type { Kind } from "../problem/reduce.ts";
import type { CuttingRules } from "../problem/roll-question.ts";
import type { SheetStock } from "../types.ts";
import { addLayer, addThing, emptyLayers, readOff } from "./knapsack.ts";
import type { Filling, ListingLimit, StripOracle, ValueFloor } from "./oracle.ts";
import { oracleForThree } from "./oracle-three.ts";
import { oracleForTwo } from "./oracle-two.ts";
import { axisOf, lastAtMost, normalPositions } from "./positions.ts";
import { floorsOfPart, type RowFloor, type RowType, rowsOf, withoutDominated } from "./stack-rows.ts";

/** One way of cutting a sheet: strips of the oracle's run, one below another in `room`. */
interface SheetWay {
  transposed: boolean;
  oracle: StripOracle;
  room: number;
  /** The sheet is a strip: one as high as the room allows, which holds whatever a lower one does. */
  single: boolean;
}

/** What a whole sheet can hold: the same questions as for one strip, a level of knapsack higher. */
export interface SheetOracle {
  /** Table cells that one question takes, about. */
  cells: number;
  value(prices: Float64Array, caps: readonly number[]): number;
  filling(level: number, height: number, prices: Float64Array, caps: readonly number[]): Filling;
  fillings(
    level: number,
    height: number,
    floors: readonly ValueFloor[],
    caps: readonly number[],
    limit: ListingLimit,
  ): Filling[] | null;
}

/** What matters of a sheet to the oracles. */
export interface SheetSize {
  across: number;
  along: number;
  firstCut: SheetStock["firstCut"];
}

/** The oracle of a sheet in a cutting style; `index` is written on its fillings. */
export function sheetOracle(
  { style, stacks }: CuttingRules,
  frames: Frames,
  sheet: SheetSize,
  index: number,
): SheetOracle {
  const way = (kinds: readonly Kind[], run: number, room: number, transposed: boolean): SheetWay => ({
    transposed,
    room,
    single: sheet.firstCut === "none",
    oracle:
      style === "strips-2"
        ? oracleForTwo(kinds, run)
        : // What is a strip already is on the mat, however high it is.
          oracleForThree(kinds, run, room, sheet.firstCut === "none" ? undefined : stacks),
  });
  const ways = [way(frames.upright, sheet.across, sheet.along, false)];
  if (sheet.firstCut === "either") ways.push(way(frames.transposed, sheet.along, sheet.across, true));
  return oracleForSheet(ways, frames.upright, index);
}

interface StripType extends RowType {
  strip: Filling;
}

/** A way with the heights of strips that it has room for. */
function prepare(way: SheetWay) {
  const usable = way.oracle.heights.filter((height) => height <= way.room);
  const room = way.single ? (usable.at(-1) ?? 0) : way.room;
  // A run is joined from strips of just its own height: then a lower strip may hold what the highest does not.
  const joins = way.oracle.kinds.some((kind) => kind.run !== undefined);
  const lowest = way.single && !joins ? usable.length - 1 : 0;
  const sizes = usable.map((height) => (way.single ? room : height));
  return { ...way, room, lowest, usable, sizes, axis: axisOf(normalPositions(sizes, room)) };
}

type Prepared = ReturnType<typeof prepare>;

/** Strips that are worth anything at these prices, as they come in one after another. */
function worthIn({ oracle, usable, lowest, sizes }: Prepared, prices: Float64Array, caps: readonly number[]) {
  const values = oracle.values(prices, caps, [...usable.keys()]);
  return usable.flatMap((_, level) =>
    values[level]! <= 0 || level < lowest ? [] : [{ level, width: sizes[level]!, value: values[level]! }],
  );
}

function table(way: Prepared, prices: Float64Array, caps: readonly number[]): Float64Array {
  const best = new Float64Array(way.axis.sums.length);
  for (const strip of worthIn(way, prices, caps)) addThing(best, way.axis, strip, strip.value, Infinity);
  return best;
}

/** Builds the oracle for a sheet that may be cut in any of the given ways. */
function oracleForSheet(ways: readonly SheetWay[], kinds: readonly Kind[], index: number): SheetOracle {
  const prepared = ways.map(prepare);

  const value = (prices: Float64Array, caps: readonly number[]): number => {
    let most = 0;
    for (const way of prepared) most = Math.max(most, table(way, prices, caps).at(-1) ?? 0);
    // No sheet can hold more than all that is wanted.
    return Math.min(
      most,
      caps.reduce((sum, cap, k) => sum + cap * prices[k]!, 0),
    );
  };

  const filling = (level: number, height: number, prices: Float64Array, caps: readonly number[]): Filling => {
    const tried = prepared.map((way) => {
      const layers = emptyLayers<ReturnType<typeof worthIn>[number]>(way.axis);
      for (const strip of worthIn(way, prices, caps))
        addLayer(layers, way.axis, strip, strip.value, Infinity);
      return { way, layers };
    });
    const { way, layers } = tried.reduce((a, b) => (b.layers.table.at(-1)! > a.layers.table.at(-1)! ? b : a));
    const strips: Filling[] = [];
    const left = caps.slice();
    // Strip after strip with what is still wanted, so that equal strips do not all hold the same few.
    for (const { thing, count } of readOff(layers, way.axis, way.axis.sums.length - 1))
      for (let n = 0; n < count; n++) {
        const strip = way.oracle.filling(thing.level, prices, left.slice());
        const kept = fitTo(way.oracle.kinds, strip, left);
        kept.counts.forEach((copies, k) => {
          left[k]! -= copies;
        });
        if (kept.segments.length > 0 || kept.end !== undefined) strips.push(kept);
      }
    return sheetFilling(level, height, { index, transposed: way.transposed, strips }, kinds.length);
  };

  const fillings = (
    level: number,
    height: number,
    floors: readonly ValueFloor[],
    caps: readonly number[],
    limit: ListingLimit,
  ): Filling[] | null => {
    const loose = kinds.map(() => Number.MAX_SAFE_INTEGER);
    const all: Filling[] = [];
    for (const way of prepared) {
      const rowFloors = floors.map(({ prices, floor }): RowFloor => {
        const best = table(way, prices, loose);
        return { prices, floor, beside: (room) => best[lastAtMost(way.axis, room)]! };
      });
      if (rowFloors.some(({ floor, beside }) => beside(way.room) < floor)) continue;
      const types: StripType[] = [];
      for (let l = way.usable.length - 1; l >= Math.max(0, way.lowest); l--) {
        const strips = way.oracle.fillings(l, floorsOfPart(rowFloors, way.room - way.sizes[l]!), caps, limit);
        if (strips === null) return null;
        for (const strip of strips) types.push({ width: way.sizes[l]!, counts: strip.counts, strip });
        if (types.length > limit.most || limit.stop()) return null;
      }
      const rows = rowsOf({ run: way.room, caps, floors: rowFloors, limit }, withoutDominated(types));
      if (rows === null) return null;
      for (const row of rows)
        all.push(
          sheetFilling(
            level,
            height,
            { index, transposed: way.transposed, strips: row.map(({ strip }) => strip) },
            kinds.length,
          ),
        );
      if (all.length > limit.most) return null;
    }
    return all;
  };

  return { cells: cellsOf(prepared, kinds.length), value, filling, fillings };
}

function cellsOf(ways: readonly Prepared[], kinds: number): number {
  return ways.reduce(
    (sum, { oracle, usable, axis }) =>
      sum + usable.length * (Math.min(oracle.run, 4000) * kinds + axis.sums.length),
    0,
  );
}

function sheetFilling(
  level: number,
  height: number,
  sheet: NonNullable<Filling["sheet"]>,
  kinds: number,
): Filling {
  const counts = new Array<number>(kinds).fill(0);
  for (const strip of sheet.strips)
    strip.counts.forEach((copies, k) => {
      counts[k]! += copies;
    });
  return { level, height, counts, segments: [], sheet };
}
