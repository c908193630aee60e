import { beforeAll, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { everyPart } from "../../src/plan/lays/parts.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import type { Part, Plan } from "../../src/plan/types.ts";
import type { CutListSpec } from "../../src/spec/types.ts";
import { cutListSpec, fabric, IN, piece, solveHere } from "../support/cut-list-spec.ts";

/** Sizes that lie best in one strip 34 in wide, which no mat or ruler of the usual size takes once more. */
const TALL = [
  piece("panel", 13, 17, 6),
  piece("post", 7, 11, 9),
  piece("rail", 5, 9, 12),
  piece("peg", 3, 8, 15),
  piece("door", 11, 29, 2),
];

async function planned(more: Partial<CutListSpec>, pieces = TALL): Promise<Plan> {
  const spec = cutListSpec([fabric("Sea", pieces)], { style: "strips-3", ...more });
  const { value } = await planCutLists({
    spec,
    cutLists: listCuts(spec).value ?? [],
    solve: solveHere,
    limits: { effort: 3000 },
  });
  expect(auditPlan(value!)).toEqual([]);
  return value!;
}

const parts = (plan: Plan): Part[] => plan.fabrics.flatMap(({ lays }) => [...everyPart(lays[0]!.root)]);

/** Strips that are cut once more along, and how high they are. */
const stackedIn = (plan: Plan): Part[] =>
  parts(plan).filter(
    ({ role, parts: held }) =>
      role === "strip" &&
      held.some((segment) => segment.parts.filter(({ cause }) => cause === null).length > 1),
  );

let usual: Plan;

beforeAll(async () => {
  usual = await planned({});
});

test("strips are cut into stacks only where ruler and mat reach across them", async () => {
  const far = await planned({ rulerLength: 60 * IN });
  expect(Math.max(...stackedIn(far).map(({ along }) => along))).toBeGreaterThan(24 * IN);
  expect(stackedIn(usual).length).toBeGreaterThan(0);
  for (const { along } of stackedIn(usual)) expect(along).toBeLessThanOrEqual(24 * IN);
  const small = await planned({ rulerLength: 60 * IN, matLength: 18 * IN });
  for (const { along } of stackedIn(small)) expect(along).toBeLessThanOrEqual(18 * IN);
  // A freer table never buys more.
  const lengths = [far, usual, small].map(({ fabrics }) => fabrics[0]!.bound.used);
  expect(lengths).toEqual([...lengths].sort((a, b) => a - b));
});

test("the audit refuses a stack beyond the ruler, and beyond the mat", () => {
  const [tallest = 0] = stackedIn(usual)
    .map(({ along }) => along)
    .sort((a, b) => b - a);
  for (const change of [{ matLength: tallest - 1 }, { rulerLength: tallest - 1 }])
    expect(auditPlan({ ...usual, ...change }).join()).toContain("the mat and ruler reach");
});

test("the audit refuses a fourth stage", async () => {
  // Stacks of 3 in and 2 in beside 6 in pieces: their rows are cut as one block each.
  const plan = await planned({}, [piece("tall", 6, 6, 5), piece("low", 4, 3, 3), piece("thin", 3, 2, 3)]);
  const spoilt = structuredClone(plan);
  const [fabricPlan] = spoilt.fabrics;
  const strip = stackedIn(spoilt)[0]!;
  const segment = strip.parts.find((part) => part.parts.filter(({ cause }) => cause === null).length > 1)!;
  const row = segment.parts.find(({ parts: held }) => held.length > 1) ?? segment.parts[0]!;
  const [first] = row.parts.length === 0 ? [row] : row.parts;
  // Two pieces of unequal width side by side in one row: it would be cut up in a stage of its own.
  const half = { ...first!, role: "piece" as const, parts: [] };
  const cut = Math.floor(first!.across / 3);
  row.parts = [
    { ...half, across: cut },
    { ...half, x: half.x + cut, across: row.across - cut },
  ];
  Object.assign(row, { role: "segment", cut: "along", piece: null, turned: false });
  expect(fabricPlan).toBeDefined();
  expect(auditPlan(spoilt).join()).toContain("fourth stage");
});

test("a block of equal stacks is no longer than one placing of the ruler", async () => {
  const long = await planned({}, [piece("tall", 9, 6, 1), piece("low", 4, 3, 8), piece("thin", 3, 2, 8)]);
  for (const { parts: held } of stackedIn(long))
    for (const segment of held)
      if (segment.parts.filter(({ cause }) => cause === null).length > 1)
        expect(segment.across).toBeLessThanOrEqual(24 * IN);
});
