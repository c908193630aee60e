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
export function suffixTables(
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
