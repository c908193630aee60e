import { dealer, toSections } from "./assemble.ts";
import { startClock } from "./clock.ts";
import { checkProblem, gatherKinds, type Kind } from "./reduce.ts";
import { solveRoll } from "./roll.ts";
import { highsSolver } from "./solver/highs.ts";
import type { PackingProblem, PackingResult, SearchLimits, SearchStats, StripSection } from "./types.ts";

/**
 * Finds the cheapest way to cut every item from the stock in the problem's cutting style, with a true lower
 * bound. All sizes are whole numbers of the caller's steps.
 * @throws RangeError when the problem holds anything but whole numbers in range.
 */
export async function pack(problem: PackingProblem, limits: SearchLimits = {}): Promise<PackingResult> {
  checkProblem(problem);
  const clock = startClock(limits);
  const stats: SearchStats = { columns: 0, nodes: 0, lpSolves: 0, mipSolves: 0, milliseconds: 0 };
  const roll = problem.roll;
  if (roll === null) throw new RangeError("packing problem: no roll");
  const kinds = gatherKinds(problem.items, false);
  const misfits = kinds.filter((kind) => kind.lies.every((lie) => lie.width > roll.width));
  if (misfits.length > 0) return infeasible(problem, misfits, stats);
  const solver = await highsSolver();
  const answer = solveRoll({
    kinds,
    run: roll.width,
    style: problem.style,
    solver,
    clock,
    stats,
    target: limits.target === undefined ? null : limits.target,
    report: (length, lower) => limits.onProgress?.({ objective: length, bound: lower }),
  });
  const sections: StripSection[] = toSections(kinds, answer.strips, dealer(kinds));
  stats.milliseconds = clock.spent();
  const cost = roll.costPerLength;
  return {
    status: answer.length === answer.lower ? "proven" : "best-found",
    objective: answer.length * cost,
    rollLength: answer.length,
    bound: { value: answer.lower * cost, kind: answer.boundKind, style: problem.style },
    layouts:
      sections.length === 0 ? [] : [{ stock: "roll", sheet: -1, count: 1, firstCut: "across", sections }],
    missing: [],
    stats,
  };
}

function infeasible(problem: PackingProblem, misfits: readonly Kind[], stats: SearchStats): PackingResult {
  return {
    status: "infeasible",
    objective: 0,
    rollLength: 0,
    bound: { value: 0, kind: "area", style: problem.style },
    layouts: [],
    missing: misfits.flatMap((kind) => kind.sources.map(({ item, demand }) => ({ item, count: demand }))),
    stats,
  };
}
