import fc from "fast-check";
import { expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { NO_PLAN_CODES } from "../../src/diagnostics/planning.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import { clothToHand, cutLists } from "../support/arbitraries/cut-lists.ts";
import { solveHere } from "../support/cut-list-spec.ts";

/** More of them go through the same path, as files, in the benchmark's own tests. */
const RUNS = 40;

test("every plan of a random cut list, from bolt or drawer, passes the audit, and survives JSON unchanged", async () => {
  let planned = 0;
  await fc.assert(
    fc.asyncProperty(cutLists, clothToHand, async (spec, toHand) => {
      const listed = listCuts(spec);
      if (listed.value === null) {
        expect(listed.diagnostics.some(({ code }) => NO_PLAN_CODES.includes(code))).toBe(true);
        return;
      }
      const limits = { effort: 25 };
      const { value } = await planCutLists({
        spec,
        cutLists: listed.value,
        fixedStock: [toHand],
        limits,
        solve: solveHere,
      });
      if (value === null) throw new Error("a cut list that fits has no plan");
      planned += 1;
      expect(auditPlan(value)).toEqual([]);
      expect(JSON.parse(JSON.stringify(value))).toEqual(value);
    }),
    { seed: 20261125, numRuns: RUNS, endOnFailure: true },
  );
  // Most of them must be plans, or the law says little.
  expect(planned).toBeGreaterThan(0.6 * RUNS);
}, 240_000);
