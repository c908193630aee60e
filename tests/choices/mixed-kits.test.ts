import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { compareSorts } from "../../src/choices/kits/kits.ts";
import { planClass } from "../../src/choices/kits/plan-class.ts";
import { readKits } from "../../src/choices/kits/read-kits.ts";
import { kitPrices, kitsList } from "../../src/content/buying/kits.ts";
import { cuttingSteps } from "../../src/content/index.ts";
import { kitSteps } from "../../src/content/sewing/making.ts";
import { solveHere } from "../../src/index.ts";
import { USUAL_OPTIONS } from "../../src/pipeline.ts";
import type { Plan } from "../../src/plan/types.ts";
import { classSheet, kitBook, pageOf } from "../../src/print/index.ts";
import { type QuiltSpec, readKitLine, readSpecFile } from "../../src/spec/index.ts";
import { english } from "../../src/words/index.ts";

const QUILT = `
name: Windows
fabrics:
  - { name: night, price: $12 per yd }
  - { name: boats, print: one-way, price: $11 per yd }
  - { name: chalk, price: $9 per yd }
  - { name: plum, price: $10 per yd }
blocks:
  window:
    size: 6
    grid: |
      n b
      b n
    cells: { n: { square: night }, b: { half-square triangle: [boats, chalk] } }
setting: { rows: window*2, fill: 2 x 2 }
borders: [{ fabric: night, width: 2, cut: either, join: straight }]
binding: chalk
class:
  colourways: { dusk: { night: plum }, swapped: { night: plum, plum: night } }
  kits:
    - 4
    - { count: 3, size: 4x7, colourway: dusk }
    - 2 of 4x7 in dusk
`;

function specOf(text: string): QuiltSpec {
  const { value, diagnostics } = readSpecFile(text, "windows.yaml");
  if (value?.kind !== "quilt") throw new Error(JSON.stringify(diagnostics));
  return value;
}

const OPTIONS = { ...USUAL_OPTIONS, effort: 60 };
const spec = specOf(QUILT);
const asked = readKits("file", spec).value ?? [];
const planned = (await planClass(spec, asked, OPTIONS, solveHere)).value;
if (planned === null) throw new Error("no class");
const { batch } = planned;
const kits = (await compareSorts(planned, OPTIONS, solveHere)).value;
if (kits === null) throw new Error("no kits");

const fabricOf = (plan: Plan, name: string) => plan.fabrics.find((fabric) => fabric.name === name);

describe("kits of several sorts", () => {
  test("are one purchase of all their pieces, counted by hand, and pass the audit", () => {
    expect(auditPlan(batch)).toEqual([]);
    // derived geometry: a block has two squares of 3 1/2 in; 4 blocks in a kit of 2x2, 28 in one of 4x7.
    const squares = fabricOf(batch, "night")?.pieces.find(({ across, along }) => across === along);
    expect(squares?.inKits).toEqual([
      { kits: 4, each: 8 },
      { kits: 3, each: 0 },
      { kits: 2, each: 0 },
    ]);
    expect(squares?.count).toBe(32);
    const plum = fabricOf(batch, "plum")?.pieces.find(({ across, along }) => across === along);
    expect(plum?.count).toBe(5 * 56);
    // The print has an up, so that its squares are halved one by one, whatever the quilt's size: one bag for all sorts.
    for (const { inKits = [], count } of fabricOf(batch, "boats")?.pieces ?? [])
      expect(inKits.reduce((sum, sort) => sum + sort.kits * sort.each, 0)).toBe(count);
    for (const { together, separately } of kits.fabrics)
      expect(together?.length ?? 0).toBeLessThanOrEqual(separately?.length ?? 0);
    expect(batch.sorts?.map(({ kits: many, finished, colourway }) => [many, finished, colourway])).toEqual([
      [4, "16 x 16 in", ""],
      [3, "28 x 46 in", "dusk"],
      [2, "28 x 46 in", "dusk"],
    ]);
  });

  test("each is sewn from just the bags that are dealt to it", () => {
    kits.sorts.forEach(({ dealt }, i) => {
      const letters = new Map<string, number>();
      for (const { pieces } of batch.fabrics)
        for (const { letter, inKits } of pieces)
          if ((inKits?.[i]?.each ?? 0) > 0) letters.set(letter, inKits?.[i]?.each ?? 0);
      const held = dealt.fabrics.flatMap(({ pieces }) =>
        pieces.map(({ letter, count }) => [letter, count] as const),
      );
      expect(new Map(held)).toEqual(letters);
      // Units name the bags that the class has.
      for (const { batches } of dealt.making?.units ?? [])
        for (const { laid } of batches) for (const { letter } of laid) expect(letters.has(letter)).toBe(true);
    });
    expect(fabricOf(kits.sorts[1]?.dealt ?? batch, "night")).toBeUndefined();
    expect(fabricOf(kits.sorts[0]?.dealt ?? batch, "plum")).toBeUndefined();
  });

  test("share out the whole price, by what each takes", () => {
    const prices = kitPrices(kits);
    const shared = kits.sorts.reduce((sum, one, i) => sum + one.kits * (prices[i]?.share ?? 0), 0);
    const whole = kits.fabrics.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
    expect(shared).toBeCloseTo(whole, 6);
    // Kits of one size and colourway cost the same, whichever sort they stand in.
    expect(prices[1]?.share).toBeCloseTo(prices[2]?.share ?? 0, 6);
    expect(prices[0]?.share).toBeLessThan(prices[1]?.share ?? 0);
  });

  test("the audit counts what they get", () => {
    const wrong: Plan = structuredClone(batch);
    const piece = wrong.fabrics[0]?.pieces[0];
    if (piece?.inKits === undefined) throw new Error("not dealt");
    piece.inKits = piece.inKits.map((sort, i) => (i === 0 ? { ...sort, each: sort.each + 1 } : sort));
    expect(auditPlan(wrong).join()).toContain(`of ${piece.letter}, cut are ${piece.count}`);
    const { sorts: _, ...none } = wrong;
    expect(auditPlan(none).join()).toContain("is dealt to 3 sorts of kits");
  });

  test("are told on the lists, the teacher's sheet and a paper for each sort", () => {
    const list = kitsList(kits, english);
    expect(list).toContain("9 kits of Windows");
    expect(list).toMatch(/Kit 2: 4x7, 28 x 46 in, dusk +3 +\$/);
    expect(list).toContain("Kit 1: 16 x 16 in. Into the bags of each of the 4:");
    expect(cuttingSteps(batch, true, english)).toMatch(/56 into each kit 2, 56 into each kit 3/);
    const paper = kitSteps(kits.sorts[1]!, 1, english);
    expect(paper).toContain("Windows, Kit 2: 4x7, 28 x 46 in, dusk: sewing");
    const sheet = pageOf(classSheet(kits, english), english);
    expect(sheet).toMatch(/Kit.3: 4x7, [^<]*dusk \(fill.2\)/);
    const book = pageOf(kitBook(kits.sorts[0]!, 0, spec.pattern, english), english);
    expect(book).toContain("What the kit holds");
    expect(book).not.toContain('id="requirements"');
    for (const told of [paper, sheet, book]) expect(told).not.toMatch(/\bthe file\b/i);
  });
});

