import { describe, expect, test } from "vitest";
import { plainDesign } from "../../../src/quilt/units/design.ts";
import { flipped } from "../../../src/quilt/units/flip.ts";
import { rootsToNumber, whole } from "../../../src/quilt/units/outlines/roots.ts";
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

const GEESE = "flying geese";

describe("four geese from one large and four small squares", () => {
  test.each([
    // "Fast Flying Geese", Beverly's Quilting Page
    [8, 4, 9.25, 4.875],
    [6, 3, 7.25, 3.875],
    [4, 2, 5.25, 2.875], // also "Four-at-a-Time Flying Geese", Quilter's World magazine, 2024
    [3, 1.5, 4.25, 2.375], // also "Block 12: Wild Goose Chase", Little Bunny Quilts, 2014
    [2, 1, 3.25, 1.875],
    // "Fast, easy flying geese", Aline Quilts, 2011
    [5, 2.5, 6.25, 3.375], // also "Grow-a-Quilt 2021, step 3", Seymour Quilters Guild, 2021
    [5.5, 2.75, 6.75, 3.625],
  ])("%s x %s in: %s and %s", (across, along, large, small) => {
    for (const how of [QUARTER, TRADE]) {
      const recipe = recipeOf(GEESE, "four at a time", unit(across, along), how);
      expect([cutInches(recipe, "goose"), cutInches(recipe, "sky")]).toEqual([large, small]);
      expect(recipe.pieces.map((piece) => piece.countPerSet)).toEqual([1, 4]);
      expect(recipe.unitsPerSet).toBe(4);
    }
  });

  test("16 geese of 1 1/2 x 3 in take four large and sixteen small squares", () => {
    // "Block 12: Wild Goose Chase", Little Bunny Quilts, 2014
    const recipe = recipeOf(GEESE, "four at a time", unit(3, 1.5), QUARTER);
    const sets = 16 / recipe.unitsPerSet;
    expect(recipe.pieces.map((piece) => piece.countPerSet * sets)).toEqual([4, 16]);
    expect([recipe.trimTo.across / INCH, recipe.trimTo.along / INCH]).toEqual([3.5, 2]);
  });

  test("room to trim goes on the small squares: height + 1 in", () => {
    // "Quadruple Square Method", Quilting Passion, 2004; 2 x 4 also "Bright New Day block 3 tips",
    // American Patchwork & Quilting. "Modern Flying Geese", Fairfield World, adds 1/2 and 3/8 in instead: a choice.
    for (const [across, along, large, small] of [
      [4, 2, 5.25, 3],
      [6, 3, 7.25, 4],
    ] as const) {
      const recipe = recipeOf(GEESE, "four at a time", unit(across, along), {
        ...QUARTER,
        oversize: inches(0.125),
      });
      expect([cutInches(recipe, "goose"), cutInches(recipe, "sky")]).toEqual([large, small]);
    }
  });

  test("squares made well over are a choice: 7 3/4 and 4 1/4 in where 7 1/4 and 3 7/8 come out true", () => {
    // "Modern Flying Geese", Fairfield World; that they are for 6 x 3 in is inferred from the sizes
    const recipe = recipeOf(GEESE, "four at a time", unit(6, 3), QUARTER);
    expect([7.75 - cutInches(recipe, "goose"), 4.25 - cutInches(recipe, "sky")]).toEqual([0.5, 0.375]);
  });

  test("10 x 5 cm: 13.5 and 7.5 cm by the metric rule are too small, so 13.7 and 7.6 are cut either way", () => {
    // "Metric Flying Geese", Weed 'n' Stitch, 2012: 10 + 3.5 and 5 + 2.5 cm; exact geometry asks 13.62 and 7.56 cm
    const design = plainDesign(centimetres(10), centimetres(5));
    const how = { ...TRADE, seam: centimetres(0.75), mark: 640 };
    const sizes = (rounding: "trade" | "exact"): number[] =>
      recipeOf(GEESE, "four at a time", design, { ...how, rounding }).pieces.map((piece) => piece.along / CM);
    expect(sizes("trade")).toEqual([13.7, 7.6]);
    const other = recipeOf(GEESE, "four at a time", design, { ...how, rounding: "trade" }).pieces.map(
      (piece) => (piece.otherRounding?.along ?? 0) / CM,
    );
    expect(other).toEqual([13.5, 7.5]);
    expect(sizes("exact")).toEqual([13.7, 7.6]);
  });
});

