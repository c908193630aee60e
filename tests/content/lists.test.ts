import { expect, test } from "vitest";
import { buyList, wasteTable } from "../../src/content/index.ts";
import type { Plan } from "../../src/plan/types.ts";
import { buyCsv, cutsCsv } from "../../src/print/csv/index.ts";
import { buyJson, type PlanAnswer, planJson } from "../../src/print/json/index.ts";
import { english } from "../../src/words/index.ts";
import { goodPlan } from "../support/good-plan.ts";

/** The sample plan with other names, for what names can do to a table. */
async function named(...names: string[]): Promise<Plan> {
  const plan = await goodPlan();
  return {
    ...plan,
    fabrics: plan.fabrics.map((fabric, i) => ({ ...fabric, name: names[i] ?? fabric.name })),
  };
}

test("the buy list says amount, cut length and price", async () => {
  const lines = buyList(await goodPlan(), english).split("\n");
  expect(lines[2]).toMatch(/^fabric +buy +cut length +price +least possible\?$/);
  expect(lines[3]).toMatch(/^Tideline +\S.* yd +\S.* in +\$\d+\.\d\d +proven$/);
  expect(lines[4]).toMatch(/^Lamp +\S.* yd +\S.* in +proven$/);
});

test("columns line up under wide letters", async () => {
  const [, , head = "", first = "", second = ""] = buyList(await named("藍染め", "Lamp"), english).split(
    "\n",
  );
  // Each wide letter takes two columns: three of them push the rest three letters to the left.
  expect(first.indexOf("藍染め")).toBe(0);
  expect(first.search(/\d/) + 3).toBe(head.indexOf("buy"));
  expect(second.search(/\d/)).toBe(head.indexOf("buy"));
});

test("every line of the waste table adds up to what was bought", async () => {
  const rows = wasteTable(await goodPlan(), english)
    .split("\n")
    .filter((line) => /^(Tideline|Lamp|total) /.test(line));
  expect(rows).toHaveLength(6);
  for (const row of rows) {
    const cells = row
      .split(/ {2,}/)
      .slice(1)
      .map((cell) => Math.round(Number(cell.replace("-", "0")) * 10));
    const bought = cells.pop();
    expect(cells.reduce((sum, cell) => sum + cell, 0)).toBe(bought);
  }
});

test("CSV is quoted where needed and runs no formula", async () => {
  const plan = await named("=SUM(A1:A9)", 'Lamp, "warm"');
  const [head, first] = cutsCsv(plan, english).split("\r\n");
  expect(head).toBe(
    "fabric,letter,label,count,across (in),along (in),turn,print,cut,cut further,diagonal,note",
  );
  expect(first).toMatch(/^'=SUM\(A1:A9\),A,/);
  expect(cutsCsv(plan, english)).toContain('"Lamp, ""warm""",');
  expect(buyCsv(plan, english).endsWith("\r\n")).toBe(true);
});

test("JSON reads back as the plan", async () => {
  const plan = await goodPlan();
  const { lengths: _told, texts: _said, ...printed } = JSON.parse(planJson(plan, english)) as PlanAnswer;
  expect(printed).toEqual(JSON.parse(JSON.stringify(plan)));
  expect(JSON.parse(buyJson(plan, english)).fabrics).toHaveLength(2);
});
