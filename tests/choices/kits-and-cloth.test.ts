import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { compareKits } from "../../src/choices/kits/kits.ts";
import { compareWidths } from "../../src/choices/other-width.ts";
import { planWith } from "../../src/choices/plan-with.ts";
import { suitsOf } from "../../src/choices/suits.ts";
import { kitsList } from "../../src/content/buying/kits.ts";
import { fatQuarterList, stashUse } from "../../src/content/buying/sources.ts";
import { widthsList } from "../../src/content/buying/widths.ts";
import { solveHere } from "../../src/index.ts";
import { type PlanOptions, planSpec, USUAL_OPTIONS } from "../../src/pipeline.ts";
import type { Plan } from "../../src/plan/types.ts";
import { readSpecFile, type Spec } from "../../src/spec/index.ts";
import { printStash, readStash, takePlan } from "../../src/stash/index.ts";
import { english } from "../../src/words/index.ts";
import { firstOf } from "../support/sweep.ts";

const IN = 16256;

function specOf(path: string): Spec {
  const text = readFileSync(new URL(`../../fixtures/${path}`, import.meta.url), "utf8");
  const { value } = readSpecFile(text, path);
  if (value === null) throw new Error(`${path} has errors`);
  return value;
}

const TIDE = specOf("cutlists/tide-pool.yaml");
const HARBOUR = specOf("cutlists/harbour-lights.yaml");

/** The first fabric of the demo with squares of its own: side in inches and how many. */
function strips(...squares: [number, number][]): Spec["fabrics"][number] {
  const [cloth] = TIDE.fabrics;
  const [piece] = cloth?.pieces ?? [];
  if (cloth === undefined || piece === undefined) throw new Error("the demo has no pieces");
  const pieces = squares.map(([side, count]) => {
    return { ...piece, label: "", across: side * IN, along: side * IN, fullWidth: false, count };
  });
  // Sold by the inch, so that no strip more is had for nothing.
  return { ...cloth, straighten: 0, sold: { unit: "in", step: IN, least: IN }, pieces };
}

async function planned(spec: Spec, more: Partial<PlanOptions> = {}): Promise<Plan> {
  const { value } = await planSpec(spec, { ...USUAL_OPTIONS, ...more }, solveHere);
  if (value === null) throw new Error("no plan");
  return value;
}

describe("kits", () => {
  test("30 kits of the demo: every piece 30 times, never dearer than 30 purchases", async () => {
    for (const spec of firstOf([TIDE, HARBOUR], 1)) {
      const options = { ...USUAL_OPTIONS, kits: 30 };
      const batch = await planned(spec, options);
      const { value } = await compareKits(spec, batch, options, solveHere);
      expect(auditPlan(batch)).toEqual([]);
      if (value === null) throw new Error("no kits");
      const counts = (plan: Plan) =>
        plan.fabrics.map(({ pieces }) => pieces.reduce((n, p) => n + p.count, 0));
      // A long piece may be made another way in a batch; without such pieces the counts are exact.
      if (spec === TIDE)
        expect(counts(batch)).toEqual(counts(value.sorts[0]?.single ?? batch).map((count) => 30 * count));
      for (const { fabric, together, separately } of value.fabrics) {
        expect(together?.length ?? 0).toBeLessThanOrEqual(separately?.length ?? 0);
        // Bought one by one: thirty times what one kit buys.
        const one = value.sorts[0]?.single.fabrics.find(({ name }) => name === fabric)?.purchase;
        expect(separately?.length ?? 0).toBe(30 * (one?.length ?? 0));
      }
      expect(kitsList(value, english)).toContain("Into each of the 30 bags:");
    }
  }, 60_000);

  test("whole strips fill whole kits where that costs no cloth, and the purchase is that of the batch", async () => {
    // derived geometry: 12 squares of 7 in are two strips of 42 in, 14 of 3 in one strip: 17 in a kit, 102 in for six.
    const own = { ...TIDE, fabrics: [strips([7, 12], [3, 14])] };
    const batch = await planned(own, { kits: 6 });
    expect(batch.fabrics[0]?.bound.used).toBe(102 * IN);
    expect(
      batch.fabrics[0]?.kitShares?.map(({ first, last, strips: held }) => [first, last, held.length]),
    ).toEqual([1, 2, 3, 4, 5, 6].map((kit) => [kit, kit, 3]));
    // Four squares of 7 in are two thirds of a strip: three kits fill two strips, two or one of them would not.
    const shared = await planned({ ...TIDE, fabrics: [strips([7, 4])] }, { kits: 12 });
    expect(shared.fabrics[0]?.bound.used).toBe(56 * IN);
    expect(shared.fabrics[0]?.kitShares?.map(({ first, last }) => [first, last])).toEqual([
      [1, 3],
      [4, 6],
      [7, 9],
      [10, 12],
    ]);
    // Five kits of four squares are 20 squares, four strips; no group of fewer comes out even.
    const dealt = await planned({ ...TIDE, fabrics: [strips([7, 4])] }, { kits: 5 });
    expect(dealt.fabrics[0]?.bound.used).toBe(28 * IN);
    expect(dealt.fabrics[0]?.kitShares).toBeUndefined();
  });

  test("one kit is the plan itself", async () => {
    expect(await planned(TIDE, { kits: 1 })).toEqual(await planned(TIDE));
  });

  test("the batch as it is bought, by hand", async () => {
    // derived geometry: 240 panels 6 1/2 x 4 1/2 in of usable width 42 in. Strips 4 1/2 in high hold 6: 40 strips
    // are 180 in; with 1 in for straightening 181 in, in eighths of a yard 5 1/8 yd.
    const batch = await planned(TIDE, { kits: 30 });
    expect(batch.fabrics[1]?.purchase?.text).toBe("5 1/8 yd");
    expect(batch.name).toBe("30 × Tide pool");
  });
});

