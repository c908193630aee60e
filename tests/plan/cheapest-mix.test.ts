import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { buyList } from "../../src/content/index.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { runJob } from "../../src/engine/index.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import { posePackingProblem } from "../../src/plan/pose-problem.ts";
import type { FabricPlan, Plan } from "../../src/plan/types.ts";
import { buyCsv } from "../../src/print/csv/index.ts";
import type { FabricSpec, FixedClothSpec } from "../../src/spec/types.ts";
import { purchaseFor, usableWidth } from "../../src/stock/index.ts";
import { english } from "../../src/words/index.ts";
import { cutListSpec, fabric, IN, piece, solveHere } from "../support/cut-list-spec.ts";

const PRICE = { hundredths: 1200, per: "yd", currency: "$" } as const;

function fatQuarter(price: number | null, count: number | null = null): FixedClothSpec {
  const size = { across: 21 * IN, along: 18 * IN, fullWidth: false, strip: false, trim: 0 };
  return { name: "fat quarter", ...size, count, price, currency: "$" };
}

async function planned(one: FabricSpec): Promise<Plan> {
  const spec = cutListSpec([one]);
  const { value } = await planCutLists({ spec, cutLists: listCuts(spec).value ?? [], solve: solveHere });
  if (value === null) throw new Error("no plan");
  expect(auditPlan(value)).toEqual([]);
  return value;
}

const boughtOf = ({ stock = [], purchase }: FabricPlan) => [
  stock.filter(({ from }) => from === "shop").reduce((sum, { used }) => sum + used, 0),
  purchase?.text ?? null,
];

describe("ten squares of 8 1/2 in at $12 a yard, sold in eighths", () => {
  // derived geometry: a strip of 42 in holds 4, a fat quarter 2 x 2. Yardage for 3, 2, 1 strips: 3/4, 1/2, 1/4 yd.
  test.each([
    {
      each: 290,
      most: null,
      bought: [3, null],
      cost: 870,
      why: "3 fat quarters; 8.80 with 2, 8.90 with 1, 9.00",
    },
    { each: 290, most: 2, bought: [2, "1/4 yd"], cost: 880, why: "2 fat quarters and 1/4 yd" },
    { each: 290, most: 1, bought: [1, "1/2 yd"], cost: 890, why: "1 fat quarter and 1/2 yd" },
    { each: 310, most: null, bought: [0, "3/4 yd"], cost: 900, why: "yardage; 9.10 with 1 fat quarter" },
  ])("at $each hundredths: $why", async ({ each, most, bought, cost }) => {
    const plan = await planned(
      fabric("Sea", [piece("panel", 8.5, 8.5, 10)], { price: PRICE, readyCut: [fatQuarter(each, most)] }),
    );
    const [sea] = plan.fabrics;
    expect(boughtOf(sea!)).toEqual(bought);
    expect(sea?.mix).toMatchObject({ cost, proven: true });
  });

  test("the lists carry both, and what was weighed", async () => {
    const plan = await planned(
      fabric("Sea", [piece("panel", 8.5, 8.5, 10)], { price: PRICE, readyCut: [fatQuarter(290, 2)] }),
    );
    const text = buyList(plan, english);
    expect(text).toMatch(/Sea +1\/4 yd and 2 fat quarters +8 1\/2 in +\$8\.80 +proven/);
    expect(text).toContain("Sea: 1/4 yd and 2 fat quarters $8.80, against 3/4 yd $9.00");
    expect(buyCsv(plan, english)).toContain("Sea,1/4 yd,2 fat quarter,8 1/2,42,8.80,$,yes");
  });

  test("cloth to hand is used before any is bought", async () => {
    const have = [{ ...fatQuarter(null, 2), currency: "" }];
    const plan = await planned(
      fabric("Sea", [piece("panel", 8.5, 8.5, 10)], { price: PRICE, have, readyCut: [fatQuarter(290)] }),
    );
    expect(boughtOf(plan.fabrics[0]!)).toEqual([1, null]);
    expect(plan.fabrics[0]?.mix?.cost).toBe(290);
  });

  test("where there is no yardage the cheapest pieces are taken; without prices, the fewest", async () => {
    const square: FixedClothSpec = {
      ...fatQuarter(60),
      name: "10 in square",
      across: 10 * IN,
      along: 10 * IN,
    };
    const cheap = fabric("Sea", [piece("panel", 8.5, 8.5, 10)], {
      yardage: false,
      readyCut: [fatQuarter(290), square],
    });
    // Ten squares of 10 in are $6.00; a fat quarter for four of them saves $2.40 and costs $2.90.
    expect((await planned(cheap)).fabrics[0]?.mix).toMatchObject({ cost: 600, proven: true });
    const free = { ...cheap, readyCut: [fatQuarter(null), { ...square, price: null }] };
    const plan = await planned(free);
    expect(boughtOf(plan.fabrics[0]!)).toEqual([3, null]);
    expect(plan.fabrics[0]?.mix).toMatchObject({ cost: null, proven: true, choices: [] });
  });
});

test("law: no number of fat quarters, each tried with the least bolt beside it, is cheaper", async () => {
  const CASES = [
    {
      sizes: [
        [4.5, 4.5, 30],
        [2.5, 2.5, 40],
      ],
      each: 310,
    },
    { sizes: [[5, 5, 34]], each: 280 },
  ] as const;
  for (const { sizes, each } of CASES) {
    const pieces = sizes.map(([across, along, count]) => piece("", across, along, count));
    const one = fabric("Sea", pieces, { price: PRICE, straighten: IN, readyCut: [fatQuarter(each)] });
    const plan = await planned(one);
    const [cutList] = listCuts(cutListSpec([one])).value ?? [];
    let least = Number.POSITIVE_INFINITY;
    for (let n = 0; n * each < least; n++) {
      const fixedStock =
        n === 0 ? [] : [{ name: "fat quarter", across: 21 * IN, along: 18 * IN, available: n }];
      const problem = posePackingProblem(cutList!, { usable: usableWidth(one), fixedStock }, "strips-2");
      const { rollLength } = await runJob({ kind: "pack", problem, limits: {} });
      const yardage = rollLength === 0 ? 0 : (purchaseFor(one, rollLength).cost ?? 0);
      least = Math.min(least, n * each + yardage);
    }
    expect(plan.fabrics[0]?.mix).toMatchObject({ cost: least, proven: true });
  }
});
