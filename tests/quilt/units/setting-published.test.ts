import { describe, expect, test } from "vitest";
import { diagonalOf } from "../../../src/quilt/units/allowance.ts";
import { rootsToNumber, upToMark, whole } from "../../../src/quilt/units/outlines/roots.ts";
import { settingPieces } from "../../../src/quilt/units/setting-triangles.ts";
import type { HowMade } from "../../../src/quilt/units/types.ts";
import { cutInches, INCH, inches, QUARTER, recipeOf, TRADE, unit } from "./support/making.ts";

function squares(block: number, how: HowMade): [number, number] {
  const pieces = settingPieces(inches(block), how);
  return [pieces.side.along / INCH, pieces.risingCorner.along / INCH];
}

describe("setting triangles", () => {
  test.each([
    // "On-point triangle chart", Tani
    [5, 8.375, 4.5],
    [6, 9.75, 5.125], // also "Tip: on-point settings", Moonlight Quilters
    [8, 12.625, 6.625],
    [9, 14, 7.25],
    [10, 15.5, 8],
    [12, 18.25, 9.375],
    [13, 19.75, 10.125],
    [14, 21.125, 10.875],
    [16, 23.875, 12.25],
    // "Quilty Math", Christa Quilts, in half-inch steps; 3 1/2 in is printed 3 1/2 for the corner: the rule gives 3 3/8
    [3, 5.5, 3],
    [3.5, 6.25, 3.375],
    [4, 7, 3.75],
    [5.5, 9.125, 4.875],
    [7, 11.25, 5.875],
    [7.5, 11.875, 6.25],
    [9.5, 14.75, 7.625],
    [11, 16.875, 8.75],
    [11.5, 17.625, 9.125],
    // "Triangle Cutting Chart", Quilt Notes, computed by the trade's formula: 8 1/2 in is printed 6 7/8 there, which
    // is exact geometry rounded up; 7 1/2 in 12 and 10 in 5 1/2 are misprints
    [8.5, 13.375, 7],
  ])("trade rule, %s in blocks: side %s, corner %s", (block, side, corner) => {
    expect(squares(block, TRADE)).toEqual([side, corner]);
  });

  test.each([
    // derived geometry, rounded up to 1/8 in
    [4, [6.875, 3.75], [7, 3.75]],
    [5.5, [9, 4.75], [9.125, 4.875]],
    [7, [11.125, 5.875], [11.25, 5.875]],
    [10, [15.375, 8], [15.5, 8]],
    [11.5, [17.5, 9], [17.625, 9.125]],
    [14.5, [21.75, 11.125], [21.875, 11.25]],
    [17, [25.25, 12.875], [25.375, 13]],
  ])("exact and trade part at %s in: %s against %s", (block, exact, trade) => {
    expect(squares(block, QUARTER)).toEqual(exact);
    expect(squares(block, TRADE)).toEqual(trade);
    const side = settingPieces(inches(block), QUARTER).side;
    expect((side.otherRounding?.along ?? side.along) / INCH).toBe(trade[0]);
  });

  test("between 3 and 16 in, in half inches, they part nowhere else", () => {
    const apart: number[] = [];
    for (let block = 3; block <= 16; block += 0.5)
      if (squares(block, QUARTER).join() !== squares(block, TRADE).join()) apart.push(block);
    expect(apart).toEqual([4, 5.5, 7, 8.5, 10, 11.5, 13, 14.5]);
  });

  test("rounding down is not done: 5 in blocks need 8.278 and 4.389 in", () => {
    // "Setting triangles for 5-inch blocks", Knit 'n' Kwilt, cuts 8 1/4 and 4 3/8, short by 0.03 and 0.01 in
    expect(squares(5, QUARTER)).toEqual([8.375, 4.5]);
    const [side, corner] = squares(5, { ...QUARTER, mark: 1 });
    expect(side).toBeCloseTo(8.278, 3);
    expect(corner).toBeCloseTo(4.389, 3);
  });

  test("9 x 10 blocks of 6 in on point: 76.87 x 85.35 in raw, printed as 77 x 85 1/2", () => {
    // "Summer Salsa", American Patchwork & Quilting, 2014
    const raw = (blocks: number): number => rootsToNumber(diagonalOf(whole(inches(6 * blocks)))) / INCH + 0.5;
    expect(raw(9)).toBeCloseTo(76.87, 2);
    expect(raw(10)).toBeCloseTo(85.35, 2);
  });

  test("diagonals of blocks", () => {
    // "Math Charts", Quilters Cache, 2002: to the NEAREST 1/8 in, so 4, 10 and 14 in lie below the true
    // diagonal there; ours round up.
    const rows: [number, number][] = [
      [4, 5.625],
      [5, 7.125],
      [6, 8.5],
      [8, 11.375],
      [9, 12.75],
      [10, 14.125],
      [14, 19.75],
    ];
    for (const [block, nearest] of rows) {
      const diagonal = diagonalOf(whole(inches(block)));
      expect(Math.round((rootsToNumber(diagonal) / INCH) * 8) / 8).toBe(nearest);
      expect(upToMark(diagonal, INCH / 8) / INCH).toBe(Math.ceil(block * Math.SQRT2 * 8) / 8);
    }
  });
});

describe("square-in-a-square", () => {
  const SIS = "square-in-a-square";

  test("3 3/4 in squares round a 4 in centre", () => {
    // "Corner triangles for setting blocks on point", Scrapish. The unit is 4 root 2 = 5.657 in; 5 5/8 and 5 3/4 in
    // units on the marks take 3 3/4 too.
    for (const finished of [5.625, 5.75])
      expect(cutInches(recipeOf(SIS, "corner triangles", unit(finished, finished), QUARTER), "corners")).toBe(
        3.75,
      );
    expect(squares(4, QUARTER)[1]).toBe(3.75);
  });

  test("a 12 in block has a 9 in centre", () => {
    // "Lesson 5: A Square in a Square", class handout: half the block x 1.414 + 1/2
    for (const how of [QUARTER, TRADE])
      expect(cutInches(recipeOf(SIS, "corner triangles", unit(12, 12), how), "centre")).toBe(9);
  });

  test("a 6 in centre: 8.485 in outside, corner squares 5.096, up to 5 1/8", () => {
    // derived geometry: centre x root 2; centre / root 2 + seam x (2 + root 2)
    expect(rootsToNumber(diagonalOf(whole(inches(6)))) / INCH).toBeCloseTo(8.485281, 6);
    expect(squares(6, { ...QUARTER, mark: 1 })[1]).toBeCloseTo(5.096194, 4);
    expect(squares(6, QUARTER)[1]).toBe(5.125);
  });

  test("a square's allowance on a triangle is not reproduced", () => {
    // "Square in a square (forum reply)", Quilting Board, 2011: 5 in centre, 4.03 in; right is 4.41, cut 4 1/2
    expect(squares(5, QUARTER)[1]).toBe(4.5);
  });
});
