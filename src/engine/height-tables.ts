import type { HeightCut } from "./master.ts";
import { type CutFloor, LISTING_CUTS } from "./vector-fill.ts";

/**
 * What a strip of each level must be worth to the tightest cuts, so that the best strips for the rest of the length
 * satisfy them. Null for a level that no vector of this length can use.
 */
export function levelFloors(
  heights: readonly number[],
  cuts: readonly HeightCut[],
  wanted: readonly number[],
  length: number,
): (CutFloor[] | null)[] {
  const usable = heights.map((height, level) => ({ height, level })).filter(({ height }) => height <= length);
  const found = heights.map((height): { floor: CutFloor; spare: number }[] | null =>
    height <= length ? [] : null,
  );
  cuts.forEach((cut, c) => {
    const best = exactTable(
      usable.map(({ height, level }) => ({ height, value: cut.values[level]! })),
      length,
    );
    for (const { height, level } of usable) {
      const floor = wanted[c]! - best[length - height]!;
      const spare = cut.values[level]! - floor;
      if (spare < 0) found[level] = null;
      else
        found[level]?.push({
          floor: { cut, prices: cut.prices, floor },
          spare: spare / Math.max(1, cut.total),
        });
    }
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
  for (const { height, value } of things)
    for (let at = height; at <= length; at++) {
      const candidate = best[at - height]! + value;
      if (candidate > best[at]!) best[at] = candidate;
    }
  return best;
}

/** tables[d][room]: best value of levels d, d+1, ... filling exactly `room`. */
function suffixTables(
  heights: readonly number[],
  levels: readonly number[],
  cut: HeightCut,
  length: number,
): Float64Array[] {
  const last = new Float64Array(length + 1).fill(-Infinity);
  last[0] = 0;
  const tables: Float64Array[] = [last];
  for (let d = levels.length - 1; d >= 0; d--) {
    const table = tables[0]!.slice();
    const height = heights[levels[d]!]!;
    const value = cut.values[levels[d]!]!;
    for (let at = height; at <= length; at++) {
      const candidate = table[at - height]! + value;
      if (candidate > table[at]!) table[at] = candidate;
    }
    tables.unshift(table);
  }
  return tables;
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
  /** How many branches each cut has ended. */
  ended(): { cut: HeightCut; times: number }[];
}

/** Starts with nothing chosen. `wanted[c]` is what cut c asks of the strips; `levels` are in the search's order. */
export function cutTables(
  heights: readonly number[],
  levels: readonly number[],
  length: number,
  cuts: readonly HeightCut[],
  wanted: readonly number[],
): CutTables {
  const known = cuts.slice();
  const totals = wanted.slice();
  const tables = cuts.map((cut) => suffixTables(heights, levels, cut, length));
  /** What one strip of each level is worth to each cut. */
  const worthTo = (cut: HeightCut) => Float64Array.from(levels, (level) => cut.values[level]!);
  const worths = cuts.map(worthTo);
  /** gained[d][c]: what the strips chosen of the levels before d are worth to cut c. */
  const gained = Array.from({ length: levels.length + 1 }, () => cuts.map(() => 0));
  const times = cuts.map(() => 0);
  /** The cut that ended the last branch is the likeliest to end the next. */
  let sharpest = 0;
  return {
    size: () => known.length,
    add(cut, total, counts) {
      const worth = worthTo(cut);
      let gain = 0;
      for (let d = 0; d <= levels.length; d++) {
        gained[d]!.push(gain);
        if (d < levels.length) gain += counts[d]! * worth[d]!;
      }
      known.push(cut);
      totals.push(total);
      worths.push(worth);
      times.push(0);
      tables.push(suffixTables(heights, levels, cut, length));
    },
    isDeadEnd(depth, count, left) {
      const gains = gained[depth]!;
      const ends = (c: number) =>
        gains[c]! + count * worths[c]![depth]! + tables[c]![depth + 1]![left]! < totals[c]!;
      if (!ends(sharpest)) {
        let c = 0;
        while (c < totals.length && !ends(c)) c++;
        if (c === totals.length) return false;
        sharpest = c;
      }
      times[sharpest]!++;
      return true;
    },
    choose(depth, count) {
      const gains = gained[depth]!;
      const next = gained[depth + 1]!;
      for (let c = 0; c < gains.length; c++) next[c] = gains[c]! + count * worths[c]![depth]!;
    },
    ended: () => known.map((cut, c) => ({ cut, times: times[c]! })),
  };
}
