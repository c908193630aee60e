import type { Filling } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import { addCounts, type Counts, sum, timesWithin } from "../problem/counts.ts";
import { lengthOf } from "../problem/roll-question.ts";
import { generator } from "../search/jitter.ts";

/** Solves a small problem: the demand of a few strips. Null when it found nothing in time. */
export type SmallSolver = (demand: Counts) => StripCount[] | null;

/**
 * Takes a few strips out of a plan and plans them afresh, again and again (large neighbourhood search,
 * Shaw 1998). Which strips go is drawn from a seeded generator. Ends when `stop` says so, at `goal`, or
 * after `rounds` without a gain.
 */
export function rebuildStrips(
  strips: readonly StripCount[],
  kinds: number,
  solve: SmallSolver,
  goal: number,
  rounds: number,
  stop: () => boolean,
): StripCount[] {
  const random = generator(20_011);
  let best = strips.filter(({ count }) => count > 0);
  let idle = 0;
  const tried = new Set<string>();
  while (idle < rounds && lengthOf(best) > goal && !stop()) {
    const all = sum(best, ({ count }) => count);
    // Few at first, which is quick; when that gains no more, up to two thirds of them.
    const span = idle < rounds / 2 ? 4 : Math.max(4, Math.floor((all * 2) / 3) - 2);
    const out = draw(best, Math.min(all, 2 + Math.floor(random() * span)), random);
    const key = out
      .map(({ filling, count }) => `${filling.height}:${filling.counts.join()}*${count}`)
      .join("|");
    idle++;
    if (tried.has(key)) continue;
    tried.add(key);
    const demand = new Array<number>(kinds).fill(0);
    for (const { filling, count } of out) addCounts(demand, filling.counts, count);
    const again = solve(demand);
    if (again === null || lengthOf(again) >= lengthOf(out)) continue;
    const gone = out.map(({ filling, count }) => ({ filling, count: -count }));
    best = merge([...best, ...gone, ...again]);
    idle = 0;
    tried.clear();
  }
  return best;
}

/** Whole fillings that the linear program uses at least once, and the demand they leave. */
export function wholePart(
  pool: readonly Filling[],
  values: Float64Array,
  demand: Counts,
  leave: number,
): { strips: StripCount[]; left: number[] } {
  const left = demand.slice();
  const strips: StripCount[] = [];
  pool.forEach((filling, p) => {
    const most = Math.max(0, Math.floor((values[p] ?? 0) + 1e-6) - leave);
    const count = Math.min(most, timesWithin(left, filling.counts));
    if (count === 0) return;
    strips.push({ filling, count });
    addCounts(left, filling.counts, -count);
  });
  return { strips, left };
}

/** Draws single strips without putting them back. */
function draw(strips: readonly StripCount[], take: number, random: () => number): StripCount[] {
  const left = strips.map(({ count }) => count);
  for (let n = 0, total = sum(strips, ({ count }) => count); n < take && total > 0; n++, total--) {
    let at = Math.floor(random() * total);
    const index = left.findIndex((count) => {
      if (at < count) return true;
      at -= count;
      return false;
    });
    left[index]!--;
  }
  const taken = strips.map(({ filling, count }, i) => ({ filling, count: count - left[i]! }));
  return taken.filter(({ count }) => count > 0);
}

/** Equal fillings in one entry, so that drawing stays even; what is taken out counts below nothing. */
function merge(strips: readonly StripCount[]): StripCount[] {
  const merged = new Map<Filling, number>();
  for (const { filling, count } of strips) merged.set(filling, (merged.get(filling) ?? 0) + count);
  return [...merged].flatMap(([filling, count]) => (count > 0 ? [{ filling, count }] : []));
}
