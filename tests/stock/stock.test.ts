import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CENTIMETRE, INCH, METRE, YARD } from "../../src/length/index.ts";
import {
  clothDefaults,
  lengthLimit,
  purchaseFor,
  type SoldCloth,
  tradeSize,
  usableWidth,
} from "../../src/stock/index.ts";

const plain: SoldCloth = {
  shrinkAlong: 0,
  straighten: 0,
  spare: 0,
  sold: { unit: "yd", step: YARD / 8, least: YARD / 8 },
  price: null,
};

describe("usable width", () => {
  test("is the width of fabric less both selvages", () => {
    expect(usableWidth({ width: 44 * INCH, selvage: INCH / 2, shrinkAcross: 0 })).toBe(43 * INCH);
  });

  test("shrinks to the tick below", () => {
    expect(usableWidth({ width: 101, selvage: 0, shrinkAcross: 30 })).toBe(97);
  });

  test("is never negative", () => {
    expect(usableWidth({ width: INCH, selvage: INCH, shrinkAcross: 0 })).toBe(0);
  });

  test("the defaults leave 42 in and 107 cm", () => {
    expect(usableWidth({ ...clothDefaults("imperial"), shrinkAcross: 0 })).toBe(42 * INCH);
    expect(usableWidth({ ...clothDefaults("metric"), shrinkAcross: 0 })).toBe(107 * CENTIMETRE);
  });
});

describe("what to buy", () => {
  // 5 strips of 2 1/2 in, 12 1/2 in, 13 1/4 in with shrinkage, sold as 3/8 yd: a published yardage example
  // (eighty 2 1/2 in squares at 40 in, 6 percent for shrinkage).
  test("3/8 yd for 12 1/2 in with shrinkage", () => {
    const bought = purchaseFor({ ...plain, shrinkAlong: 57 }, (25 * INCH) / 2);
    expect(bought.text).toBe("3/8 yd");
    expect(bought.needed / INCH).toBeCloseTo(13.25, 1);
  });

  // 63 1/2 x 90 1/2 in quilt, eight 2 1/2 in strips from 5/8 yd: a published binding example.
  test("5/8 yd for eight strips of 2 1/2 in", () => {
    expect(purchaseFor(plain, 20 * INCH).text).toBe("5/8 yd");
  });

  // 66 x 82 in quilt, eight strips of 2 1/4 in from 2/3 yd: a published binding example where thirds are sold.
  test("2/3 yd for eight strips of 2 1/4 in, sold in thirds", () => {
    const thirds: SoldCloth = { ...plain, sold: { unit: "yd", step: YARD / 3, least: YARD / 3 } };
    expect(purchaseFor(thirds, 18 * INCH).text).toBe("2/3 yd");
  });

  test("straightening and spare come on top", () => {
    const bought = purchaseFor({ ...plain, straighten: INCH, spare: 2 * INCH }, 33 * INCH);
    expect(bought).toEqual({ length: YARD, text: "1 yd", needed: 36 * INCH, cost: null });
  });

  test("no less than the shop will cut", () => {
    const least: SoldCloth = { ...plain, sold: { unit: "m", step: METRE / 20, least: METRE / 4 } };
    expect(purchaseFor(least, 3 * CENTIMETRE).text).toBe("0.25 m");
  });

  test("the cost is exact to the hundredth, a half going up", () => {
    const priced: SoldCloth = { ...plain, price: { hundredths: 1250, per: "yd", currency: "$" } };
    expect(purchaseFor(priced, (11 * YARD) / 8).cost).toBe(1719);
    const metric: SoldCloth = { ...priced, price: { hundredths: 1890, per: "m", currency: "EUR" } };
    expect(
      purchaseFor({ ...metric, sold: { unit: "m", step: METRE / 10, least: METRE / 10 } }, METRE).cost,
    ).toBe(1890);
  });

  test("what is bought allows what was used, and one step less would not", () => {
    const cloth = fc.record({
      shrinkAlong: fc.integer({ min: 0, max: 250 }),
      straighten: fc.integer({ min: 0, max: 2 * INCH }),
      spare: fc.integer({ min: 0, max: YARD }),
      sold: fc.constantFrom(
        { unit: "yd" as const, step: YARD / 8, least: YARD / 8 },
        { unit: "yd" as const, step: YARD / 3, least: YARD / 4 },
        { unit: "m" as const, step: METRE / 10, least: METRE / 2 },
        { unit: "cm" as const, step: 5 * CENTIMETRE, least: 5 * CENTIMETRE },
      ),
      price: fc.constant(null),
    });
    fc.assert(
      fc.property(cloth, fc.integer({ min: 0, max: 20 * YARD }), (fabric, used) => {
        const { length, needed } = purchaseFor(fabric, used);
        expect(length % fabric.sold.step).toBe(0);
        expect(length).toBeGreaterThanOrEqual(Math.max(needed, fabric.sold.least));
        expect(lengthLimit(fabric, length)).toBeGreaterThanOrEqual(used);
        expect(lengthLimit(fabric, needed)).toBeGreaterThanOrEqual(used);
        expect(lengthLimit(fabric, needed - 1)).toBeLessThan(used);
        const smaller = length - fabric.sold.step;
        if (smaller >= fabric.sold.least) expect(lengthLimit(fabric, smaller)).toBeLessThan(used);
      }),
      { seed: 5, numRuns: 2000 },
    );
  });
});

describe("trade sizes", () => {
  test("a fat quarter is 18 x 21 in, a metric one 50 x 55 cm", () => {
    expect(tradeSize("Fat quarters")).toMatchObject({ across: 21 * INCH, along: 18 * INCH });
    expect(tradeSize("metric fat quarter")).toMatchObject({
      across: 55 * CENTIMETRE,
      along: 50 * CENTIMETRE,
    });
  });

  test("precut squares and strips", () => {
    expect(tradeSize("5 in precut square")).toMatchObject({ across: 5 * INCH, along: 5 * INCH });
    expect(tradeSize("2 1/2 in precut strips")).toMatchObject({ across: null, along: 2.5 * INCH });
    expect(tradeSize("half a mile")).toBe(null);
  });
});
