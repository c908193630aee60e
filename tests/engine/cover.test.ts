import { expect, test } from "vitest";
import { coverRows, meetsDemand } from "../../src/engine/filling/cover.ts";
import { fillVector } from "../../src/engine/filling/vector-fill.ts";
import type { Filling } from "../../src/engine/oracles/oracle.ts";
import { highsSolver } from "../../src/engine/solver/highs.ts";
import type { IntegerProgram } from "../../src/engine/solver/types.ts";

const filling = (counts: number[]): Filling => ({ level: 0, height: 5, counts, segments: [] });

test("a kind that is wanted asks for a row, with no more than is wanted in any column", () => {
  expect(coverRows([[4, 1]], [3, 2])).toEqual([
    { lower: 3, upper: Number.POSITIVE_INFINITY, columns: [0], values: [3] },
    { lower: 2, upper: Number.POSITIVE_INFINITY, columns: [0], values: [1] },
  ]);
  expect(coverRows([[4, 0]], [3, 2])).toBeNull();
});

test("a kind of which nothing is wanted makes no strip impossible", async () => {
  // As beside bands: the first kind lies in them whole, so the strips are asked for the second alone.
  const solver = await highsSolver();
  const solve = (program: IntegerProgram) => solver.integer(program, 1000);
  const outcome = fillVector([filling([0, 2])], [2], [0, 3], true, solve);
  expect(outcome.answer).toBe("filled");
  expect(fillVector([filling([0, 2])], [1], [0, 3], true, solve).answer).toBe("impossible");
});

test("what strips hold is counted in whole numbers", () => {
  const strips = [{ filling: filling([2, 1]), count: 2 }];
  expect(meetsDemand(strips, [4, 2])).toBe(true);
  expect(meetsDemand(strips, [4, 3])).toBe(false);
});
