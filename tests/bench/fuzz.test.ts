import { describe, expect, test } from "vitest";
import { upTo } from "../support/sweep.ts";
import { faultsOfSeed } from "./fuzz.ts";

/** Counted work for one random cut list here; the benchmark gives more and runs ten thousand. */
const EFFORT = 6;

describe("random cut lists", () => {
  const each = upTo(40, 100);
  for (let first = 1; first <= upTo(1, 401); first += each) {
    test(`seeds ${first} to ${first + each - 1}: every answer holds, or says that nothing fits`, async () => {
      const wrong: string[] = [];
      for (let seed = first; seed < first + each; seed++) {
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
