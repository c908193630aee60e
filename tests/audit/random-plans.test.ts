import fc from "fast-check";
import { expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { NO_PLAN_CODES } from "../../src/diagnostics/planning.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import { clothToHand, cutLists } from "../support/arbitraries/cut-lists.ts";
import { solveHere } from "../support/cut-list-spec.ts";

/** More of them go through the same path, as files, in the benchmark's own tests. */
const RUNS = 30;

test("every plan of a random cut list, from bolt or drawer, passes the audit, and survives JSON unchanged", async () => {
  let planned = 0;
  const met = { stock: 0, strip: 0, bought: 0, kits: 0 };
  await fc.assert(
    fc.asyncProperty(cutLists, clothToHand, fc.constantFrom(1, 1, 1, 2, 3), async (spec, toHand, kits) => {
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
        kits,
        limits,
        solve: solveHere,
      });
      if (value === null) throw new Error("a cut list that fits has no plan");
      planned += 1;
      const [one] = value.fabrics;
      met.stock += Number(one?.stock?.some(({ used }) => used > 0) ?? false);
      met.strip += Number(one?.stock?.some(({ strip, used }) => strip && used > 0) ?? false);
      met.bought += Number(one?.stock?.some(({ from, used }) => from === "shop" && used > 0) ?? false);
      met.kits += Number(one?.kitShares !== undefined);
      expect(auditPlan(value)).toEqual([]);
      expect(JSON.parse(JSON.stringify(value))).toEqual(value);
    }),
    { seed: 20261125, numRuns: RUNS, endOnFailure: true },
  );
  // Most of them must be plans, or the law says little.
  expect(planned).toBeGreaterThan(0.6 * RUNS);
  for (const [what, times] of Object.entries(met)) expect(times, what).toBeGreaterThan(0);
}, 240_000);