describe("another width", () => {
  test("is the usable width of every fabric of a usual width, and is told", async () => {
    const narrow = await planned(TIDE, { usable: 36 * IN });
    const wide = await planned(TIDE);
    expect(narrow.fabrics.map(({ usable }) => usable)).toEqual([36 * IN, 36 * IN]);
    narrow.fabrics.forEach(({ bound }, i) => {
      expect(bound.used).toBeGreaterThanOrEqual(wide.fabrics[i]?.bound.used ?? 0);
    });
    expect(narrow.assumptions).toContainEqual({
      fabric: "",
      of: { is: "usable-width-tried", usable: 36 * IN },
    });
  });

  test("what it changes is told beside the file as it is", async () => {
    const tried = await planned(TIDE, { usable: 27 * IN });
    const sources = { stash: null, fatQuarters: false };
    const { value } = await compareWidths(
      TIDE,
      tried,
      { ...USUAL_OPTIONS, usable: 27 * IN },
      sources,
      solveHere,
    );
    const wide = await planned(TIDE);
    value?.forEach(({ more, filed, tried: on }, i) => {
      expect(filed.purchase).toEqual(wide.fabrics[i]?.purchase);
      expect(more).toBe((on.purchase?.length ?? 0) - (filed.purchase?.length ?? 0));
    });
    // derived geometry: 26 squares of 4 1/2 in are 3 strips of 42 in, 5 of 27 in; the foam fits beside them.
    expect(widthsList(tried, value ?? [], english)).toMatch(
      /Night sea +42 in +3\/4 yd +27 in +7\/8 yd +1\/8 yd more/,
    );
  });

  test("cloth of more than 60 in stays as it is", async () => {
    const spec = { ...TIDE, fabrics: TIDE.fabrics.map((fabric) => ({ ...fabric, width: 109 * IN })) } as Spec;
    const plan = await planned(spec, { usable: 36 * IN });
    expect(plan.fabrics[0]?.usable).toBeGreaterThan(100 * IN);
  });
});

const stashOf = (text: string) => {
  const { value } = readStash(text, "drawer.csv", "in");
  if (value === null) throw new Error("no table");
  return value;
};

describe("from the drawer", () => {
  const drawer = stashOf("fabric,width,length,how many\nstarfish,21 in,18 in,1\nNIGHT SEA,21 in,18 in,3\n");

  test("it is used first and only the rest is bought", async () => {
    const { value } = await planWith(TIDE, USUAL_OPTIONS, { stash: drawer, fatQuarters: false }, solveHere);
    const plan = value?.plan;
    if (plan === undefined) throw new Error("no plan");
    expect(auditPlan(plan)).toEqual([]);
    // 12 panels fit an 18 x 21 in fat quarter; 8 are wanted.
    expect(plan.fabrics[1]?.purchase).toBeNull();
    const without = await planned(TIDE);
    expect(plan.fabrics[0]?.purchase?.length).toBeLessThan(without.fabrics[0]?.purchase?.length ?? 0);
    expect(stashUse(plan, "drawer.csv", english)).toContain("Starfish   1 of  21 x 18 in");
  });

  test("what a plan took can be taken out once", async () => {
    const { value } = await planWith(TIDE, USUAL_OPTIONS, { stash: drawer, fatQuarters: false }, solveHere);
    const taken = takePlan(drawer, value!.plan, "drawer.csv", "left from it");
    expect(printStash(taken.value!.stash)).not.toContain("21 in,18 in,3");
    expect(takePlan(taken.value!.stash, value!.plan, "drawer.csv", "left from it").diagnostics[0]?.code).toBe(
      "STASH-LACKS",
    );
  });

  test("which fabrics it suits", async () => {
    const { value } = await suitsOf(TIDE, drawer, USUAL_OPTIONS, solveHere);
    expect(value?.fabrics.map(({ fabric, covers }) => [fabric, covers])).toEqual([
      ["Night sea", "partly"],
      ["Starfish", "all"],
    ]);
  });

  test("an empty drawer changes nothing", async () => {
    const none = stashOf("fabric,width,length\n");
    const { value } = await planWith(TIDE, USUAL_OPTIONS, { stash: none, fatQuarters: false }, solveHere);
    expect(value?.plan).toEqual(await planned(TIDE));
  });
});

test("fat quarters: as many as each colour takes, the bolt where a piece is too long", async () => {
  const { value, diagnostics } = await planWith(
    TIDE,
    USUAL_OPTIONS,
    { stash: null, fatQuarters: true },
    solveHere,
  );
  if (value === null) throw new Error("no plan");
  // derived geometry: 18 / 4 1/2 = 4 strips of 21 / 6 1/2 = 3 panels: 12 to a fat quarter, 8 wanted.
  expect(value.fromFatQuarters).toEqual(["Starfish"]);
  expect(value.plan.fabrics[1]?.lays).toHaveLength(1);
  expect(fatQuarterList(value.plan, value.fromFatQuarters, english)).toContain("1 piece together");
  expect(diagnostics.map(({ code }) => code)).toContain("FAT-QUARTER-TOO-SMALL");
  expect(auditPlan(value.plan)).toEqual([]);
});
