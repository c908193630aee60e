import { expect, test } from "vitest";
import { cuttingOf } from "../../src/choices/methods/making-figures.ts";
import type { CuttingStep, FabricPlan } from "../../src/plan/types.ts";

// Two strips and five cuts across them, and the straightened end, which is neither.
test("cuts across strips are counted without the strips and without the straightened end", () => {
  const step = (kind: CuttingStep["kind"], count: number) => ({ kind, count }) as CuttingStep;
  const cuts = Array.from({ length: 8 }, () => ({})) as FabricPlan["cuts"];
  expect(cuttingOf({ steps: [step("straighten", 0), step("strips", 2)], cuts })).toEqual({
    strips: 2,
    subcuts: 5,
  });
});
