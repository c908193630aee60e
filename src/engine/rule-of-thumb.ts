import type { PackingProblem } from "./types.ts";

/**
 * Length by the maker's rule of thumb: each size in strips of its own, the better way round. Null when a
 * size does not fit the roll, or there is no roll.
 */
export function ruleOfThumb(problem: PackingProblem): number | null {
  const { roll } = problem;
  if (roll === null) return null;
  let total = 0;
  for (const item of problem.items) {
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
