import { describe, expect, test } from "vitest";
import { fromInteger } from "../../../src/length/rational.ts";
import { plainDesign } from "../../../src/quilt/units/design.ts";
import { sewnSizes } from "../../../src/quilt/units/sewn-sizes.ts";
import { segmentsFrom } from "../../../src/quilt/units/strip-sets.ts";
import type { HowMade, Recipe, RecipeStep } from "../../../src/quilt/units/types.ts";
import { CM, centimetres, INCH, inches, QUARTER, recipeOf, TRADE, unit } from "./support/making.ts";

/*
 * Sizes that follow from the pieces as they are cut. The simulations here know rectangles and a seam allowance, and
 * share nothing with what works the recipes out.
 */

interface Cloth {
  across: number;
  along: number;
}

type Join = Extract<RecipeStep, { do: "join" }>;

/** What trims are told on the way, and what comes off in the end. Throws where a piece is short. */
function sewLogs(recipe: Recipe, seam: number, mark: number): Cloth {
  const cloths = new Map<string, Cloth>();
  for (const { across, along, lies } of recipe.pieces)
    for (const { spot } of lies.flat()) cloths.set(spot, { across, along });
  let last = "";
  for (const step of recipe.steps) {
    if (step.do === "trim") {
      const before = cloths.get(last);
      const to = step.to ?? recipe.trimTo;
      if (before === undefined) throw new Error("nothing to trim");
      if (before.across < to.across || before.along < to.along)
        throw new Error("trimmed to more than there is");
      cloths.set(last, { across: to.across, along: to.along });
      continue;
    }
    const { parts, way, makes } = step as Join;
    const [a, b] = parts.map((part) => cloths.get(part));
    if (a === undefined || b === undefined) throw new Error(`no ${parts.join(" or ")}`);
    const [edge, run] = way === "down" ? (["across", "along"] as const) : (["along", "across"] as const);
    const log = parts[0]?.startsWith("round") === true && !parts[0].startsWith("up") ? a : b;
    const done = log === a ? b : a;
    if (log[edge] < done[edge])
      throw new Error(`${parts.join(" + ")}: ${done[edge] - log[edge]} ticks short`);
    // A log stands out by less than a mark, and only where the side it meets lies between two marks.
    if (log[edge] - done[edge] >= mark) throw new Error("a log longer than it need be");
    cloths.set(makes, { [edge]: done[edge], [run]: a[run] + b[run] - 2 * seam } as unknown as Cloth);
    last = makes;
  }
  const whole = cloths.get("unit");
  if (whole === undefined) throw new Error("no unit");
  return whole;
}

const METRIC: HowMade = { ...QUARTER, seam: centimetres(0.75), mark: 1600 };
const SEVEN: HowMade = { ...QUARTER, seam: centimetres(0.7), mark: 1600 };

describe.each(["log cabin", "courthouse steps"] as const)(
  "%s from 4 to 16 in by 1/4 in, 1 to 5 rounds",
  (kind) => {
    test.each([
      ["1/4 in seams, 1/8 in marks", QUARTER, 1],
      ["0.75 cm seams, 0.25 cm marks", METRIC, 5],
      ["0.7 cm seams, off the marks", SEVEN, 5],
    ] as const)("%s: no log is short, and what comes off is the unit", (_, how, every) => {
      const seam = Number(how.seam.n);
      let trims = 0;
      for (let quarters = 16; quarters <= 64; quarters += every)
        for (let count = 1; count <= 5; count += 1)
          for (const centre of quarters % 8 === 0 ? [null, inches(2)] : [null]) {
            const size = inches(quarters / 4);
            const design = { ...plainDesign(size, size), count, centre };
            const recipe = recipeOf(kind, "cut logs", design, how);
            const sewn = sewLogs(recipe, seam, how.mark);
            const { across, along } = recipe.trimTo;
            expect(sewn).toEqual({ across, along });
            // raw: the finished size and two seams, up to the mark
            expect(across).toBe(Math.ceil((Number(size.n) + 2 * seam) / how.mark) * how.mark);
            expect(recipe.trimTo.needed).toBe(recipe.steps.at(-1)?.do === "trim");
            for (const piece of recipe.pieces)
              expect([piece.across % how.mark, piece.along % how.mark]).toEqual([0, 0]);
            trims += recipe.steps.filter((step) => step.do === "trim").length;
          }
      expect(trims).toBeGreaterThan(0);
    });
  },
);

