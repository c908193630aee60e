import { greedyStrips } from "../filling/greedy.ts";
import type { StripCount } from "../problem/assemble.ts";
import { wholePrices } from "../search/prices.ts";
import type { TierMaster } from "./tier-master.ts";
import type { TierBounds } from "./tiers.ts";

/** Rounds of pricing between two roundings. */
const ROUNDS = 4;

/**
 * Rounds the linear plan up strip by strip, solving it again with fresh fillings after each (diving with
 * column generation, Sadykov et al. 2019). `skip` leaves out that many first choices at the start, so that
 * another dive goes another way (limited discrepancy, Harvey and Ginsberg 1995). Null when nothing shorter
 * than `limit` lies that way.
 */
export function dive(
  master: TierMaster,
  bounds: TierBounds,
  limit: number,
  skip: number,
  stop: () => boolean,
): StripCount[] | null {
  const { demand, pool } = master;
  const fixed = new Map<number, number>();
  const banned = new Set<number>();
  const left = demand.slice();
  try {
    for (;;) {
      const outcome = master.solve({
        bounds,
        caps: left.slice(),
        limit: Infinity,
        rounds: ROUNDS,
        stop,
      });
      if (outcome.objective > limit - 1 + 1e-6 || stop()) return null;
      const { values } = outcome;
      const more = (p: number) => values[p]! - (fixed.get(p) ?? 0);
      const useful = pool.flatMap((filling, p) =>
        more(p) > 1e-6 && filling.counts.some((copies, k) => copies > 0 && left[k]! > 0) ? [p] : [],
      );
      if (useful.length === 0) break;
      useful.sort((a, b) => more(b) - more(a) || pool[b]!.height - pool[a]!.height || a - b);
      const whole = useful.filter((p) => more(p) >= 1 - 1e-6);
      if (whole.length === 0 && banned.size < skip && useful.length > 1) banned.add(useful[0]!);
      const free = useful.filter((p) => !banned.has(p));
      const chosen = whole.length > 0 ? whole : free.slice(0, 1);
      if (chosen.length === 0) break;
      let gained = false;
      for (const p of chosen) {
        const { counts } = pool[p]!;
        const count = Math.max(1, Math.floor(more(p) + 1e-6));
        if (!counts.some((copies, k) => copies > 0 && left[k]! > 0)) continue;
        gained = true;
        fixed.set(p, (fixed.get(p) ?? 0) + count);
        master.fix(p, fixed.get(p)!);
        counts.forEach((copies, k) => {
          left[k] = Math.max(0, left[k]! - copies * count);
        });
      }
      if (!gained || left.every((count) => count === 0)) break;
    }
  } finally {
    for (const p of fixed.keys()) master.fix(p, 0);
  }
  const strips = [...fixed].map(([p, count]) => ({ filling: pool[p]!, count }));
  if (left.every((count) => count === 0)) return strips;
  const areas = master.oracle.kinds.map((kind) => kind.lies[0]!.width * kind.lies[0]!.height);
  const total = Math.max(1, Math.max(...areas));
  const { prices } = wholePrices(
    areas.map((area) => area / total),
    left,
    demand.length,
  );
  const rest = greedyStrips(master.oracle, left, prices, []);
  return rest === null ? null : [...strips, ...rest];
}
