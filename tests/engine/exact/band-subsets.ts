import type { PackingProblem } from "../../../src/engine/types.ts";
import { type Extent, keepBest, liesOf } from "./strip-subsets.ts";
import type { SubsetSpace } from "./subsets.ts";

/**
 * Least length of roll per state when lengths of it may also be cut into lengthwise bands. A band section
 * holds bands side by side, each a row of pieces one after another down the roll, and strips across the
 * width that remains; it is as long as the longer of the two. `inStrips(width)` gives, per state, the
 * least length in strips alone of a fabric of that width.
 */
export function bandLengths(
  space: SubsetSpace,
  problem: PackingProblem,
  inStrips: (width: number) => readonly number[],
): readonly number[] {
  const width = problem.roll!.width;
  const stripsOnly = inStrips(width);
  if (problem.items.every((item) => item.place === "strips")) return stripsOnly;
  const bands = sideBySide(space, singleBands(space, problem));
  const lengths = [0];
  const sections = Array.from({ length: space.size }, (_, state) =>
    Math.min(stripsOnly[state]!, shortestSection(space, state, width, bands, inStrips)),
  );
  for (let state = 1; state < space.size; state++) {
    let best = Number.POSITIVE_INFINITY;
    for (const part of space.anchoredPartsOf(state)) {
      best = Math.min(best, sections[part]! + lengths[state - part]!);
    }
    lengths.push(best);
  }
  return lengths;
}

/** Shortest one section that holds the whole state: some of it in bands, the rest in strips beside them. */
function shortestSection(
  space: SubsetSpace,
  state: number,
  width: number,
  bands: readonly Extent[][],
  inStrips: (width: number) => readonly number[],
): number {
  let best = Number.POSITIVE_INFINITY;
  for (const banded of space.partsOf(state)) {
    for (const extent of bands[banded]!) {
      if (extent.across > width || extent.along >= best) continue;
      const rest = state === banded ? 0 : inStrips(width - extent.across)[state - banded]!;
      best = Math.min(best, Math.max(extent.along, rest));
    }
  }
  return best;
}

/** Per state, extents of one band: its pieces are no wider than it is. */
function singleBands(space: SubsetSpace, problem: PackingProblem): Extent[][] {
  const lies = problem.items.map((item) => (item.place === "strips" ? [] : liesOf(item)));
  const widths = [...new Set(lies.flat().map((lie) => lie.across))];
  const bands: Extent[][] = Array.from({ length: space.size }, () => []);
  for (const across of widths) {
    // Shortest row of each state in a band of this width.
    const rows = [0];
    for (let state = 1; state < space.size; state++) {
      const item = space.countsOf(state).findIndex((count) => count > 0);
      const fitting = lies[item]!.filter((lie) => lie.across <= across);
      const shortest = Math.min(Number.POSITIVE_INFINITY, ...fitting.map((lie) => lie.along));
      const row = shortest + rows[state - space.single(item)]!;
      rows.push(row);
      if (Number.isFinite(row)) keepBest(bands[state]!, { across, along: row });
    }
  }
  return bands;
}

function sideBySide(space: SubsetSpace, single: readonly Extent[][]): Extent[][] {
  const sets: Extent[][] = [[{ across: 0, along: 0 }]];
  for (let state = 1; state < space.size; state++) {
    const list: Extent[] = [];
    for (const part of space.anchoredPartsOf(state)) {
      for (const band of single[part]!) {
        for (const rest of sets[state - part]!) {
          keepBest(list, { across: band.across + rest.across, along: Math.max(band.along, rest.along) });
        }
      }
    }
    sets.push(list);
  }
  return sets;
}
