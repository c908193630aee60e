import fc from "fast-check";
import { expect, test } from "vitest";
import { twoSeams } from "../../../src/quilt/terms/formulas.ts";
import { countSets, segmentsFrom } from "../../../src/quilt/units/strip-sets.ts";
import type { StripSet } from "../../../src/quilt/units/types.ts";

const MARK = 2032;

const sets: fc.Arbitrary<StripSet> = fc
  .record({
    cut: fc.constantFrom("square" as const, "diamond-45" as const, "triangle-60" as const),
    segment: fc.integer({ min: 8, max: 120 }).map((n) => n * MARK),
    segmentsPerUnit: fc.integer({ min: 1, max: 9 }),
    width: fc.integer({ min: 8, max: 60 }).map((n) => n * MARK),
  })
  .map(({ width, ...set }) => ({
    ...set,
    name: "A",
    segmentRoundedUp: false,
    shape: null,
    mark: MARK,
    strips: [{ role: "x", width, roundedUp: false, formula: twoSeams("width"), lies: [] }],
  }));

test("the sets counted give every segment wanted, and the short last one is no longer than it must be", () => {
  fc.assert(
    fc.property(
      sets,
      fc.integer({ min: 0, max: 200 }),
      fc.integer({ min: 100, max: 360 }),
      fc.constantFrom(0, 4 * MARK, 5 * MARK + 700),
      (set, units, width, straighten) => {
        const usable = width * MARK;
        const count = countSets(set, units, usable, straighten);
        const wanted = units * set.segmentsPerUnit;
        if (count === null) {
          expect(segmentsFrom(set, usable, straighten)).toBe(0);
          return;
        }
        expect(count.fullSets * count.segmentsPerFullSet + count.lastSegments).toBe(wanted);
        expect(count.lastSegments).toBeLessThan(Math.max(1, count.segmentsPerFullSet));
        expect(count.lastLength).toBeLessThanOrEqual(usable);
        expect(count.lastLength % MARK).toBe(0);
        expect(count.lastLength === 0).toBe(count.lastSegments === 0);
        if (count.lastSegments === 0) return;
        expect(segmentsFrom(set, count.lastLength, straighten)).toBeGreaterThanOrEqual(count.lastSegments);
        expect(segmentsFrom(set, count.lastLength - MARK, straighten)).toBeLessThan(count.lastSegments);
      },
    ),
    { seed: 1880, numRuns: 500 },
  );
});
