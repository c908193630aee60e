import { readFileSync } from "node:fs";
import { beforeAll, expect, test } from "vitest";
import { planQuilt, USUAL_OPTIONS } from "../../../src/pipeline.ts";
import type { Plan } from "../../../src/plan/types.ts";
import { makingSteps } from "../../../src/render/text/making.ts";
import { solveHere } from "../../support/cut-list-spec.ts";

let plan: Plan;
let told: string;

beforeAll(async () => {
  const file = new URL("../../../fixtures/quilts/nine-stars.yaml", import.meta.url);
  const { value } = await planQuilt(readFileSync(file, "utf8"), "quilt.yaml", USUAL_OPTIONS, solveHere);
  if (value === null) throw new Error("no plan");
  plan = value;
  told = makingSteps(plan);
});

test("a quilt's plan says how it is sewn, with cautions and the rule behind every estimate", () => {
  expect(told).toMatch(/^Nine stars: sewing\n/);
  expect(told).toContain("An iron burns");
  expect(told).toContain("2.508 times the seams");
  expect(told.split("\n").every((line) => line.length <= 98)).toBe(true);
  const order = ["Units", "Block star", "Rows and top", "Borders", "Pressing", "Finishing"];
  const places = order.map((title) => told.indexOf(`\n${title}`));
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(places).not.toContain(-1);
});

test("pressing is told by rows, and a second way of pressing a block is named", () => {
  const flat = told.replace(/\s+/g, " ");
  expect(flat).toContain("press rows 1 and 3 to the right and row 2 to the left");
  expect(flat).toContain(
    "star A: press row 1 to the right, row 2 to the left, row 3 to the right and the seams between rows downwards.",
  );
  expect(flat).toContain("Pressed all alike, 24 places would not nest.");
  expect(flat).toContain("All 64 places where seams meet nest.");
});

test("places that do not nest are listed", () => {
  const { making } = plan;
  if (making?.pressing == null) throw new Error("no pressing");
  const open = [{ x: 16256, y: 32512 }];
  const pressing = { ...making.pressing, variants: 1 as const, open };
  const text = makingSteps({ ...plan, making: { ...making, pressing } }).replace(/\s+/g, " ");
  expect(text).toContain("1 does not nest; fewer is not possible with the blocks pressed so (proved)");
  expect(text).toContain("1 in from the left, 2 in from the top");
});

test("a plain cut list has nothing to sew", () => {
  const { making: _, ...plain } = plan;
  expect(makingSteps(plain)).toBe("");
});
