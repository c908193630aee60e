import { describe, expect, test } from "vitest";
import type { Rational } from "../../../src/length/rational.ts";
import { findUnitKind, UNIT_KINDS } from "../../../src/quilt/units/registry.ts";
import type { DrawnPatch, UnitDesign } from "../../../src/quilt/units/types.ts";
import { waysToCut } from "../../../src/quilt/units/ways.ts";
import { unitFault } from "../../../src/words/en/diagnostics/units.ts";
import { english } from "../../../src/words/index.ts";
import { INCH, inches, kindOf, QUARTER, recipeOf, unit } from "./support/making.ts";

describe("the list of kinds", () => {
  test("names are found whatever their case and hyphens, and mean one kind each", () => {
    expect(findUnitKind("Half Square-Triangle")?.name).toBe("half-square triangle");
    expect(findUnitKind("hourglass")?.name).toBe("quarter-square triangle");
    expect(findUnitKind("goat")).toBeNull();
    const names = UNIT_KINDS.flatMap((kind) => [kind.name, ...kind.alsoCalled]);
    expect(new Set(names.map((name) => findUnitKind(name)?.name)).size).toBe(UNIT_KINDS.length);
    for (const kind of UNIT_KINDS)
      for (const name of [kind.name, ...kind.alsoCalled]) expect(findUnitKind(name)).toBe(kind);
  });

  test("every kind has methods with different names and something said about each", () => {
    for (const kind of UNIT_KINDS) {
      const names = kind.methods.map((method) => method.name);
      expect(names.length).toBeGreaterThan(0);
      expect(new Set(names).size).toBe(names.length);
      expect(kind.methods.every(({ name }) => english.unitNames.summary(kind.name, name).length > 10)).toBe(
        true,
      );
    }
  });
});

/** Patches drawn in inches. */
function drawn(across: number, along: number, patches: readonly (readonly [number, number][])[]): UnitDesign {
  const corner = ([x, y]: readonly [number, number]): { x: Rational; y: Rational } => ({
    x: inches(x),
    y: inches(y),
  });
  return {
    ...unit(across, along),
    patches: patches.map(
      (corners, i): DrawnPatch => ({ role: "patch", spot: `patch ${i + 1}`, corners: corners.map(corner) }),
    ),
  };
}

describe("sizes that do not suit are refused with a reason", () => {
  test.each([
    ["square", unit(3, 4), "square"],
    ["half-square triangle", unit(3, 4), "square"],
    ["flying geese", unit(3, 2), "twice as wide"],
    ["flying geese", unit(2, 4), "twice as wide"],
    ["snowball", { ...unit(4, 4), corner: inches(2.5) }, "overlap"],
    ["snowball", { ...unit(4, 4), corner: inches(0) }, "above zero"],
    ["snowball", { ...unit(4, 4), corners: [] }, "at least one"],
    ["snowball", { ...unit(4, 4), corner: inches(4), corners: ["top-left", "bottom-right"] }, "overlap"],
    ["rails", { ...unit(6, 6), strips: [inches(2), inches(3)] }, "add up"],
    ["rails", { ...unit(6, 6), count: 1 }, "from 2"],
    ["rails", { ...unit(6, 6), strips: [inches(7), inches(-1)] }, "above zero"],
    ["log cabin", { ...unit(6, 6), count: 0 }, "rounds"],
    ["log cabin", { ...unit(6, 6), centre: inches(6) }, "centre"],
    ["courthouse steps", unit(6, 5), "square"],
    ["sixty-degree triangles", unit(200, 1), "triangles"],
    ["drawn patches", unit(4, 4), "patches"],
    [
      "drawn patches",
      drawn(2, 2, [
        [
          [0, 0],
          [2, 0],
        ],
      ]),
      "corners",
    ],
    [
      "drawn patches",
      drawn(2, 2, [
        [
          [0, 0],
          [3, 0],
          [0, 2],
        ],
      ]),
      "outside",
    ],
    [
      "drawn patches",
      drawn(2, 2, [
        [
          [0, 0],
          [2, 2],
          [2, 0],
          [0, 2],
        ],
      ]),
      "crosses itself",
    ],
    [
      "drawn patches",
      drawn(2, 2, [
        [
          [0, 0],
          [2, 0],
          [0, 2],
        ],
      ]),
      "there is a gap",
    ],
    [
      "drawn patches",
      drawn(2, 2, [
        [
          [0, 0],
          [2, 0],
          [2, 2],
          [0, 2],
        ],
        [
          [0, 0],
          [1, 0],
          [0, 1],
        ],
      ]),
      "patch 1 and patch 2 overlap",
    ],
  ] as [string, UnitDesign, string][])("%s %#", (name, design, reason) => {
    const problem = kindOf(name).check(design);
    const told = problem === null ? null : unitFault(problem.fault, name);
    expect(told?.message).toContain(reason);
    expect(told?.hint.length).toBeGreaterThan(10);
  });

  test("a corner may meet the middle of a neighbour's edge, and outlines may run either way", () => {
    const design = drawn(2, 2, [
      [
        [0, 0],
        [0, 2],
        [1, 2],
        [1, 0],
      ],
      [
        [1, 0],
        [2, 0],
        [2, 1],
        [1, 1],
      ],
      [
        [1, 1],
        [2, 1],
        [2, 2],
        [1, 2],
      ],
    ]);
    expect(kindOf("drawn patches").check(design)).toBeNull();
  });
});

