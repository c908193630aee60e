import { describe, test } from "vitest";
import { expectLeast, forSeeds } from "./exact/agreement.ts";
import { leastWithRuns } from "./exact/joined-patterns.ts";
import { randomJoinedRoll } from "./exact/random-problems.ts";

describe("runs joined from strips and their ends: the least length is that of a flat whole-number program", () => {
  test("40 small problems", async () => {
    await forSeeds(6001, 6040, async (seed) => {
      const problem = randomJoinedRoll(seed, {
        style: "strips-2",
        sizes: [1, 4],
        copies: [1, 6],
        pieces: 14,
        width: [8, 40],
      });
      await expectLeast(problem, await leastWithRuns(problem), `seed ${seed}`);
    });
  });
});
