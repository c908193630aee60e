import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { QUARTER_CENTIMETRE_RULER } from "../../src/length/index.ts";
import { planMaking } from "../../src/making/index.ts";
import { restate } from "../../src/quilt/index.ts";
import { INCH, type WorkedOut, workOut } from "../quilt/reading.ts";
import { allSaid } from "../support/in-words.ts";

/** Small quilts on which sizes did not follow from the pieces as cut; the right figures are derived beside each. */
const trial = (name: string, change = (text: string): string => text): WorkedOut =>
  workOut(change(readFileSync(new URL(`../../fixtures/trials/${name}.yaml`, import.meta.url), "utf8")));

const inches = ({ across, along }: { across: number; along: number }): [number, number] => [
  across / INCH,
  along / INCH,
];

describe("strip sets are counted things", () => {
  test("nine-patches on point: 64 segments plum-cream-plum, 32 cream-plum-cream, with room to square each set", () => {
    const worked = trial("nine-patches-on-point");
    const [unit] = worked.units;
    // 32 blocks; segments 3 in finished and 1/2 in; (42 - 1/2) / 3 1/2 = 11 from a set
    // A: 64 = 5 x 11 + 9, the short set 1/2 + 9 x 3 1/2 = 32 in; B: 32 = 2 x 11 + 10, 1/2 + 10 x 3 1/2 = 35 1/2 in
    expect(
      unit?.stripSets.map(
        ({ strips, fullSets, perFullSet, fromLast, lastLength, segments, segment, straighten }) => [
          strips.map(({ fabric }) => fabric).join("-"),
          segments,
          segment / INCH,
          fullSets,
          perFullSet,
          fromLast,
          lastLength / INCH,
          straighten / INCH,
        ],
      ),
    ).toEqual([
      ["plum-cream-plum", 64, 3.5, 5, 11, 9, 32, 0.5],
      ["cream-plum-cream", 32, 3.5, 2, 11, 10, 35.5, 0.5],
    ]);
    // Strips: plum 2 x 5 + 2 full and 2 + 1 short, cream 5 + 2 x 2 full and 1 + 2 short
    const strips = (fabric: string): number[] =>
      (worked.cutLists.find(({ fabric: { name } }) => name === fabric)?.pieces ?? [])
        .filter(({ along }) => along === 3.5 * INCH)
        .map(({ count, fullWidth }) => (fullWidth ? count : -count));
    expect(strips("plum").sort()).toEqual([-1, -2, 12].sort());
    expect(strips("cream").sort()).toEqual([-1, -2, 9].sort());
    // Seams of strip sets are sewn once for every set: 2 x 6 and 2 x 3, and 2 in each of the 32 units.
    expect(unit?.seams.reduce((sum, { count }) => sum + count, 0)).toBe(12 + 6 + 64);
  });

  test("the room to square a set is the maker's to say", () => {
    const worked = trial("nine-patches-on-point", (text) => `${text}\nstraighten-sets: 0\n`);
    expect(worked.units[0]?.stripSets.map(({ perFullSet, straighten }) => [perFullSet, straighten])).toEqual([
      [12, 0],
      [12, 0],
    ]);
  });
});

describe("halves of rectangles", () => {
  // In the block / runs from the lower left; a quarter clockwise, to lie along the selvage, it is \\. Two leanings are
  // two bags, and the upper half of / has its right angle at the upper left: turned, at the upper right.
  test("that lie wide are cut on the diagonal that they have on the bolt", () => {
    const worked = trial("half-rectangles-wide");
    const red = worked.cutLists.find(({ fabric: { name } }) => name === "red")?.pieces ?? [];
    expect(red.map(({ across, along, count, diagonal }) => [across < along, count, diagonal])).toEqual([
      [true, 1, "falling"],
      [true, 1, "rising"],
    ]);
    const parts = worked.units.map(({ heaps }) =>
      (heaps[0]?.patches[0]?.from ?? []).map(({ part }) => part).sort(),
    );
    // Two halves of one rectangle: both its corners.
    expect(parts).toEqual([
      ["bottom-left", "top-right"],
      ["bottom-right", "top-left"],
    ]);
  });
});

