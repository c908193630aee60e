import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { listQuiltCuts } from "../../src/cutlist/of-quilt/quilt-list.ts";
import { EIGHTH_INCH_RULER, QUARTER_CENTIMETRE_RULER } from "../../src/length/index.ts";
import type { Ruler } from "../../src/length/types.ts";
import { exactToNumber } from "../../src/quilt/exact.ts";
import { layOutQuilt } from "../../src/quilt/lay-out-quilt.ts";
import { restate } from "../../src/quilt/sizes/restate.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { starters as STARTERS } from "../../src/words/en/starters.ts";
import { allSaid, assumedIn } from "../support/in-words.ts";
import { oneIn } from "../support/sweep.ts";
import { cutsOf, INCH, workOut } from "./reading.ts";

const CENTIMETRE = 6400;
const MILLIMETRE_RULER: Ruler = { unit: "mm", mark: 640 };

const FILES = ["nine-stars", "stars-and-geese-sashes", "salsa-on-point", "rails-and-bars", "vintage-crib"];

function fixture(name: string): ReturnType<typeof workOut> {
  return workOut(readFileSync(new URL(`../../fixtures/quilts/${name}.yaml`, import.meta.url), "utf8"));
}

describe.each(FILES)("%s in centimetres", (name) => {
  test.each([
    ["quarter centimetres", QUARTER_CENTIMETRE_RULER],
    ["millimetres", MILLIMETRE_RULER],
  ])("%s: adds up, on marks, nearly the same quilt", (_, ruler) => {
    const { spec, top } = fixture(name);
    const { spec: metric, changes, factor } = restate(spec, ruler);
    const laid = layOutQuilt(metric);
    expect(laid.diagnostics.filter(({ severity }) => severity !== "info")).toEqual([]);
    expect(factor).not.toBe(null);
    const grown = exactToNumber(laid.value?.top.across ?? top.across) / exactToNumber(top.across);
    expect(Math.abs(grown - 1)).toBeLessThan(0.06);
    expect(changes.length).toBeGreaterThan(0);
    // Every size to cut can be set on the ruler.
    const cuts = laid.value === null ? null : listQuiltCuts(metric, laid.value.work).value;
    for (const { pieces } of cuts?.cutLists ?? []) {
      for (const piece of pieces) {
        expect(piece.along % ruler.mark).toBe(0);
        if (!piece.fullWidth) expect(piece.across % ruler.mark).toBe(0);
      }
    }
  });
});

test("inches become 2.5 cm, a quarter-inch seam 0.75 cm, and each change is told", () => {
  const { spec } = fixture("nine-stars");
  const { spec: metric, changes, factor } = restate(spec, QUARTER_CENTIMETRE_RULER);
  expect((factor?.n ?? 0) / (factor?.d ?? 1)).toBeCloseTo(2.5 / 2.54, 12);
  expect(metric.seam).toBe(0.75 * CENTIMETRE);
  expect(metric.blocks[0]?.across).toEqual({ n: 20 * CENTIMETRE, d: 1 });
  expect(changes).toContainEqual({
    path: "seam",
    what: { of: "seam" },
    before: { as: "marks", ticks: 4064, ruler: spec.ruler },
    after: { as: "marks", ticks: 4800, ruler: QUARTER_CENTIMETRE_RULER },
  });
  expect(changes.find(({ what }) => what.of === "border" && what.border === 1)).toMatchObject({
    before: { ticks: 3 * INCH },
    after: { ticks: 7.5 * CENTIMETRE },
  });
});

test("there and back is the same design", () => {
  const { spec } = fixture("nine-stars");
  const back = restate(restate(spec, QUARTER_CENTIMETRE_RULER).spec, EIGHTH_INCH_RULER).spec;
  expect(back.seam).toBe(INCH / 4);
  expect(back.blocks[0]?.across).toEqual({ n: 8 * INCH, d: 1 });
});

