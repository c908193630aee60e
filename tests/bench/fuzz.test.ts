import { describe, expect, test } from "vitest";
import { upTo } from "../support/sweep.ts";
import { faultsOfSeed } from "./fuzz.ts";

/** Counted work for one random cut list here; the benchmark gives more and runs ten thousand. */
const EFFORT = 6;

describe("random cut lists", () => {
  for (let first = 1; first <= upTo(1, 401); first += 100) {
    test(`seeds ${first} to ${first + 99}: every answer holds, or says that nothing fits`, async () => {
      const wrong: string[] = [];
      for (let seed = first; seed < first + 100; seed++) {
        const faults = await faultsOfSeed(seed, EFFORT);
        if (faults.length > 0) wrong.push(`seed ${seed}: ${faults.join("; ")}`);
      }
      expect(wrong).toEqual([]);
    });
  }

  // Found among ten thousand: sheets whose work was not counted, a bolt of 265,000 copies beside a band whose ends of
  // strips were too many to list, and bands set out at every end of a strip although time was up.
  test.each([748, 1193, 3087, 7855, 7955])("seed %i comes back in time and whole", async (seed) => {
    expect(await faultsOfSeed(seed, EFFORT)).toEqual([]);
  });
});
