import { describe, expect, test } from "vitest";
import type { PackingResult, Section } from "../../src/engine/types.ts";
import { ontoBolts } from "../../src/plan/packing/onto-bolts.ts";
import { leastPurchase, mostOfBolt, purchaseOfLengths, type SoldCloth } from "../../src/stock/index.ts";
import { IN } from "../support/cut-list-spec.ts";

const YARD = 36 * IN;
const cloth = (bolt: number, spare = 0): SoldCloth => ({
  shrinkAlong: 0,
  straighten: IN,
  spare,
  sold: { unit: "yd", step: YARD / 8, least: YARD / 8 },
  bolt: { length: bolt },
  price: null,
});

function packed(strips: readonly (readonly [along: number, count: number])[]): PackingResult {
  const sections = strips.map(([along, count]): Section => {
    return { kind: "strips", count, column: { along, segments: [] } };
  });
  const rollLength = strips.reduce((sum, [along, count]) => sum + along * count, 0);
  return {
    status: "best-found",
    objective: rollLength,
    rollLength,
    bound: { value: 0, kind: "area", style: "strips-2" },
    layouts: [{ stock: "roll", sheet: -1, count: 1, firstCut: "across", sections }],
    missing: [],
    stats: { milliseconds: 0, cutShort: null },
  };
}

/** The least to buy by trying every way of dealing each strip to one of so many bolts. */
function leastByTrying(fabric: SoldCloth, strips: readonly number[], bolts: number): number {
  const most = mostOfBolt(fabric)!;
  let best = Number.POSITIVE_INFINITY;
  const loads = Array.from({ length: bolts }, () => 0);
  const put = (at: number): void => {
    if (at === strips.length) {
      // The spare goes where it suits.
      for (let last = 0; last < bolts; last++) {
        const others = loads.filter((_, i) => i !== last);
        if (loads.some((load) => load === 0) || loads[last]! + fabric.spare > most) continue;
        best = Math.min(best, purchaseOfLengths(fabric, [...others, loads[last]!]).length);
      }
      return;
    }
    for (let bolt = 0; bolt < bolts; bolt++) {
      if (loads[bolt]! + strips[at]! > most) continue;
      loads[bolt]! += strips[at]!;
      put(at + 1);
      loads[bolt]! -= strips[at]!;
      if (loads[bolt] === 0) break;
    }
  };
  put(0);
  return best;
}

describe("strips on bolts that end", () => {
  test("stay together where one bolt is long enough", () => {
    expect(ontoBolts(cloth(2 * YARD), packed([[4 * IN, 17]]))).toHaveLength(1);
  });

  test("fill the first bolts", () => {
    // 60 strips of 4 1/2 in and an end of 1 in for each length: 7 7/8 yd of 8 yd hold 63, so 60 take 271 in.
    const bolts = ontoBolts(cloth(5 * YARD), packed([[4.5 * IN, 60]]));
    expect(bolts.map(({ used }) => used)).toEqual([39 * 4.5 * IN, 21 * 4.5 * IN]);
  });

  // A second model: every way of dealing out small lists.
  test("take as few bolts, and then as little, as any dealing out", () => {
    let seed = 7;
    const next = (most: number) => {
      seed = (seed * 48271) % 2147483647;
      return seed % most;
    };
    for (let round = 0; round < 60; round++) {
      const fabric = cloth(YARD, next(3) === 0 ? 2 * IN : 0);
      const kinds = Array.from({ length: 1 + next(3) }, (): [number, number] => [
        (3 + next(20)) * (IN / 2),
        1 + next(4),
      ]);
      const result = packed(kinds);
      const bolts = ontoBolts(fabric, result);
      const most = mostOfBolt(fabric)!;
      expect(bolts.reduce((sum, { used }) => sum + used, 0)).toBe(result.rollLength);
      if (bolts.length < 2) continue;
      const strips = kinds.flatMap(([along, count]) => Array.from({ length: count }, () => along));
      strips.sort((a, b) => b - a);
      for (const { used } of bolts) expect(used).toBeLessThanOrEqual(most);
      const bought = purchaseOfLengths(
        fabric,
        bolts.map(({ used }) => used),
      ).length;
      expect(bought).toBeGreaterThanOrEqual(leastPurchase(fabric, result.rollLength));
      const fewer = leastByTrying(fabric, strips, bolts.length - 1);
      expect(bought).toBeLessThanOrEqual(Math.min(fewer, leastByTrying(fabric, strips, bolts.length)));
    }
  });
});
