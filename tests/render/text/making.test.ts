import { readFileSync } from "node:fs";
import { beforeAll, expect, test } from "vitest";
import { planQuilt, USUAL_OPTIONS } from "../../../src/pipeline.ts";
import type { Plan } from "../../../src/plan/types.ts";
import { makingSteps } from "../../../src/render/text/making.ts";
import { EVERY_BORDER, make, onPoint } from "../../making/fixture.ts";
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
  expect(told).toContain("about 2.5 times the seams");
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

/** The sewing of another quilt, as if it had been planned. */
function toldOf(text: string): string {
  const { making, top } = make(text);
  return makingSteps({ ...plan, top, making });
}

test("every border says its lengths, what is trimmed, how a mitre is sewn and what the top measures then", () => {
  const text = toldOf(EVERY_BORDER);
  expect(text.split("\n").every((line) => line.length <= 98)).toBe(true);
  const flat = text.replace(/\s+/g, " ");
  expect(flat).toContain("it should be 18 1/2 in from side to side and 24 1/2 in from top to bottom");
  expect(flat).toContain("coping, left and right: 2 strips 2 in wide and 24 1/2 in long;");
  expect(flat).toContain(
    "This border makes the pieced one outside it come out: the top must measure 21 1/2 x 27 1/2 in now.",
  );
  expect(flat).toContain(
    "bars, top and bottom: 2 rows of 7 blocks, 2 1/2 in wide and 21 1/2 in long; sew a corner square to both ends",
  );
  expect(flat).toContain("27 1/2 in long; 2 in over-long, trim to 25 1/2 in once sewn");
  expect(flat).toContain(
    "2 strips 4 1/2 in wide and 46 1/4 in long for left and right, 2 strips 40 1/4 in long for top and bottom",
  );
  expect(flat).toContain("begin and stop 1/4 in from the corners of the top");
  expect(flat).toContain("mark a line at 45 degrees");
});

test("four units round one are sewn with a seam begun and closed, or divided", () => {
  const flat = toldOf(EVERY_BORDER).replace(/\s+/g, " ");
  expect(flat).toContain("divide the rectangle in column 2, line 3 in two, 2 in from its left edge.");
  expect(flat).toContain("Sew the upper unit to the middle one, from the right corner only half-way along");
  expect(flat).toContain("Close the first seam: sew on the rest of the upper unit");
});

test("quilting, bias binding and backing are told with what they take", () => {
  const flat = toldOf(EVERY_BORDER).replace(/\s+/g, " ");
  expect(flat).toContain(
    "Quilting by hand, lines 1 1/2 in apart both ways: about 61 yd of lines and 159 yd of thread",
  );
  expect(flat).toContain(
    "for 172 in of bias 2 1/2 in wide, of which 10 in are for the corners and the closing",
  );
  expect(flat).toContain("keep it upright on every panel");
  expect(flat).toContain("The backing reaches beyond the quilt by 3 in on each side");
});

test("rows on point are told from corner to corner, corners last", () => {
  const flat = toldOf(onPoint(2, 3)).replace(/\s+/g, " ");
  expect(flat).toContain("Every row is 4 1/2 in high");
  expect(flat).toContain(
    "row 1: side triangle, patch, side triangle; about 4 1/4 in along its upper edge, 13 1/4 in along its lower",
  );
  expect(flat).toContain("row 2: (corner last), 3 x patch, side triangle");
  expect(flat).toContain("Join rows 1 to 2 one to the next, and rows 3 to 4; then the two halves");
  expect(flat).toContain("Add the four corner triangles last");
});

test("where to pin first, and how thick it gets, are told with the limit", () => {
  const flat = told.replace(/\s+/g, " ");
  expect(flat).toContain("Below rows 1 and 2: 2 places; first 1 and 2.");
  expect(flat).toContain("at most 13 layers of cloth lie on one another (in 12 of 136 places");
  expect(flat).toContain("More than 12 layers, the most wanted (`most-layers` in the file).");
  expect(flat).toContain("13 layers 19 in from the left, 5 in from the top; 10 with the seam open");
});

test("a plain cut list has nothing to sew", () => {
  const { making: _, ...plain } = plan;
  expect(makingSteps(plain)).toBe("");
});
