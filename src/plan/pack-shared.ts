import { hasPlan } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits } from "../engine/types.ts";
import type { Solve } from "./request.ts";

/** Counted work for several problems: for each at first, for each at most, and for all together. */
export interface SharedEffort {
  first: number;
  most: number;
  together: number;
}

/** What an open problem is given the second time: one of a few amounts, so that it seldom hangs on the others. */
const LEVELS = [1, 1 / 2, 1 / 4] as const;

/**
 * Packs problems with little work each, and those left open once more with what the others did not need. A hard one is
 * searched just as far among easy ones as by itself.
 */
export async function packShared(
  problems: readonly PackingProblem[],
  limits: SearchLimits,
  effort: SharedEffort | null,
  solve: Solve,
): Promise<PackingResult[]> {
  const within = (most: number | undefined) =>
    problems.map((problem) => {
      return {
        kind: "pack" as const,
        problem,
        limits: most === undefined ? limits : { ...limits, effort: most },
      };
    });
  if (effort === null) return solve(within(undefined));
  const { first } = effort;
  const results = await solve(within(first));
  const open = results.flatMap(({ status }, i) =>
    status === "best-found" || status === "none-found" ? [i] : [],
  );
  const left = effort.together - results.reduce((sum, { stats }) => sum + stats.milliseconds, 0);
  const more = LEVELS.map((part) => Math.floor(part * effort.most)).find(
    (each) => each * open.length <= left,
  );
  if (open.length === 0 || more === undefined || more <= first) return results;
  const jobs = within(more);
  const again = await solve(open.map((i) => jobs[i]!));
  return results.map((result, i) => better(result, again[open.indexOf(i)]));
}

function better(one: PackingResult, other: PackingResult | undefined): PackingResult {
  if (other === undefined) return one;
  if (!hasPlan(one) || !hasPlan(other)) return hasPlan(one) ? one : other;
  if (one.objective < other.objective) return one;
  // What was proved in either search holds.
  const bound = one.bound.value > other.bound.value ? one.bound : other.bound;
  return { ...other, bound, status: other.objective === bound.value ? "proven" : other.status };
}
