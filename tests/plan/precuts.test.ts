import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { cuttingSteps } from "../../src/content/cutting/steps.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import type { FabricPlan } from "../../src/plan/types.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import type { CutListSpec } from "../../src/spec/types.ts";
import { usableWidth } from "../../src/stock/index.ts";
import { english } from "../../src/words/index.ts";
import { IN, solveHere } from "../support/cut-list-spec.ts";
import { said } from "../support/in-words.ts";

/** A cut list of one fabric, from what a maker writes. */
function specOf(fabric: string, head = ""): CutListSpec {
  const indented = fabric.replace(/^/gm, "    ").trim();
  const { value, diagnostics } = readSpecFile(
    `name: Drawer\nunits: in\n${head}fabrics:\n  - ${indented}\n`,
    "drawer.yaml",
  );
  if (value === null || value.kind !== "cut-list") throw new Error(JSON.stringify(diagnostics));
  return value;
}

async function planned(fabric: string, head = "") {
  const spec = specOf(fabric, head);
  const { value, diagnostics } = await planCutLists({
    spec,
    cutLists: listCuts(spec).value ?? [],
    solve: solveHere,
  });
  if (value !== null) expect(auditPlan(value)).toEqual([]);
  return { plan: value, diagnostics, steps: value === null ? "" : cuttingSteps(value, true, english) };
}

async function fabricOf(fabric: string): Promise<FabricPlan> {
  const { plan } = await planned(fabric);
  const [one] = plan?.fabrics ?? [];
  if (one === undefined) throw new Error("no plan");
  return one;
}

const used = ({ stock = [] }: FabricPlan) => stock.map(({ name, used: count }) => [name, count]);

/** Whether a fabric with no yardage can be cut from what is to hand. */
async function holds(cloth: string, piece: string, count: number): Promise<boolean> {
  const { plan, diagnostics } = await planned(
    `name: Sea\nhave: ["${cloth}"]\nyardage: no\npieces: ["${piece}, ${count}"]`,
  );
  if (plan === null) expect(diagnostics.map(({ code }) => code)).toEqual(["STOCK-SHORT"]);
  return plan !== null;
}

describe("what precuts yield", () => {
  // derived geometry: a row for each whole multiple. Strips are as long as the usable width, 42 in by default.
  test.each([
    ["10 in squares, 1", "5 square", 4],
    ["10 in squares, 1", "2 1/2 square", 16],
    ["10 in squares, 1", "5 x 9 1/2", 2],
    ["5 in squares, 3", "2 1/2 square", 12],
    ["2 1/2 in strips, 1", "2 1/2 square", 16],
    ["2 1/2 in strips, 40", "2 1/2 x 4 1/2", 360],
    ["1 1/2 in strips, 2", "1 1/2 x 6 1/2", 12],
    ["5 in strips, 1", "5 square", 8],
    ["long quarter, 1, usable size", "4 1/2 square", 18],
    ["metric fat quarter, 1", "5 square", 12],
  ])("%s: %s, %i and no more", async (cloth, piece, count) => {
    expect(await holds(cloth, piece, count)).toBe(true);
    expect(await holds(cloth, piece, count + 1)).toBe(false);
  });

  // Y: pinked or narrow edges lose a row. derived geometry: floor((10 - 2 x 1/4) / 2 1/2) = 3.
  test("trimmed edges lose a row", async () => {
    expect(await holds("10 in squares, 1, trim 1/4 in", "2 1/2 square", 9)).toBe(true);
    expect(await holds("10 in squares, 1, trim 1/4 in", "2 1/2 square", 10)).toBe(false);
    const { steps } = await planned(
      'name: Sea\nhave: ["10 in squares, 2, trim 1/4 in"]\nyardage: no\npieces: ["2 1/2 square, 18"]',
    );
    expect(steps).toContain(
      "On 10 in squares (2, each cut the same), after trimming 1/4 in off every edge, to 9 1/2 x 9 1/2 in:",
    );
  });

  test("a strip cut already is only subcut: it is never slit along its length", async () => {
    // Two rows of 1 1/4 in would make 66; as a strip it gives 33, each trimmed from 2 1/2 to 1 1/4 in.
    expect(await holds("2 1/2 in strips, 1", "1 1/4 square", 33)).toBe(true);
    expect(await holds("2 1/2 in strips, 1", "1 1/4 square", 34)).toBe(false);
    expect(await holds("2 1/2 x WOF, 1, usable size", "1 1/4 square", 66)).toBe(true);
  });

  test("a directional print keeps its up on a strip", async () => {
    const print = 'print: one-way along\nyardage: no\nhave: ["2 1/2 in strips, 1"]';
    const tall = await planned(`name: Sea\n${print}\npieces: ["2 1/2 x 4 1/2, 1"]`);
    expect(tall.plan).toBeNull();
    const wide = await planned(`name: Sea\n${print}\npieces: ["4 1/2 x 2 1/2, 9"]`);
    expect(wide.plan).not.toBeNull();
  });
});

