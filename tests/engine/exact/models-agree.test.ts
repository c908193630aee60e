import { describe, expect, test } from "vitest";
import { upTo } from "../../support/sweep.ts";
import { leastCostByArcs } from "./arcs.ts";
import { leastCostBySubsets } from "./by-subsets.ts";
import { leastCostByLevels, leastCostBySheetLevels } from "./levels.ts";
import { randomRoll, randomSheets } from "./random-problems.ts";
import { leastCostByStacks } from "./stacks.ts";

describe("the checking models agree with one another", () => {
  test("strips-2 on a roll: every sub-multiset, levels and arcs", async () => {
    for (let seed = 1; seed <= upTo(8, 25); seed++) {
      const problem = randomRoll(seed, {
        style: "strips-2",
        sizes: [2, 4],
        copies: [1, 3],
        pieces: 8,
        width: [8, 20],
      });
      const expected = leastCostBySubsets(problem);
      expect(await leastCostByLevels(problem), `levels, seed ${seed}`).toBe(expected);
      expect(await leastCostByArcs(problem), `arcs, seed ${seed}`).toBe(expected);
    }
  });

  test("strips-3 on a roll: every sub-multiset and stacks", async () => {
    for (let seed = 101; seed <= upTo(105, 115); seed++) {
      const problem = randomRoll(seed, {
        style: "strips-3",
        sizes: [2, 3],
        copies: [1, 2],
        pieces: 5,
        width: [6, 12],
      });
      expect(await leastCostByStacks(problem), `seed ${seed}`).toBe(leastCostBySubsets(problem));
    }
  });

  test("strips-2 on sheets: every sub-multiset and levels", async () => {
    for (let seed = 201; seed <= upTo(205, 215); seed++) {
      const problem = randomSheets(seed, {
        style: "strips-2",
        sizes: [2, 3],
        copies: [1, 2],
        pieces: 5,
        width: [5, 12],
      });
      expect(await leastCostBySheetLevels(problem), `seed ${seed}`).toBe(leastCostBySubsets(problem));
    }
  });
});
