import { describe, test } from "vitest";
import { expectLeast, forSeeds } from "./exact/agreement.ts";
import { leastCostBySubsets } from "./exact/by-subsets.ts";
import { randomBandRoll } from "./exact/random-problems.ts";

describe("lengthwise bands beside strips: the least length is the one found by every sub-multiset", () => {
  for (const style of ["strips-2", "strips-3"] as const) {
    test(`30 tiny problems in ${style}`, async () => {
      await forSeeds(4001, 4030, async (seed) => {
        const problem = randomBandRoll(seed, {
          style,
          sizes: [2, 4],
          copies: [1, 3],
          pieces: 6,
          width: [6, 20],
        });
        await expectLeast(problem, leastCostBySubsets(problem), `seed ${seed}`);
      });
    });
  }
});
