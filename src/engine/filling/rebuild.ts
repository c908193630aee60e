import type { Filling } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import { generator } from "../search/jitter.ts";

/** Solves a small problem: the demand of a few strips. Null when it found nothing in time. */
export type SmallSolver = (demand: readonly number[]) => StripCount[] | null;

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
  while (idle < rounds && lengthOfAll(best) > goal && !stop()) {
    const all = best.reduce((sum, { count }) => sum + count, 0);
    // Few at first, which is quick; when that gains no more, up to two thirds of them.
    const span = idle < rounds / 2 ? 4 : Math.max(4, Math.floor((all * 2) / 3) - 2);
    const take = Math.min(all, 2 + Math.floor(random() * span));
    const out = draw(best, take, random);
    const key = out
      .map(({ filling, count }) => `${filling.height}:${filling.counts.join()}*${count}`)
      .join("|");
    idle++;
    if (tried.has(key)) continue;
    tried.add(key);
    const demand = new Array<number>(kinds).fill(0);
    for (const { filling, count } of out)
      filling.counts.forEach((copies, k) => {
        demand[k]! += copies * count;
      });
    const again = solve(demand);
    if (again === null || lengthOfAll(again) >= lengthOfAll(out)) continue;
    best = merge([...without(best, out), ...again]);
    idle = 0;
    tried.clear();
  }
  return best;
}

/** Whole fillings that the linear program uses at least once, and the demand they leave. */
export function wholePart(
  pool: readonly Filling[],
  values: Float64Array,
  demand: readonly number[],
  leave: number,
): { strips: StripCount[]; left: number[] } {
  const left = demand.slice();
  const strips: StripCount[] = [];
  pool.forEach((filling, p) => {
    let count = Math.max(0, Math.floor((values[p] ?? 0) + 1e-6) - leave);
    filling.counts.forEach((copies, k) => {
      if (copies > 0) count = Math.min(count, Math.floor(left[k]! / copies));
    });
    if (count === 0) return;
    strips.push({ filling, count });
    filling.counts.forEach((copies, k) => {
      left[k]! -= copies * count;
    });
  });
  return { strips, left };
}

function lengthOfAll(strips: readonly StripCount[]): number {
  return strips.reduce((sum, { filling, count }) => sum + filling.height * count, 0);
}

/** Draws single strips without putting them back. */
function draw(strips: readonly StripCount[], take: number, random: () => number): StripCount[] {
  const left = strips.map(({ count }) => count);
  let total = left.reduce((sum, count) => sum + count, 0);
  const taken = strips.map(() => 0);
  for (let n = 0; n < take && total > 0; n++) {
    let at = Math.floor(random() * total);
    const index = left.findIndex((count) => {
      if (at < count) return true;
      at -= count;
      return false;
    });
    left[index]!--;
    taken[index]!++;
    total--;
  }
  return strips.flatMap(({ filling }, i) => (taken[i]! > 0 ? [{ filling, count: taken[i]! }] : []));
}

function without(strips: readonly StripCount[], out: readonly StripCount[]): StripCount[] {
  return strips
    .map(({ filling, count }) => {
      const gone = out.find((other) => other.filling === filling)?.count ?? 0;
      return { filling, count: count - gone };
    })
    .filter(({ count }) => count > 0);
}

/** Equal fillings in one entry, so that drawing stays even. */
function merge(strips: readonly StripCount[]): StripCount[] {
  const merged: StripCount[] = [];
  for (const { filling, count } of strips) {
    const twin = merged.find((other) => other.filling === filling);
    if (twin === undefined) merged.push({ filling, count });
    else twin.count += count;
  }
  return merged;
}
