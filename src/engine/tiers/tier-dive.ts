import { greedyStrips } from "../filling/greedy.ts";
import type { StripCount } from "../problem/assemble.ts";
import { isEmpty } from "../problem/counts.ts";
import { wholePrices } from "../search/prices.ts";
import { fix, solveTiers, type TierMaster } from "./tier-master.ts";
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
  const { demand } = master;
  const pool = master.pool.fillings;
  const fixed = new Map<number, number>();
  const banned = new Set<number>();
  const left = demand.slice();
  const helps = (p: number) => pool[p]!.counts.some((copies, k) => copies > 0 && left[k]! > 0);
  try {
    while (!isEmpty(left)) {
      const asked = { bounds, caps: left.slice(), limit: Infinity, rounds: ROUNDS, stop };
      const { objective, values } = solveTiers(master, asked);
      if (objective > limit - 1 + 1e-6 || stop()) return null;
      const more = (p: number) => values[p]! - (fixed.get(p) ?? 0);
      const useful = [...pool.keys()].filter((p) => more(p) > 1e-6 && helps(p));
      if (useful.length === 0) break;
      useful.sort((a, b) => more(b) - more(a) || pool[b]!.height - pool[a]!.height || a - b);
      const whole = useful.filter((p) => more(p) >= 1 - 1e-6);
      if (whole.length === 0 && banned.size < skip && useful.length > 1) banned.add(useful[0]!);
      const chosen = whole.length > 0 ? whole : useful.filter((p) => !banned.has(p)).slice(0, 1);
      let gained = false;
      for (const p of chosen) {
        if (!helps(p)) continue;
        gained = true;
        const count = Math.max(1, Math.floor(more(p) + 1e-6));
        fixed.set(p, (fixed.get(p) ?? 0) + count);
        fix(master, p, fixed.get(p)!);
        pool[p]!.counts.forEach((copies, k) => {
          left[k] = Math.max(0, left[k]! - copies * count);
        });
      }
      if (!gained) break;
    }
  } finally {
    for (const p of fixed.keys()) fix(master, p, 0);
  }
  const strips = [...fixed].map(([p, count]) => ({ filling: pool[p]!, count }));
  if (isEmpty(left)) return strips;
  const areas = master.oracle.kinds.map(({ lies: [lie] }) => lie!.width * lie!.height);
  const largest = Math.max(1, ...areas);
  const parts = areas.map((area) => area / largest);
  const { prices } = wholePrices(parts, left, demand.length);
  const rest = greedyStrips(master.oracle, left, prices, []);
  return rest === null ? null : [...strips, ...rest];
}
