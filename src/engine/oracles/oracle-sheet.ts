import { fitTo } from "../filling/greedy.ts";
import type { Frames } from "../problem/assemble.ts";
import type { Kind } from "../problem/reduce.ts";
import type { CuttingRules } from "../problem/roll-question.ts";
import type { SheetStock } from "../types.ts";
import { addFree } from "./knapsack.ts";
import type { Filling, ListingLimit, StripOracle, ValueFloor } from "./oracle.ts";
import { oracleForThree } from "./oracle-three.ts";
import { oracleForTwo } from "./oracle-two.ts";
import { lastAtMost, normalPositions, type Positions, stepBack } from "./positions.ts";
import { floorsOfPart, type RowFloor, type RowType, rowsOf, withoutDominated } from "./stack-rows.ts";

/** One way of cutting a sheet: strips of the oracle's run, one below another in `room`. */
export interface SheetWay {
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

/** Builds the oracle for a sheet that may be cut in any of the given ways. */
export function oracleForSheet(
  ways: readonly SheetWay[],
  kinds: readonly Kind[],
  index: number,
): SheetOracle {
  const prepared = ways.map((way) => {
    const usable = way.oracle.heights.filter((height) => height <= way.room);
    const room = way.single ? (usable.at(-1) ?? 0) : way.room;
    // A run is joined from strips of just its own height: then a lower strip may hold what the highest does not.
    const joins = way.oracle.kinds.some((kind) => kind.run !== undefined);
    const lowest = way.single && !joins ? usable.length - 1 : 0;
    const sizes = usable.map((height) => (way.single ? room : height));
    const positions: Positions = normalPositions(sizes, room);
    const backs = sizes.map((size) => stepBack(positions, size));
    return { ...way, room, lowest, usable, sizes, positions, backs };
  });

  const table = (
    way: (typeof prepared)[number],
    prices: Float64Array,
    caps: readonly number[],
    note: Uint8Array[] | null,
  ): { best: Float64Array; values: Float64Array } => {
    const values = way.oracle.values(
      prices,
      caps,
      way.usable.map((_, level) => level),
    );
    const best = new Float64Array(way.positions.sums.length);
    way.usable.forEach((_, level) => {
      if (values[level]! <= 0 || level < way.lowest) return;
      const taken = note === null ? null : new Uint8Array(best.length);
      if (note !== null) note[level] = taken!;
      addFree(best, way.backs[level]!, values[level]!, taken);
    });
    return { best, values };
  };

  const total = (prices: Float64Array, caps: readonly number[]): number =>
    caps.reduce((sum, cap, k) => sum + cap * prices[k]!, 0);

  const value = (prices: Float64Array, caps: readonly number[]): number => {
    let most = 0;
    for (const way of prepared) most = Math.max(most, table(way, prices, caps, null).best.at(-1) ?? 0);
    // No sheet can hold more than all that is wanted.
    return Math.min(most, total(prices, caps));
  };

  const filling = (level: number, height: number, prices: Float64Array, caps: readonly number[]): Filling => {
    let chosen: { way: (typeof prepared)[number]; taken: Uint8Array[]; worth: number } | null = null;
    for (const way of prepared) {
      const taken: Uint8Array[] = [];
      const worth = table(way, prices, caps, taken).best.at(-1) ?? 0;
      if (chosen === null || worth > chosen.worth) chosen = { way, taken, worth };
    }
    const { way, taken } = chosen!;
    const levels: number[] = [];
    let at = way.positions.sums.length - 1;
    for (let l = way.usable.length - 1; l >= 0; l--)
      while (taken[l] !== undefined && taken[l]![at] === 1) {
        levels.push(l);
        at = way.backs[l]![at]!;
      }
    const strips: Filling[] = [];
    const left = caps.slice();
    // Strip after strip with what is still wanted, so that equal strips do not all hold the same few.
    for (const l of levels) {
      const strip = way.oracle.filling(l, prices, left.slice());
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
        const { best } = table(way, prices, loose, null);
        return { prices, floor, beside: (room) => best[lastAtMost(way.positions, room)]! };
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

  const cells = prepared.reduce(
    (sum, { oracle, usable, positions }) =>
      sum + usable.length * (Math.min(oracle.run, 4000) * kinds.length + positions.sums.length),
    0,
  );
  return { cells, value, filling, fillings };
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
