import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import type { StockLayout } from "../../src/engine/types.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import type { Plan } from "../../src/plan/types.ts";
import { cutListSpec, fabric, IN, piece } from "../support/cut-list-spec.ts";
import { answering, borders, strips } from "../support/hand-made-packings.ts";
import { allSaid } from "../support/in-words.ts";

function soundPlan(plan: Plan | null): Plan {
  if (plan === null) throw new Error("no plan");
  expect(auditPlan(plan)).toEqual([]);
  return plan;
}

const inches = (...sizes: number[]) => sizes.map((size) => size * IN);

describe("fat quarters before the bolt", () => {
  // 6 squares of 8 1/2 in and 3 rails of 3 x 17 in. A fat quarter 22 x 18 in holds two squares, cut across
  // first, or cut along first seven rails.
  const spec = cutListSpec(
    [fabric("Sea", [piece("square", 8.5, 8.5, 6), piece("rail", 3, 17, 3, { turn: "fixed" })])],
    { keepFrom: 4 * IN },
  );
  const fatQuarter = { name: "fat quarter", across: 22 * IN, along: 18 * IN, available: 3 };
  const squares: StockLayout = {
    stock: "sheet",
    sheet: 0,
    count: 2,
    firstCut: "across",
    sections: [strips(1, 8.5, 0, 8.5, 2)],
  };
  // Strips run along the fat quarter: each rail is a strip 3 in wide of which 17 in are used.
  const rails: StockLayout = {
    stock: "sheet",
    sheet: 0,
    count: 1,
    firstCut: "along",
    sections: [strips(3, 3, 1, 17, 1)],
  };
  const onBolt: StockLayout = { ...squares, stock: "roll", sheet: -1, count: 1 };

  test("each is a lay of its own, with its own strips, cuts and steps", async () => {
    const { value } = await planCutLists({
      spec,
      cutLists: listCuts(spec).value ?? [],
      fixedStock: [[fatQuarter]],
      solve: answering([squares, rails, onBolt], 8.5 * IN, {
        status: "best-found",
        bound: { value: 0, kind: "area", style: "strips-2" },
      }),
    });
    const [sea] = soundPlan(value).fabrics;
    expect(sea?.lays.map(({ source, name, root }) => [source, name, root.cut])).toEqual([
      ["fixed", "fat quarter", "across"],
      ["fixed", "fat quarter", "across"],
      ["fixed", "fat quarter", "along"],
      ["bolt", "bolt", "across"],
    ]);
    expect(sea?.purchase?.text).toBe("1/4 yd");
    const rail = sea?.steps.find(({ lay }) => lay === 2);
    expect(rail).toMatchObject({ kind: "strips", count: 3, strips: [1, 2, 3] });
    expect([rail?.width, rail?.run]).toEqual(inches(3, 18));
    expect(rail?.subcuts[0]).toMatchObject({ turned: false, how: "whole" });
    expect(sea?.bound.lengthProven).toBe(false);
    expect(sea?.sturdiness.narrowestUsable).toBeNull();
    // 22 in less three strips of 3 in leaves 13 x 18 in of the third fat quarter.
    expect(sea?.leftovers).toContainEqual({
      lay: 2,
      across: 13 * IN,
      along: 18 * IN,
      count: 1,
      cause: "uncut-end",
    });
  });

  test("nothing is bought when they hold everything", async () => {
    const { value } = await planCutLists({
      spec,
      cutLists: listCuts(spec).value ?? [],
      fixedStock: [[{ ...fatQuarter, available: 4 }]],
      bolt: "none",
      solve: answering([{ ...squares, count: 3 }, rails], 0, {
        objective: 4,
        bound: { value: 4, kind: "exhausted", style: "strips-2" },
      }),
    });
    const [sea] = soundPlan(value).fabrics;
    expect(sea?.purchase).toBeNull();
    expect(sea?.waste.bought).toBe(4 * 22 * IN * 18 * IN);
    expect(sea?.bound).toMatchObject({ used: 0, least: 0, lengthProven: true, purchaseProven: true });
  });

  test("what they do not hold is told by size and letter", async () => {
    const { value, diagnostics } = await planCutLists({
      spec,
      cutLists: listCuts(spec).value ?? [],
      fixedStock: [[fatQuarter]],
      bolt: "none",
      solve: answering([], 0, { status: "infeasible", missing: [{ item: 1, count: 2 }] }),
    });
    expect(value).toBeNull();
    expect(allSaid(diagnostics)).toMatchObject([
      {
        code: "STOCK-SHORT",
        severity: "error",
        message: "Sea: the fabric to hand does not hold everything. Still to cut: 2 of 3 x 17 in [B].",
      },
    ]);
  });
});

describe("lengthwise bands", () => {
  test("lie beside strips of the width that remains", async () => {
    const { spec, solve } = borders();
    const { value } = await planCutLists({ spec, cutLists: listCuts(spec).value ?? [], solve });
    const [sea] = soundPlan(value).fabrics;
    expect(
      sea?.steps.map(({ kind, count, width, run, flags }) => [kind, count, width / IN, run / IN, flags]),
    ).toEqual([
      ["straighten", 1, 0.5, 42, []],
      ["bands", 2, 6, 60, ["longer-than-ruler"]],
      ["strips", 4, 12, 30, []],
    ]);
    // The section is cut off the bolt, then the bands, and only then the strips beside them.
    expect(sea?.cuts.slice(0, 5).map(({ direction, setting }) => [direction, setting / IN])).toEqual([
      ["across", 0.5],
      ["across", 60],
      ["along", 6],
      ["along", 6],
      ["across", 12],
    ]);
  });
});
