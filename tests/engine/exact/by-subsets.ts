import type { PackingItem, PackingProblem } from "../../../src/engine/types.ts";
import { bandLengths } from "./band-subsets.ts";
import { type Extent, stripExtents } from "./strip-subsets.ts";
import { type SubsetSpace, subsetSpace } from "./subsets.ts";

/**
 * Least cost of a tiny problem by working through every sub-multiset of the demand: what one segment can
 * hold, what one strip can hold, what a length of roll and what a sheet can hold, all from the definitions
 * alone. Nothing is pruned but what is bigger both ways. Returns Infinity when nothing fits.
 *
 * The work grows with the square of the number of sub-multisets: for at most some hundreds of them.
 */
export function leastCostBySubsets(problem: PackingProblem): number {
  const space = subsetSpace(problem.items.map((item) => item.demand));
  const strips = stripExtents(space, problem);
  // A sheet whose first cut runs along is the turned sheet, with every piece turned along with it.
  // On a sheet only an item's own grain matters, not where it belongs on the roll.
  const free = problem.items.map((item): PackingItem => ({ ...item, place: "either" }));
  const onSheet = stripExtents(space, { ...problem, items: free });
  const onTurnedSheet = stripExtents(space, { ...problem, items: free.map(swapped) });
  const most = problem.items.reduce((sum, item) => sum + item.demand, 0);
  let cost = new Array<number>(space.size).fill(Number.POSITIVE_INFINITY);
  cost[0] = 0;
  for (const sheet of problem.sheets) {
    const across =
      sheet.firstCut === "none"
        ? inOneStrip(onSheet, sheet.across)
        : lengthsFromStrips(space, onSheet, sheet.across);
    const along = sheet.firstCut === "either" ? lengthsFromStrips(space, onTurnedSheet, sheet.along) : null;
    const held = across.map(
      (length, state) =>
        state > 0 && (length <= sheet.along || (along !== null && along[state]! <= sheet.across)),
    );
    const copies = Math.min(sheet.available ?? most, most);
    for (let copy = 0; copy < copies; copy++) cost = withOneMore(space, cost, held, sheet.cost);
  }
  const roll = problem.roll;
  if (roll === null) return cost[space.full]!;
  const byWidth = new Map<number, number[]>();
  const inStrips = (width: number): number[] => {
    const known = byWidth.get(width) ?? lengthsFromStrips(space, strips, width);
    byWidth.set(width, known);
    return known;
  };
  const lengths = bandLengths(space, problem, inStrips);
  let best = cost[space.full]!;
  for (const part of space.partsOf(space.full)) {
    const length = lengths[part]!;
    if (roll.available !== null && length > roll.available) continue;
    best = Math.min(best, cost[space.full - part]! + length * roll.costPerLength);
  }
  return best;
}

function swapped(item: PackingItem): PackingItem {
  return { ...item, across: item.along, along: item.across };
}

/** Height of the lowest strip that holds each state by itself. */
function inOneStrip(strips: readonly Extent[][], width: number): number[] {
  return strips.map((extents) => {
    const fitting = extents.filter((extent) => extent.across <= width).map((extent) => extent.along);
    return Math.min(Number.POSITIVE_INFINITY, ...fitting);
  });
}

/** Least length of a width of fabric that holds each state in strips only. */
function lengthsFromStrips(space: SubsetSpace, strips: readonly Extent[][], width: number): number[] {
  return lengthsOf(space, inOneStrip(strips, width));
}

/** Least height of strips one above another that hold each state; `oneStrip` is that of the lowest single one. */
export function lengthsOf(space: SubsetSpace, oneStrip: readonly number[]): number[] {
  const lengths = [0];
  for (let state = 1; state < space.size; state++) {
    let best = Number.POSITIVE_INFINITY;
    for (const part of space.anchoredPartsOf(state)) {
      best = Math.min(best, oneStrip[part]! + lengths[state - part]!);
    }
    lengths.push(best);
  }
  return lengths;
}

/** Costs when one more sheet may be used for any part it holds. */
export function withOneMore(
  space: SubsetSpace,
  cost: readonly number[],
  held: readonly boolean[],
  price: number,
): number[] {
  return cost.map((now, state) => {
    let best = now;
    for (const part of space.partsOf(state)) {
      if (held[part]!) best = Math.min(best, cost[state - part]! + price);
    }
    return best;
  });
}
