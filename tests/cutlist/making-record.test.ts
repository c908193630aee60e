import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { UnitRecord } from "../../src/cutlist/record/unit-record.ts";
import { type Made, make } from "../making/fixture.ts";
import { cutsOf } from "../quilt/reading.ts";

/** Invented quilts on which cutting and sewing once told different things. */
function trial(name: string): Made {
  return make(readFileSync(new URL(`../../fixtures/trials/${name}.yaml`, import.meta.url), "utf8"));
}

function only(worked: Made): UnitRecord {
  const [unit, ...others] = worked.units;
  if (unit === undefined || others.length > 0) throw new Error("one kind of unit is expected");
  return unit;
}

const pieceOf = (worked: Made, letter: string) =>
  worked.cutLists.flatMap(({ pieces }) => pieces).find((piece) => piece.letter === letter);

describe("the method really used", () => {
  test("geese that must keep a print upright are cut and sewn stitch-and-flip", () => {
    const worked = trial("geese-one-way");
    const unit = only(worked);
    // One rectangle 4 1/2 x 2 1/2 in and two squares 2 1/2 in to a goose of 4 x 2 in, twelve of them.
    expect(unit).toMatchObject({ method: "stitch-and-flip", units: 12, sets: 12, spare: 0 });
    expect(unit.steps.map((step) => step.do)).toEqual(["flip"]);
    expect(cutsOf(worked, "hens")).toEqual(["4.5 x 2.5 x 12"]);
    expect(unit.batches).toHaveLength(1);
    expect(unit.batches[0]?.laid.map(({ letter, up }) => [letter, up])).toEqual([
      ["A", 0],
      ["C", null],
      ["C", null],
    ]);
    // Two seams on the diagonal for each goose, and no others.
    expect(unit.seams.map(({ count }) => count)).toEqual([24]);
  });

  test("a pinwheel of a print with an up is made of single triangles in both halves", () => {
    const worked = trial("triangles-one-way");
    const unit = only(worked);
    expect(unit.method).toBe("single triangles");
    expect(unit.steps.map((step) => step.do)).toEqual(["cut-triangles", "join", "trim"]);
    expect(unit.heaps.reduce((sum, { count }) => sum + count, 0)).toBe(16);
  });
});

describe("which diagonal, in the bolt's frame", () => {
  test("blocks upright take halves of squares cut rising, blocks turned right of squares cut falling", () => {
    const worked = trial("triangles-turned");
    const unit = only(worked);
    // Upright: the print half fills the upper left, so its right angle is there: `/` cut with the heads up.
    // Turned right it must fill the upper right of the quilt with the heads still up: `\`.
    const told = unit.heaps.map(({ count, patches }) => {
      const [upper] = patches;
      const [source] = upper?.from ?? [];
      const diagonal = pieceOf(worked, source?.letter ?? "")?.diagonal;
      return { count, letter: source?.letter, part: source?.part, diagonal };
    });
    expect(told).toEqual([
      { count: 4, letter: "A", part: "top-left", diagonal: "rising" },
      { count: 4, letter: "B", part: "top-right", diagonal: "falling" },
    ]);
    expect(cutsOf(worked, "birds")).toEqual(["6.875 x 6.875 x 4", "6.875 x 6.875 x 4"]);
  });

  test("sewn before cutting, the line rises on a square that lies with its heads up", () => {
    const unit = only(trial("triangles-upside-down"));
    const [pair] = unit.steps;
    expect(pair).toMatchObject({ do: "pair", lines: "one", line: "rising" });
    const [batch] = unit.batches;
    expect(batch?.laid[0]).toMatchObject({ role: "upper", up: 0, faceDown: null });
    // The two units of a set are the same turned half round: one for each heap.
    expect(batch).toMatchObject({ sets: 4, gives: [0, 1] });
    expect(unit.heaps.map(({ count, prints }) => [count, prints.upper])).toEqual([
      [4, 0],
      [4, 4],
    ]);
  });

  test("a square laid face down is told as it is seen on its wrong side", () => {
    // Both fabrics with an up: folded over the rising diagonal, heads to the right come to point up.
    const unit = only(
      make(`fabrics: [{ name: a, print: one-way }, { name: b, print: one-way }]
blocks: { h: { size: 6, cell: { half-square triangle: [a, b] } } }
setting: { rows: h hv }
`),
    );
    expect(unit.batches[0]?.laid.map(({ up, faceDown }) => [up, faceDown])).toEqual([
      [0, null],
      [0, 2],
    ]);
  });
});

describe("heaps of units that differ in how their print lies", () => {
  test("four geese out of one square are four heaps, and blocks take them by heap", () => {
    const worked = make(`fabrics: [{ name: storks, print: one-way }, { name: mist }]
blocks:
  round:
    columns: [2, 2, 2]
    lines: [2, 2, 2]
    grid: |
      g  -  g>
      g< m  |
      |  gv -
    cells: { g: { flying geese: [storks, mist] }, m: { square: mist } }
setting: { rows: round, fill: 3 x 3 }
`);
    const unit = worked.units.find(({ kind }) => kind === "flying geese");
    // Nine blocks of four geese: nine sets, every goose of a set in a heap of its own, none over.
    expect(unit).toMatchObject({ method: "four at a time", sets: 9, spare: 0 });
    expect(unit?.heaps.map(({ count, prints }) => [count, prints.goose]).sort()).toEqual([
      [9, 0],
      [9, 2],
      [9, 4],
      [9, 6],
    ]);
    expect([...(unit?.batches[0]?.gives ?? [])].sort()).toEqual([0, 1, 2, 3]);
    const [block, ...others] = worked.making.blocks;
    expect(others).toEqual([]);
    expect(new Set(block?.units.map((place) => place?.heap))).toEqual(new Set([0, 1, 2, 3]));
  });
});

test("sets that are laid alike and give alike are one thing to do", () => {
  const worked = make(`fabrics: [{ name: pears, print: one-way }, { name: cream }]
blocks: { b: { size: 4, grid: [g, h], cells: { h: { rectangle: cream }, g: { flying geese: [pears, cream], method: four at a time } } } }
setting: { rows: b b> bv b< b }
`);
  // Each set gives one goose of each direction; two upright want two sets, both laid alike.
  const unit = worked.units.find(({ method }) => method === "four at a time");
  expect(unit?.batches.map(({ sets }) => sets)).toEqual([2]);
});
