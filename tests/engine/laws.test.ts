import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pack, verify } from "../../src/engine/index.ts";
import type { CuttingStyle, PackingItem, PackingProblem, PackingResult } from "../../src/engine/types.ts";
import { leastCostBySubsets } from "./exact/by-subsets.ts";

// No shrinking: each step of it is a solve of its own, and these problems are small already.
const RUNS = { seed: 20_250, numRuns: 14, endOnFailure: true };

/** A roll problem small enough to be proven at once; every piece fits the width as it lies. */
function rolls(style: CuttingStyle): fc.Arbitrary<PackingProblem> {
  return fc.integer({ min: 8, max: 40 }).chain((width) => {
    const item = fc.record({
      across: fc.integer({ min: 1, max: width }),
      along: fc.integer({ min: 1, max: 30 }),
      demand: fc.integer({ min: 1, max: 6 }),
      turnable: fc.boolean(),
      place: fc.constant("strips" as const),
    });
    return fc.array(item, { minLength: 1, maxLength: 4 }).map((items) => ({
      style,
      items,
      roll: { width, available: null, costPerLength: 1 },
      sheets: [],
    }));
  });
}

async function solve(problem: PackingProblem, effort = 3000): Promise<PackingResult> {
  const result = await pack(problem, { effort });
  expect(verify(problem, result)).toEqual([]);
  return result;
}

async function leastOf(problem: PackingProblem): Promise<number> {
  const result = await solve(problem);
  expect(result.status).toBe("proven");
  return result.objective;
}

function withItems(problem: PackingProblem, items: PackingItem[]): PackingProblem {
  return { ...problem, items };
}

for (const style of ["strips-2", "strips-3"] as const) {
  describe(`laws of ${style}`, () => {
    const law = (name: string, holds: (problem: PackingProblem) => Promise<void>): void => {
      test(name, () => fc.assert(fc.asyncProperty(rolls(style), holds), RUNS));
    };

    law("a piece more never shortens", async (problem) => {
      const [first, ...rest] = problem.items;
      const more = withItems(problem, [{ ...first!, demand: first!.demand + 1 }, ...rest]);
      expect(await leastOf(more)).toBeGreaterThanOrEqual(await leastOf(problem));
    });

    law("a size more never shortens", async (problem) => {
      const fewer = withItems(problem, problem.items.slice(1));
      if (fewer.items.length === 0) return;
      expect(await leastOf(problem)).toBeGreaterThanOrEqual(await leastOf(fewer));
    });

    law("a wider fabric never needs more", async (problem) => {
      const wider = { ...problem, roll: { ...problem.roll!, width: problem.roll!.width + 3 } };
      expect(await leastOf(wider)).toBeLessThanOrEqual(await leastOf(problem));
    });

    law("leave to turn never needs more", async (problem) => {
      const turning = (turnable: boolean): PackingProblem =>
        withItems(
          problem,
          problem.items.map((item) => ({ ...item, turnable })),
        );
      expect(await leastOf(turning(true))).toBeLessThanOrEqual(await leastOf(turning(false)));
    });

    law("splitting a size into two equal ones changes nothing", async (problem) => {
      const [first, ...rest] = problem.items;
      if (first!.demand < 2) return;
      const split = withItems(problem, [
        { ...first!, demand: 1 },
        ...rest,
        { ...first!, demand: first!.demand - 1 },
      ]);
      expect(await leastOf(split)).toBe(await leastOf(problem));
    });

    law("the order of the sizes changes nothing", async (problem) => {
      const turned = withItems(problem, [...problem.items].reverse());
      expect(await leastOf(turned)).toBe(await leastOf(problem));
    });

    law("all lengths times seven give seven times the length", async (problem) => {
      const items = problem.items.map((item) => ({
        ...item,
        across: item.across * 7,
        along: item.along * 7,
      }));
      const scaled = { ...problem, items, roll: { ...problem.roll!, width: problem.roll!.width * 7 } };
      expect(await leastOf(scaled)).toBe((await leastOf(problem)) * 7);
    });

    law("the same question gets the same answer", async (problem) => {
      const strip = (result: PackingResult): unknown => ({ ...result, stats: null });
      expect(strip(await solve(problem))).toEqual(strip(await solve(problem)));
    });

    law("bound <= least <= value, even with next to no work allowed", async (problem) => {
      const small = withItems(
        problem,
        problem.items.slice(0, 3).map((item) => ({ ...item, demand: Math.min(item.demand, 3) })),
      );
      const least = leastCostBySubsets(small);
      const hasty = await pack(small, { effort: 0.5 });
      expect(verify(small, hasty)).toEqual([]);
      expect(hasty.bound.value).toBeLessThanOrEqual(least);
      expect(hasty.objective).toBeGreaterThanOrEqual(least);
      if (hasty.status === "proven") expect(hasty.objective).toBe(least);
    });

    law("a thousand times the counts", async (problem) => {
      const items = problem.items.map((item) => ({ ...item, demand: item.demand * 1000 }));
      const result = await solve(withItems(problem, items), 150);
      const least = await leastOf(problem);
      expect(result.objective).toBeLessThanOrEqual(least * 1000);
      expect(result.objective).toBeLessThanOrEqual(result.bound.value * 1.01);
    });
  });
}

describe("laws between the styles", () => {
  test("stacked subcuts never need more", () =>
    fc.assert(
      fc.asyncProperty(rolls("strips-2"), async (problem) => {
        const stacked: PackingProblem = { ...problem, style: "strips-3" };
        expect(await leastOf(stacked)).toBeLessThanOrEqual(await leastOf(problem));
      }),
      RUNS,
    ));

  test("leave to lie in bands never needs more", () =>
    fc.assert(
      fc.asyncProperty(rolls("strips-2"), async (problem) => {
        const items = problem.items.map((item): PackingItem => ({ ...item, place: "either" }));
        const either = await solve(withItems(problem, items), 150);
        expect(either.bound.value).toBeLessThanOrEqual(await leastOf(problem));
        if (either.status === "proven") {
          expect(either.objective).toBeLessThanOrEqual(await leastOf(problem));
        }
      }),
      RUNS,
    ));
});
