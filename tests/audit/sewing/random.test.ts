import { describe, expect, test } from "vitest";
import { randomQuilt } from "../../bench/random-quilts.ts";
import { upTo } from "../../support/sweep.ts";
import { unknown } from "./known.ts";
import { faultsByUnit, sewingOf } from "./sewn.ts";

describe("random quilts are sewn from their pieces to the top", () => {
  for (let first = 1; first <= upTo(20, 60); first += 20)
    test(`seeds ${first} to ${first + 19}`, () => {
      const wrong: string[] = [];
      let sewn = 0;
      for (let seed = first; seed < first + 20; seed += 1) {
        const sewing = sewingOf(randomQuilt(seed));
        if (sewing === null) continue;
        sewn += 1;
        wrong.push(...unknown(faultsByUnit(sewing)).map((fault) => `seed ${seed}: ${fault}`));
      }
      expect(wrong).toEqual([]);
      // A file may be declined; most must not be.
      expect(sewn).toBeGreaterThanOrEqual(16);
    });

  // In a set of four geese one may have its two skies pointing two ways: it is spare, whatever the next seam says.
  test.each([1235, 1835, 1920])("seed %i, where a goose of a set is of no use", (seed) => {
    const sewing = sewingOf(randomQuilt(seed));
    expect(sewing === null ? null : unknown(faultsByUnit(sewing))).toEqual([]);
    expect(sewing?.making.units.some(({ method, spare }) => method === "four at a time" && spare > 0)).toBe(
      true,
    );
  });
});
