import type { TierMaster, TierOutcome } from "./tier-master.ts";
import type { TierBounds } from "./tiers.ts";

/** Tiers tried out before one is chosen. */
const TRIED = 4;

/**
 * Splits what is left in two, the part that promises more first: so many strips at least as high as a level, or more
 * (strong branching over a few levels). Null when the linear plan gives nothing to split by.
 */
export function chooseBranch(
  master: TierMaster,
  bounds: TierBounds,
  { tiers, objective }: TierOutcome,
): [TierBounds, TierBounds] | null {
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
  let best: [TierBounds, TierBounds] | null = null;
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
    best = above < below ? [up, down] : [down, up];
    bestScore = score;
  }
  return best;
}
