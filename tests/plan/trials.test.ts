import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { quickSolve, withoutEasing } from "../../src/choices/quick-solve.ts";
import { exitCodeOf } from "../../src/cli/report.ts";
import { sewingParts } from "../../src/content/book/parts/sewing-parts.ts";
import { cuttingSteps } from "../../src/content/cutting/steps.ts";
import { foundationLines } from "../../src/content/sewing/foundation.ts";
import { makingSteps } from "../../src/content/sewing/making.ts";
import type { Outcome } from "../../src/diagnostics/types.ts";
import { workOf } from "../../src/engine/easing/work-measure.ts";
import { type PlanOptions, planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import { everyPart } from "../../src/plan/lays/parts.ts";
import type { Solve } from "../../src/plan/request.ts";
import type { FabricPlan, Plan } from "../../src/plan/types.ts";
import { english } from "../../src/words/index.ts";
import { IN, solveHere } from "../support/cut-list-spec.ts";
import { allSaid, said } from "../support/in-words.ts";

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

/** The plan of the first fabric of a trial as it is cut in the end. */
async function fabricEased(text: string, prefer: PlanOptions["prefer"]): Promise<FabricPlan> {
  const { value } = await planQuilt(text, "trial.yaml", { ...USUAL_OPTIONS, prefer }, quickSolve(solveHere));
  if (value === null) throw new Error("no plan");
  return value.fabrics[0]!;
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

describe("work at the mat", () => {
  // Built anew as a whole nothing fits the 62 1/2 in that the shortest plan takes; a few strips at a time something does.
  test("is made less by a few strips at a time where no length is to spare", async () => {
    const works: number[][] = [];
    const solve: Solve = async (jobs) => {
      const results = await solveHere(jobs);
      jobs.forEach((job, i) => {
        if (job.kind !== "lessen-work") return;
        works.push([job.result, results[i]!].map((each) => workOf(job.problem, each, job.table).total));
      });
      return results;
    };
    await planQuilt(textOf("long-borders-beside-strips"), "trial.yaml", USUAL_OPTIONS, solve);
    const [before = 0, after = 0] = works[0] ?? [];
    expect(works).toHaveLength(1);
    expect(after).toBeLessThan(0.92 * before);
  });

  // Four strips of 3 1/2 in and eight of 2 1/2 in take 34 of the 35 in that a yard gives: two settings for strips, no trim.
  test("is least within a purchase, and the shortest length only where it is asked for", async () => {
    const dusk = await fabricEased(textOf("leftovers-as-cut"), null);
    expect(dusk.purchase?.text).toBe("1 yd");
    const strips = dusk.steps.filter(({ kind }) => kind === "strips");
    expect(strips.map(({ count, width }) => [count, width / IN]).sort()).toEqual([
      [2, 3.5],
      [2, 3.5],
      [4, 2.5],
      [4, 2.5],
    ]);
    expect(strips.flatMap(({ subcuts }) => subcuts).every(({ how }) => how === "whole")).toBe(true);
    const sparing = await fabricEased(textOf("leftovers-as-cut"), "sparing");
    expect(sparing.purchase?.text).toBe("1 yd");
    expect(sparing.bound.used).toBeLessThan(dusk.bound.used);
  });
});

describe("leftovers", () => {
  // What the steps leave: the rest of a strip is trimmed to 2 1/2 in before its last pieces are cut from it.
  test("are as high as the trim before them", async () => {
    const { leftovers, lays, pieces } = await fabricOf(textOf("leftovers-as-cut"), "dusk");
    const trimmed = pieces.filter(({ label }) => label === "bar");
    expect(trimmed).toHaveLength(1);
    const ends = leftovers.filter(({ cause }) => cause === "strip-end");
    // The strips that are trimmed leave 6 1/2 in and 1/2 in: 42 less 26 1/2 or 32 1/2 and bars of 4 1/2 in.
    for (const { along } of ends) expect(along).toBe(2.5 * IN);
    const inStrips = lays.flatMap(({ root }) => root.parts.flatMap((strip) => strip.parts));
    for (const part of inStrips.filter(({ cause }) => cause === "strip-end"))
      expect(part.along).not.toBe(3.5 * IN);
  });
});

describe("a class", () => {
  // 642 in of strips and an end of 1 in squared off each of three lengths are 645 in: 18 yd in steps of 1/8 yd.
  test("is cut from several bolts, no strip across the end of one", async () => {
    const sky = await fabricOf(textOf("class-on-bolts"), "sky", { kits: 12 });
    expect(sky.bound.used).toBe(642 * IN);
    expect(sky.purchase).toMatchObject({ length: 18 * 36 * IN, cost: 18000 });
    expect(sky.bound.purchaseProven).toBe(true);
    const lengths = sky.purchase?.lengths ?? [];
    expect(lengths).toHaveLength(3);
    for (const { length } of lengths) expect(length).toBeLessThanOrEqual(8 * 36 * IN);
    expect(sky.lays.map(({ name, along }) => [name, along])).toEqual(
      lengths.map(({ length }, i) => [`bolt ${i + 1}`, length]),
    );
  });

  // 12 kits of 3 x 4 1/2 in rails and a third of a strip of squares: each three kits have 40 strips less what they share.
  test("is told on several bolts what a spoiled strip costs, what width will do, and which strips fill which kits", async () => {
    const options = { ...USUAL_OPTIONS, kits: 12 };
    const { value } = await planQuilt(textOf("class-on-bolts"), "trial.yaml", options, solveHere);
    expect(auditPlan(value!)).toEqual([]);
    const sky = value!.fabrics.find(({ name }) => name === "sky")!;
    const { mistakes, narrowestUsable } = sky.sturdiness;
    // 648 in are bought and 645 in used: for 40 in more the last bolt, which has 3 in left at most, takes 9/8 yd more.
    expect(mistakes?.worst).toMatchObject({ width: 40 * IN, more: 40.5 * IN });
    expect(narrowestUsable).toBeLessThanOrEqual(42 * IN);
    expect(narrowestUsable).toBeGreaterThanOrEqual(40 * IN);
    expect(sky.kitShares?.every(({ strips, bolts }) => bolts?.length === strips.length)).toBe(true);
    expect(new Set(sky.kitShares?.flatMap(({ bolts = [] }) => bolts)).size).toBe(3);
  });

  test("is cut from one length where the shop has it", async () => {
    const endless = textOf("class-on-bolts").replace("bolt: 8 yd", "bolt: endless");
    const sky = await fabricOf(endless, "sky", { kits: 12 });
    expect(sky.purchase?.lengths).toBeUndefined();
    expect(sky.lays).toHaveLength(1);
  });

  // Bands lie one after another along one roll: they are dealt out with the rest of the pieces.
  test("has its long borders on as many bolts", async () => {
    const text = `name: Borders\nfabrics:\n  - name: leaf\n    bolt: 6 yd\n    pieces:\n      - border 6 1/2 x 70, 4, lengthwise\n      - square 6 1/2 square, 6\n`;
    const leaf = await fabricOf(text, "leaf", { kits: 6 });
    expect(leaf.lays.length).toBeGreaterThan(1);
    for (const { along } of leaf.lays) expect(along).toBeLessThanOrEqual(6 * 36 * IN);
  });
});

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

describe("what sewing leaves of pieces", () => {
  const rests = ({ leftovers }: FabricPlan): [number, number, number, string][] =>
    leftovers
      .filter(({ lay }) => lay === -1)
      .map(({ count, across, along, cause }) => [count, across / IN, along / IN, cause]);

  // derived geometry: five strips of 42 in less four joins of 1/2 in make 208 in for 180 in; six strips less five
  // diagonal joins of 2 1/2 in make 239 1/2 in for 206 in.
  test("the ends of a border's run and of the binding are left over, for every kit", async () => {
    const text = textOf("border-in-one-run");
    expect(rests(await fabricOf(text, "edge"))).toEqual([[1, 28, 4.5, "run-end"]]);
    expect(rests(await fabricOf(text, "charms"))).toEqual([[1, 33.5, 2.5, "run-end"]]);
    expect(rests(await fabricOf(text, "edge", { kits: 2 }))).toEqual([[2, 28, 4.5, "run-end"]]);
  });

  // derived geometry: 40 1/2 x 50 1/2 in and 4 in all round; two panels of 42 in less a seam of 1/2 in make 83 1/2 in.
  test("so are both sides of a backing, beyond what it must measure", async () => {
    const text = textOf("backing-sideways");
    expect(rests(await fabricOf(text, "birds"))).toEqual([[2, 12.5, 48.5, "panel-side"]]);
    expect(rests(await fabricOf(text.replace("horizontal", "vertical"), "birds", { kits: 2 }))).toEqual([
      [4, 17.5, 58.5, "panel-side"],
    ]);
  });

  // derived geometry: 107 cm of sand less 1 cm hold 13 segments of 8 cm; 36 units take 72 + 36: 5 sets and 7, 2 sets and
  // 10. Clay is 134 cm wide, two strips of it in the first set and one in the second.
  test("strips wider cloth gives are cut to the length of their set, and what is over is left", async () => {
    const { value } = await planOf(`name: Clay
units: cm
fabrics: [{ name: sand, width: 110 cm, selvage: 1.5 cm }, { name: clay, width: 137 cm, selvage: 1.5 cm }]
blocks: { n: { size: 19.5, cell: { nine-patch: [clay, sand, clay], method: strip sets } } }
setting: { rows: n, fill: 6 x 6 }
`);
    if (value === null) throw new Error("no plan");
    const [set, other] = value.making?.units[0]?.stripSets ?? [];
    expect([set?.fullSets, set?.fullLength, other?.fullSets]).toEqual([5, 107 * 6400, 2]);
    expect(set?.strips.map(({ beyond }) => beyond / 6400)).toEqual([27, 0, 27]);
    const sewing = makingSteps(value, english).replace(/\s+/g, " ");
    expect(sewing.match(/\(clay\) are longer than that: cut each to 107 cm before you sew it/g)).toHaveLength(
      2,
    );
    const clay = value.fabrics.find(({ name }) => name === "clay");
    expect(clay?.leftovers.filter(({ cause }) => cause === "set-end")).toEqual([
      { lay: -1, across: 27 * 6400, along: 8 * 6400, count: 12, cause: "set-end" },
    ]);
    expect(auditPlan(value)).toEqual([]);
    const sets = value.making!.units[0]!.stripSets;
    const strips = sets[0]!.strips.map((strip) => ({ ...strip, beyond: 0 }));
    const units = [{ ...value.making!.units[0]!, stripSets: [{ ...sets[0]!, strips }, ...sets.slice(1)] }];
    expect(auditPlan({ ...value, making: { ...value.making!, units } })[0]).toContain(
      "are longer than the set",
    );
  });

  test("the audit misses one that is not told, and finds one that is not there", async () => {
    const { value } = await planOf(textOf("backing-sideways"));
    if (value === null) throw new Error("no plan");
    const spoiled = (change: (fabric: FabricPlan) => FabricPlan): string[] =>
      auditPlan({ ...value, fabrics: value.fabrics.map(change) });
    const without = spoiled((fabric) => ({
      ...fabric,
      leftovers: fabric.leftovers.filter(({ lay }) => lay >= 0),
    }));
    expect(without).toEqual(["birds: an offcut worth keeping is not listed"]);
    const wider = spoiled((fabric) => ({
      ...fabric,
      leftovers: fabric.leftovers.map((rest) =>
        rest.lay < 0 ? { ...rest, across: rest.across + IN } : rest,
      ),
    }));
    expect(wider[0]).toMatch(/panel-side is not there 2 times/);
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
    const outer = plum.pieces.find(({ joined }) => joined?.whole === null);
    expect(outer).toMatchObject({ count: 8, along: 6.5 * IN, joined: { length: 325 * IN } });
  });

  // derived geometry: 4 x 9 root 2 = 50.91 in and 54 = 18 x 3 leave 1.544 in on each side, 5 x 9 root 2 = 63.64 and
  // 66 = 22 x 3 leave 1.180 in; 1.544 and 1/2 in lie below 2 1/8. Lengths 64 1/4 and 54 1/2, twice each, are 237 1/2 in.
  test("a border that is to fit is cut in one width all round, from one run, and told so", async () => {
    const { value } = await planOf(textOf("fitted-border"));
    const leaf = value?.fabrics.find(({ name }) => name === "leaf");
    const spacer = leaf?.pieces.filter(({ uses }) =>
      uses.some(({ purpose }) => JSON.stringify(purpose).includes('"spacer"')),
    );
    // derived geometry: sides of 45 root 2 + 1/2, up to 64 1/4; the top between them of 36 root 2 + 1/2 and twice the
    // 1 5/8 that the spacer is wide until it is trimmed, up to 54 3/4; two of each.
    expect(spacer).toMatchObject([{ count: 6, along: 2.125 * IN, joined: { length: 238 * IN } }]);
    const sewing = value === null ? "" : makingSteps(value, english).replace(/\s+/g, " ");
    expect(sewing).toContain("This border, cut 2 1/8 in wide all round,");
    expect(sewing).toContain("the top must measure 54 1/2 x 66 1/2 in now");
  });
});

describe("a border that may be joined or cut along the selvage", () => {
  // derived geometry: the centre is 48 in, so that sides are 48 1/2 and ends 56 1/2 in, longer than the 42 in of width.
  test("leaves every bag the letter that the sewing names, whichever way it is made", async () => {
    const { value } = await planOf(textOf("either-border"));
    expect(value === null ? ["no plan"] : auditPlan(value)).toEqual([]);
    const letters = value?.fabrics.flatMap(({ pieces }) => pieces.map(({ letter }) => letter)) ?? [];
    expect(new Set(letters).size).toBe(letters.length);
    // Red has [A] alone; the bags of navy go on from there.
    expect(value?.fabrics[0]?.pieces.map(({ letter }) => letter)).toEqual(["A"]);
    const navy = value?.fabrics[1]?.pieces ?? [];
    expect(navy.find(({ across, along }) => across === 6.5 * IN && along === 6.5 * IN)?.count).toBe(32);
    // A run of shorter strips alone is said to be one by how it is sewn: the bag does not say it again.
    const binding = value === null ? "" : cuttingSteps(value, false, english);
    const told = binding.split("\n").filter((line) => /double-fold binding.*sew end to end/.test(line));
    expect(told.map((line) => line.match(/shorter strip/g)?.length ?? 0)).toEqual([1]);
  });
});

describe("a pair of borders", () => {
  // derived geometry: 27 in hold the block of 20 1/2 in and one side of 3 1/2 in standing beside it. The other side lying
  // across, with two ends of 26 1/2 in, makes 20 1/2 + 3 x 3 1/2 = 31 in; both sides lying across make 34 1/2 in.
  test("is cut from one grain, though one across and one along would take less", async () => {
    const fabric = await fabricOf(
      `name: Pair
fabrics: [{ name: moss, width: 28 in, selvage: 1/2 in }]
blocks: { a: { size: 20, cell: { square: moss } } }
setting: { rows: a }
borders: [{ fabric: moss, width: 3 }]
`,
      "moss",
    );
    const sides = fabric.pieces.findIndex(({ uses }) =>
      uses.some(
        ({ purpose }) => purpose.for === "border" && purpose.border === 1 && purpose.pair === "sides",
      ),
    );
    const cut = fabric.lays
      .flatMap(({ root }) => [...everyPart(root)])
      .filter(({ piece }) => piece === sides)
      .map(({ across, along }) => [across / IN, along / IN]);
    expect(cut).toEqual([
      [20.5, 3.5],
      [20.5, 3.5],
    ]);
    expect(fabric.bound.used).toBe(34.5 * IN);
    // What was proved speaks of any cutting; this one is longer by what the pair costs.
    expect(fabric.bound).toMatchObject({ least: 31 * IN, lengthProven: false });
  });
});

describe("cloth in hand", () => {
  // derived geometry: 36 in less 1/2 in squared off leave seven strips of 4 1/2 in.
  test("is squared first: seven strips of 4 1/2 in come from 36 in, not eight", async () => {
    const { value, diagnostics } = await planOf(textOf("own-length-squared"));
    expect(value).toBeNull();
    expect(diagnostics).toMatchObject([{ code: "STOCK-SHORT" }]);
    expect(said(diagnostics[0])?.message).toContain("1 of 42 x 4 1/2 in");
    const seven = textOf("own-length-squared").replace("x WOF, 8", "x WOF, 7");
    expect((await fabricOf(seven, "moss")).stock).toMatchObject([{ used: 1 }]);
  });

  test("is used as it is where its size is said to be usable", async () => {
    const text = textOf("own-length-squared").replace("WOF x 36 in, 1", "WOF x 36 in, 1, usable size");
    expect((await fabricOf(text, "moss")).stock).toMatchObject([{ used: 1 }]);
    const settable = textOf("own-length-squared").replace("    have:", "    square-up: 0 in\n    have:");
    expect((await fabricOf(settable, "moss")).stock).toMatchObject([{ used: 1 }]);
  });

  // derived geometry: 20 1/2 x 17 1/2 in hold 4 x 3 squares of 4 1/2 in.
  test("sixteen squares of 4 1/2 in do not come from a fat quarter as sold", async () => {
    const text = (count: number) =>
      `name: Sky\nfabrics: [{ name: Sky, yardage: no, have: ["fat quarter, 1"], pieces: ["sq 4 1/2 square, ${count}"] }]`;
    expect((await planOf(text(12))).value).not.toBeNull();
    expect((await planOf(text(13))).diagnostics).toMatchObject([{ code: "STOCK-SHORT" }]);
  });

  test("is used in the order a maker would: what is cut already, then quarters, the length untouched", async () => {
    const sky = await fabricOf(textOf("scraps-before-yardage"), "sky");
    const used = (sky.stock ?? []).map(({ name, used: count }) => [name, count]);
    expect(used).toEqual([
      ["5 in square", 30],
      ["fat quarter", 1],
      ["piece WOF x 36 in", 0],
    ]);
  });
});

// Top and bottom of 61 1/2 in: 2 x 61 1/2 = 123 of the 125 in that three strips of 42 make with two joins of 1/2 in.
test("a border beside strips is joined from whole strips, or from no piece shorter than the file says", async () => {
  const runOf = async (text: string) => {
    const { value } = await planQuilt(text, "trial.yaml", USUAL_OPTIONS, quickSolve(solveHere));
    expect(auditPlan(value!)).toEqual([]);
    const terns = value!.fabrics.find(({ name }) => name === "terns")!;
    return { value: value!, sources: terns.pieces.filter(({ joined }) => joined !== undefined) };
  };
  const { sources } = await runOf(textOf("border-in-few-joins"));
  expect(sources.map(({ fullWidth, count }) => [fullWidth, count])).toEqual([[true, 3]]);
  const thrifty = await runOf(`${textOf("border-in-few-joins")}join-from: 8 in\nprefer: sparing\n`);
  expect(thrifty.sources.reduce((sum, { count }) => sum + count, 0)).toBeGreaterThan(3);
  for (const { across } of thrifty.sources) expect(across).toBeGreaterThanOrEqual(8 * IN);
  const told = (plan: Plan) => plan.assumptions.some(({ of }) => of.is === "joined-from");
  expect(told(thrifty.value)).toBe(false);
});

/*
 * A side is 2 by 4 finished, a right triangle: with its allowances a rectangle 2 3/4 x 4 1/2 or more. Of two to a rectangle
 * 64 strips' places hold 128; each hand in runs of its own, they still take little more than half of what rectangles take.
 */
test("templates of both hands stand in runs, each hand in its own", async () => {
  const slate = await fabricOf(textOf("templates-of-both-hands"), "slate");
  expect(slate.pieces.map(({ count, shape, nest }) => [count, shape?.reversed, nest !== undefined])).toEqual([
    [64, 0, true],
    [64, 0, true],
  ]);
  const { across, along } = slate.pieces[0]!;
  const inRectangles = Math.ceil(128 / Math.floor((42 * IN) / across)) * along;
  expect(slate.bound).toMatchObject({ lengthProven: true });
  expect(slate.bound.used).toBeLessThan(0.75 * inRectangles);
});

test("a strip of full width that is to be cut lengthwise is refused in the maker's words", async () => {
  const { value, diagnostics } = await planOf(textOf("binding-lengthwise"));
  expect(value).toBeNull();
  const [error] = allSaid(diagnostics).filter(({ severity }) => severity === "error");
  expect(error?.message).toContain("cannot be cut lengthwise as well");
  expect(error).toMatchObject({ at: { line: 6 }, hint: expect.stringContaining("cut lengthwise") });
  expect(exitCodeOf(diagnostics)).toBe(1);
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
    const [error] = allSaid(diagnostics).filter(({ severity }) => severity === "error");
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

test("the parts of the sewing hold every line of the work on a foundation, in its order", async () => {
  const { value } = await planOf(textOf("foundation-upright"));
  const [making, parts] = [value?.making, value === null ? null : sewingParts(value, english)];
  if (value === null || making === undefined || parts === null) throw new Error("no plan");
  const lines = foundationLines(making, value, english)
    .map((line) => line.replace(/^ *(?:\[ \] )?/, ""))
    .filter((line) => line !== "");
  // A part's name heads its steps with a capital letter.
  const steps = JSON.stringify(parts.blocks).toLowerCase();
  const heard = lines.map((line) =>
    steps.indexOf(
      JSON.stringify(line.split(/[\d.;:]/, 1)[0])
        .slice(1, -1)
        .toLowerCase(),
    ),
  );
  expect(lines.length).toBeGreaterThan(10);
  expect(lines.filter((_, i) => (heard[i] ?? -1) < 0)).toEqual([]);
});
