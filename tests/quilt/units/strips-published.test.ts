import { describe, expect, test } from "vitest";
import { twoSeams } from "../../../src/quilt/terms/formulas.ts";
import { diamond45, hexagon, triangle60 } from "../../../src/quilt/units/outlines/strip-shapes.ts";
import { countSets, segmentsFrom } from "../../../src/quilt/units/strip-sets.ts";
import type { StripSet } from "../../../src/quilt/units/types.ts";
import { INCH, inches, QUARTER, recipeOf, unit } from "./support/making.ts";

/** A strip set by its measures alone. */
function set(strips: readonly number[], segment: number, segmentsPerUnit = 1): StripSet {
  return {
    name: "A",
    cut: "square",
    segment: segment * INCH,
    segmentRoundedUp: false,
    shape: null,
    mark: INCH / 8,
    segmentsPerUnit,
    strips: strips.map((width) => ({
      role: "x",
      width: width * INCH,
      roundedUp: false,
      formula: twoSeams("width"),
      lies: [],
    })),
  };
}

/** The sources cut their first segment at the strip's very end: they leave no room to square a set. */
const UNSQUARED = 0;

/** Raw height of a set once sewn, in inches, 1/4 in seams. */
function sewnHeight(made: StripSet): number {
  const raw = made.strips.reduce((sum, strip) => sum + strip.width, 0) / INCH;
  return raw - 0.5 * (made.strips.length - 1);
}

