import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import type { FabricPlan, Part, Plan } from "../../src/plan/types.ts";
import type { FabricSpec, FixedClothSpec } from "../../src/spec/types.ts";
import { cutListSpec, fabric, IN, piece, solveHere } from "../support/cut-list-spec.ts";

async function planned(one: FabricSpec, kits = 1): Promise<Plan> {
  const spec = cutListSpec([one]);
  const { value } = await planCutLists({
    spec,
    cutLists: listCuts(spec).value ?? [],
    kits,
    solve: solveHere,
  });
  if (value === null) throw new Error("no plan");
  return value;
}

const cloth = (name: string, across: number, along: number, more: Partial<FixedClothSpec> = {}) => ({
  ...{ name, across: across * IN, along: along * IN, fullWidth: false, strip: false, trim: 0 },
  ...{ count: null, price: null, currency: "" },
  ...more,
});

/** Two strips cut already, two squares with pinked edges, bought fat quarters and yardage, all of them used. */
const mixed = await planned(
  fabric("Sea", [piece("foam", 2.5, 2.5, 46), piece("panel", 8.5, 8.5, 10)], {
    price: { hundredths: 1200, per: "yd", currency: "$" },
    have: [
      cloth("2 1/2 in strip", 0, 2.5, { fullWidth: true, strip: true, count: 2 }),
      cloth("10 in square", 10, 10, { trim: IN / 4, count: 2 }),
    ],
    readyCut: [cloth("fat quarter", 21, 18, { price: 290, currency: "$", count: 1 })],
  }),
);

/** Six kits, each from strips of its own: 12 squares are two strips of 7 in. */
const batch = await planned(fabric("Sea", [piece("panel", 7, 7, 12), piece("foam", 3, 3, 14)]), 6);

const stockOf = (f: FabricPlan, name: string) => f.stock!.find((kind) => kind.name === name)!;
const laysOf = (f: FabricPlan, name: string) => f.lays.filter((lay) => lay.name === name);

const CORRUPTIONS: Readonly<Record<string, (fabric: FabricPlan) => void>> = {
  "one strip more is cut than there is": (f) => {
    stockOf(f, "2 1/2 in strip").available = stockOf(f, "2 1/2 in strip").used - 1;
  },
  "a cloth is used and not counted": (f) => {
    stockOf(f, "10 in square").used -= 1;
  },
  "a cloth is cut that is not there": (f) => {
    f.stock = f.stock!.filter(({ name }) => name !== "10 in square");
  },
  "nothing is said of cloth to hand": (f) => {
    delete f.stock;
  },
  "a cloth is smaller than it is laid": (f) => {
    stockOf(f, "10 in square").across -= 2032;
  },
  "two kinds of cloth share a name": (f) => {
    stockOf(f, "10 in square").name = "2 1/2 in strip";
  },
  "a fat quarter is taken for a strip": (f) => {
    stockOf(f, "bought fat quarter").strip = true;
  },
  "a strip cut already is cut lower": (f) => {
    const { root } = laysOf(f, "2 1/2 in strip")[0]!;
    const [strip] = root.parts;
    const lower: Part = { ...strip!, along: strip!.along - 2032, parts: [] };
    root.parts = [lower, { ...lower, y: lower.along, along: 2032, role: "uncut-end", cause: "uncut-end" }];
  },
  "what is to hand has a price": (f) => {
    stockOf(f, "10 in square").price = 100;
  },
  "a fat quarter is dearer than the sum": (f) => {
    stockOf(f, "bought fat quarter").price = 291;
  },
  "what is bought is said to cost less": (f) => {
    f.mix!.cost! -= 1;
  },
  "another choice is told as taken": (f) => {
    f.mix!.choices[0]!.bought = [];
  },
  "another length is told as taken": (f) => {
    f.mix!.choices[0]!.yardage = null;
  },
  "a cheaper choice was known": (f) => {
    f.mix!.choices[1]!.cost = f.mix!.cost! - 1;
  },
  "nothing says why cloth is bought ready cut": (f) => {
    delete f.mix;
  },
  "less is trimmed off than nothing": (f) => {
    stockOf(f, "10 in square").trim = -1;
  },
  "a spoiled strip costs nothing": (f) => {
    f.sturdiness.mistakes!.worst.more = 0;
  },
  "a spoiled strip is narrower than the widest": (f) => {
    f.sturdiness.mistakes!.worst.width -= 2032;
  },
  "a spoiled strip is cheaper than it is": (f) => {
    f.sturdiness.mistakes!.usual.cost! += 1;
  },
  "nothing says what a spoiled strip costs": (f) => {
    delete f.sturdiness.mistakes;
  },
};

const IN_KITS: Readonly<Record<string, (fabric: FabricPlan, plan: Plan) => void>> = {
  "a strip fills two kits": (f) => {
    f.kitShares![1]!.strips[0] = f.kitShares![0]!.strips[0]!;
  },
  "a strip fills no kit": (f) => {
    f.kitShares![0]!.strips.pop();
  },
  "a kit is left out": (f) => {
    f.kitShares!.pop();
  },
  "kits overlap": (f) => {
    f.kitShares![1]!.first -= 1;
  },
  "a strip is filled from that is not there": (f) => {
    f.kitShares![0]!.strips[0] = 999;
  },
  "two kits exchange unlike strips": (f) => {
    const [a, b] = f.kitShares!;
    const last = a!.strips.length - 1;
    [a!.strips[0], b!.strips[last]] = [b!.strips[last]!, a!.strips[0]!];
  },
  "there are more kits than were cut": (_, plan) => {
    plan.kits = 7;
  },
  "half a kit is cut": (_, plan) => {
    plan.kits = 5.5;
  },
};

test("the plans that are corrupted below are sound, and use what they are corrupted in", () => {
  expect(auditPlan(mixed)).toEqual([]);
  expect(mixed.fabrics[0]?.stock?.map(({ used }) => used > 0)).toEqual([true, true, true]);
  expect(mixed.fabrics[0]?.purchase).not.toBeNull();
  expect(mixed.fabrics[0]?.mix?.choices).toHaveLength(2);
  expect(auditPlan(batch)).toEqual([]);
  expect(batch.fabrics[0]?.kitShares?.map(({ first, last }) => [first, last])).toEqual(
    [1, 2, 3, 4, 5, 6].map((kit) => [kit, kit]),
  );
});

describe("with cloth in fixed sizes the audit notices when", () => {
  test.each(Object.keys(CORRUPTIONS))("%s", (name) => {
    const plan = structuredClone(mixed);
    CORRUPTIONS[name]!(plan.fabrics[0]!);
    expect(plan).not.toEqual(mixed);
    expect(auditPlan(plan).length).toBeGreaterThan(0);
  });
});

describe("with kits the audit notices when", () => {
  test.each(Object.keys(IN_KITS))("%s", (name) => {
    const plan = structuredClone(batch);
    IN_KITS[name]!(plan.fabrics[0]!, plan);
    expect(plan).not.toEqual(batch);
    expect(auditPlan(plan).length).toBeGreaterThan(0);
  });
});
