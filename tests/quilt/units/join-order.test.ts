import { describe, expect, test } from "vitest";
import { rational } from "../../../src/length/rational.ts";
import type { Recipe, UnitDesign } from "../../../src/quilt/units/types.ts";
import { INCH, inches, QUARTER, recipeOf, unit } from "./support/making.ts";

type Corners = readonly (readonly [number, number])[];

/** Patches drawn in inches, named `p 1`, `p 2` ... */
function drawn(across: number, along: number, patches: readonly Corners[]): UnitDesign {
  return {
    ...unit(across, along),
    patches: patches.map((corners, i) => ({
      role: "p",
      spot: `p ${i + 1}`,
      corners: corners.map(([x, y]) => ({ x: inches(x), y: inches(y) })),
    })),
  };
}

const joinsOf = (recipe: Recipe) => recipe.steps.filter((step) => step.do === "join");
const told = (recipe: Recipe): string[] =>
  joinsOf(recipe).map(
    ({ parts, makes, setIn }) => `${parts.join(" + ")} = ${makes}${setIn === true ? ", set in" : ""}`,
  );
const box = (x: number, y: number, wide: number, high: number): Corners => [
  [x, y],
  [x + wide, y],
  [x + wide, y + high],
  [x, y + high],
];

describe("the order of joining patches of any shape", () => {
  test("a line right across divides first: halves are made, then joined on it", () => {
    const recipe = recipeOf(
      "drawn patches",
      "templates",
      drawn(4, 4, [box(0, 0, 2, 2), box(2, 0, 2, 2), box(0, 2, 4, 2)]),
      QUARTER,
    );
    expect(told(recipe)).toEqual(["p 1 + p 2 = part 1", "part 1 + p 3 = unit"]);
    // derived geometry: the edges sewn and a seam allowance at both ends
    expect(recipe.seams.map(({ length, count }) => [length / INCH, count])).toEqual([
      [2.5, 1],
      [4.5, 1],
    ]);
  });

  test("three patches round a point: the last is set in at the point, which is named", () => {
    const recipe = recipeOf(
      "drawn patches",
      "templates",
      drawn(3, 3, [
        [
          [1, 0],
          [3, 0],
          [3, 2],
          [1, 2],
        ],
        [
          [0, 0],
          [1, 0],
          [1, 2],
          [0, 3],
        ],
        [
          [0, 3],
          [1, 2],
          [3, 2],
          [3, 3],
        ],
      ]),
      QUARTER,
    );
    expect(told(recipe)).toEqual(["p 1 + p 2 = part 1", "part 1 + p 3 = unit, set in"]);
    expect(joinsOf(recipe)[1]?.corners).toEqual([{ x: INCH, y: 2 * INCH, spots: ["p 1", "p 2", "p 3"] }]);
    expect(recipe.seams[1]?.length).toBeCloseTo((Math.SQRT2 + 2 + 0.5) * INCH, -1);
  });

  test("a whirl of four round a square turns one corner", () => {
    const recipe = recipeOf(
      "drawn patches",
      "templates",
      drawn(3, 3, [box(0, 0, 2, 1), box(2, 0, 1, 2), box(1, 2, 2, 1), box(0, 1, 1, 2), box(1, 1, 1, 1)]),
      QUARTER,
    );
    expect(joinsOf(recipe).flatMap(({ corners = [] }) => corners)).toHaveLength(1);
    expect(recipe.seams).toHaveLength(4);
  });

  test.each(["templates", "from strips"])(
    "an eight-pointed star, %s: pairs, halves, star, then set in",
    (method) => {
      const recipe = recipeOf("eight-pointed star", method, unit(8, 8), QUARTER);
      const joins = joinsOf(recipe);
      expect(joins.map(({ makes }) => makes).slice(0, 7)).toEqual([
        "pair 1",
        "pair 2",
        "pair 3",
        "pair 4",
        "right-half",
        "left-half",
        "star",
      ]);
      expect(joins.slice(7).every(({ setIn, corners }) => setIn === true && corners?.length === 1)).toBe(
        true,
      );
      // one seam for every join: 7 between diamonds, 8 pieces set in
      expect(recipe.seams.map(({ count }) => count)).toEqual(Array.from({ length: 15 }, () => 1));
    },
  );
});

test("a rectangle off the marks is cut by template as its neighbours are; the unit is not trimmed", () => {
  // 4 in in three: 1.3333 + 1/2 lies off the eighths
  const third = 4 / 3;
  const recipe = recipeOf(
    "drawn patches",
    "templates",
    {
      ...unit(4, 4),
      patches: [0, 1, 2].map((i) => ({
        role: "p",
        spot: `p ${i + 1}`,
        corners: box(0, 0, 4, 1).map(([x, y]) => ({
          x: inches(x),
          y: rational(BigInt(4 * INCH * (i + y)), 3n),
        })),
      })),
    },
    QUARTER,
  );
  expect(recipe.pieces.map(({ subcut }) => subcut)).toEqual(["template", "template", "template"]);
  const [piece] = recipe.pieces;
  const high = Math.max(...(piece?.template?.cut ?? []).map(({ y }) => y)) / INCH;
  expect(high).toBeCloseTo(third + 0.5, 3);
  expect(recipe.trimTo.needed).toBe(false);
});
