import { expect, test } from "vitest";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import { cutListSpec, fabric, IN, piece, solveHere } from "../support/cut-list-spec.ts";

test("every cause by hand, in square inches", async () => {
  // 44 in with 1 in selvages, washed: 5 % shorter. Nine 4 in squares and fifteen 3 in squares: fourteen
  // of these fill a strip of 3 in, the fifteenth is trimmed from the strip of 4 in, of which 3 in are left.
  // Needed: (7 + 1/2 + 1) / 0.95 = 8.95 in, so 1/4 yd. Washing rounds down to a tick: compared to 1/100 sq in.
  const spec = cutListSpec(
    [
      fabric("Sea", [piece("four", 4, 4, 9, {}), piece("three", 3, 3, 15, {})], {
        shrinkAlong: 50,
        straighten: IN / 2,
        spare: IN,
      }),
    ],
    { keepFrom: 2 * IN },
  );
  const { value } = await planCutLists({ spec, cutLists: listCuts(spec).value ?? [], solve: solveHere });
  const sea = value!.fabrics[0]!;
  expect(sea.purchase?.text).toBe("1/4 yd");
  const square = (area: number) => Math.round((area / IN / IN) * 100) / 100;
  const waste = Object.fromEntries(sea.waste.lines.map(({ cause, area }) => [cause, square(area)]));
  // 9 in bought are 8.55 in washed: 44 x 0.45, 2 x 8.55, 42 x 1/2, 3 x 1, 3 x 4, 42 x 1.05.
  expect(waste).toEqual({
    shrinkage: 19.8,
    selvage: 17.1,
    straightening: 21,
    trimming: 3,
    "strip-end": 12,
    "uncut-end": 44.1,
  });
  expect(square(sea.waste.pieces)).toBe(9 * 16 + 15 * 9);
  const sum = sea.waste.lines.reduce((total, { area }) => total + area, sea.waste.pieces);
  expect(sum).toBe(sea.waste.bought);
  expect(sea.leftovers).toEqual([{ lay: 0, across: 3 * IN, along: 4 * IN, count: 1, cause: "strip-end" }]);
});
