import type { PackingProblem } from "../types.ts";

/**
 * Length by the maker's rule of thumb: each size in strips of its own, the better way round; a run is
 * joined from whole strips. Null when a
 * size does not fit the roll, or there is no roll.
 */
export function ruleOfThumb(problem: PackingProblem): number | null {
  const { roll } = problem;
  if (roll === null) return null;
  let total = 0;
  for (const item of problem.items) {
    if (item.run !== undefined) {
      const { length, loss } = item.run;
      if (roll.width <= loss) return null;
      total += Math.max(1, Math.ceil((length - loss) / (roll.width - loss))) * item.along;
      continue;
    }
    const ways = [{ run: item.across, width: item.along }];
    if (item.turnable) ways.push({ run: item.along, width: item.across });
    const lengths = ways
      .filter(({ run }) => run <= roll.width)
      .map(({ run, width }) => Math.ceil(item.demand / Math.floor(roll.width / run)) * width);
    if (lengths.length === 0) return null;
    total += Math.min(...lengths);
  }
  return total;
}
