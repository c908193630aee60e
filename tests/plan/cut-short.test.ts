import { expect, test } from "vitest";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import type { SearchLimits } from "../../src/engine/types.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import { cutListSpec, fabric, piece, solveHere } from "../support/cut-list-spec.ts";

const spec = cutListSpec([
  fabric("Sea", [
    piece("a", 3.5, 5.25, 37),
    piece("b", 2.5, 6.5, 41),
    piece("c", 4.125, 4.75, 29),
    piece("d", 1.875, 9, 17),
  ]),
]);

async function told(limits: SearchLimits): Promise<string[]> {
  const { value } = await planCutLists({ spec, cutLists: listCuts(spec).value!, limits, solve: solveHere });
  return value!.diagnostics.map(({ code }) => code);
}

test("a plan whose search the clock or the maker ended says so; counted work needs no such word", async () => {
  expect(await told({ effort: 1000, shouldStop: () => true })).toContain("SEARCH-CUT-SHORT");
  expect(await told({ effort: 1 })).not.toContain("SEARCH-CUT-SHORT");
});
