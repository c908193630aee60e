import type { Homes, TierMaster, TierOutcome } from "./tier-master.ts";
import type { TierBounds } from "./tiers.ts";

/** One part of what is left to search. */
export interface Branch {
  bounds: TierBounds;
  homes: Homes | null;
}

/** Tiers tried out before one is chosen. */
const TRIED = 4;

/** Splits what is left in two, the part that promises more first; null when the linear plan gives nothing to split by. */
export function chooseBranch(
  master: TierMaster,
  homes: Homes | null,
  bounds: TierBounds,
  outcome: TierOutcome,
): [Branch, Branch] | null {
  return byTier(master, homes, bounds, outcome) ?? byHome(master, homes, bounds, outcome);
}

/** So many strips at least as high as a level, or more (strong branching over a few levels). */
function byTier(
  master: TierMaster,
  homes: Homes | null,
  bounds: TierBounds,
  { tiers, objective }: TierOutcome,
): [Branch, Branch] | null {
  const candidates: { level: number; count: number; score: number }[] = [];
  for (let from = 0; from < tiers.length; ) {
    let to = from;
    let step = master.steps[from]!;
    while (to + 1 < tiers.length && Math.abs(tiers[to + 1]! - tiers[from]!) < 1e-6) {
      to++;
      step += master.steps[to]!;
    }
    const count = Math.floor(tiers[from]! + 1e-6);
    const part = tiers[from]! - count;
    if (part > 1e-5 && part < 1 - 1e-5) {
      const score = step * Math.min(part, 1 - part);
      candidates.push({ level: from, count, score });
      if (to > from) candidates.push({ level: to, count, score });
    }
    from = to + 1;
  }
  candidates.sort((a, b) => b.score - a.score || a.level - b.level);
  let best: [Branch, Branch] | null = null;
  let bestScore = -1;
  for (const { level, count } of candidates.slice(0, TRIED)) {
    const down = {
      least: bounds.least,
      most: bounds.most.map((m, l) => (l >= level ? Math.min(m, count) : m)),
    };
    const up = {
      least: bounds.least.map((m, l) => (l <= level ? Math.max(m, count + 1) : m)),
      most: bounds.most,
    };
    const below = master.glance(down);
    const above = master.glance(up);
    const score = Math.max(1e-6, below - objective) * Math.max(1e-6, above - objective);
    if (score <= bestScore) continue;
    best = [
      { bounds: down, homes },
      { bounds: up, homes },
    ];
    if (above < below) best.reverse();
    bestScore = score;
  }
  return best;
}

/** A kind wanted once lies in a strip at least so high, or in a lower one. */
function byHome(
  { pool, demand, oracle }: TierMaster,
  homes: Homes | null,
  bounds: TierBounds,
  { values }: TierOutcome,
): [Branch, Branch] | null {
  const levels = oracle.heights.length;
  let best: { kind: number; level: number; score: number } | null = null;
  demand.forEach((wanted, kind) => {
    if (wanted !== 1) return;
    const held = new Float64Array(levels);
    let total = 0;
    pool.forEach((filling, p) => {
      const part = values[p]! * Math.min(1, filling.counts[kind]!);
      if (part <= 1e-7) return;
      held[filling.level]! += part;
      total += part;
    });
    const width = Math.min(...oracle.kinds[kind]!.lies.map((lie) => lie.width));
    let above = 0;
    for (let level = levels - 1; level > 0; level--) {
      above += held[level]! / total;
      const score = Math.min(above, 1 - above) * width;
      if (Math.min(above, 1 - above) > 1e-4 && (best === null || score > best.score))
        best = { kind, level, score };
    }
  });
  const found = best as { kind: number; level: number } | null;
  if (found === null) return null;
  const { kind, level } = found;
  const low = homes?.low ?? demand.map(() => 0);
  const high = homes?.high ?? demand.map(() => levels - 1);
  return [
    { bounds, homes: { low, high: high.map((h, k) => (k === kind ? Math.min(h, level - 1) : h)) } },
    { bounds, homes: { low: low.map((l, k) => (k === kind ? Math.max(l, level) : l)), high } },
  ];
}