describe("seam allowances of either system", () => {
  const cut = (seam: string, size: string, units: string): string[] =>
    cutsOf(
      workOut(`units: ${units}
ruler: ${units === "in" ? "1/8 in" : "1 mm"}
seam: ${seam}
fabrics: [{ name: red }, { name: white }]
blocks: { b: { size: ${size}, cell: { half-square triangle: [red, white] } } }
setting: { rows: b b }`),
      "red",
    );

  // derived geometry: finished + seam x (2 + root 2), rounded up to the mark.
  test.each([
    ["6 mm", "10", "cm", 100 + 6 * (2 + Math.SQRT2)],
    ["7 mm", "10", "cm", 100 + 7 * (2 + Math.SQRT2)],
    ["0.75 cm", "10", "cm", 100 + 7.5 * (2 + Math.SQRT2)],
  ])("a %s seam", (seam, size, units, millimetres) => {
    const side = (Math.ceil(millimetres) * 640) / INCH;
    expect(cut(seam, size, units)).toEqual([`${side} x ${side} x 1`]);
  });

  test.each([
    ["1/4", 2, 2.875],
    ["3/8", 2, 3.375],
  ])("a %s in seam", (seam, size, side) => {
    expect(cut(seam, String(size), "in")).toEqual([`${side} x ${side} x 1`]);
  });
});

const HALF_CENTIMETRE_RULER: Ruler = { unit: "cm", mark: CENTIMETRE / 2 };

/** Every quilt the project has. */
function everyQuilt(): [string, string][] {
  const found = ["quilts", "trials"].flatMap((folder) => {
    const url = new URL(`../../fixtures/${folder}/`, import.meta.url);
    return readdirSync(url).map((name): [string, string] => [name, readFileSync(new URL(name, url), "utf8")]);
  });
  return [...found, ...STARTERS.map(({ name, text }): [string, string] => [`starter ${name}`, text])];
}

const COARSE_TOO = /^(barred|allotments|rails-and|prints-both)/;

test("every quilt can be restated, on the usual marks, and some on coarse ones", () => {
  const failed: string[] = [];
  for (const [name, text] of oneIn(2, everyQuilt())) {
    const { value } = readSpecFile(text, name);
    if (value?.kind !== "quilt") continue;
    const coarse = COARSE_TOO.test(name) ? [HALF_CENTIMETRE_RULER] : [];
    for (const ruler of [QUARTER_CENTIMETRE_RULER, ...coarse]) {
      const { spec } = restate(value, ruler);
      const laid = layOutQuilt(spec);
      const listed = laid.value === null ? [] : listQuiltCuts(spec, laid.value.work).diagnostics;
      const errors = [...laid.diagnostics, ...listed].filter(({ severity }) => severity === "error");
      failed.push(...allSaid(errors).map(({ message }) => `${name}: ${message}`));
      const inches = assumedIn(spec).filter(({ value: said }) => /\d in\b/.test(said));
      failed.push(...inches.map(({ subject, value: said }) => `${name} assumes ${subject}: ${said}`));
    }
  }
  expect(failed).toEqual([]);
});

test("what is assumed is said as it is made", () => {
  const { spec } = workOut(`fabrics: [{ name: red }, { name: web, width: 44 in, selvage: 0 }]
foundation: { fabric: web, grid: 1 in, per: unit }
blocks: { b: { size: 4, cell: { half-square triangle: [red, red] } } }
setting: { rows: b b }
backing: red
`);
  const { spec: metric } = restate(spec, QUARTER_CENTIMETRE_RULER);
  const said = new Map(assumedIn(metric).map(({ subject, value }) => [subject, value]));
  expect(said.get("seam allowance")).toBe("0.75 cm");
  // Cloth is what it is: 42 in, whole ticks said to the hundredth of a millimetre.
  expect(said.get("usable width")).toContain("106.68 cm");
  expect(said.get("patches for the foundation larger by")).toBe("0.75 cm");
  const straighten = metric.fabrics.find(({ name }) => name === "web")?.straighten;
  const told = assumedIn(metric).find((one) => one.subject === "straightening" && one.fabric === "web");
  expect([straighten, told?.value]).toEqual([2.5 * CENTIMETRE, "2.5 cm, to a printed line"]);
});

