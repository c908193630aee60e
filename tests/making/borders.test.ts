import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { fromInteger, rational } from "../../src/length/rational.ts";
import { surd } from "../../src/length/surd.ts";
import { borderFaults } from "../../src/making/border-rounds.ts";
import { diagonalFaults } from "../../src/making/diagonal.ts";
import type { BorderRound, Making } from "../../src/making/types.ts";
import { copingWidths } from "../../src/quilt/borders/borders-fit.ts";
import { exactToNumber } from "../../src/quilt/index.ts";
import { INCH } from "../quilt/reading.ts";
import { EVERY_BORDER, make, onPoint } from "./fixture.ts";

const inches = (ticks: number): number => Math.round((ticks / INCH) * 1000) / 1000;
const told = ({ borders }: Making) =>
  borders.map(({ name, strips }) => [
    name,
    ...strips.map(({ sewn, cut, width }) => [sewn, cut, width].map(inches)),
  ]);

/*
 * derived geometry, seams of 1/4 in. The centre is 18 x 24 in. Bars are 3 in long: with a coping border of 1 1/2 in
 * the sides come to 27 in, top and bottom to 21 in, 9 and 7 bars; no narrower one from 1/2 in serves both ways.
 */
test("every kind of border, one fitted, in the order of sewing", () => {
  const { making } = make(EVERY_BORDER);
  expect(told(making)).toEqual([
    ["coping", [24.5, 24.5, 2], [21.5, 21.5, 2]],
    ["bars", [27.5, 27.5, 2.5], [21.5, 21.5, 2.5]],
    ["tops", [25.5, 27.5, 2.5], [35.5, 37.5, 2.5]],
    // Mitred: 43 + 1/2 + root 2 / 2 = 44.207, up to 44 1/4, and 2 in to spare.
    ["outer", [35.5, 46.25, 4.5], [29.5, 40.25, 4.5]],
  ]);
  expect(making.borders.map(({ kind, pieced, fit, extra }) => [kind, pieced, fit, extra / INCH])).toEqual([
    ["butted", false, true, 0],
    ["cornerstones", true, false, 0],
    ["butted", false, false, 2],
    ["mitred", false, false, 2],
  ]);
  expect(making.borders[1]?.strips.map(({ blocks, cornerstones }) => [blocks, cornerstones])).toEqual([
    [9, false],
    [7, true],
  ]);
  expect([making.square.across, making.square.down].map(inches)).toEqual([37.5, 43.5]);
});

describe("borders take the top from size to size", () => {
  const whole = ({ across, down }: Making["square"]) => ({ across, down });

  test("a strip too short, a wrong width and a wrong end are told", () => {
    const { making } = make(EVERY_BORDER);
    const wrong = (change: (round: BorderRound) => BorderRound, at: number): string[] =>
      borderFaults(
        making.borders.map((round, i) => (i === at ? change(round) : round)),
        making.seam,
        whole(making.square),
      );
    const shorter = (round: BorderRound): BorderRound => ({
      ...round,
      strips: round.strips.map((strip) => ({ ...strip, sewn: strip.sewn - 100 })),
    });
    for (const at of [0, 1, 2, 3]) expect(wrong(shorter, at).length).toBeGreaterThan(0);
    const wider = (round: BorderRound): BorderRound => ({
      ...round,
      strips: round.strips.map((strip) => ({ ...strip, width: strip.width + 100 })),
    });
    const plain = making.borders.findIndex(({ fit }) => !fit);
    expect(wrong(wider, plain)).toContainEqual(expect.stringContaining("another size"));
    // One that is to fit is trimmed: too narrow is a fault, too wide is not.
    const narrower = (round: BorderRound): BorderRound => ({
      ...round,
      strips: round.strips.map((strip) => ({ ...strip, width: strip.width - 100_000 })),
    });
    for (const at of making.borders.keys()) expect(wrong(narrower, at).length).toBeGreaterThan(0);
    expect(borderFaults(making.borders, making.seam, { across: 1, down: 1 })).toContainEqual(
      expect.stringContaining("does not make the quilt"),
    );
  });
});

