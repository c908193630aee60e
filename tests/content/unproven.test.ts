import { describe, expect, test } from "vitest";
import { buyList, cuttingSteps } from "../../src/content/index.ts";
import { drawFabric } from "../../src/draw/index.ts";
import type { FabricPlan, Plan } from "../../src/plan/types.ts";
import { buyCsv } from "../../src/print/csv/index.ts";
import { bookOf, bookPage, handoutMarkdown, handoutText } from "../../src/print/index.ts";
import { english } from "../../src/words/index.ts";
import { goodPlan } from "../support/good-plan.ts";

/** The plan with what is proved of its fabrics taken away, as `open` says. */
async function unproven(open: (fabric: FabricPlan) => FabricPlan): Promise<Plan> {
  const plan = await goodPlan();
  return { ...plan, fabrics: plan.fabrics.map(open) };
}

const lengthOpen = (fabric: FabricPlan): FabricPlan => ({
  ...fabric,
  bound: { ...fabric.bound, least: fabric.bound.used - 5080, lengthProven: false, purchaseProven: false },
});

const mixOpen = (fabric: FabricPlan): FabricPlan => ({
  ...lengthOpen(fabric),
  mix: { ...NO_MIX, ...fabric.mix, proven: false },
});

/** Nothing ready cut is bought, at no price. */
const NO_MIX: NonNullable<FabricPlan["mix"]> = { cost: null, currency: "", proven: false, choices: [] };

/** Every place where something is called proven. */
function boasts(text: string): string[] {
  // Where it is said that it is not, and what the word means, are no boasts.
  const said = text
    .replace(/<[^>]*>/g, " ")
    .replace(/not proven( least)?/gi, "")
    .replace(/proven\W+The plan was checked against every/gi, "");
  return said.match(/.{0,40}\b(proven|proved)\b.{0,20}/gi) ?? [];
}

const PRINTS: Record<string, (plan: Plan) => string> = {
  "buy list": (one) => buyList(one, english),
  steps: (plan) => cuttingSteps(plan, true, english),
  diagram: (plan) => plan.fabrics.map((_, i) => drawFabric(plan, i, english)).join("\n"),
  book: (plan) => bookPage(plan, english),
  "handout in text": (plan) => handoutText(bookOf(plan, english), english),
  "handout in Markdown": (plan) => handoutMarkdown(bookOf(plan, english)),
};

describe.each(Object.entries(PRINTS))("%s", (_, print) => {
  test("calls a proved plan proven", async () => {
    expect(boasts(print(await goodPlan())).length).toBeGreaterThan(0);
  });

  test.each([
    ["a length", lengthOpen],
    ["a mix", mixOpen],
  ] as const)("never calls %s proven that is only the best found", async (_, open) => {
    expect(boasts(print(await unproven(open)))).toEqual([]);
  });
});

test("the table for other programs says yes and no", async () => {
  const last = (text: string): string[] =>
    text
      .trim()
      .split(/\r?\n/)
      .map((line) => line.split(",").at(-1) ?? "");
  expect(last(buyCsv(await goodPlan(), english))).toEqual(["proven", "yes", "yes"]);
  expect(last(buyCsv(await unproven(lengthOpen), english))).toEqual(["proven", "no", "no"]);
  expect(last(buyCsv(await unproven(mixOpen), english))).toEqual(["proven", "no", "no"]);
});
