import { describe, test } from "vitest";
import { expectLeast, forSeeds } from "./exact/agreement.ts";
import { leastCostByArcs } from "./exact/arcs.ts";
import { leastCostBySubsets } from "./exact/by-subsets.ts";
import { leastCostByLevels } from "./exact/levels.ts";
import { randomRoll } from "./exact/random-problems.ts";

const style = "strips-2" as const;

describe("strips-2 on a roll: the least length is the one other models find", () => {
  test("120 tiny problems, by every sub-multiset", async () => {
    await forSeeds(1001, 1120, async (seed) => {
      const problem = randomRoll(seed, { style, sizes: [1, 5], copies: [1, 4], pieces: 9, width: [4, 40] });
      await expectLeast(problem, leastCostBySubsets(problem), `seed ${seed}`);
    });
  });

  test("30 problems of up to 12 pieces, by level packing in HiGHS", async () => {
    await forSeeds(1201, 1230, async (seed) => {
      const problem = randomRoll(seed, { style, sizes: [4, 8], copies: [1, 3], pieces: 12, width: [20, 90] });
      await expectLeast(problem, await leastCostByLevels(problem), `seed ${seed}`);
    });
  });

  test("30 problems with many copies, by arc flows in HiGHS", async () => {
    await forSeeds(1301, 1330, async (seed) => {
      const problem = randomRoll(seed, {
        style,
        sizes: [2, 4],
        copies: [5, 40],
        pieces: 120,
        width: [10, 24],
      });
      await expectLeast(problem, await leastCostByArcs(problem), `seed ${seed}`);
    });
  });

  test("20 problems on a roll that may be too short", async () => {
    await forSeeds(1401, 1420, async (seed) => {
      const open = randomRoll(seed, { style, sizes: [1, 4], copies: [1, 3], pieces: 7, width: [5, 20] });
      const least = leastCostBySubsets(open);
      const available = Number.isFinite(least) ? least - (seed % 2) : 10;
      const problem = { ...open, roll: { ...open.roll!, available, costPerLength: 1 + (seed % 3) } };
      await expectLeast(problem, leastCostBySubsets(problem), `seed ${seed}`);
    });
  });
});
