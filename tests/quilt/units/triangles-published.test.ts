import { describe, expect, test } from "vitest";
import { fromInteger } from "../../../src/length/rational.ts";
import {
  halfSquareExtra,
  quarterSquareExtra,
  straightExtra,
  tradeExtras,
} from "../../../src/quilt/units/allowance.ts";
import { plainDesign } from "../../../src/quilt/units/design.ts";
import { rootsToNumber, upToMark } from "../../../src/quilt/units/outlines/roots.ts";
import {
  CM,
  centimetres,
  cutInches,
  INCH,
  inches,
  QUARTER,
  recipeOf,
  TRADE,
  unit,
} from "./support/making.ts";

const HST = "half-square triangle";
const QST = "quarter-square triangle";

describe("allowances of triangles", () => {
  test("at 1/4 in: 0.853553 and 1.207107 in, over which 7/8 and 1 1/4 stand 0.021447 and 0.042893", () => {
    // derived geometry: seam x (2 + root 2) and seam x (2 + 2 root 2)
    const half = rootsToNumber(halfSquareExtra(QUARTER.seam)) / INCH;
    const quarter = rootsToNumber(quarterSquareExtra(QUARTER.seam)) / INCH;
    expect(half).toBeCloseTo(0.853553, 6);
    expect(quarter).toBeCloseTo(1.207107, 6);
    expect(0.875 - half).toBeCloseTo(0.021447, 6);
    expect(1.25 - quarter).toBeCloseTo(0.042893, 6);
  });

  test("at metric seams, exact and up to the next millimetre", () => {
    // derived geometry, the same formulas
    const rows: [number, number, number, number, number][] = [
      [0.6, 2.048528, 2.897056, 2.1, 2.9],
      [0.635, 2.168026, 3.066051, 2.2, 3.1],
      [0.75, 2.56066, 3.62132, 2.6, 3.7],
      [1.0, 3.414214, 4.828427, 3.5, 4.9],
    ];
    for (const [seam, half, quarter, halfUp, quarterUp] of rows) {
      const exact = [halfSquareExtra(centimetres(seam)), quarterSquareExtra(centimetres(seam))] as const;
      expect(rootsToNumber(exact[0]) / CM).toBeCloseTo(half, 6);
      expect(rootsToNumber(exact[1]) / CM).toBeCloseTo(quarter, 6);
      expect(upToMark(exact[0], 640)).toBe(Math.round(halfUp * CM));
      expect(upToMark(exact[1], 640)).toBe(Math.round(quarterUp * CM));
    }
  });

  test("trade constants: 7/8 and 1 1/4 in, 2.5 and 3.5 cm, else 3 1/2 and 5 seams", () => {
    // "Why 7/8 and 1 1/4 (seam allowances of triangles)", Smart Plate Quilting
    expect(tradeExtras(inches(0.25))).toMatchObject({ half: inches(0.875), quarter: inches(1.25) });
    // "Metric Flying Geese", Weed 'n' Stitch, 2012: 2.5 and 3.5 cm at 0.75 cm
    expect(tradeExtras(centimetres(0.75))).toMatchObject({
      half: centimetres(2.5),
      quarter: centimetres(3.5),
    });
    // the same source adds 1.5 cm to squares, as does "How to plan a cot-sized quilt using metric maths", Lone Sock
    // Productions, 2010
    expect(rootsToNumber(straightExtra(centimetres(0.75))) / CM).toBe(1.5);
    // "Tilkkumatematiikkaa / Patchwork mathematics", Tilkkutaivas, 2012: 3.5 and 5 seams; exact 3.4142 and 4.8284
    expect(tradeExtras(centimetres(0.6))).toMatchObject({ half: centimetres(2.1), quarter: centimetres(3) });
    expect(rootsToNumber(halfSquareExtra(fromInteger(1)))).toBeCloseTo(3.414214, 6);
    expect(rootsToNumber(quarterSquareExtra(fromInteger(1)))).toBeCloseTo(4.828427, 6);
  });
});