describe("strip piecing", () => {
  test("nine-patches of 6 in: eight 2 1/2 in segments from 21 in strips, one set of each kind for four blocks", () => {
    // "Summer Salsa", American Patchwork & Quilting, 2014
    const { stripSets } = recipeOf("nine-patch", "strip sets", unit(6, 6), QUARTER);
    const [a, b] = stripSets;
    if (a === undefined || b === undefined) throw new Error("two sets");
    expect(segmentsFrom(a, 21 * INCH, UNSQUARED)).toBe(8);
    expect(countSets(a, 4, 21 * INCH, UNSQUARED)).toMatchObject({ fullSets: 1, lastSegments: 0 });
    expect(countSets(b, 4, 21 * INCH, UNSQUARED)).toMatchObject({
      fullSets: 0,
      lastSegments: 4,
      lastLength: 10 * INCH,
    });
  });

  test("four-patches of 8 in: 25 sets of 22 in strips give 100 segments, 50 blocks", () => {
    // "Orchard Lane", American Patchwork & Quilting, 2014
    const recipe = recipeOf("four-patch", "strip sets", unit(8, 8), QUARTER);
    const [a] = recipe.stripSets;
    if (a === undefined) throw new Error("one set");
    expect([a.segment / INCH, a.strips[0]?.width]).toEqual([4.5, 4.5 * INCH]);
    expect(countSets(a, 50, 22 * INCH, UNSQUARED)).toMatchObject({
      fullSets: 25,
      segmentsPerFullSet: 4,
      lastLength: 0,
      lastSegments: 0,
    });
  });

  test("42 five-rail blocks: 14 sets at 40 in, 11 at a full 42 in", () => {
    // "Quick Rail Fence using 2.5-inch strips and scraps": 42 = 4 x 10 1/2
    const [a] = recipeOf("rails", "strip sets", { ...unit(10, 10), count: 5 }, QUARTER).stripSets;
    if (a === undefined) throw new Error("one set");
    expect(a.strips.map((strip) => strip.width / INCH)).toEqual([2.5, 2.5, 2.5, 2.5, 2.5]);
    expect(sewnHeight(a)).toBe(10.5);
    expect(countSets(a, 42, 40 * INCH, UNSQUARED)).toMatchObject({
      fullSets: 14,
      segmentsPerFullSet: 3,
      lastSegments: 0,
    });
    const wide = countSets(a, 42, 42 * INCH, UNSQUARED);
    expect(wide).toMatchObject({
      fullSets: 10,
      segmentsPerFullSet: 4,
      lastSegments: 2,
      lastLength: 21 * INCH,
    });
  });

  test("25 blocks of 8 in from four-rail sets: six sets and one segment at 42 in, five sets at 42 1/2", () => {
    // "Rail-fence baby quilt blueprint", Raevenfea; there the 25th is pieced from remainders
    const [a] = recipeOf("rails", "strip sets", { ...unit(8, 8), count: 4 }, QUARTER).stripSets;
    if (a === undefined) throw new Error("one set");
    expect(countSets(a, 25, 42 * INCH, UNSQUARED)).toMatchObject({
      fullSets: 6,
      lastSegments: 1,
      lastLength: 8.5 * INCH,
    });
    const wide = countSets(a, 25, 42.5 * INCH, UNSQUARED);
    expect(wide).toMatchObject({ fullSets: 5, lastSegments: 0 });
    expect((wide?.fullSets ?? 0) * a.strips.length).toBe(20);
  });

  test.each([
    // "Block construction (rail fence)", Crazy Mom Quilts, 2014: 99 blocks, three a set, 33 sets
    ["99 three-rail blocks of 6 in from 21 in strips", [2.5, 2.5, 2.5], 6.5, 21, 99, 33, 3],
    // "Rail Fence quilt block", American Patchwork & Quilting: four squares of 6 1/2 from 30 in
    ["four 6 1/2 in squares from a 30 in set", [2.5, 2.5, 2.5], 6.5, 30, 4, 1, 4],
    // "Building Blocks Crib Quilt", Debbie Mumm, 2007: two sets, twelve segments each
    ["24 segments of 3 1/2 in", [3.5, 3.5, 3.5], 3.5, 42, 24, 2, 12],
    // "Sew Easy Sampler: materials and block 1", American Patchwork & Quilting
    ["four 8 1/2 in squares from 42 in", [2.5, 2.5, 2.5, 2.5], 8.5, 42, 4, 1, 4],
  ] as const)("%s", (_, strips, segment, width, units, sets, perSet) => {
    const made = set(strips, segment);
    expect(countSets(made, units, width * INCH, UNSQUARED)).toMatchObject({
      fullSets: sets,
      segmentsPerFullSet: perSet,
      lastSegments: 0,
    });
    expect([sewnHeight(made), segment]).toContain(segment);
  });

  test("six strips of four widths sew to 10 1/4 in; six segments of 3 1/2 fit 21 in", () => {
    // "Fussy-Cut Baby Quilt", American Patchwork & Quilting, 2013, trims to 10 in and asks for five
    const made = set([2.5, 2.5, 2.25, 2, 1.75, 1.75], 3.5);
    expect(sewnHeight(made)).toBe(10.25);
    expect(segmentsFrom(made, 21 * INCH, UNSQUARED)).toBe(6);
  });

  test("10 to 12 segments of 3 1/2, 18 to 21 of 2 in, by the width", () => {
    // "Nine-patch mystery quilt, part 4", equilters.com library: low figures from about 36 in
    expect([36, 42].map((width) => segmentsFrom(set([1], 3.5), width * INCH, UNSQUARED))).toEqual([10, 12]);
    expect([36, 42].map((width) => segmentsFrom(set([1], 2), width * INCH, UNSQUARED))).toEqual([18, 21]);
  });

  test("four 25-patches: twelve segments of one set, eight of the other", () => {
    // "Vintage-Inspired Crib Quilt", American Patchwork & Quilting, 2013
    const a = set([2.5, 2.5, 2.5, 2.5, 2.5], 2.5, 3);
    const b = set([2.5, 2.5, 2.5, 2.5, 2.5], 2.5, 2);
    expect(countSets(a, 4, 42 * INCH, UNSQUARED)).toMatchObject({ fullSets: 0, lastSegments: 12 });
    expect(countSets(b, 4, 42 * INCH, UNSQUARED)).toMatchObject({ fullSets: 0, lastSegments: 8 });
  });

  test("60 segments of 2 1/2 in: four sets at 40, 42 and 44 in, the last one short", () => {
    // derived geometry: segments / floor(width / segment), rounded up
    for (const [width, perSet] of [
      [40, 16],
      [42, 16],
      [44, 17],
    ] as const) {
      const count = countSets(set([2.5], 2.5), 60, width * INCH, UNSQUARED);
      expect(count).toMatchObject({ fullSets: 3, segmentsPerFullSet: perSet, lastSegments: 60 - 3 * perSet });
      expect(count?.lastLength).toBe((60 - 3 * perSet) * 2.5 * INCH);
    }
  });

  test("room to square an end is taken from every set, the short one too", () => {
    // derived geometry: floor((42 - 1/2) / 3 1/2) = 11 where 12 fill the strip to its end; the twelfth segment of 24
    // then comes from a short set of 1/2 + 2 x 3 1/2 in
    const half = INCH / 2;
    expect(segmentsFrom(set([1], 3.5), 42 * INCH, half)).toBe(11);
    expect(countSets(set([1], 3.5), 24, 42 * INCH, half)).toMatchObject({
      fullSets: 2,
      segmentsPerFullSet: 11,
      lastSegments: 2,
      lastLength: 7.5 * INCH,
      straighten: half,
    });
  });

  test("a segment wider than the fabric makes no set", () => {
    expect(countSets(set([2.5], 45), 1, 42 * INCH, UNSQUARED)).toBeNull();
  });

  test.each([
    // "Rail Fence quilt blocks: a strip piecing tutorial", New Quilters; three misprints there (2 1/4, 1 3/8 and 1 1/2
    // for the first, fifth and sixth row): the figures below are plain arithmetic
    [3, 2, 2],
    [6, 2, 3.5],
    [3, 3, 1.5],
    [12, 3, 4.5],
    [3, 4, 1.25],
    [6, 4, 2],
    [12, 4, 3.5],
  ])("%s in block of %s rails: strips of %s in", (block, count, strip) => {
    const [a] = recipeOf("rails", "strip sets", { ...unit(block, block), count }, QUARTER).stripSets;
    expect(a?.strips.map((each) => each.width / INCH)).toEqual(Array.from({ length: count }, () => strip));
  });
});

