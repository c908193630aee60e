import type { StripCount } from "./assemble.ts";
import type { HeightCut } from "./master.ts";
import type { Filling } from "./oracle.ts";

/**
 * Looks for whole-number uses of the listed fillings that hold the demand, depth first, filling after
 * filling. A branch dies when, at the prices of some cut or counting some one kind, the strips left cannot
 * hold what is still wanted. `filled` and `impossible` are exact when the list is complete; `unknown` means
 * the node limit was reached.
 */
export function searchFill(
  fillings: readonly Filling[],
  vector: readonly number[],
  demand: readonly number[],
  cuts: readonly HeightCut[],
  mostNodes: number,
): { answer: "filled"; strips: StripCount[] } | { answer: "impossible" } | { answer: "unknown" } {
  const levels = [...new Set(fillings.map((filling) => filling.level))].sort((a, b) => a - b);
  // Fewest strips first, highest first: their fillings are the hardest to place.
  levels.sort((a, b) => vector[a]! - vector[b]! || b - a);
  const order = levels.flatMap((level) => {
    const list = fillings.filter((filling) => filling.level === level);
    const worth = (filling: Filling) => (cuts.length === 0 ? 0 : worthOf(filling, cuts[0]!.prices));
    return list.map((filling) => ({ filling, value: worth(filling) })).sort((a, b) => b.value - a.value);
  });
  const list = order.map(({ filling }) => filling);
  const prices = [
    ...cuts.map((cut) => cut.prices),
    ...demand.map((_, k) => Float64Array.from(demand, (_, i) => (i === k ? 1 : 0))),
  ];
  // reach[c][p]: the most one strip of filling p's level can hold at prices c, using fillings p and later.
  const reach = prices.map((price) => {
    const table = new Float64Array(list.length);
    for (let p = list.length - 1; p >= 0; p--) {
      const later = list[p + 1]?.level === list[p]!.level ? table[p + 1]! : 0;
      table[p] = Math.max(later, cappedValue(list[p]!, price, demand));
    }
    return table;
  });
  // after[c][p]: the most that all levels behind filling p's level can hold.
  const after = prices.map((_, c) => {
    const table = new Float64Array(list.length);
    let behind = 0;
    for (let p = list.length - 1; p >= 0; p--) {
      table[p] = behind;
      if (p === 0 || list[p - 1]!.level !== list[p]!.level) behind += vector[list[p]!.level]! * reach[c]![p]!;
    }
    return table;
  });
  const left = demand.slice();
  const chosen = new Array<number>(list.length).fill(0);
  let nodes = 0;

  const holds = (p: number, strips: number): boolean => {
    for (let c = 0; c < prices.length; c++) {
      const price = prices[c]!;
      let wanted = 0;
      for (let k = 0; k < left.length; k++) if (left[k]! > 0) wanted += left[k]! * price[k]!;
      if (wanted > (p < list.length ? strips * reach[c]![p]! + after[c]![p]! : 0)) return false;
    }
    return true;
  };

  const visit = (p: number, strips: number): "found" | "stop" | null => {
    if (++nodes > mostNodes) return "stop";
    if (left.every((count) => count <= 0)) return "found";
    if (p === list.length) return null;
    const filling = list[p]!;
    const sameLevel = list[p + 1]?.level === filling.level;
    let most = strips;
    // More copies than the scarcest use asks for are wasted.
    let useful = 0;
    filling.counts.forEach((copies, k) => {
      if (copies > 0 && left[k]! > 0) useful = Math.max(useful, Math.ceil(left[k]! / copies));
    });
    most = Math.min(most, useful);
    for (let count = most; count >= 0; count--) {
      filling.counts.forEach((copies, k) => {
        left[k]! -= copies * count;
      });
      const rest = strips - count;
      const nextStrips = sameLevel ? rest : p + 1 < list.length ? vector[list[p + 1]!.level]! : 0;
      chosen[p] = count;
      const outcome = holds(p + 1, nextStrips) ? visit(p + 1, nextStrips) : null;
      if (outcome !== null) return outcome;
      filling.counts.forEach((copies, k) => {
        left[k]! += copies * count;
      });
    }
    chosen[p] = 0;
    return null;
  };

  if (list.length === 0) return { answer: "impossible" };
  const outcome = holds(0, vector[list[0]!.level]!) ? visit(0, vector[list[0]!.level]!) : null;
  if (outcome === "stop") return { answer: "unknown" };
  if (outcome === null) return { answer: "impossible" };
  const strips = list.map((filling, p) => ({ filling, count: chosen[p]! })).filter(({ count }) => count > 0);
  return { answer: "filled", strips };
}

function worthOf(filling: Filling, prices: Float64Array): number {
  return filling.counts.reduce((sum, copies, k) => sum + copies * prices[k]!, 0);
}

function cappedValue(filling: Filling, prices: Float64Array, demand: readonly number[]): number {
  return filling.counts.reduce((sum, copies, k) => sum + Math.min(copies, demand[k]!) * prices[k]!, 0);
}