describe("strips cut already, then the cloth that is left", () => {
  test("they are used first, the rest is planned from what is left, and no more is bought than that", async () => {
    // derived geometry: 3 strips give 48 squares of 2 1/2 in, 16 each. 12 more and 8 squares of 4 1/2 in need strips
    // of 2 1/2 and 4 1/2 in, 7 in of the 9 in that are left of the bolt.
    const { plan, steps } = await planned(
      'name: Sea\nyardage: no\nhave: ["2 1/2 in strips, 3", "WOF x 9 in, 1"]\npieces: ["foam 2 1/2 square, 60", "sky 4 1/2 square, 8"]',
    );
    const [sea] = plan?.fabrics ?? [];
    expect(sea?.purchase).toBeNull();
    expect(used(sea!)).toEqual([
      ["2 1/2 in strip", 3],
      ["piece WOF x 9 in", 1],
    ]);
    const strips = sea!.lays.filter(({ name }) => name === "2 1/2 in strip");
    expect(strips.map(({ across, along }) => [across, along])).toEqual(strips.map(() => [42 * IN, 2.5 * IN]));
    expect(steps).toMatch(
      /On 2 1\/2 in strips, cut already \(\d, each cut the same\):\n +\d\. Subcut 16 squares/,
    );
    expect(steps).not.toContain("Cut 1 strip 2 1/2 in x 42 in; subcut 16");
  });

  test("what they cannot hold is bought", async () => {
    const sea = await fabricOf(
      'name: Sea\nstraighten: 0 in\nhave: ["2 1/2 in strips, 2"]\npieces: ["foam 2 1/2 square, 40", "sky 4 1/2 square, 9"]',
    );
    // 32 squares come from the two strips; one strip 2 1/2 in and one 4 1/2 in come off the bolt.
    expect(used(sea)).toEqual([["2 1/2 in strip", 2]]);
    expect(sea.bound).toMatchObject({ used: 7 * IN, lengthProven: true });
  });

  test("on a narrower bolt they are as long as it is wide", async () => {
    const spec = specOf(
      'name: Sea\nwidth: 37 in\nhave: ["2 1/2 in strips, 1"]\npieces: ["foam 2 1/2 square, 20"]',
    );
    const usable = usableWidth(spec.fabrics[0]!);
    const { value } = await planCutLists({ spec, cutLists: listCuts(spec).value ?? [], solve: solveHere });
    expect(value?.fabrics[0]?.lays[0]?.across).toBe(usable);
    expect(value?.fabrics[0]?.stock?.[0]?.across).toBe(36 * IN);
  });
});

describe("fat quarters that are there", () => {
  const drawer = (count: number) =>
    `name: Sea\nyardage: no\nhave: ["fat quarter, ${count}"]\npieces: ["panel 8 1/2 square, 10"]`;

  test("as few as can be are cut into", async () => {
    // Orchard Lane, American Patchwork & Quilting, 2014: four squares of 8 1/2 in to a fat quarter.
    expect(used(await fabricOf(drawer(6)))).toEqual([["fat quarter", 3]]);
  });

  test("when they are too few it is told how many are missing, of which fabric, where", async () => {
    const { plan, diagnostics } = await planned(drawer(1));
    expect(plan).toBeNull();
    expect(diagnostics).toMatchObject([{ code: "STOCK-SHORT", severity: "error", at: { line: 4 } }]);
    expect(said(diagnostics[0])?.message).toContain(
      "Sea: 2 more fat quarters are needed: 1 to hand, 3 hold everything.",
    );
  });

  test("every fabric of a file can have the same", async () => {
    const { plan } = await planned(
      'name: Sea\npieces: ["4 square, 5"]',
      'all-fabrics:\n  have: ["fat quarter, 1"]\n  yardage: no\n',
    );
    expect(plan?.fabrics[0]?.stock?.[0]?.used).toBe(1);
  });
});