describe("shapes cut from strips at an angle", () => {
  test("an eight-pointed star is 3.41 times the side of its diamonds", () => {
    // "Formulas for Quilters", Karen Combs Studio, 2002; exact 2 + root 2
    const [corner] = recipeOf("eight-pointed star", "from strips", unit(6.828427, 6.828427), {
      ...QUARTER,
      mark: 1,
    }).pieces;
    expect((corner?.along ?? 0) / INCH - 0.5).toBeCloseTo(2, 2);
    expect(6.828427 / 2).toBeCloseTo(3.4142, 4);
  });

  test("45-degree diamonds: 2 1/2 in strip for 2 in, cuts the same distance apart", () => {
    // "Rotary cutting, part 7: 45-degree diamonds", Chris and Barbara Quilts, 2015
    const shape = diamond45(inches(2), QUARTER);
    expect(shape.strip).toBe(2.5 * INCH);
    // the cuts lie 2 1/2 in apart when measured square to them
    expect(shape.spacing / Math.SQRT2 / INCH).toBeCloseTo(2.5, 3);
  });

  test("along the edge of a 2 in strip: 2.828 in apart at 45 degrees, 2.309 at 60", () => {
    // "Equilateral diamonds (forum thread)", Quilting Board, prints "approximately" 2 3/4 and 2 1/4: too close
    expect(diamond45(inches(1.5), QUARTER).spacing / INCH).toBeCloseTo(2.828427, 4);
    expect(hexagon(inches(1.5), QUARTER).spacing / INCH).toBeCloseTo(2.309401, 4);
  });

  test("60-degree triangles of 3 in: 3 3/4 in strip, base 4.330127 cut and 3.464102 finished", () => {
    // derived geometry
    const shape = triangle60(inches(3), QUARTER);
    expect(shape.strip).toBe(3.75 * INCH);
    expect(shape.spacing / INCH).toBeCloseTo(4.330127, 4);
    expect(shape.side / INCH).toBeCloseTo(3.464102, 4);
  });

  test("17 of them from a 40 in strip", () => {
    // derived geometry: floor(2 x (width - base) / base) + 1
    const [up] = recipeOf("sixty-degree triangles", "from strips", unit(40, 3), QUARTER).stripSets;
    if (up === undefined) throw new Error("a set");
    expect(up.strips[0]?.width).toBe(3.75 * INCH);
    expect(segmentsFrom(up, 40 * INCH, UNSQUARED)).toBe(17);
    expect(countSets({ ...up, segmentsPerUnit: 20 }, 1, 40 * INCH, UNSQUARED)).toMatchObject({
      fullSets: 1,
      lastSegments: 3,
    });
  });

  test("a hexagon 2 3/4 in between parallel sides: 3 1/4 in strip, side 1.5877", () => {
    // "How to cut the hexagon shape", Slaney Quilting Studio; "Quilting hexagon template geometry", The Smell of
    // Molten Projects in the Morning, 2020
    const shape = hexagon(inches(2.75), QUARTER);
    expect(shape.strip).toBe(3.25 * INCH);
    expect(shape.side / INCH).toBeCloseTo(1.5877, 4);
  });
});