describe("widths that were rounded up", () => {
  test("three rails of 4 in: strips of 1 7/8 sew to 4 5/8, trimmed to 4 1/2", () => {
    // derived geometry: 4 / 3 + 1/2 = 1.8333, up to 1 7/8; 3 x 1 7/8 - 2 x 1/2 = 4 5/8
    const recipe = recipeOf("rails", "strip sets", { ...unit(4, 4), count: 3 }, QUARTER);
    expect(sewnSizes(recipe, INCH / 4)[0]).toEqual({ across: 4.5 * INCH, along: 4.625 * INCH });
    expect(recipe.trimTo).toEqual({ across: 4.5 * INCH, along: 4.5 * INCH, needed: true });
    expect(recipe.steps.at(-1)).toEqual({ do: "trim", by: "round" });
  });

  test.each(["strip sets", "single pieces"])(
    "a nine-patch of 4 in, %s: sewn 4 5/8 square, trimmed",
    (method) => {
      const recipe = recipeOf("nine-patch", method, unit(4, 4), QUARTER);
      const sizes = sewnSizes(recipe, INCH / 4);
      expect(sizes.at(-2)).toEqual({ across: 4.625 * INCH, along: 4.625 * INCH });
      expect(sizes.at(-1)).toEqual({ across: 4.5 * INCH, along: 4.5 * INCH });
    },
  );

  test("on the marks nothing is trimmed", () => {
    for (const [kind, method] of [
      ["rails", "strip sets"],
      ["nine-patch", "single pieces"],
      ["four-patch", "strip sets"],
      ["log cabin", "cut logs"],
    ] as const) {
      const recipe = recipeOf(kind, method, { ...unit(10.5, 10.5), count: 3 }, QUARTER);
      expect(recipe.trimTo.needed).toBe(false);
      expect(recipe.steps.some((step) => step.do === "trim")).toBe(false);
    }
  });

  test("raw sizes off the marks are left at the mark above", () => {
    // 8 / 3 + 1/2 = 3.1667
    const third = plainDesign({ n: 8n * 16256n, d: 3n }, { n: 8n * 16256n, d: 3n });
    const recipe = recipeOf("square", "single pieces", third, QUARTER);
    expect(recipe.pieces[0]?.along).toBe(3.25 * INCH);
    expect(recipe.trimTo).toEqual({ across: 3.25 * INCH, along: 3.25 * INCH, needed: false });
  });

  test("stitch-and-flip geese of 2 1/3 x 4 2/3 in keep a seam allowance beyond their point", () => {
    // derived geometry: squares of side S on a base W wide leave the point S - W / 2 below the upper edge; what lies
    // over half the width goes off the lower edge, the rest off the upper
    const third = (n: bigint) => ({ n: n * 16256n, d: 3n });
    const recipe = recipeOf("flying geese", "stitch-and-flip", plainDesign(third(14n), third(7n)), QUARTER);
    const [base, square] = recipe.pieces;
    if (base === undefined || square === undefined) throw new Error("pieces");
    const { across, along } = recipe.trimTo;
    const overWidth = (base.across - across) / 2;
    const off = base.along - along - overWidth;
    expect(square.along).toBe(base.along);
    expect(off).toBeGreaterThanOrEqual(0);
    expect(square.along - base.across / 2 - off).toBeGreaterThanOrEqual(INCH / 4);
  });
});

describe("sizes after each step, as the maker measures them", () => {
  test.each([
    // derived geometry, read back from the cut sizes: a diagonal sewn costs root 2 seams
    ["half-square triangle", "two at a time", unit(4, 4), 4.875 - Math.SQRT2 / 4],
    ["half-square triangle", "eight at a time", unit(4, 4), 9.75 / 2 - Math.SQRT2 / 4],
    ["half-square triangle", "four at a time", unit(4, 4), (6.875 - 0.5) / Math.SQRT2],
  ] as const)("%s, %s", (kind, method, design, side) => {
    const recipe = recipeOf(kind, method, design, QUARTER);
    const [paired, trimmed] = sewnSizes(recipe, INCH / 4);
    expect((paired?.across ?? 0) / INCH).toBeCloseTo(side, 3);
    expect((paired?.across ?? 0) / INCH).toBeGreaterThanOrEqual(4.5);
    expect(trimmed).toEqual({ across: 4.5 * INCH, along: 4.5 * INCH });
  });

  test("an hourglass loses root 2 seams twice", () => {
    const recipe = recipeOf("quarter-square triangle", "two at a time", unit(4, 4), QUARTER);
    const [first, second] = sewnSizes(recipe, INCH / 4).map((size) => (size?.across ?? 0) / INCH);
    expect(first).toBeCloseTo(5.25 - Math.SQRT2 / 4, 3);
    expect(second).toBeCloseTo(5.25 - Math.SQRT2 / 2, 3);
  });

  test("four geese come out as large as their squares make them", () => {
    const recipe = recipeOf("flying geese", "four at a time", unit(4, 2), QUARTER);
    const [, geese] = sewnSizes(recipe, INCH / 4);
    expect((geese?.across ?? 0) / INCH).toBeCloseTo(5.25 - Math.SQRT2 / 2, 3);
    expect((geese?.along ?? 0) / INCH).toBeCloseTo(2.875 - Math.SQRT2 / 4, 3);
  });
});