describe("sewn sizes follow from the pieces as cut", () => {
  test("rails: strips of 1 7/8 sew to 4 5/8, trimmed to 4 1/2", () => {
    const [unit] = trial("rails-rounded").units;
    expect(unit?.stripSets[0]?.height).toBe(4.625 * INCH);
    expect(unit?.trimmed).toBe(true);
    expect(unit?.steps.map(({ do: what, size }) => [what, size === null ? null : inches(size)])).toEqual([
      ["strip-set", [4.5, 4.625]],
      ["trim", [4.5, 4.5]],
    ]);
  });

  test("rounded widths: nine-patch and courthouse steps tell what they are trimmed to", () => {
    const [nine, steps] = trial("rounded-widths").units;
    expect(nine?.steps.slice(-2).map(({ size }) => size && inches(size))).toEqual([
      [4.625, 4.625],
      [4.5, 4.5],
    ]);
    // logs of 4 / 7 + 1/2 = 1.0714, up to 1 1/8; each round grows by 2 x 5/8 and is trimmed to the mark above
    // 12 / 7 + 1/2 = 2.2143, 20 / 7 + 1/2 = 3.3571 and 4 1/2
    const trims = steps?.steps.filter((step) => step.do === "trim").map(({ size }) => size && inches(size));
    expect(trims).toEqual([
      [2.25, 2.25],
      [3.375, 3.375],
      [4.5, 4.5],
    ]);
  });

  test("logs: each as long as the side it meets", () => {
    const worked = trial("logs");
    const long = (fabric: string): number[] =>
      (worked.cutLists.find(({ fabric: { name } }) => name === fabric)?.pieces ?? [])
        .map(({ across, along }) => Math.max(across, along) / INCH)
        .sort((a, b) => a - b);
    // 6 / 7 + 1/2 = 1.357, up to 1 3/8: every log makes the side it is sewn on 7/8 in longer
    expect(long("pale")).toEqual([1.375, 2.25, 3.125, 4, 4.875, 5.75]);
    expect(long("dark")).toEqual([2.25, 3.125, 4, 4.875, 5.75, 6.625]);
    expect(worked.units[0]?.steps.slice(-2).map(({ size }) => size && inches(size))).toEqual([
      [6.625, 6.625],
      [6.5, 6.5],
    ]);
  });

  test("thirds: squares of 3 1/4 make 8 3/4, and the block is trimmed to 8 1/2", () => {
    const worked = trial("thirds");
    // 8 / 3 + 1/2 = 3.1667, up to 3 1/4; 3 x 3 1/4 - 2 x 1/2 = 8 3/4
    const joins = planMaking(worked, worked.units, worked.spec);
    const block = joins.joins.filter(({ stage }) => stage === "block");
    const told = (size: { across: number; down: number } | undefined): number[] | null =>
      size === undefined ? null : [size.across / joins.scale / INCH, size.down / joins.scale / INCH];
    expect(block.map(({ size, trim }) => [told(size), told(trim)])).toEqual([
      [[8.75, 3.25], null],
      [[8.75, 3.25], null],
      [[8.75, 3.25], null],
      [
        [8.75, 8.75],
        [8.5, 8.5],
      ],
    ]);
    expect(worked.units.every(({ raw, trimmed }) => raw.across === 3.25 * INCH && !trimmed)).toBe(true);
  });

  test("star strips: 12 diamonds from a strip, so a fifth strip", () => {
    const [unit] = trial("star-strips").units;
    // (42 - 2 1/4) / (2 1/4 x root 2) = 12.49; 4 x 12 = 48 of 52; 4 x 3.182 + 2 1/4 = 14.98, up to 15 in
    for (const set of unit?.stripSets ?? [])
      expect([set.fullSets, set.perFullSet, set.fromLast, set.lastLength / INCH, set.segments]).toEqual([
        4, 12, 4, 15, 52,
      ]);
    expect(unit?.stripSets).toHaveLength(2);
  });
});

test("a trade constant that is too small is told with the size that is cut instead", () => {
  const worked = workOut(`rounding: trade
fabrics: [{ name: red }, { name: pale }]
methods: { half-square triangle: four at a time }
blocks: { h: { size: 2, cell: { half-square triangle: [red, pale] } } }
setting: { rows: h, fill: 4 x 4 }
`);
  // (2 + 1/2) / 0.64 = 3.906, up to 4 in; root 2 x 2 1/2 + 1/2 = 4.036 is needed, up to 4 1/8 in
  expect(worked.cutLists[0]?.pieces[0]?.along).toBe(4.125 * INCH);
  const told = allSaid(worked.diagnostics).find(({ code }) => code === "ROUNDING-DIFFERS")?.message ?? "";
  expect(told).toContain("4 1/8 x 4 1/8 in by exact geometry");
  expect(told).toContain("4 x 4 in by the usual constants is too small here");
});

test("for a ruler in centimetres the room to square a set is 1 cm, unless the maker wrote it", () => {
  const { spec } = trial("nine-patches-on-point");
  expect(restate(spec, QUARTER_CENTIMETRE_RULER).spec.straightenSets).toEqual({ off: 6400, told: false });
  const { spec: written } = trial("nine-patches-on-point", (text) => `${text}\nstraighten-sets: 1 in\n`);
  // 2.54 cm, to the nearest quarter of a centimetre
  expect(restate(written, QUARTER_CENTIMETRE_RULER).spec.straightenSets).toEqual({
    off: 2.5 * 6400,
    told: true,
  });
});

test("every length cut for a unit lies on the marks", () => {
  for (const name of [
    "rails-rounded",
    "rounded-widths",
    "thirds",
    "logs",
    "star-strips",
    "nine-patches-on-point",
  ]) {
    const worked = trial(name);
    const { mark } = worked.spec.ruler;
    for (const { pieces } of worked.cutLists)
      for (const piece of pieces)
        expect([name, piece.fullWidth ? 0 : piece.across % mark, piece.along % mark]).toEqual([name, 0, 0]);
  }
});