describe("colourways of a class", () => {
  test("change places at once", async () => {
    const both = (await planClass(spec, readKits("1, 1 in swapped", spec).value ?? [], OPTIONS, solveHere))
      .value;
    const area = (plan: Plan | undefined, name: string) =>
      fabricOf(plan ?? batch, name)?.pieces.reduce(
        (sum, p) => sum + (p.inKits?.[1]?.each ?? 0) * p.across * p.along,
        0,
      );
    const drawn = both?.batch.fabrics
      .find(({ name }) => name === "night")
      ?.pieces.reduce((sum, p) => sum + (p.inKits?.[0]?.each ?? 0) * p.across * p.along, 0);
    expect(area(both?.batch, "plum")).toBe(drawn);
    expect(area(both?.batch, "night")).toBe(0);
  });
});

describe("kits as typed", () => {
  test.each([
    ["4 of 3x3", { count: 4, size: "3x3", colourway: "" }],
    ["5 of lap in dusk", { count: 5, size: "lap", colourway: "dusk" }],
    ["6 in Dusk", { count: 6, size: "", colourway: "dusk" }],
    ["2 of 60 x 80 in", { count: 2, size: "60 x 80 in", colourway: "" }],
    ["2 of 60 x 80 in in dusk", { count: 2, size: "60 x 80 in", colourway: "dusk" }],
    ["1 of queen drop 12 in at sides", { count: 1, size: "queen drop 12 in at sides", colourway: "" }],
    ["12", { count: 12, size: "", colourway: "" }],
  ])("%s", (line, kit) => {
    expect(readKitLine(line, ["dusk"])).toEqual({ ok: true, kit });
  });

  test.each([
    ["of 3x3", "no-count"],
    ["0 of 3x3", "count"],
    ["1.5 of 3x3", "count"],
    ["4 of", "no-size"],
    ["4 of lap in dask", "colourway"],
    ["4 in dask", "colourway"],
    ["four of lap", "no-count"],
  ])("%s is refused", (line, is) => {
    expect(readKitLine(line, ["dusk"])).toMatchObject({ ok: false, fault: { is } });
  });

  test("several with commas between them, or semicolons; every fault is told", () => {
    const sizes = (typed: string) =>
      readKits(typed, spec).value?.map(({ kits: many, size }) => [many, size?.asked]);
    expect(sizes("4 of 3x3,5 of 4x5")).toEqual([
      [4, "3x3"],
      [5, "4x5"],
    ]);
    expect(sizes("4 of 3x3; 5 of queen drop 12 in at left, foot")?.length).toBe(2);
    const codes = (typed: string, of = spec) => readKits(typed, of).diagnostics.map(({ code }) => code);
    expect(codes("4 of kign, x")).toEqual(["KIT-UNREADABLE", "QUILT-SIZE-UNREADABLE"]);
    expect(codes("800, 300")).toEqual(["KITS-TOO-MANY"]);
    expect(codes("file", { ...spec, class: { colourways: [], kits: [] } })).toEqual(["KITS-MISSING"]);
  });
});