describe("on point", () => {
  test.each([
    [1, 1],
    [2, 1],
    [2, 3],
    [3, 2],
    [4, 5],
  ])("%i x %i blocks: rows meet and fill the centre", (across, down) => {
    const { making, top } = make(onPoint(across, down));
    expect(making.diagonal.map(({ row }) => row)).toEqual(
      Array.from({ length: across + down - 1 }, (_, i) => i + 1),
    );
    expect(diagonalFaults(making.diagonal, top, making.scale)).toEqual([]);
    const blocks = making.diagonal.reduce((sum, row) => sum + row.blocks, 0);
    expect(blocks).toBe(across * down + (across - 1) * (down - 1));
  });

  // 34 side triangles and 4 corners for 9 x 10 blocks on point: Summer Salsa, American Patchwork & Quilting, 2014.
  test("as many side triangles as published", () => {
    const file = new URL("../../fixtures/quilts/salsa-on-point.yaml", import.meta.url);
    const { making } = make(readFileSync(file, "utf8"));
    const ends = making.diagonal.flatMap((row) => row.ends);
    expect(ends.filter((end) => end === "side")).toHaveLength(34);
    // Two corners lie at the ends of rows, two beside the first and the last.
    expect(ends.filter((end) => end === "corner")).toHaveLength(2);
    expect(making.diagonal[0]?.from).toEqual([{ is: "block", name: "yellow" }]);
  });

  // derived geometry: one 4 in block: edges of 4 and 12 in, tips of (root 2 - 1) and (root 2 + 1) seams.
  test("raw lengths from tip to tip", () => {
    const [first] = make(onPoint(2, 2)).making.diagonal;
    expect(first?.high).toBe(4.5 * INCH);
    expect(inches(first?.upper ?? 0)).toBeCloseTo(4 + (Math.SQRT2 - 1) / 2, 2);
    expect(inches(first?.lower ?? 0)).toBeCloseTo(12 + (Math.SQRT2 + 1) / 2, 2);
  });

  test("a row that does not meet the next is told", () => {
    const { making, top } = make(onPoint(3, 2));
    const moved = making.diagonal.map((row, i) =>
      i === 1 ? { ...row, lowerEdge: [row.lowerEdge[0], row.lowerEdge[1] + 1] as const } : row,
    );
    expect(diagonalFaults(moved, top, making.scale)).toContainEqual(expect.stringContaining("do not meet"));
  });

  test("borders of every kind go round a centre on point, one fitted to a pieced one", () => {
    const borders = `borders:
  - { fabric: white, width: fit }
  - { block: bar, width: 2, cornerstones: red }
  - { fabric: red, width: 2, corners: mitred }
`;
    const { making } = make(onPoint(2, 3, borders));
    // derived geometry: 2 x 4 root 2 = 11.314 in and 16.971 in; bars of 3 in: 15 and 18 in, coping 1.843 and 0.515 in.
    expect(inches(making.borders[0]?.after.across ?? 0)).toBe(15.5);
    expect(inches(making.borders[0]?.after.down ?? 0)).toBe(18.5);
    expect(making.borders[1]?.strips.map(({ blocks }) => blocks)).toEqual([6, 5]);
    expect(borderFaults(making.borders, making.seam, making.square)).toEqual([]);
  });
});

describe("the plain border that makes a pieced one come out", () => {
  const widths = (blocks: number[], across: number, down: number) => {
    const found = copingWidths(
      blocks.map((block) => fromInteger(block)),
      { across: surd(fromInteger(across)), down: surd(fromInteger(down)) },
      rational(1n, 2n),
    );
    return found === null ? null : [exactToNumber(found.side), exactToNumber(found.end)];
  };

  /** The least width, in halves, at which both sides are full of whole blocks, by trying. */
  function byTrying(block: number, across: number, down: number): number | null {
    for (let width = 0.5; width <= 2 * block; width += 0.5) {
      const full = (length: number): boolean => Number.isInteger((length + 2 * width) / block);
      if (full(across) && full(down)) return width;
    }
    return null;
  }

  test("the least width for both is found, and none missed", () => {
    for (let block = 2; block <= 7; block += 1) {
      for (let across = 8; across < 16; across += 1) {
        for (const down of [9, 12, 17]) {
          const tried = byTrying(block, across, down);
          const found = widths([block], across, down);
          if (tried !== null)
            expect([block, across, down, found]).toEqual([block, across, down, [tried, tried]]);
          else expect(found?.[0]).not.toBe(found?.[1]);
          for (const [i, length] of [across, down].entries()) {
            expect(((length + 2 * (found?.[i] ?? 0)) / block) % 1).toBe(0);
          }
        }
      }
    }
  });

  test("rounds of several blocks may end anywhere between two of them", () => {
    expect(widths([1, 2], 12, 9)).toEqual([0.5, 0.5]);
  });
});
