import { hasPlan } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits } from "../engine/types.ts";
import { nth } from "../length/nth.ts";
import type { Solve } from "./request.ts";

/** Counted work for several problems: for each at most in every round, and for all rounds together. */
export interface SharedEffort {
  rounds: readonly number[];
  together: number;
}

/**
 * Packs problems in rounds of more and more work each: every round takes up what the one before left open. The amounts
 * are fixed, so that a problem is searched just as far among easy ones as by itself. Where the work left is not enough
 * for all of a round, those come first that are nearest to their bound.
 */
export async function packShared(
  problems: readonly PackingProblem[],
  limits: SearchLimits,
  effort: SharedEffort | null,
  solve: Solve,
): Promise<PackingResult[]> {
  const jobOf = (problem: PackingProblem, most: number | undefined) => ({
    kind: "pack" as const,
    problem,
    limits: most === undefined ? limits : { ...limits, effort: most },
  });
  if (effort === null) return solve(problems.map((problem) => jobOf(problem, undefined)));
  let left = effort.together;
  const results: (PackingResult | undefined)[] = problems.map(() => undefined);
  for (const [round, each] of effort.rounds.entries()) {
    const open = problems.flatMap((_, i) => (isOpen(results[i]) ? [i] : []));
    const [first] = effort.rounds;
    const room = round === 0 ? open.length : Math.floor(Math.max(0, left) / each);
    const asked = open.sort((a, b) => gapOf(results[a]) - gapOf(results[b]) || a - b).slice(0, room);
    // So many problems that a little for each is too much: they get what there is.
    const little = Math.min(first ?? each, Math.max(1, Math.floor(effort.together / problems.length)));
    const found = await solve(asked.map((i) => jobOf(nth(problems, i), round === 0 ? little : each)));
    for (const { stats } of found) left -= stats.milliseconds;
    asked.forEach((i, at) => {
      results[i] = better(results[i], nth(found, at));
    });
  }
  return results.filter((result) => result !== undefined);
}

function isOpen(result: PackingResult | undefined): boolean {
  return result === undefined || result.status === "best-found" || result.status === "none-found";
}

/** How far above its bound a plan is, as a part of it. */
function gapOf(result: PackingResult | undefined): number {
  if (result === undefined || !hasPlan(result)) return 1;
  return (result.objective - result.bound.value) / Math.max(1, result.objective);
}

function better(one: PackingResult | undefined, other: PackingResult): PackingResult {
  if (one === undefined) return other;
  if (!hasPlan(one) || !hasPlan(other)) return hasPlan(one) ? one : other;
  // What was proved in either search holds.
  const bound = one.bound.value > other.bound.value ? one.bound : other.bound;
  const best = one.objective < other.objective ? one : other;
  return { ...best, bound, status: best.objective === bound.value ? "proven" : best.status };
}
