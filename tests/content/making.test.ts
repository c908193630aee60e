import { readFileSync } from "node:fs";
import { beforeAll, expect, test } from "vitest";
import { makingSteps } from "../../src/content/sewing/making.ts";
import { planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import type { Plan } from "../../src/plan/types.ts";
import { english } from "../../src/words/index.ts";
import { EVERY_BORDER, make, onPoint } from "../making/fixture.ts";
import { solveHere } from "../support/cut-list-spec.ts";

let plan: Plan;
let told: string;

beforeAll(async () => {
  const file = new URL("../../fixtures/quilts/nine-stars.yaml", import.meta.url);
  const { value } = await planQuilt(readFileSync(file, "utf8"), "quilt.yaml", USUAL_OPTIONS, solveHere);
  if (value === null) throw new Error("no plan");
  plan = value;
  told = makingSteps(plan, english);
});

test("a quilt's plan says how it is sewn, with cautions and the rule behind every estimate", () => {
  expect(told).toMatch(/^Nine stars: sewing\n/);
  expect(told).toContain("An iron burns");
  expect(told).toContain("about 2.5 times the seams");
  expect(told.split("\n").every((line) => line.length <= 98)).toBe(true);
  const order = ["Units", "Blocks", "Block star", "Rows and top", "Pressing", "Borders", "Finishing"];
  const places = order.map((title) => told.indexOf(`\n${title}`));
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(places).not.toContain(-1);
});

test("pressing is told in the step that makes the seam, and a second way of pressing a block has its number", () => {
  const flat = told.replace(/\s+/g, " ");
  expect(flat).toContain("Block star: 9 in all, of 2 kinds: star 1 (make 5) and star 2 (make 4)");
  expect(flat).toContain(
    "Row 2: U1 turned right, E (boats, heads up), U1 turned left. Press both seams to the left.",
  );
  expect(flat).toContain("Block star 1: rows 1 to 3, one below another. Press both seams downwards.");
  expect(flat).toContain(
    "Block star 2 (make 4): sewn as star 1, but press row 1 to the left, row 2 to the right, row 3 to the left and the seams between rows upwards.",
  );
  expect(flat).toContain("Rows 1 and 3: star 1, star 2, star 1. Press both seams to the right.");
  expect(flat).toContain("Row 2: star 2, star 1, star 2. Press both seams to the left.");
  expect(flat).toContain("Pressed all alike, 24 places would not nest.");
  expect(flat).toContain("All 64 places where seams meet nest.");
});

test("places that do not nest are listed", () => {
  const { making } = plan;
  if (making?.pressing == null) throw new Error("no pressing");
  const open = [{ x: 16256, y: 32512 }];
  const pressing = { ...making.pressing, variants: 1 as const, open };
  const text = makingSteps({ ...plan, making: { ...making, pressing } }, english).replace(/\s+/g, " ");
  expect(text).toContain("1 does not nest; fewer is not possible with the blocks pressed so (proved)");
  expect(text).toContain("1 in from the left, 2 in from the top");
});

/** The sewing of another quilt, as if it had been planned. */
function toldOf(text: string): string {
  const { making, top } = make(text);
  return makingSteps({ ...plan, top, making }, english);
}

test("every border says its lengths, what is trimmed, how a mitre is sewn and what the top measures then", () => {
  const text = toldOf(EVERY_BORDER);
  expect(text.split("\n").every((line) => line.length <= 98)).toBe(true);
  const flat = text.replace(/\s+/g, " ");
  // What is printed of a length is about what it will be; what is measured counts.
  expect(flat).toContain(
    "Coping, left and right: measure the top from top to bottom through its middle (about 24 1/2 in). Cut the 2 strips of white to that length.",
  );
  expect(flat).toContain(
    "This border, cut 2 in wide all round, makes the pieced one outside it come out: the top must measure 21 1/2 x 27 1/2 in now.",
  );
  expect(flat).toContain(
    "Bars, top and bottom: sew the blocks end to end: top and bottom alike, from the left, 7 x ",
  );
  expect(flat).toMatch(
    /Each row measures about 21 1\/2 in: .{0,60} Sew a corner square.{0,12} to both ends of each first\./,
  );
  expect(flat).toContain(
    "Tops, top and bottom: measure the top from side to side through its middle (about 25 1/2 in). The 2 strips of red are over-long. Mark on both the length you measured",
  );
  expect(flat).toContain("Only now cut the tails level with the top.");
  expect(flat).toContain("for left and right two strips of about 46 1/4 in");
  expect(flat).toContain("for top and bottom two of about 40 1/4 in");
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
    "Row 1: side triangle, patch 1, side triangle. Press all seams towards the triangles. About 4 1/4 in along its upper edge, 13 1/4 in along its lower.",
  );
  expect(flat).toContain(
    "Row 2: (corner last), patch 1, patch 2, patch 1, side triangle. Press the seams, from the left: left, right, left, right.",
  );
  expect(flat).toContain("Join rows 1 to 2 one to the next, and rows 3 to 4; then the two halves");
  expect(flat).toContain("Add the four corner triangles last");
});

test("where to pin first, and how thick it gets, are told with the limit", () => {
  const flat = told.replace(/\s+/g, " ");
  expect(flat).toContain("Below rows 1 and 2: 2 places; first 1 and 2.");
  expect(flat).toContain("at most 13 layers of fabric lie on one another (in 12 of 136 places");
  expect(flat).toContain("More than 12 layers, the most wanted (`most-layers` in the file).");
  expect(flat).toContain(
    "13 layers (10 with the seam open), from the left and from the top: 19 in and 5 in;",
  );
});

test("a plain cut list has nothing to sew", () => {
  const { making: _, ...plain } = plan;
  expect(makingSteps(plain, english)).toBe("");
});
