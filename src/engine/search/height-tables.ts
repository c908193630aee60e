import { type CutFloor, LISTING_CUTS } from "../filling/vector-fill.ts";
import { addSize, spread } from "../oracles/knapsack.ts";
import type { HeightCut } from "./master.ts";

/** Strips of one run, highest first, and the length they are cut from: all of it, or no more than that. */
export interface Stretch {
  levels: readonly number[];
  length: number;
  exact: boolean;
}

/**
 * What a strip of each level must be worth to the tightest cuts, so that the best strips for the rest of the lengths
 * satisfy them. Null for a level that no vector of these lengths can use.
 */
export function levelFloors(
  heights: readonly number[],
  stretches: readonly Stretch[],
  cuts: readonly HeightCut[],
  wanted: readonly number[],
): (CutFloor[] | null)[] {
  const found = heights.map((): { floor: CutFloor; spare: number }[] | null => null);
  for (const { levels } of stretches) for (const level of levels) found[level] = [];
  cuts.forEach((cut, c) => {
    const tables = stretches.map(({ levels, length, exact }) => {
      const things = levels.map((level) => ({ height: heights[level]!, value: cut.values[level]! }));
      const table = exactTable(things, length);
      return exact ? table : spread(table);
    });
    const most = tables.reduce((sum, table, s) => sum + table[stretches[s]!.length]!, 0);
    stretches.forEach(({ levels, length }, s) => {
      const table = tables[s]!;
      const others = tables.reduce((sum, one, o) => (o === s ? sum : sum + one[stretches[o]!.length]!), 0);
      for (const level of levels) {
        const floor = wanted[c]! - others - table[length - heights[level]!]!;
        const spare = cut.values[level]! - floor;
        if (!(spare >= 0) || most === -Infinity) found[level] = null;
        else
          found[level]?.push({
            floor: { cut, prices: cut.prices, floor },
            spare: spare / Math.max(1, cut.total),
          });
      }
    });
  });
  return found.map(
    (list) =>
      list
        ?.sort((a, b) => a.spare - b.spare)
        .slice(0, LISTING_CUTS)
        .map(({ floor }) => floor) ?? null,
  );
}

/** Best value of strips of exactly each length; -Infinity where no strips add up to it. */
function exactTable(things: readonly { height: number; value: number }[], length: number): Float64Array {
  const best = new Float64Array(length + 1).fill(-Infinity);
  best[0] = 0;
  for (const { height, value } of things) addSize(best, height, value);
  return best;
}

/**
 * tables[d][room]: best value of the levels after depth d filling `room` more of their stretch, and of all stretches
 * that follow it.
 */
function suffixTables(
  heights: readonly number[],
  stretches: readonly Stretch[],
  cut: HeightCut,
): Float64Array[] {
  const tables: Float64Array[] = [];
  let behind = 0;
  for (const { levels, length, exact } of [...stretches].reverse()) {
    let table = new Float64Array(length + 1).fill(exact ? -Infinity : behind);
    table[0] = behind;
    for (let d = levels.length - 1; d >= 0; d--) {
      tables.push(table);
      table = table.slice();
      addSize(table, heights[levels[d]!]!, cut.values[levels[d]!]!);
    }
    behind = table[length]!;
  }
  return tables.reverse();
}

/** The cuts at work in a search for one length, with what the strips chosen so far are worth to each. */
export interface CutTables {
  /** How many cuts there are. */
  size(): number;
  /** Adds a cut in the middle of the search; `counts` strips are chosen of the levels. */
  add(cut: HeightCut, wanted: number, counts: readonly number[]): void;
  /** Some cut says that nothing comes of `count` strips at this depth and `left` of the length for those below. */
  isDeadEnd(depth: number, count: number, left: number): boolean;
  /** Notes that `count` strips are chosen at this depth. */
  choose(depth: number, count: number): void;
}

/** Starts with nothing chosen. `wanted[c]` is what cut c asks of the strips; depths go through all stretches in turn. */
export function cutTables(
  heights: readonly number[],
  stretches: readonly Stretch[],
  cuts: readonly HeightCut[],
  wanted: readonly number[],
): CutTables {
  const levels = stretches.flatMap((stretch) => stretch.levels);
  const totals = wanted.slice();
  const tables = cuts.map((cut) => suffixTables(heights, stretches, cut));
  /** What one strip of each level is worth to each cut. */
  const worthTo = (cut: HeightCut) => Float64Array.from(levels, (level) => cut.values[level]!);
  const worths = cuts.map(worthTo);
  /** gained[d][c]: what the strips chosen of the levels before d are worth to cut c. */
  const gained = Array.from({ length: levels.length + 1 }, () => cuts.map(() => 0));
  /** The cut that ended the last branch is the likeliest to end the next. */
  let sharpest = 0;
  return {
    size: () => totals.length,
    add(cut, total, counts) {
      const worth = worthTo(cut);
      let gain = 0;
      for (let d = 0; d <= levels.length; d++) {
        gained[d]!.push(gain);
        if (d < levels.length) gain += counts[d]! * worth[d]!;
      }
      totals.push(total);
      worths.push(worth);
      tables.push(suffixTables(heights, stretches, cut));
    },
    isDeadEnd(depth, count, left) {
      const gains = gained[depth]!;
      const ends = (c: number) =>
        gains[c]! + count * worths[c]![depth]! + tables[c]![depth]![left]! < totals[c]!;
      if (!ends(sharpest)) {
        let c = 0;
        while (c < totals.length && !ends(c)) c++;
        if (c === totals.length) return false;
        sharpest = c;
      }
      return true;
    },
    choose(depth, count) {
      const gains = gained[depth]!;
      const next = gained[depth + 1]!;
      for (let c = 0; c < gains.length; c++) next[c] = gains[c]! + count * worths[c]![depth]!;
    },
  };
}
