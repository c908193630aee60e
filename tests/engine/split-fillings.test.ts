import fc from "fast-check";
import { expect, test } from "vitest";
import { countKinds } from "../../src/engine/oracles/oracle.ts";
import { oracleForThree } from "../../src/engine/oracles/oracle-three.ts";
import { splitFinder } from "../../src/engine/oracles/split-fillings.ts";
import { gatherKinds } from "../../src/engine/problem/reduce.ts";

const HEIGHTS = [7, 9, 10, 13];
const kinds = gatherKinds(
  HEIGHTS.map((along) => ({ across: 4, along, demand: 9, turnable: false, place: "strips" as const })),
);
const heightOf = (kind: number) => kinds[kind]!.lies[0]!.height;
const isSplit = splitFinder(oracleForThree(kinds, 40, 60));

/** Some straight cut at a whole height leaves every stack, its items in any order, on one side or the other. */
function cutByTrying(stacks: readonly number[][], height: number): boolean {
  for (let cut = 1; cut < height; cut++) {
    const passes = stacks.every((stack) => {
      for (let below = 0; below < 2 ** stack.length; below++) {
        const heights = [0, 0];
        stack.forEach((kind, i) => {
          heights[(below >> i) & 1]! += heightOf(kind);
        });
        if (heights[1]! <= cut && heights[0]! <= height - cut) return true;
      }
      return false;
    });
    if (passes) return true;
  }
  return false;
}

test("a filling is split where one straight cut goes through all its stacks, and nowhere else", () => {
  const seen = { split: 0, whole: 0 };
  const stack = fc.array(fc.nat(HEIGHTS.length - 1), { minLength: 2, maxLength: 3 });
  fc.assert(
    fc.property(fc.array(stack, { minLength: 2, maxLength: 7 }), fc.nat(1), (drawn, spare) => {
      const totalOf = (list: readonly number[]) => list.reduce((sum, kind) => sum + heightOf(kind), 0);
      // Stacks nearly as high as the strip: lower ones leave room for a cut almost anywhere.
      const highest = Math.max(...drawn.map(totalOf));
      const stacks = drawn.filter((list) => totalOf(list) >= highest - 4);
      const height = highest + spare;
      const segments = stacks.map((list) => ({ width: 4, stack: list.map((kind) => ({ kind, lie: 0 })) }));
      const filling = { level: 0, height, counts: countKinds(segments, kinds.length), segments };
      const expected = cutByTrying(stacks, height);
      seen[expected ? "split" : "whole"]++;
      expect(isSplit(filling)).toBe(expected);
    }),
    { seed: 7, numRuns: 600 },
  );
  expect(Math.min(seen.split, seen.whole)).toBeGreaterThan(20);
});

test("the rest of a sheet is never split: it is not a strip of the roll", () => {
  const sheet = { index: 0, transposed: false, strips: [] };
  expect(isSplit({ level: 0, height: 9, counts: [], segments: [], sheet })).toBe(false);
});