describe("half-square triangles", () => {
  test("two at a time: finished + 7/8", () => {
    // "How to measure and cut triangles", Granny Maud's Girl, 2018
    for (const [finished, cut] of [
      [2, 2.875],
      [3, 3.875],
      // "Month 10: Finish the Quilt", Stitchin' Tree Quilts, 2013: 18 in, cut once
      [18, 18.875],
      // "Kite's Tail block", Quilters Cache: 4 in
      [4, 4.875],
    ] as const)
      for (const how of [QUARTER, TRADE])
        for (const method of ["two at a time", "single triangles"])
          expect(cutInches(recipeOf(HST, method, unit(finished, finished), how), "upper")).toBe(cut);
  });

  test("with 1/4 in to trim: 4 1/8 in for 3 in, trimmed to 3 1/2", () => {
    // "Half Square and Quarter Square Triangles", North Hampshire Quilters
    const recipe = recipeOf(HST, "two at a time", unit(3, 3), { ...QUARTER, oversize: inches(0.25) });
    expect(cutInches(recipe, "lower")).toBe(4.125);
    expect(recipe.trimTo).toEqual({ across: 3.5 * INCH, along: 3.5 * INCH, needed: true });
  });

  test("eight at a time: twice finished + 1 3/4", () => {
    // "Half square triangles, 8 at a time", Scrapish; 3 in also "How to make 8 half-square triangles at once", Craftsy, 2014
    for (const [finished, cut] of [
      [2, 5.75],
      [3, 7.75],
      [4, 9.75],
      [6, 13.75],
      [8, 17.75],
    ] as const) {
      const recipe = recipeOf(HST, "eight at a time", unit(finished, finished), TRADE);
      expect(cutInches(recipe, "upper")).toBe(cut);
      expect(recipe.unitsPerSet).toBe(8);
      // exact geometry, 2 x finished + 1.7071 in, comes to the same eighth
      expect(cutInches(recipeOf(HST, "eight at a time", unit(finished, finished), QUARTER), "upper")).toBe(
        cut,
      );
    }
  });

  test("eight at a time with room to trim: 6 in for 2 1/2 unfinished", () => {
    // "Magic eight half square triangles", Quilted Diary: 2 x (finished + 1), that is 1/8 in for each unit
    const recipe = recipeOf(HST, "eight at a time", unit(2, 2), { ...QUARTER, oversize: inches(0.125) });
    expect(cutInches(recipe, "upper")).toBe(6);
  });

  test("four at a time: root 2 x (finished + 2 seams) + 2 seams, up to 1/8", () => {
    // derived geometry
    for (const [finished, cut] of [
      [2, 4.125],
      [3, 5.5],
      [4, 6.875],
      [6, 9.75],
    ] as const) {
      const recipe = recipeOf(HST, "four at a time", unit(finished, finished), QUARTER);
      expect(cutInches(recipe, "upper")).toBe(cut);
      expect(recipe.unitsPerSet).toBe(4);
      expect(recipe.biasSides).toHaveLength(4);
    }
    const fine = recipeOf(HST, "four at a time", unit(3, 3), { ...QUARTER, mark: 1 });
    expect(cutInches(fine, "upper")).toBeCloseTo(5.449747, 3);
    // the rule often taught, unfinished / 0.64: 5.469 for 3 in (derived geometry names it as common practice)
    const taught = recipeOf(HST, "four at a time", unit(3, 3), { ...TRADE, mark: 1 });
    expect(cutInches(taught, "upper")).toBeCloseTo(5.469, 3);
  });
});

describe("quarter-square triangles", () => {
  test("finished + 1 1/4", () => {
    // "Cutting Quarter Square Triangles", Quiltville, 2005: 5 1/4 for 4 in; "Kite's Tail block" prints the same
    // "Half Square and Quarter Square Triangles", North Hampshire Quilters: 4 1/4 for 3 in
    for (const [finished, cut] of [
      [4, 5.25],
      [3, 4.25],
    ] as const)
      for (const how of [QUARTER, TRADE])
        expect(cutInches(recipeOf(QST, "two at a time", unit(finished, finished), how), "ends")).toBe(cut);
  });

  test("4 1/2 in for 3 in when it is to be trimmed", () => {
    // "Half Square and Quarter Square Triangles", North Hampshire Quilters
    const recipe = recipeOf(QST, "two at a time", unit(3, 3), { ...QUARTER, oversize: inches(0.25) });
    expect(cutInches(recipe, "sides")).toBe(4.5);
  });
});

describe("where trade and exact part", () => {
  test("a metric constant that falls short is not cut: the exact size is, and it is told", () => {
    // "Metric Flying Geese", Weed 'n' Stitch, 2012: 2.5 cm rounds down the exact 2.561, 3.5 cm the exact 3.621. A
    // square of 7.5 cm for 5 cm would leave a seam allowance of 0.73 cm, so 7.6 is cut where trade sizes are asked.
    const metric = { ...TRADE, seam: centimetres(0.75), mark: 640 };
    const design = plainDesign(centimetres(5), centimetres(5));
    const trade = recipeOf(HST, "two at a time", design, metric);
    expect(trade.pieces[0]?.along).toBe(Math.round(7.6 * CM));
    expect(trade.pieces[0]?.otherRounding?.along).toBe(Math.round(7.5 * CM));
    expect(trade.pieces[0]?.tradeShort).toBe(true);
    expect(trade.notes).toHaveLength(1);
    const exact = recipeOf(HST, "two at a time", design, { ...metric, rounding: "exact" });
    expect(exact.pieces[0]?.along).toBe(Math.round(7.6 * CM));
    expect(exact.pieces[0]?.otherRounding?.along).toBe(Math.round(7.5 * CM));
    expect(exact.notes).toHaveLength(0);
  });
});
