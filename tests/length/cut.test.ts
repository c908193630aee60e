import { expect, test } from "vitest";
import {
  EIGHTH_INCH_RULER,
  formatCut,
  formatCutSize,
  nearestMark,
  QUARTER_CENTIMETRE_RULER,
} from "../../src/length/index.ts";

const INCH = 16256;

test("a length to cut is printed on a mark and refused off it", () => {
  expect(formatCut(2.125 * INCH, EIGHTH_INCH_RULER)).toBe("2 1/8 in");
  expect(() => formatCut(2.0625 * INCH, EIGHTH_INCH_RULER)).toThrow("2 1/16 in is no mark of a ruler");
  expect(() => formatCut(Math.round(INCH / 3), EIGHTH_INCH_RULER)).toThrow("no mark");
  expect(formatCutSize(6 * 6400, 6.25 * 6400, QUARTER_CENTIMETRE_RULER)).toBe("6 x 6.25 cm");
  expect(() => formatCutSize(6 * 6400, 6.3 * 6400, QUARTER_CENTIMETRE_RULER)).toThrow("6.3 cm");
});

test("what is measured goes to the nearest mark, and says whether that is it", () => {
  expect(nearestMark(3.25 * INCH, EIGHTH_INCH_RULER)).toEqual({ ticks: 3.25 * INCH, exact: true });
  expect(nearestMark(Math.round(3.1667 * INCH), EIGHTH_INCH_RULER)).toEqual({
    ticks: 3.125 * INCH,
    exact: false,
  });
});
