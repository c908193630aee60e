import { expect } from "vitest";
import { choose } from "../../../src/engine/choose.ts";
import { pack, verify } from "../../../src/engine/index.ts";
import type { PackingProblem, PackingResult } from "../../../src/engine/types.ts";
import { CROSS_CHECKS } from "../../support/sweep.ts";

/** Counted work the engine gets for a small problem: far more than it needs. */
const EFFORT = 5000;

/**
 * Packs a small problem and demands what a small problem deserves: a plan that passes `verify`, proven,
 * at exactly the least cost another model found (Infinity there means that no plan exists).
 */
export async function expectLeast(problem: PackingProblem, least: number, label: string): Promise<void> {
  const result = await solved(problem);
  const told = `${label}: ${JSON.stringify(problem)}`;
  expect(verify(problem, result), told).toEqual([]);
  const answer =
    result.status === "infeasible"
      ? { status: result.status, value: Number.POSITIVE_INFINITY, bound: Number.POSITIVE_INFINITY }
      : { status: result.status, value: result.objective, bound: result.bound.value };
  const status = least === Number.POSITIVE_INFINITY ? "infeasible" : "proven";
  expect(answer, told).toEqual({ status, value: least, bound: least });
}

/** Sheets with a cost beside a roll are a choice: every length of the roll is a portion at its price. */
async function solved(problem: PackingProblem): Promise<PackingResult> {
  const { roll, sheets, items } = problem;
  if (roll === null || sheets.every(({ cost }) => cost === 0)) return pack(problem, { effort: EFFORT });
  const longest = items.reduce((sum, { across, along, demand }) => sum + Math.max(across, along) * demand, 0);
  const portions = Array.from({ length: longest + 1 }, (_, length) => ({
    length,
    price: length * roll.costPerLength,
  }));
  const free = { ...problem, sheets: sheets.map((sheet) => ({ ...sheet, cost: 0 })) };
  const result = await choose(free, { portions, aims: [sheets.map(({ cost }) => cost)] }, { effort: EFFORT });
  const [price] = result.aims ?? [];
  expect(verify(free, result), JSON.stringify(problem)).toEqual([]);
  if (price === undefined) return result;
  const paid = result.layouts.reduce(
    (sum, { stock, sheet, count }) => (stock === "sheet" ? sum + sheets[sheet]!.cost * count : sum),
    result.rollLength * roll.costPerLength,
  );
  expect(paid, JSON.stringify(problem)).toBe(price.value);
  const status = price.value === price.bound ? "proven" : "best-found";
  return { ...result, status, objective: price.value, bound: { ...result.bound, value: price.bound } };
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
