import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fromInteger, rational } from "../../../src/length/rational.ts";
import { roundSurdUpToMark, surd } from "../../../src/length/surd.ts";
import * as r from "../../../src/quilt/units/outlines/roots.ts";

const root = (n: number): r.RootSum => r.rootOf(fromInteger(n));
const whole = (n: number): r.RootSum => r.whole(fromInteger(n));
const RUNS = { seed: 1880, numRuns: 100 };

const sums = fc
  .array(fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: 1, max: 60 })), { maxLength: 4 })
  .map((terms) => r.plus([], ...terms.map(([by, of]) => r.times(whole(by), root(of)))));

describe("sums of square roots", () => {
  test("squares come out from under the root", () => {
    expect(root(8)).toEqual([{ root: 2n, by: fromInteger(2) }]);
    expect(root(49)).toEqual(whole(7));
    expect(r.rootOf(rational(1n, 2n))).toEqual([{ root: 2n, by: rational(1n, 2n) }]);
    expect(root(9973 * 9973 * 3)).toEqual([{ root: 3n, by: fromInteger(9973) }]);
    expect(r.times(root(6), root(10))).toEqual([{ root: 15n, by: fromInteger(2) }]);
  });

  test("a number is zero only when nothing is left of it", () => {
    expect(r.minus(r.times(r.plus(root(2), root(3)), r.minus(root(3), root(2))), whole(1))).toEqual([]);
    // root 2 + root 3 = 3.14626 against 3.14627
    expect(r.compareRoots(r.plus(root(2), root(3)), r.whole(rational(314627n, 100000n)))).toBe(-1);
    expect(r.signOf([])).toBe(0);
  });

  test("order, floor and marks agree with plain reckoning wherever that can tell", () => {
    fc.assert(
      fc.property(sums, sums, (a, b) => {
        const [x, y] = [r.rootsToNumber(a), r.rootsToNumber(b)];
        if (Math.abs(x - y) > 1e-6) expect(r.compareRoots(a, b)).toBe(Math.sign(x - y));
        if (Math.abs(x - Math.round(x)) > 1e-6) {
          expect(Number(r.floorOf(a))).toBe(Math.floor(x));
          expect(r.upToMark(a, 7)).toBe(Math.ceil(x / 7) * 7 + 0);
        }
        expect(r.compareRoots(whole(r.upToMark(a, 127)), a)).toBeGreaterThanOrEqual(0);
        expect(r.compareRoots(whole(r.downToMark(a, 127)), a)).toBeLessThanOrEqual(0);
        expect(r.minus(r.plus(a, b), b)).toEqual(a);
      }),
      RUNS,
    );
  });

  test("division undoes multiplication", () => {
    fc.assert(
      fc.property(sums, fc.integer({ min: -9, max: 9 }), fc.integer({ min: 1, max: 40 }), (a, n, of) => {
        const divisor = r.plus(whole(n), root(of));
        if (r.signOf(divisor) !== 0) expect(r.over(r.times(a, divisor), divisor)).toEqual(a);
      }),
      RUNS,
    );
    expect(() => r.over(whole(1), [])).toThrow(RangeError);
  });

  test("with one root it rounds as the surds of the length room do", () => {
    fc.assert(
      fc.property(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: -9999, max: 9999 }), (a, b) => {
        const one = surd(fromInteger(a), fromInteger(b), 3);
        expect(r.upToMark(r.fromSurd(one), 127) + 0).toBe(roundSurdUpToMark(one, 127) + 0);
      }),
      RUNS,
    );
  });
});
