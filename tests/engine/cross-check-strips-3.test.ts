import { describe, expect, test } from "vitest";
import { expectLeast, forSeeds } from "./exact/agreement.ts";
import { leastCostBySubsets } from "./exact/by-subsets.ts";
import { Dice, randomRoll } from "./exact/random-problems.ts";
import { leastCostByStacks } from "./exact/stacks.ts";

const style = "strips-3" as const;

describe("strips-3 on a roll: the least length is the one other models find", () => {
  test("100 tiny problems, by every sub-multiset", async () => {
    await forSeeds(2001, 2100, async (seed) => {
      const problem = randomRoll(seed, { style, sizes: [1, 4], copies: [1, 4], pieces: 8, width: [4, 40] });
      await expectLeast(problem, leastCostBySubsets(problem), `seed ${seed}`);
    });
  });

  test("30 problems of two sizes and more copies, by every sub-multiset", async () => {
    await forSeeds(2101, 2130, async (seed) => {
      const problem = randomRoll(seed, { style, sizes: [2, 2], copies: [4, 10], pieces: 20, width: [6, 24] });
      await expectLeast(problem, leastCostBySubsets(problem), `seed ${seed}`);
    });
  });

  test("60 tiny problems with a limit for stacks, by every sub-multiset", async () => {
    let limited = 0;
    await forSeeds(2301, 2360, async (seed) => {
      const shape = { style, sizes: [1, 4], copies: [1, 4], pieces: 8, width: [4, 24] } as const;
      const problem = randomRoll(seed, shape);
      const dice = new Dice(seed);
      const within = { ...problem, stacks: { height: dice.between(2, 12), width: dice.between(2, 24) } };
      const least = leastCostBySubsets(within);
      if (least > leastCostBySubsets(problem)) limited++;
      await expectLeast(within, least, `seed ${seed}`);
    });
    expect(limited).toBeGreaterThan(5);
  });

  test("12 problems of a handful of pieces, by stacks in HiGHS", async () => {
    await forSeeds(2201, 2212, async (seed) => {
      const problem = randomRoll(seed, { style, sizes: [2, 4], copies: [1, 2], pieces: 5, width: [6, 30] });
      await expectLeast(problem, await leastCostByStacks(problem), `seed ${seed}`);
    });
  });
});
