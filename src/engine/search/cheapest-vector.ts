import type { HeightCut } from "./master.ts";

/** Sheets of one level: what one costs and how many there are. */
export interface Offer {
  cost: number;
  available: number;
}

/**
 * The cheapest choice of sheets that satisfies every cut and is not covered by a choice already known to
 * fail, at a cost below `limit`; null when there is none. Depth first over the levels; a branch dies when
 * some cut cannot be met, or only at too high a cost even if sheets could be had in fractions.
 */
export function cheapestVector(
  offers: readonly Offer[],
  cuts: readonly HeightCut[],
  failed: readonly (readonly number[])[],
  limit: number,
  mostNodes: number,
): { vector: number[] | null; complete: boolean } {
  const best: { vector: number[] | null; cost: number } = { vector: null, cost: limit };
  const counts = offers.map(() => 0);
  // Levels by value for cost, best last chosen first: ties fall to the earlier level.
  const rate = (level: number) =>
    cuts.length === 0 ? 0 : cuts[0]!.values[level]! / Math.max(1e-9, offers[level]!.cost);
  const order = offers.map((_, level) => level).sort((a, b) => rate(b) - rate(a) || a - b);
  const cheapestFirst = cuts.map((cut) =>
    order
      .map((level, depth) => ({ depth, level, value: cut.values[level]! }))
      .filter(({ value }) => value > 0)
      .sort((a, b) => offers[a.level]!.cost * b.value - offers[b.level]!.cost * a.value),
  );
  let nodes = 0;
  let complete = true;

  /** Least cost of meeting a cut with the levels from `depth` on, in fractions; Infinity when none can. */
  const atLeast = (c: number, depth: number, wanted: number): number => {
    let left = wanted;
    let cost = 0;
    for (const { depth: at, level, value } of cheapestFirst[c]!) {
      if (left <= 0) break;
      if (at < depth) continue;
      const offer = offers[level]!;
      const all = value * offer.available;
      if (all >= left) return cost + (offer.cost * left) / value;
      left -= all;
      cost += offer.cost * offer.available;
    }
    return left > 0 ? Infinity : cost;
  };

  const visit = (depth: number, cost: number, wanted: readonly number[]): void => {
    if (++nodes > mostNodes) {
      complete = false;
      return;
    }
    if (cost >= best.cost) return;
    // A cost is whole: a fraction below the limit by less than rounding noise still counts as below.
    for (let c = 0; c < cuts.length; c++)
      if (Math.ceil(cost + atLeast(c, depth, wanted[c]!) - 1e-6) >= best.cost) return;
    if (depth === order.length) {
      if (wanted.some((left) => left > 0)) return;
      if (failed.some((other) => counts.every((count, level) => count <= other[level]!))) return;
      best.vector = counts.slice();
      best.cost = cost;
      return;
    }
    const level = order[depth]!;
    const { available, cost: price } = offers[level]!;
    for (let count = available; count >= 0; count--) {
      counts[level] = count;
      visit(
        depth + 1,
        cost + count * price,
        wanted.map((left, c) => left - count * cuts[c]!.values[level]!),
      );
    }
    counts[level] = 0;
  };

  visit(
    0,
    0,
    cuts.map((cut) => cut.total),
  );
  return { vector: best.vector, complete };
}
