import type { Filling } from "../oracles/oracle.ts";
import { addCounts, type Counts, type Vector } from "../problem/counts.ts";
import type { HeightCut } from "../search/master.ts";
import { type FillOutcome, worthOf } from "./vector-fill.ts";

/**
 * Looks for whole-number uses of the listed fillings that hold the demand, depth first, filling after
 * filling. A branch dies when, at the prices of some cut or counting some one kind, the strips left cannot
 * hold what is still wanted. `filled` and `impossible` are exact when the list is complete; `unknown` means
 * the node limit was reached.
 */
export function searchFill(
  fillings: readonly Filling[],
  vector: Vector,
  demand: Counts,
  cuts: readonly HeightCut[],
  mostNodes: number,
): FillOutcome {
  const list = inOrder(fillings, vector, cuts);
  const prices = [
    ...cuts.map((cut) => cut.prices),
    ...demand.map((_, k) => Float64Array.from(demand, (_, i) => (i === k ? 1 : 0))),
  ];
  const { reach, after } = reachOf(list, prices, vector, demand);
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

  /** levelEnd[p]: index of the first filling of the next level. */
  const levelEnd = new Array<number>(list.length);
  for (let p = list.length - 1; p >= 0; p--)
    levelEnd[p] = list[p + 1]?.level === list[p]!.level ? levelEnd[p + 1]! : p + 1;
  const stripsAt = (p: number): number => (p < list.length ? vector[list[p]!.level]! : 0);
  const take = (filling: Filling, count: number): void => {
    addCounts(left, filling.counts, -count);
  };

  /** Uses filling p or a later one of its level, then goes on to the next level. */
  const visit = (p: number, strips: number): "found" | "stop" | null => {
    if (left.every((count) => count <= 0)) return "found";
    if (p >= list.length) return null;
    const end = levelEnd[p]!;
    for (let q = p; q < end && strips > 0; q++) {
      if (++nodes > mostNodes) return "stop";
      if (!holds(q, strips)) return null;
      const filling = list[q]!;
      // More copies than the scarcest use asks for are wasted.
      let useful = 0;
      filling.counts.forEach((copies, k) => {
        if (copies > 0 && left[k]! > 0) useful = Math.max(useful, Math.ceil(left[k]! / copies));
      });
      for (let count = Math.min(strips, useful); count >= 1; count--) {
        take(filling, count);
        chosen[q] = count;
        const rest = strips - count;
        const outcome =
          q + 1 < end && rest > 0
            ? holds(q + 1, rest)
              ? visit(q + 1, rest)
              : null
            : visit(end, stripsAt(end));
        if (outcome !== null) return outcome;
        take(filling, -count);
      }
      chosen[q] = 0;
    }
    return holds(end, stripsAt(end)) ? visit(end, stripsAt(end)) : null;
  };

  if (list.length === 0) return { answer: "impossible" };
  const outcome = holds(0, vector[list[0]!.level]!) ? visit(0, vector[list[0]!.level]!) : null;
  if (outcome === "stop") return { answer: "unknown" };
  if (outcome === null) return { answer: "impossible" };
  const strips = list.map((filling, p) => ({ filling, count: chosen[p]! })).filter(({ count }) => count > 0);
  return { answer: "filled", strips };
}

/**
 * What is left to be held, at each of the prices: `reach[c][p]`, the most one strip of filling p's level can hold, using
 * fillings p and later; `after[c][p]`, the most that all levels behind filling p's level can hold.
 */
function reachOf(
  list: readonly Filling[],
  prices: readonly Float64Array[],
  vector: Vector,
  demand: Counts,
): { reach: Float64Array[]; after: Float64Array[] } {
  const reach = prices.map((price) => {
    const table = new Float64Array(list.length);
    for (let p = list.length - 1; p >= 0; p--) {
      const later = list[p + 1]?.level === list[p]!.level ? table[p + 1]! : 0;
      table[p] = Math.max(later, cappedValue(list[p]!, price, demand));
    }
    return table;
  });
  const after = prices.map((_, c) => {
    const table = new Float64Array(list.length);
    let behind = 0;
    for (let p = list.length - 1; p >= 0; p--) {
      table[p] = behind;
      if (p === 0 || list[p - 1]!.level !== list[p]!.level) behind += vector[list[p]!.level]! * reach[c]![p]!;
    }
    return table;
  });
  return { reach, after };
}

/** Fewest strips first, highest first: their fillings are the hardest to place; of one level the most worth first. */
function inOrder(fillings: readonly Filling[], vector: Vector, cuts: readonly HeightCut[]): Filling[] {
  const levels = [...new Set(fillings.map((filling) => filling.level))].sort((a, b) => a - b);
  levels.sort((a, b) => vector[a]! - vector[b]! || b - a);
  const worth = (filling: Filling) => (cuts.length === 0 ? 0 : worthOf(filling, cuts[0]!.prices));
  return levels.flatMap((level) => {
    const list = fillings.filter((filling) => filling.level === level);
    const valued = list.map((filling) => ({ filling, value: worth(filling) }));
    return valued.sort((a, b) => b.value - a.value).map(({ filling }) => filling);
  });
}

function cappedValue(filling: Filling, prices: Float64Array, demand: Counts): number {
  return filling.counts.reduce((sum, copies, k) => sum + Math.min(copies, demand[k]!) * prices[k]!, 0);
}
