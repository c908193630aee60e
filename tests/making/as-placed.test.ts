import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { PiecedPart } from "../../src/quilt/index.ts";
import { make } from "./fixture.ts";

/*
 * What is sewn alike is alike as it is placed: a print that stands upright in the quilt tells copies of a block apart
 * that are turned, and the two rows of a border.
 */

const trial = (name: string): string =>
  readFileSync(new URL(`../../fixtures/trials/${name}.yaml`, import.meta.url), "utf8");

const piecedParts = (text: string): PiecedPart[] =>
  (make(text).making.foundation?.parts ?? []).filter((part): part is PiecedPart => part.kind === "pieced");

/** What each part is: how many, where its print points, and for blocks turned how. */
const told = (parts: readonly PiecedPart[]): string[] =>
  parts.map(({ count, patches, places }) => {
    const ups = patches.flatMap(({ up }) => (up === null ? [] : [up]));
    return `${count} up ${ups.join(",")} in blocks turned ${places[0]?.blockTurns?.join(",") ?? "any way"}`;
  });

describe("on foundation", () => {
  // By hand: A and A upside down by turns in four rows of four, the heads up in all of them.
  test("half of the units have the heads up in them, half the heads down", () => {
    expect(told(piecedParts(trial("foundation-upright")))).toEqual([
      "8 up 0 in blocks turned 0",
      "8 up 180 in blocks turned 180",
    ]);
  });

  test("a print that turns with its block tells none apart, nor does one that reads both ways", () => {
    const turning = `prints: with block\n${trial("foundation-upright")}`;
    expect(told(piecedParts(turning))).toEqual(["16 up 0 in blocks turned any way"]);
    const twoWays = trial("foundation-upright").replace("one-way", "two-way");
    expect(told(piecedParts(twoWays))).toEqual(["16 up 0 in blocks turned any way"]);
  });

  test("of blocks turned four ways, four", () => {
    const four = trial("foundation-upright").replace("rows: A Av", "rows: A A> Av A<");
    expect(told(piecedParts(four))).toEqual([
      "4 up 0 in blocks turned 0",
      "4 up 270 in blocks turned 90",
      "4 up 180 in blocks turned 180",
      "4 up 90 in blocks turned 270",
    ]);
  });

  test("folded rows are told apart likewise", () => {
    const text = trial("foundation-upright")
      .replace("per: unit", "way: folded, per: row")
      .replace("grid: 1 in", "grid: 1/4 in");
    const counts = (rows: string): number[] =>
      (make(text.replace("rows: A Av, fill: 4 x 4", rows)).making.foundation?.parts ?? []).map(
        ({ count }) => count,
      );
    expect(counts('rows: ["A A", "A A"]')).toEqual([2]);
    // Turned as a whole a row has its heads down; upright in the quilt they are not.
    expect(counts('rows: ["A A", "Av Av"]')).toEqual([1, 1]);
  });
});

/** Whether the patches of a part fill its finished rectangle. */
function fills({ patches, finished }: PiecedPart, grid: number): boolean {
  const area = patches.reduce((sum, { corners }) => {
    const twice = corners.reduce((all, a, i) => {
      const b = corners[(i + 1) % corners.length] ?? a;
      return all + a.x * b.y - b.x * a.y;
    }, 0);
    return sum + Math.abs(twice) / 2;
  }, 0);
  return Math.round(area) === finished.across * finished.down * grid * grid;
}

describe("motifs on foundation where a block has a partial seam", () => {
  const geese = make(trial("geese-on-foundation"));
  const parts = (geese.making.foundation?.parts ?? []).filter(
    (part): part is PiecedPart => part.kind === "pieced",
  );

  test("every motif is a rectangle: none is set into a corner", () => {
    expect(parts.map((part) => fills(part, geese.making.foundation?.grid ?? 0))).toEqual(
      parts.map(() => true),
    );
    expect(parts.map(({ count, seams }) => [count, seams.length])).toEqual(Array(4).fill([9, 2]));
  });

  // By hand: 13 patches to a block take 12 seams; 6 join blocks, 2 join rows, 4 are the border's.
  test("no seam is told twice", () => {
    expect(geese.making.totals.seams).toBe(9 * 12 + 6 + 2 + 4);
    expect(geese.making.partial.map(({ order, seams }) => [order?.length, seams])).toEqual([[4, 4]]);
  });

  test("two units on one motif are one arm of the whorl", () => {
    const arms = trial("geese-on-foundation").replace(
      /grid: \|\n[\s\S]*?cells:/,
      "grid: |\n      r r g>\n      g< c  |\n      |  gv -\n    cells:\n      r: { rectangle: sky }",
    );
    const { making } = make(arms);
    // 2 + 3 x 3 + 1 patches.
    expect(making.totals.seams).toBe(9 * 11 + 6 + 2 + 4);
  });
});

describe("rows of pieced borders", () => {
  const rows = (text: string): string[] =>
    make(text).making.borders.flatMap(({ strips }) =>
      strips.map(({ sides, blocks, alike }) => `${blocks} ${sides.join(", ")}${alike ? "" : ", unlike"}`),
    );

  // By hand: 12 in take six blocks of 2 in, 12 + 2 + 2 in eight.
  test("corner blocks belong to the row that reaches into them", () => {
    const { top, making } = make(trial("pieced-border-rows"));
    expect(rows(trial("pieced-border-rows"))).toEqual(["6 left, right", "8 top, bottom"]);
    const laid = top.blocks.filter(({ place }) => place === "border").length;
    expect(laid).toBe(28);
    expect(making.borders[0]?.strips.reduce((sum, { blocks }) => sum + 2 * blocks, 0)).toBe(laid);
  });

  test("tops first, and between cornerstones", () => {
    const tops = trial("pieced-border-rows").replace("width: 2 }", "width: 2, corners: tops first }");
    expect(rows(tops)).toEqual(["6 top, bottom", "8 left, right"]);
    const stones = trial("pieced-border-rows").replace("width: 2 }", "width: 2, cornerstones: z }");
    expect(rows(stones)).toEqual(["6 left, right", "6 top, bottom"]);
    const blocks = trial("pieced-border-rows").replace(
      "width: 2 }",
      "width: 2, cornerstones: { block: t } }",
    );
    expect(rows(blocks)).toEqual(["6 left, right", "6 top, bottom"]);
  });

  test("one inside another", () => {
    const two = trial("pieced-border-rows").replace("width: 2 }", "width: 2 }, { block: t, width: 2 }");
    expect(rows(two)).toEqual(["6 left, right", "8 top, bottom", "8 left, right", "10 top, bottom"]);
  });

  test("an upright print tells the two rows apart, one that runs round does not", () => {
    const upright = trial("pieced-border-rows").replace("{name: p}", "{name: p, print: one-way}");
    expect(rows(upright)).toEqual(["6 left, right, unlike", "8 top, bottom, unlike"]);
    expect(rows(`prints: with block\n${upright}`)).toEqual(["6 left, right", "8 top, bottom"]);
  });
});