describe("other ways to geese", () => {
  test("stitch-and-flip 4 x 8: 4 1/2 x 8 1/2 and two 4 1/2 in squares", () => {
    // "Rectangle Method", Quilting Passion, 2004
    const recipe = recipeOf(GEESE, "stitch-and-flip", unit(8, 4), QUARTER);
    const sizes = recipe.pieces.map((piece) => [piece.role, piece.across / INCH, piece.along / INCH]);
    expect(sizes).toEqual([
      ["goose", 8.5, 4.5],
      ["sky", 4.5, 4.5],
      ["sky", 4.5, 4.5],
    ]);
    expect(recipe.pieces.every((piece) => !piece.roundedUp)).toBe(true);
  });

  test("stitch-and-flip 2 1/2 x 5: 3 x 5 1/2 and 3 in squares", () => {
    // "Grow-a-Quilt 2021, step 3: flying geese", Seymour Quilters Guild, 2021
    const recipe = recipeOf(GEESE, "stitch-and-flip", unit(5, 2.5), QUARTER);
    expect([recipe.pieces[0]?.across, recipe.pieces[0]?.along, recipe.pieces[1]?.along]).toEqual(
      [5.5, 3, 3].map((size) => size * INCH),
    );
  });

  test("a sawtooth star of 8 in: four rectangles 2 1/2 x 4 1/2 and eight 2 1/2 in squares", () => {
    // "Sawtooth Star quilt block", American Patchwork & Quilting, 2013
    const recipe = recipeOf(GEESE, "stitch-and-flip", unit(4, 2), QUARTER);
    const skies = recipe.pieces.filter((piece) => piece.role === "sky");
    expect([recipe.pieces[0]?.across, recipe.pieces[0]?.along]).toEqual([4.5 * INCH, 2.5 * INCH]);
    expect(skies.length * 4).toBe(8);
    expect(skies[0]?.along).toBe(2.5 * INCH);
  });

  test("eight 2 x 4 geese in each of 12 blocks take 96 rectangles of 2 1/2 x 4 1/2", () => {
    // "Block pieces needed", Patchwork Times, 2011
    const recipe = recipeOf(GEESE, "stitch-and-flip", unit(4, 2), QUARTER);
    const goose = recipe.pieces.filter((piece) => piece.role === "goose");
    expect((12 * 8 * goose.length) / recipe.unitsPerSet).toBe(96);
    expect([goose[0]?.across, goose[0]?.along]).toEqual([4.5 * INCH, 2.5 * INCH]);
  });

  test("single triangles 3 x 6: 7 1/4 cut twice, 3 7/8 cut once", () => {
    // "Quilty Math", Christa Quilts
    const recipe = recipeOf(GEESE, "single triangles", unit(6, 3), TRADE);
    expect([cutInches(recipe, "goose"), cutInches(recipe, "sky")]).toEqual([7.25, 3.875]);
    expect(recipe.pieces.map((piece) => piece.subcut)).toEqual(["twice-diagonal", "once-diagonal"]);
    expect(recipe.pieces[0]?.lies[0]).toHaveLength(4);
    expect(recipe.pieces[1]?.lies[0]).toHaveLength(2);
  });

  test("cloth for four geese of 3 x 6 in: 112.625 sq in, or 189 by stitch-and-flip", () => {
    // derived geometry
    const area = (method: string): number => {
      const recipe = recipeOf(GEESE, method, unit(6, 3), QUARTER);
      return ((recipe.areas.cut / INCH / INCH) * 4) / recipe.unitsPerSet;
    };
    expect(area("four at a time")).toBe(112.625);
    expect(area("single triangles")).toBe(112.625);
    expect(area("stitch-and-flip")).toBe(189);
  });
});

test("a flipped 3 1/2 in corner cuts off legs of 3.146447 in and leaves a bonus unit of 2.792893", () => {
  // derived geometry: legs square - root 2 x seam, bonus square - 2 root 2 x seam
  const flip = flipped(whole(inches(3.5)), QUARTER, 1);
  expect(rootsToNumber(flip.corners) / INCH / INCH).toBeCloseTo(9.900126, 5);
  expect(Math.sqrt(rootsToNumber(flip.corners)) / INCH).toBeCloseTo(3.146447, 6);
  expect(rootsToNumber(flip.bonus.unfinished) / INCH).toBeCloseTo(2.792893, 6);
  const recipe = recipeOf(GEESE, "stitch-and-flip", unit(6, 3), QUARTER);
  expect(recipe.bonus).toEqual([{ kind: "half-square triangle", count: 2, unfinished: 2.75 * INCH }]);
  expect(recipe.areas.corners / INCH / INCH).toBeCloseTo(2 * 9.900126, 5);
});

test("geese of other shapes are refused with a reason", () => {
  const made = () => recipeOf(GEESE, "four at a time", unit(3, 3), QUARTER);
  expect(made).toThrow();
});
