import { describe, expect, test } from "vitest";
import { UNIT_SIZES, unitFaults } from "../../bench/unit-quilts.ts";
import { oneIn } from "../../support/sweep.ts";
import { KNOWN, type Known } from "./known.ts";

describe("every unit by every method", () => {
  const hit = new Set<Known>();

  // Each with one of the seam allowances and roundings here; `npm run bench -- --fuzz` goes through them all.
  test.each(
    oneIn(
      2,
      UNIT_SIZES.map(([unit, size], i) => [`${size} ${unit}`, i] as const),
    ),
  )("sewn from its pieces as cut, %s", (_, i) => {
    expect(unitFaults(i, 1, hit)).toEqual([]);
  });

  test("what is known to be wrong still is", () => {
    // A mended fault left here would hide it when it comes back.
    expect(KNOWN.filter((each) => !hit.has(each)).map(({ why }) => why)).toEqual([]);
  });
});
