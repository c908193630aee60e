import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { listQuiltCuts } from "../../src/cutlist/quilt-list.ts";
import { EIGHTH_INCH_RULER, QUARTER_CENTIMETRE_RULER } from "../../src/length/index.ts";
import type { Ruler } from "../../src/length/types.ts";
import { exactToNumber } from "../../src/quilt/exact.ts";
import { layOutQuilt } from "../../src/quilt/lay-out-quilt.ts";
import { restate } from "../../src/quilt/restate.ts";
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
    what: "seam allowance",
    before: "1/4 in",
    after: "0.75 cm",
  });
  expect(changes.find(({ what }) => what === "border 1")).toMatchObject({ before: "3 in", after: "7.5 cm" });
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
