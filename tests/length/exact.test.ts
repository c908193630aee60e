import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  add,
  addSurd,
  compareSurd,
  divSurd,
  fromInteger,
  mulSurd,
  type Rational,
  rational,
  roomToMark,
  roundDownToMark,
  roundSurdUpToMark,
  roundUpToMark,
  type Surd,
  sub,
  subSurd,
  surd,
  surdToNumber,
  timesRoot2,
  toTicksExact,
} from "../../src/length/index.ts";

const fraction = fc
  .tuple(fc.integer({ min: -500_000, max: 500_000 }), fc.integer({ min: 1, max: 640 }))
  .map(([n, d]) => rational(BigInt(n), BigInt(d)));
const number = (root: 2 | 3) => fc.tuple(fraction, fraction).map(([a, b]) => surd(a, b, root));

describe("fractions", () => {
  test("stay in lowest terms with a positive denominator", () => {
    expect(rational(6n, -8n)).toEqual({ n: -3n, d: 4n });
    expect(toTicksExact(rational(5n, 1n))).toBe(5);
    expect(toTicksExact(rational(5n, 2n))).toBe(null);
    expect(() => rational(1n, 0n)).toThrow();
    expect(() => fromInteger(0.5)).toThrow();
  });

  test("what is added can be taken away", () => {
    fc.assert(
      fc.property(fraction, fraction, (a, b) => {
        expect(sub(add(a, b), b)).toEqual(a);
      }),
      { seed: 1 },
    );
  });

  test("room on the cloth is told down to a mark, and less than a mark as it is", () => {
    // 112 cm less two selvages of 1/2 in is 1094.6 mm, 43.09 in: a rule in eighths promises 43.
    expect(roomToMark(1120 * 640 - 16256, { unit: "in", mark: 2032 })).toBe(43 * 16256);
    expect(roomToMark(1500, { unit: "in", mark: 2032 })).toBe(1500);
  });

  test("rounding to a mark never goes the wrong way, nor a whole mark", () => {
    fc.assert(
      fc.property(fraction, fc.constantFrom(1, 640, 1016, 1600, 2032), (value: Rational, mark) => {
        const up = Number(roundUpToMark(value, mark));
        const down = Number(roundDownToMark(value, mark));
        const exact = Number(value.n) / Number(value.d);
        expect(up - exact).toBeGreaterThanOrEqual(0);
        expect(up - exact).toBeLessThan(mark);
        expect(exact - down).toBeGreaterThanOrEqual(0);
        expect(exact - down).toBeLessThan(mark);
      }),
      { seed: 2 },
    );
  });
});

describe.each([2, 3] as const)("numbers with a root of %d", (root) => {
  test("divide back, and compare as they differ", () => {
    fc.assert(
      fc.property(number(root), number(root), (x: Surd, y: Surd) => {
        if (compareSurd(y, surd(fromInteger(0))) === 0) return;
        expect(compareSurd(divSurd(mulSurd(x, y), y), x)).toBe(0);
        expect(compareSurd(addSurd(subSurd(x, y), y), x)).toBe(0);
      }),
      { seed: 3 },
    );
  });

  test("round up to the mark above and no further, proved by exact comparison", () => {
    fc.assert(
      fc.property(number(root), fc.constantFrom(1, 640, 1600, 2032), (x, mark) => {
        const up = roundSurdUpToMark(x, mark);
        expect(compareSurd(surd(fromInteger(up)), x)).toBeGreaterThanOrEqual(0);
        expect(compareSurd(surd(fromInteger(up - mark)), x)).toBe(-1);
        expect(Math.abs(up - surdToNumber(x))).toBeLessThanOrEqual(mark + 1);
      }),
      { seed: 4 },
    );
  });
});

test("the two roots do not mix", () => {
  expect(() => addSurd(timesRoot2(fromInteger(1)), surd(fromInteger(0), fromInteger(1), 3))).toThrow();
});

describe("diagonals in trade sizes", () => {
  const eighth = 2032;
  const quarterInch = fromInteger(4064);
  const two = fromInteger(2);
  // derived geometry: a square halved once exceeds the finished leg by seam * (2 + sqrt 2); 7/8 in by the eighth.
  test("7/8 in more for half-square triangles at a quarter-inch seam", () => {
    const extra = mulSurd(surd(quarterInch), surd(two, fromInteger(1), 2));
    expect(roundSurdUpToMark(extra, eighth)).toBe(7 * eighth);
  });
  // derived geometry: quartered squares need seam * (2 + 2 sqrt 2) more; 1 1/4 in by the eighth.
  test("1 1/4 in more for quarter-square triangles at a quarter-inch seam", () => {
    const extra = mulSurd(surd(quarterInch), surd(two, two, 2));
    expect(roundSurdUpToMark(extra, eighth)).toBe(10 * eighth);
  });
  // derived geometry: the same at seams of 6, 6.35, 7.5 and 10 mm, rounded up to the next millimetre.
  test.each([
    [6, 21, 29],
    [7.5, 26, 37],
    [10, 35, 49],
  ])("a seam of %d mm", (seam, half, quarter) => {
    const exact = rational(BigInt(seam * 10), 10n);
    const ticks = surd(rational(exact.n * 640n, exact.d));
    expect(roundSurdUpToMark(mulSurd(ticks, surd(two, fromInteger(1), 2)), 640)).toBe(half * 640);
    expect(roundSurdUpToMark(mulSurd(ticks, surd(two, two, 2)), 640)).toBe(quarter * 640);
  });
});
