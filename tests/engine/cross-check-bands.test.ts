import { describe, expect, test } from "vitest";
import type { PackingProblem } from "../../src/engine/types.ts";
import { expectLeast, forSeeds } from "./exact/agreement.ts";
import { leastCostBySubsets } from "./exact/by-subsets.ts";
import { randomBandRoll, randomBandRollAndSheets } from "./exact/random-problems.ts";

describe("lengthwise bands beside strips: the least length is the one found by every sub-multiset", () => {
  for (const style of ["strips-2", "strips-3"] as const) {
    test(`16 tiny problems with sheets beside the roll in ${style}`, async () => {
      await forSeeds(4101, 4116, async (seed) => {
        const problem = randomBandRollAndSheets(seed, {
          style,
          sizes: [2, 3],
          copies: [1, 3],
          pieces: 5,
          width: [6, 16],
        });
        await expectLeast(problem, leastCostBySubsets(problem), `seed ${seed}`);
      });
    });

    test(`20 tiny problems in ${style}`, async () => {
      await forSeeds(4001, 4020, async (seed) => {
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

  test("a stacked strip may reach far below the band beside it", async () => {
    // Found by seed 503445: the rest beside a band of 17 is one strip of 48, higher than any single item.
    const problem: PackingProblem = {
      style: "strips-3",
      items: [
        { across: 1, along: 17, demand: 1, turnable: false, place: "bands" },
        { across: 16, along: 17, demand: 3, turnable: true, place: "strips" },
        { across: 18, along: 8, demand: 2, turnable: true, place: "strips" },
      ],
      roll: { width: 27, available: null, costPerLength: 1 },
      sheets: [],
    };
    await expectLeast(problem, 48, "band with a high strip beside it");
    expect(leastCostBySubsets(problem)).toBe(48);
  });
});
