import { expect, test } from "vitest";
import { labelSection } from "../../src/content/book/handouts/labels.ts";
import { cuttingSteps } from "../../src/content/index.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import type { Plan } from "../../src/plan/types.ts";

import { english } from "../../src/words/index.ts";
import { cutListSpec, fabric, IN, piece, solveHere } from "../support/cut-list-spec.ts";

async function planned(spare: number, kits = 1): Promise<Plan> {
  const price = { hundredths: 1200, per: "yd", currency: "$" } as const;
  const spec = cutListSpec([fabric("Sea", [piece("a", 7, 7, 6), piece("b", 2, 2, 63)], { spare, price })]);
  const { value } = await planCutLists({
    spec,
    cutLists: listCuts(spec).value ?? [],
    kits,
    solve: solveHere,
  });
  if (value === null) throw new Error("no plan");
  return value;
}

test("a spoiled strip: taken from what is left, or bought, with its price", async () => {
  // derived geometry: strips of 7 in and three of 2 in are 13 in, bought as 13 1/2 in (3/8 yd): 1/2 in is left. A strip
  // of 2 in more is 15 in, one of 7 in more 20 in: 1/2 and 5/8 yd.
  expect(cuttingSteps(await planned(0), true, english)).toContain(
    "If a 2 in strip is cut wrongly, 1/8 yd more is needed ($1.50); for a 7 in one 1/4 yd ($3.00).",
  );
  // With 3 in to spare 18 in are bought, and 5 in left: a 2 in strip comes out of them.
  expect(cuttingSteps(await planned(3 * IN), true, english)).toContain(
    "If a 2 in strip is cut wrongly, the length left takes it; for a 7 in one 1/8 yd more is needed ($1.50).",
  );
  // With 8 in to spare 22 1/2 in are bought, and 9 1/2 in left.
  expect(cuttingSteps(await planned(8 * IN), true, english)).toContain(
    "If a strip is cut wrongly, the length left uncut is enough to cut it again (widest 7 in).",
  );
});

test("cloths cut alike are told together, each kind in its own words", () => {
  expect(english.cutting.onPieces("2 1/2 in strip", 3, true, "", false)).toBe(
    "On 2 1/2 in strips, cut already (3, each cut the same):",
  );
  expect(english.cutting.onPieces("fat quarter", 1, false, "", false)).toBe("On one fat quarter:");
  expect(english.cutting.onPieces("fat quarter", 1, false, "", true)).toBe("On another fat quarter:");
  expect(english.cutting.readyCut(2, "bought 10 in square")).toBe("2 of 10 in squares");
  expect(english.cutting.readyCut(1, "bought fat quarter")).toBe("1 fat quarter");
});

test("bag labels of a class count what one kit holds", async () => {
  const labels = labelSection(await planned(0, 4), english)?.blocks.find(({ kind }) => kind === "labels");
  expect(labels?.kind === "labels" && labels.labels.map(({ count }) => count)).toEqual([
    "6 pieces",
    "63 pieces",
  ]);
});
