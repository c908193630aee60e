import { expect, test } from "vitest";
import { cuttingOf } from "../../src/choices/making-figures.ts";
import type { CuttingStep, FabricPlan } from "../../src/plan/types.ts";
import { INCH, workOut } from "../quilt/reading.ts";

// derived geometry: a top of 12 1/2 in raw and 4 in beyond it on each side, in cloth 90 in wide: one piece of 20 1/2 in.
test("wadding cut from a fabric of the file reaches beyond the quilt on both sides", () => {
  const { cutLists } = workOut(`name: W
fabrics: [{ name: tar }, { name: fleece, width: 90 in, selvage: 0 }]
blocks: { a: { size: 12, cell: { square: tar } } }
setting: { rows: a }
wadding: { fabric: fleece, overhang: 4 }
`);
  const fleece = cutLists.find(({ fabric }) => fabric.name === "fleece");
  expect(fleece?.pieces.map(({ across, along, count }) => [across / INCH, along / INCH, count])).toEqual([
    [20.5, 20.5, 1],
  ]);
});

// Two strips and five cuts across them, and the straightened end, which is neither.
test("cuts across strips are counted without the strips and without the straightened end", () => {
  const step = (kind: CuttingStep["kind"], count: number) => ({ kind, count }) as CuttingStep;
  const cuts = Array.from({ length: 8 }, () => ({})) as FabricPlan["cuts"];
  expect(cuttingOf({ steps: [step("straighten", 0), step("strips", 2)], cuts })).toEqual({
    strips: 2,
    subcuts: 5,
  });
});