describe("where no one factor serves", () => {
  // 2 1/8 in are 5.3975 cm, 1 1/2 in are 3.81 cm: to quarters 5.5 (nearest 5.5) and 3.75.
  test("strips are moved first, and the block is what they add up to", () => {
    const { spec } = workOut(`fabrics: [{ name: red }, { name: white }]
blocks: { b: { size: 3 x 5 3/4, cell: { rails: [red, white, red], strips: [2 1/8, 1 1/2, 2 1/8] } } }
setting: { rows: b b }
`);
    const { spec: metric, factor } = restate(spec, QUARTER_CENTIMETRE_RULER);
    expect(factor).toBe(null);
    const strips = metric.blocks[0]?.cells[0]?.strips?.map(({ n, d }) => n / d / CENTIMETRE);
    expect(strips).toEqual([5.5, 3.75, 5.5]);
    expect(metric.blocks[0]?.down).toEqual({ n: 14.75 * CENTIMETRE, d: 1 });
  });

  test("a corner at 0 stays at 0, and patches fill their block", () => {
    const { spec } = workOut(`fabrics: [{ name: red }, { name: white }]
blocks: { b: { size: 3 1/8, cell: { drawn patches: { u: red, v: white }, patches: [
  { part: u, corners: [[0, 0], [1 3/8, 0], [0, 3 1/8]] },
  { part: v, corners: [[1 3/8, 0], [3 1/8, 0], [3 1/8, 3 1/8], [0, 3 1/8]] } ] } } }
setting: { rows: b b }
`);
    const { spec: metric, factor } = restate(spec, QUARTER_CENTIMETRE_RULER);
    expect(factor).toBe(null);
    const corners = metric.blocks[0]?.cells[0]?.patches?.[0]?.corners.map(({ x, y }) => [
      x.n / x.d,
      y.n / y.d,
    ]);
    expect(corners).toEqual([
      [0, 0],
      [3.5 * CENTIMETRE, 0],
      [0, 8 * CENTIMETRE],
    ]);
    expect(layOutQuilt(metric).diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  });

  test("blocks of unlike cells meet still: 2.5 cm stand for an inch", () => {
    const { spec } = workOut(`fabrics: [{ name: red }, { name: white }]
blocks:
  a: { size: 9, grid: ["s s s", "s s s", "s s s"], cells: { s: { square: red } } }
  b: { size: 9, grid: ["s s s s", "s s s s", "s s s s", "s s s s"], cells: { s: { square: white } } }
setting: { rows: ["a b", "b a"] }
borders: [{ fabric: red, width: 2 }]
`);
    const { spec: metric, factor } = restate(spec, QUARTER_CENTIMETRE_RULER);
    expect((factor?.n ?? 0) / (factor?.d ?? 1)).toBeCloseTo(2.5 / 2.54, 9);
    expect(metric.blocks.map(({ across }) => across)).toEqual(Array(2).fill({ n: 22.5 * CENTIMETRE, d: 1 }));
  });
});

test("a folded foundation keeps its seam allowance in squares, and its parts in whole squares", () => {
  const { spec } = workOut(`fabrics: [{ name: red }, { name: white }, { name: web, width: 44 in, selvage: 0 }]
foundation: { fabric: web, grid: 1/4 in, way: folded, per: block }
blocks: { b: { size: 4, grid: ["h h", "h h"], cells: { h: { half-square triangle: [red, white] } } } }
setting: { rows: b b }
`);
  const { spec: metric } = restate(spec, QUARTER_CENTIMETRE_RULER);
  expect(layOutQuilt(metric).diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  expect(metric.seam).toBe((metric.foundation?.grid ?? 0) * (metric.foundation?.allowance ?? 0));
});