describe("half-rectangle triangles", () => {
  test("2 x 4 in: rectangles of 2 3/4 x 5 3/8, a tick under 2.6545 and 5.3090 before rounding up", () => {
    // derived geometry: 2 + 1/4 x (2 + 4 + root 20) / 4 and 4 + 1/4 x (2 + 4 + root 20) / 2
    const exact = { ...QUARTER, mark: 1 };
    const [fine] = recipeOf("half-rectangle triangle", "single triangles", unit(2, 4), exact).pieces;
    expect((fine?.across ?? 0) / INCH).toBeCloseTo(2 + (6 + Math.sqrt(20)) / 16, 4);
    expect((fine?.along ?? 0) / INCH).toBeCloseTo(4 + (6 + Math.sqrt(20)) / 8, 4);
    const [cut] = recipeOf("half-rectangle triangle", "single triangles", unit(2, 4), QUARTER).pieces;
    expect([cut?.across, cut?.along, cut?.roundedUp]).toEqual([2.75 * INCH, 5.375 * INCH, true]);
  });

  test("a square one is a half-square triangle", () => {
    const [half] = recipeOf("half-rectangle triangle", "single triangles", unit(3, 3), {
      ...QUARTER,
      mark: 1,
    }).pieces;
    const [square] = recipeOf("half-square triangle", "single triangles", unit(3, 3), {
      ...QUARTER,
      mark: 1,
    }).pieces;
    expect([half?.across, half?.along]).toEqual([square?.across, square?.along]);
  });
});

describe("log cabins", () => {
  test("8 in, centre 2 in, three rounds of 1 in: logs of 2 to 8 in, cut 1 1/2 wide", () => {
    // derived geometry: each log as long as what it is sewn to
    const recipe = recipeOf("log cabin", "cut logs", { ...unit(8, 8), centre: inches(2), count: 3 }, QUARTER);
    const longest = recipe.pieces.map((piece) => Math.max(piece.across, piece.along) / INCH);
    expect(longest).toEqual([2.5, 2.5, 3.5, 3.5, 4.5, 4.5, 5.5, 5.5, 6.5, 6.5, 7.5, 7.5, 8.5]);
    expect(recipe.pieces.slice(1).every((piece) => Math.min(piece.across, piece.along) === 1.5 * INCH)).toBe(
      true,
    );
    const steps = recipeOf(
      "courthouse steps",
      "cut logs",
      { ...unit(8, 8), centre: inches(2), count: 3 },
      QUARTER,
    );
    expect(steps.pieces.map((piece) => Math.max(piece.across, piece.along) / INCH)).toEqual([
      2.5, 2.5, 2.5, 4.5, 4.5, 4.5, 4.5, 6.5, 6.5, 6.5, 6.5, 8.5, 8.5,
    ]);
  });
});

describe("direction of a print", () => {
  test.each([
    ["half-square triangle", "two at a time", { upper: "turned", lower: "turned" }],
    ["half-square triangle", "four at a time", { upper: "lost", lower: "lost" }],
    ["half-square triangle", "templates", { upper: "kept", lower: "kept" }],
    ["square-in-a-square", "corner triangles", { centre: "lost", corners: "kept" }],
    ["square-in-a-square", "stitch-and-flip", { centre: "kept", corners: "kept" }],
    ["four-patch", "strip sets", { first: "lost", second: "lost" }],
    ["four-patch", "two strip sets", { first: "kept", second: "kept" }],
    ["nine-patch", "strip sets", { corners: "kept", sides: "kept", centre: "kept" }],
    ["rails", "strip sets", { "rail 1": "kept", "rail 2": "kept", "rail 3": "kept" }],
  ])("%s, %s", (kind, method, direction) => {
    expect(recipeOf(kind, method, unit(6, 6), QUARTER).direction).toEqual(direction);
  });

  test("stitch-and-flip keeps geese upright, four at a time does not", () => {
    expect(recipeOf("flying geese", "stitch-and-flip", unit(4, 2), QUARTER).direction).toEqual({
      goose: "kept",
      sky: "kept",
    });
    expect(recipeOf("flying geese", "four at a time", unit(4, 2), QUARTER).direction).toEqual({
      goose: "turned",
      sky: "turned",
    });
  });

  test("a piece turned on the cloth swaps its sides, its diagonal and turns every print", () => {
    const [goose] = recipeOf("flying geese", "stitch-and-flip", unit(4, 2), QUARTER).pieces;
    const [upper] = recipeOf("half-square triangle", "single triangles", unit(4, 4), QUARTER).pieces;
    if (goose === undefined || upper === undefined) throw new Error("pieces");
    const [, quarter] = waysToCut(goose);
    expect([quarter?.across, quarter?.along]).toEqual([goose.along, goose.across]);
    expect(waysToCut(upper).map((way) => way.diagonal)).toEqual(["rising", "falling", "rising", "falling"]);
    expect(waysToCut(upper).map((way) => way.lies[0]?.map((lie) => lie.print))).toEqual([
      [0, 4],
      [2, 6],
      [4, 0],
      [6, 2],
    ]);
  });
});

test("sizes in thirds are cut up to the mark and say so", () => {
  const recipe = recipeOf("nine-patch", "single pieces", unit(4, 4), QUARTER);
  // 4/3 in + 1/2 = 1.8333, up to 1 7/8; the unit is trimmed to 4 1/2
  expect(recipe.pieces.map((piece) => piece.along)).toEqual(Array.from({ length: 9 }, () => 1.875 * INCH));
  expect(recipe.pieces.every((piece) => piece.roundedUp)).toBe(true);
  expect(recipe.trimTo).toEqual({ across: 4.5 * INCH, along: 4.5 * INCH, needed: true });
  expect(recipe.areas.finished).toBe(16 * INCH * INCH);
});
