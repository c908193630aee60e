import { describe, expect, test } from "vitest";
import { pack } from "../../src/engine/index.ts";
import type { PackingProblem } from "../../src/engine/types.ts";
import { expectLeast, forSeeds } from "./exact/agreement.ts";
import { leastCostBySubsets } from "./exact/by-subsets.ts";
import { leastCostBySheetLevels } from "./exact/levels.ts";
import { randomRoll, randomSheets } from "./exact/random-problems.ts";

describe("fixed pieces: the least cost is the one other models find", () => {
  for (const style of ["strips-2", "strips-3"] as const) {
    test(`50 tiny problems in ${style}, by every sub-multiset`, async () => {
      await forSeeds(3001, 3050, async (seed) => {
        const problem = randomSheets(seed, {
          style,
          sizes: [1, 4],
          copies: [1, 3],
          pieces: 7,
          width: [4, 20],
        });
        await expectLeast(problem, leastCostBySubsets(problem), `seed ${seed}`);
      });
    });

    test(`20 tiny mixes of fixed pieces and a bolt in ${style}`, async () => {
      await forSeeds(3201, 3220, async (seed) => {
        const shape = { style, sizes: [1, 4], copies: [1, 3], pieces: 6, width: [4, 16] } as const;
        const bolt = randomRoll(seed, shape);
        const problem: PackingProblem = {
          ...bolt,
          sheets: randomSheets(seed + 1, shape).sheets,
          roll: { ...bolt.roll!, costPerLength: 1 + (seed % 9) },
        };
        await expectLeast(problem, leastCostBySubsets(problem), `seed ${seed}`);
      });
    });
  }

  test("40 tiny problems with strips cut already, alone and beside a bolt, by every sub-multiset", async () => {
    await forSeeds(3301, 3340, async (seed) => {
      const style = seed % 2 === 0 ? "strips-2" : "strips-3";
      const shape = { style, sizes: [1, 4], copies: [1, 3], pieces: 6, width: [4, 16] } as const;
      const bolt = randomRoll(seed, shape);
      const { sheets } = randomSheets(seed + 1, shape);
      const problem: PackingProblem = {
        ...bolt,
        sheets: sheets.map((sheet, s) => ({
          ...sheet,
          cost: seed % 3 === 0 ? 0 : sheet.cost,
          firstCut: s === 0 ? "none" : sheet.firstCut,
        })),
        roll: seed % 3 === 2 ? null : { ...bolt.roll!, costPerLength: 1 + (seed % 9) },
      };
      await expectLeast(problem, leastCostBySubsets(problem), `seed ${seed}`);
    });
  });

  test("cloth with a price beside a bolt is not packed: it is chosen", async () => {
    const { items, roll } = randomRoll(3201, {
      ...{ style: "strips-2", sizes: [1, 2], copies: [1, 2], pieces: 3, width: [6, 12] },
    });
    const sheets = [{ across: 5, along: 5, available: 1, cost: 3, firstCut: "either" as const }];
    await expect(pack({ style: "strips-2", items, roll, sheets })).rejects.toThrow(/cost beside a roll/);
  });

  test("15 problems in strips-2, by level packing in HiGHS", async () => {
    await forSeeds(3101, 3115, async (seed) => {
      const problem = randomSheets(seed, {
        style: "strips-2",
        sizes: [2, 4],
        copies: [1, 2],
        pieces: 6,
        width: [6, 24],
      });
      await expectLeast(problem, await leastCostBySheetLevels(problem), `seed ${seed}`);
    });
  });
});
