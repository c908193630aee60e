import { describe, expect, test } from "vitest";
import { faultsOfState } from "../bench/fuzz-state.ts";
import { upTo } from "../support/sweep.ts";

/** Counted work for one search here; the benchmark gives more and goes on with 200 plans. */
const EFFORT = 6;

describe("random plans, stopped at a random strip with a random mishap", () => {
  const last = upTo(3, 7);
  test(`seeds 1 to ${last}: the audit passes, cut pieces are used, no more is bought than afresh`, async () => {
    const wrong: string[] = [];
    for (let seed = 1; seed <= last; seed++) {
      const faults = await faultsOfState(seed, EFFORT);
      if (faults.length > 0) wrong.push(`seed ${seed}: ${faults.join("; ")}`);
    }
    expect(wrong).toEqual([]);
  });
});
