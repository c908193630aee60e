import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { quickSolve, withoutEasing } from "../../src/choices/quick-solve.ts";
import { exitCodeOf } from "../../src/cli/report.ts";
import type { Outcome } from "../../src/diagnostics/types.ts";
import { type PlanOptions, planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import type { FabricPlan, Plan } from "../../src/plan/types.ts";
import { IN, solveHere } from "../support/cut-list-spec.ts";

const folder = new URL("../../fixtures/trials/", import.meta.url);

function textOf(name: string): string {
  return readFileSync(new URL(`${name}.yaml`, folder), "utf8");
}

function planOf(text: string, options: Partial<PlanOptions> = {}): Promise<Outcome<Plan>> {
  return planQuilt(
    text,
    "trial.yaml",
    { ...USUAL_OPTIONS, ...options },
    withoutEasing(quickSolve(solveHere)),
  );
}

/** The plan of one fabric of a trial; it has passed its audit. */
async function fabricOf(text: string, name: string, options: Partial<PlanOptions> = {}): Promise<FabricPlan> {
  const { value } = await planOf(text, options);
  if (value === null) throw new Error("no plan");
  expect(auditPlan(value)).toEqual([]);
  const found = value.fabrics.find((fabric) => fabric.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}

describe("pieces cut lengthwise", () => {
  test("come from a length in the drawer", async () => {
    const navy = await fabricOf(textOf("border-from-drawer"), "Navy");
    expect(navy.purchase).toBeNull();
    expect(navy.stock).toMatchObject([{ used: 1 }]);
  });

  test("come from it where nothing may be bought", async () => {
    const text = textOf("border-from-drawer").replace("    have:", "    yardage: no\n    have:");
    expect((await fabricOf(text, "Navy")).purchase).toBeNull();
  });

  test("come from a piece sold ready cut", async () => {
    const text = textOf("border-from-drawer").replace(
      "have:\n      - 8 x 66 in, 1",
      "ready-cut:\n      - 8 x 66 in, $4, at most 1",
    );
    const navy = await fabricOf(text, "Navy");
    expect(navy.purchase).toBeNull();
    expect(navy.mix).toMatchObject({ cost: 400, proven: true });
  });

  // derived geometry: four borders side by side take 14 of 42 in; the rest, 28 in wide, holds the strips in 60 3/8 in.
  test("leave a width beside them that is a roll of its own", async () => {
    const moss = await fabricOf(textOf("long-borders-beside-strips"), "Moss");
    expect(moss.bound).toMatchObject({ used: 62.5 * IN, lengthProven: true });
    expect(moss.purchase?.text).toBe("1 7/8 yd");
  });
});

describe("joined borders", () => {
  // derived geometry: 2 x 44 1/2 + 2 x 45 1/2 = 180 in; five strips of 42 in less four joins of 1/2 in make 208 in.
  test("are cut from one run, sides and ends", async () => {
    const edge = await fabricOf(textOf("border-in-one-run"), "edge");
    expect(edge.pieces).toMatchObject([{ count: 5, fullWidth: true, joined: { length: 180 * IN } }]);
    expect(edge.purchase?.text).toBe("3/4 yd");
    expect(edge.bound.purchaseProven).toBe(true);
  });

  // derived geometry: 2 x 75 1/4 + 2 x 87 1/4 = 325 in; eight strips less seven joins make 332 1/2 in.
  test("on point, mitred", async () => {
    const plum = await fabricOf(textOf("fitted-border"), "plum");
    const outer = plum.pieces.find(({ joined }) => joined?.whole === "");
    expect(outer).toMatchObject({ count: 8, along: 6.5 * IN, joined: { length: 325 * IN } });
  });
});

describe("one tight cloth", () => {
  const easy = Array.from(
    { length: 9 },
    (_, i) => `  - name: Easy ${i}\n    pieces:\n      - a${i} 3 x 4, 10\n      - b${i} 2 x ${5 + i}, 7\n`,
  ).join("");

  test("is cut all the same among nine easy fabrics", async () => {
    const alone = textOf("one-tight-cloth");
    for (const text of [alone, `${alone}${easy}`])
      expect((await fabricOf(text, "Tight", { style: "strips-3" })).stock).toMatchObject([{ used: 1 }]);
  });

  test("is proved too small without stacked subcuts, and they are offered", async () => {
    const { value, diagnostics } = await planOf(textOf("one-tight-cloth"), { style: "strips-2" });
    expect(value).toBeNull();
    const [error] = diagnostics.filter(({ severity }) => severity === "error");
    expect(error).toMatchObject({ code: "STOCK-SHORT" });
    expect(error?.hint).toContain("--style strips-3");
    expect(exitCodeOf(diagnostics)).toBe(3);
  });

  test("is not called too small when the search was too short to tell", async () => {
    const { value, diagnostics } = await planOf(textOf("one-tight-cloth"), { style: "strips-3", effort: 1 });
    expect(value).toBeNull();
    expect(diagnostics).toMatchObject([{ code: "NONE-FOUND", severity: "error" }]);
    expect(exitCodeOf(diagnostics)).toBe(4);
  });
});