describe("strips cut at an angle", () => {
  test("an 8 in star: 12 diamonds from 42 in, where the exact width would promise 13", () => {
    // derived geometry: width 8 x (root 2 - 1) / 2 + 1/2 = 2.157, up to 2 1/4; 2 1/4 in are lost at the first end, and
    // every diamond takes 2 1/4 x root 2 = 3.182 in: (42 - 2.25) / 3.182 = 12.49
    const [set] = recipeOf("eight-pointed star", "from strips", unit(8, 8), QUARTER).stripSets;
    if (set === undefined) throw new Error("a set");
    expect(set.strips[0]?.width).toBe(2.25 * INCH);
    expect(set.segment / INCH).toBeCloseTo(2.25 * Math.SQRT2, 4);
    expect(segmentsFrom(set, 42 * INCH, 0)).toBe(12);
    const [fine] = recipeOf("eight-pointed star", "from strips", unit(8, 8), {
      ...QUARTER,
      mark: 1,
    }).stripSets;
    if (fine === undefined) throw new Error("a set");
    expect(segmentsFrom(fine, 42 * INCH, 0)).toBe(13);
  });

  test("seam lines stay the patch's own where the strip was rounded up, and it is told", () => {
    const recipe = recipeOf("eight-pointed star", "from strips", unit(8, 8), QUARTER);
    const [set] = recipe.stripSets;
    const high = (line: readonly { y: number }[] = []): number =>
      (Math.max(...line.map(({ y }) => y)) - Math.min(...line.map(({ y }) => y))) / INCH;
    expect(high(set?.shape?.cut)).toBeCloseTo(2.25, 3);
    expect(high(set?.shape?.seam)).toBeCloseTo(4 * (Math.SQRT2 - 1), 3);
    expect(recipe.steps.filter((step) => step.do === "cut-shapes")).toEqual([
      { do: "cut-shapes", set: 0, wide: true },
      { do: "cut-shapes", set: 1, wide: true },
    ]);
  });

  test("triangles lie as far apart as the strip as cut makes them", () => {
    // metric marks: 5 + 3 x 0.7 = 7.1, up to 7.25 cm; base 7.25 x 2 / root 3
    const [set] = recipeOf(
      "sixty-degree triangles",
      "from strips",
      plainDesign(centimetres(30), centimetres(5)),
      SEVEN,
    ).stripSets;
    expect(set?.strips[0]?.width).toBe(7.25 * CM);
    expect((set?.segment ?? 0) / CM).toBeCloseTo((7.25 * 2) / Math.sqrt(3), 3);
  });
});

describe("constants that would leave a piece too small", () => {
  test.each([
    // (finished + 1/2) / 0.64 against root 2 x (finished + 1/2) + 1/2: they part below about 2 7/8 in, in eighths below 2 3/4
    [1, 2.625, true],
    [2, 4.125, true],
    [2.75, 5.125, false],
    [3, 5.5, false],
    [4, 7.125, false],
  ])("half-square triangles of %s in, four at a time: cut %s", (finished, cut, short) => {
    const [piece] = recipeOf(
      "half-square triangle",
      "four at a time",
      unit(finished, finished),
      TRADE,
    ).pieces;
    expect([(piece?.along ?? 0) / INCH, piece?.tradeShort]).toEqual([cut, short]);
  });

  test("no piece of any size is smaller by trade than geometry asks", () => {
    const metric: HowMade = { ...TRADE, seam: centimetres(0.75), mark: 1600 };
    const odd: HowMade = { ...TRADE, seam: fromInteger(4480), mark: 640 };
    for (const how of [TRADE, metric, odd])
      for (const [kind, method, wide] of [
        ["half-square triangle", "two at a time", 1],
        ["half-square triangle", "four at a time", 1],
        ["half-square triangle", "eight at a time", 1],
        ["quarter-square triangle", "two at a time", 1],
        ["flying geese", "four at a time", 2],
        ["square-in-a-square", "corner triangles", 1],
      ] as const)
        for (let eighths = 8; eighths <= 64; eighths += 7) {
          const design = unit((wide * eighths) / 8, eighths / 8);
          const fine = recipeOf(kind, method, design, { ...how, rounding: "exact", mark: 1 });
          const made = recipeOf(kind, method, design, how);
          for (const [i, piece] of made.pieces.entries())
            expect(piece.along).toBeGreaterThanOrEqual((fine.pieces[i]?.along ?? 0) - 1);
        }
  });
});
