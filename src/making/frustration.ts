/*
 * Choosing one of two ways for each of many things, where pairs of them want to be alike or unlike: the fewest
 * wishes denied. A graph whose wishes agree round every ring is answered by walking it; what is left after
 * simple vertices are taken out is searched by branch and bound.
 */

/** A wish that `a` and `b` be chosen alike (`same`) or unlike. */
export interface Wish {
  a: number;
  b: number;
  same: boolean;
  /** What denying it costs; 1 when left out. */
  weight?: number;
}

export interface Choice {
  /** 0 or 1 for each thing; the first of each group of connected things has 1. */
  chosen: (0 | 1)[];
  denied: number;
  proven: boolean;
}

/** What it costs when two things are chosen alike, and when unlike. */
interface Cost {
  same: number;
  unlike: number;
}

const MOST_NODES = 2_000_000;

/**
 * The choice that denies fewest wishes, or the least weight of them. Exact; after `most` branches (two million) the
 * best found, not `proven`.
 */
export function fewestDenied(things: number, wishes: readonly Wish[], most = MOST_NODES): Choice {
  const graph: Map<number, Cost>[] = Array.from({ length: things }, () => new Map());
  for (const { a, b, same, weight = 1 } of wishes) {
    if (a !== b) addCost(graph, a, b, same ? { same: 0, unlike: weight } : { same: weight, unlike: 0 });
  }
  const near = graph.map((costs) => new Map(costs));
  const removed = reduce(graph);
  const core = [...graph.keys()].filter((i) => (graph[i]?.size ?? 0) > 0);
  const { chosen, proven } = search(graph, core, things, most);
  for (const { thing, costs } of removed.reverse()) {
    const price = (value: 0 | 1): number => sumOf(costs, chosen, value);
    chosen[thing] = price(1) <= price(0) ? 1 : 0;
  }
  const settled = chosen.map((value) => (value === 0 ? 0 : 1));
  const righted = firstIsOne(settled, near);
  const denied = wishes.reduce(
    (sum, { a, b, same, weight = 1 }) => sum + ((righted[a] === righted[b]) !== same ? weight : 0),
    0,
  );
  return { chosen: righted, denied, proven };
}

function addCost(graph: Map<number, Cost>[], a: number, b: number, cost: Cost): void {
  for (const [from, to] of [
    [a, b],
    [b, a],
  ] as const) {
    const old = graph[from]?.get(to) ?? { same: 0, unlike: 0 };
    graph[from]?.set(to, { same: old.same + cost.same, unlike: old.unlike + cost.unlike });
  }
}

interface Removed {
  thing: number;
  costs: Map<number, Cost>;
}

/** Takes out, again and again, whatever has at most two neighbours: its best is known from theirs. */
function reduce(graph: Map<number, Cost>[]): Removed[] {
  const removed: Removed[] = [];
  const queue = [...graph.keys()];
  const gone = new Set<number>();
  for (let thing = queue.pop(); thing !== undefined; thing = queue.pop()) {
    const costs = graph[thing];
    if (costs === undefined || gone.has(thing) || costs.size > 2) continue;
    gone.add(thing);
    removed.push({ thing, costs: new Map(costs) });
    const others = [...costs.keys()];
    for (const other of others) graph[other]?.delete(thing);
    const [a, b] = others;
    if (a !== undefined && b !== undefined) {
      const [p, q] = [costs.get(a), costs.get(b)];
      if (p !== undefined && q !== undefined) {
        addCost(graph, a, b, {
          same: Math.min(p.same + q.same, p.unlike + q.unlike),
          unlike: Math.min(p.same + q.unlike, p.unlike + q.same),
        });
      }
    }
    costs.clear();
    queue.push(...others);
  }
  return removed;
}

function sumOf(
  costs: ReadonlyMap<number, Cost>,
  chosen: readonly (0 | 1 | undefined)[],
  value: 0 | 1,
): number {
  let sum = 0;
  for (const [other, cost] of costs) {
    const there = chosen[other];
    if (there !== undefined) sum += there === value ? cost.same : cost.unlike;
  }
  return sum;
}

/** Branch and bound over what has three neighbours or more, each next to what is already chosen. */
function search(
  graph: readonly Map<number, Cost>[],
  core: readonly number[],
  things: number,
  most: number,
): { chosen: (0 | 1 | undefined)[]; proven: boolean } {
  const order = inReach(graph, core);
  const chosen: (0 | 1 | undefined)[] = Array.from({ length: things });
  let best: (0 | 1 | undefined)[] = [...chosen];
  let least = Number.POSITIVE_INFINITY;
  let nodes = 0;
  const owed = (from: number): number => {
    let sum = 0;
    for (const thing of order.slice(from)) {
      const costs = graph[thing];
      if (costs !== undefined) sum += Math.min(sumOf(costs, chosen, 0), sumOf(costs, chosen, 1));
    }
    return sum;
  };
  const visit = (depth: number, cost: number): void => {
    nodes += 1;
    if (nodes > most || cost + owed(depth) >= least) return;
    const thing = order[depth];
    if (thing === undefined) {
      least = cost;
      best = [...chosen];
      return;
    }
    const costs = graph[thing] ?? new Map<number, Cost>();
    const prices = [sumOf(costs, chosen, 0), sumOf(costs, chosen, 1)] as const;
    for (const value of prices[1] <= prices[0] ? ([1, 0] as const) : ([0, 1] as const)) {
      chosen[thing] = value;
      visit(depth + 1, cost + prices[value]);
      chosen[thing] = undefined;
    }
  };
  visit(0, 0);
  return { chosen: best, proven: nodes <= most };
}

/** The core in an order in which each thing has as many earlier neighbours as can be. */
function inReach(graph: readonly Map<number, Cost>[], core: readonly number[]): number[] {
  const left = new Set(core);
  const weight = new Map(core.map((thing) => [thing, 0]));
  const order: number[] = [];
  while (left.size > 0) {
    let next = -1;
    for (const thing of left)
      if (next < 0 || (weight.get(thing) ?? 0) > (weight.get(next) ?? 0)) next = thing;
    left.delete(next);
    order.push(next);
    for (const [other, { same, unlike }] of graph[next] ?? []) {
      weight.set(other, (weight.get(other) ?? 0) + same + unlike);
    }
  }
  return order;
}

/** Everything connected may be chosen the other way round: settled so that its first thing is 1. */
function firstIsOne(chosen: readonly (0 | 1)[], near: readonly Map<number, Cost>[]): (0 | 1)[] {
  const righted = [...chosen];
  const seen = new Set<number>();
  for (const start of chosen.keys()) {
    if (seen.has(start)) continue;
    const group = [start];
    seen.add(start);
    for (const thing of group) {
      for (const other of near[thing]?.keys() ?? []) {
        if (seen.has(other)) continue;
        seen.add(other);
        group.push(other);
      }
    }
    if (chosen[start] === 0) for (const thing of group) righted[thing] = righted[thing] === 1 ? 0 : 1;
  }
  return righted;
}
