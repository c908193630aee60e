import { describe, expect, test } from "vitest";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { runJob } from "../../src/engine/index.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import { posePackingProblem } from "../../src/plan/pose-problem.ts";
import type { PieceSpec } from "../../src/spec/types.ts";
import { lengthLimit } from "../../src/stock/index.ts";
import { cutListSpec, fabric, fullWidth, IN, piece, solveHere } from "../support/cut-list-spec.ts";

async function planned(pieces: readonly PieceSpec[]) {
  const spec = cutListSpec([fabric("Sea", pieces)]);
  const [cutList] = listCuts(spec).value ?? [];
  const { value } = await planCutLists({ spec, cutLists: [cutList!], solve: solveHere });
  const plan = value!.fabrics[0]!;
  return { cutList: cutList!, plan, narrowest: plan.sturdiness.narrowestUsable };
}

describe("the narrowest width at which the same purchase works", () => {
  test("is where one strip more would be needed", async () => {
    // 18 squares of 4 1/2 in: two strips of nine from 42 in, 9 in, 1/4 yd. Nine need 40 1/2 in.
    expect((await planned([piece("square", 4.5, 4.5, 18)])).narrowest).toBe(40.5 * IN);
    // Sixteen of them are two strips of eight: 36 in.
    expect((await planned([piece("square", 4.5, 4.5, 16)])).narrowest).toBe(36 * IN);
  });

  test("uses what the shop's rounding gives", async () => {
    // Ten 3 in squares: one strip, 3 in, but 1/8 yd is 4 1/2 in: no second strip fits, so all ten need 30 in.
    expect((await planned([piece("square", 3, 3, 10)])).narrowest).toBe(30 * IN);
    // Ten 2 in squares: two strips fit into 1/8 yd, so five to a strip will do: 10 in.
    expect((await planned([piece("square", 2, 2, 10)])).narrowest).toBe(10 * IN);
  });

  test("works there by the engine's own account, and proved not a step below", async () => {
    const { cutList, plan, narrowest } = await planned([
      piece("a", 3.5, 5, 21),
      piece("b", 2.5, 6.5, 30),
      piece("c", 4, 4, 9),
    ]);
    const limit = lengthLimit(cutList.fabric, plan.purchase!.length);
    const least = async (usable: number) => {
      const problem = posePackingProblem(cutList, { usable, fixedStock: [] }, "strips-2");
      return runJob({ kind: "pack", problem, limits: { budget: 5000, target: limit } });
    };
    expect((await least(narrowest!)).objective).toBeLessThanOrEqual(limit);
    expect((await least(narrowest! - IN / 4)).objective).toBeGreaterThan(limit);
  });

  test("joined strips must still make their length from as many", async () => {
    // 100 in of binding, 2 1/2 in lost at each diagonal join: three strips, so each at least 35 in.
    const binding = piece("binding", 2.5, 100, 1, { join: "diagonal" });
    expect((await planned([binding])).narrowest).toBe(35 * IN);
  });

  test("is not worked out for strips that are used at whatever length they come", async () => {
    expect((await planned([fullWidth("binding", 2.5, 3), piece("square", 4, 4, 9)])).narrowest).toBeNull();
  });
});
