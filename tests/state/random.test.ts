import { describe, expect, test } from "vitest";
import { faultsOfState } from "../bench/fuzz-state.ts";

/** Counted work for one search here; the benchmark gives more and goes on with 200 plans. */
const EFFORT = 6;

describe("random plans, stopped at a random strip with a random mishap", () => {
  test("seeds 1 to 7: the audit passes, cut pieces are used, no more is bought than afresh", async () => {
    const wrong: string[] = [];
    for (let seed = 1; seed <= 7; seed++) {
      const faults = await faultsOfState(seed, EFFORT);
      if (faults.length > 0) wrong.push(`seed ${seed}: ${faults.join("; ")}`);
    }
    expect(wrong).toEqual([]);
  });
});
