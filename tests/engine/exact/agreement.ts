import { expect } from "vitest";
import { pack, verify } from "../../../src/engine/index.ts";
import type { PackingProblem } from "../../../src/engine/types.ts";
import { CROSS_CHECKS } from "../../support/sweep.ts";

/** Counted work the engine gets for a small problem: far more than it needs. */
const EFFORT = 5000;

/**
 * Packs a small problem and demands what a small problem deserves: a plan that passes `verify`, proven,
 * at exactly the least cost another model found (Infinity there means that no plan exists).
 */
export async function expectLeast(problem: PackingProblem, least: number, label: string): Promise<void> {
  const result = await pack(problem, { effort: EFFORT });
  const told = `${label}: ${JSON.stringify(problem)}`;
  expect(verify(problem, result), told).toEqual([]);
  const answer =
    result.status === "infeasible"
      ? { status: result.status, value: Number.POSITIVE_INFINITY, bound: Number.POSITIVE_INFINITY }
      : { status: result.status, value: result.objective, bound: result.bound.value };
  const status = least === Number.POSITIVE_INFINITY ? "infeasible" : "proven";
  expect(answer, told).toEqual({ status, value: least, bound: least });
}

/** Runs one check for each seed from `first` to `last`, and for so many times more in a long run. */
export async function forSeeds(
  first: number,
  last: number,
  check: (seed: number) => Promise<void>,
): Promise<void> {
  const end = first - 1 + CROSS_CHECKS * (last - first + 1);
  for (let seed = first; seed <= end; seed++) await check(seed);
}
