import fc from "fast-check";
import { expect, test } from "vitest";
import { wholeShares } from "../../src/content/buying/shares.ts";

test("shares add up to the whole, and none is off by a unit or more", () => {
  fc.assert(
    fc.property(
      fc.array(fc.nat(1_000_000), { minLength: 1, maxLength: 8 }),
      fc.integer({ min: 1, max: 999 }),
      (parts, unit) => {
        const { parts: shares, whole } = wholeShares(parts, unit);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBe(whole);
        shares.forEach((share, i) => {
          expect(Math.abs(share - (parts[i] ?? 0) / unit)).toBeLessThanOrEqual(1);
        });
      },
    ),
  );
});

test("a third each of a hundred percent", () => {
  expect(wholeShares([1, 1, 1], 3 / 1000)).toEqual({ parts: [334, 333, 333], whole: 1000 });
});
