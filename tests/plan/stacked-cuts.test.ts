import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { buyList } from "../../src/content/buying/buy.ts";
import { planQuilt, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import type { Plan } from "../../src/plan/types.ts";
import { english } from "../../src/words/index.ts";

const text = readFileSync(new URL("../../fixtures/cutlists/tide-pool.yaml", import.meta.url), "utf8");
const options = { ...USUAL_OPTIONS, suggestStacks: true };

async function planned(file: string, asked = options): Promise<Plan> {
  const { value } = await planQuilt(file, "tide-pool.yaml", asked, solveHere);
  return value!;
}

test("where no style is named, what the freer one saves is told, and it is so", async () => {
  const plan = await planned(text);
  const [sea, starfish] = plan.fabrics;
  expect(plan.style).toBe("strips-2");
  expect(starfish?.stacked).toBeUndefined();
  expect(sea?.stacked?.purchase.length).toBeLessThan(sea!.purchase!.length);
  const stacked = await planned(text, { ...options, style: "strips-3" });
  expect(stacked.fabrics[0]?.purchase).toEqual(sea?.stacked?.purchase);
  expect(stacked.fabrics[0]?.stacked).toBeUndefined();
  expect(buyList(plan, english)).toContain(
    'Night sea: 5/8 yd would do, 1/8 yd less, if one strip were turned and cut once more along its length: write "style: strips-3" in the file.',
  );
});

test("nothing is suggested to a maker who chose a style", async () => {
  const plan = await planned(text.replace("units: in", "units: in\nstyle: strips-2"));
  expect(plan.fabrics.every(({ stacked }) => stacked === undefined)).toBe(true);
});

test("the audit refuses a saving that is none", async () => {
  const plan = await planned(text);
  expect(auditPlan(plan)).toEqual([]);
  const [sea] = plan.fabrics;
  const { length, needed } = sea!.purchase!;
  const same = { ...sea!, stacked: { ...sea!.stacked!, purchase: { ...sea!.purchase! } } };
  const short = {
    ...sea!,
    stacked: { ...sea!.stacked!, purchase: { ...sea!.stacked!.purchase, needed: length } },
  };
  for (const wrong of [same, short])
    expect(auditPlan({ ...plan, fabrics: [wrong, ...plan.fabrics.slice(1)] })).not.toEqual([]);
  expect(needed).toBeLessThanOrEqual(length);
});
