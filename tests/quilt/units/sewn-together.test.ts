import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fromInteger } from "../../../src/length/rational.ts";
import { surdToNumber } from "../../../src/length/surd.ts";
import { plainDesign } from "../../../src/quilt/units/design.ts";
import type { HowMade, Lie, Recipe, RecipePiece, UnitDesign } from "../../../src/quilt/units/types.ts";
import { waysToCut } from "../../../src/quilt/units/ways.ts";
import { kindOf, recipeOf } from "./support/making.ts";
import {
  type Fragment,
  type Line,
  lay,
  readUnit,
  type Spot,
  sewBothSides,
  stitchAndOpen,
} from "./support/sewing.ts";

/*
 * The cut pieces are sewn back together on a simulated mat (support/sewing.ts), cut sizes exact to a tick. What
 * comes off must be the unit: size, patches, seam allowance all round; and for every way of laying each piece on
 * a print, the prints must point where the recipe says.
 */
const how = (seam: number): HowMade => ({
  seam: fromInteger(seam),
  mark: 1,
  rounding: "exact",
  oversize: fromInteger(0),
});

/** 1/4 in, 3/8 in, 6 mm, 7 mm and 0.75 cm. */
const seams = fc.constantFrom(4064, 6096, 3840, 4480, 4800);
/** Finished sizes from 1 to 12 in, in sixteenths or half millimetres. */
const sizes = fc.oneof(
  fc.integer({ min: 16, max: 192 }).map((n) => n * 1016),
  fc.integer({ min: 50, max: 600 }).map((n) => n * 320),
);

function spotsOf(kind: string, design: UnitDesign): Spot[] {
  return kindOf(kind)
    .patches(design)
    .map((patch) => ({
      role: patch.role,
      spot: patch.spot,
      outline: patch.outline.map((p) => ({ x: surdToNumber(p.x), y: surdToNumber(p.y) })),
    }));
}

/** Off the mat: each unit's readings; throws with the complaint when one is not the unit asked. */
function read(units: readonly Fragment[][], kind: string, design: UnitDesign, seam: number): string[] {
  const size = { across: Number(design.across.n), along: Number(design.along.n) };
  return units
    .map((fragments) => {
      const readings = readUnit(fragments, spotsOf(kind, design), size, seam, 12);
      if (typeof readings === "string") throw new Error(`${kind}: ${readings}`);
      return readings.toSorted()[0] ?? "";
    })
    .toSorted();
}

/** One lying per piece of a set: every copy may be turned by itself. */
function layings(recipe: Recipe): Lie[][][] {
  const copies = recipe.pieces.flatMap((piece: RecipePiece) =>
    piece.lies.map((_, copy) => ({ piece, copy })),
  );
  return copies.reduce<Lie[][][]>(
    (all, { piece, copy }) =>
      all.flatMap((done) => waysToCut(piece).map((way) => [...done, [...(way.lies[copy] ?? [])]])),
    [[]],
  );
}

/** What the recipe says comes out, read the same way: the least of the turns that leave the unit as drawn. */
function foretold(
  lies: readonly (readonly Lie[])[],
  units: number,
  kind: string,
  design: UnitDesign,
): string[] {
  const patches = kindOf(kind).patches(design);
  return Array.from({ length: units }, (_, unit) => {
    const prints = new Map(
      lies
        .flat()
        .filter((one) => one.unit === unit)
        .map((one) => [one.spot, one.print]),
    );
    const turned = ([0, 2, 4, 6] as const).flatMap((turn) => {
      const seen = patches.map((patch) => {
        const to = patches.find(
          (other) =>
            other.role === patch.role &&
            other.shape === patch.shape &&
            (other.facing - patch.facing - turn) % 8 === 0,
        );
        return to === undefined && turn !== 0
          ? null
          : `${(to ?? patch).spot}:${((prints.get(patch.spot) ?? -1) + turn) % 8}`;
      });
      return seen.every((each) => each !== null) ? [seen.toSorted().join(" ")] : [];
    });
    return turned.toSorted()[0] ?? "";
  }).toSorted();
}

function distinct(outcomes: readonly string[][]): string[] {
  return [...new Set(outcomes.map((units) => units.join(" | ")))].toSorted();
}

const TURNS = [0, 2, 4, 6];
const rising = (q: number): Line => ({ x: 0, y: q, dx: 1, dy: -1 });
const falling: Line = { x: 0, y: 0, dx: 1, dy: 1 };

/** Sides of the pieces of a role, in ticks. */
function sideOf(recipe: Recipe, role: string): number {
  return recipe.pieces.find((piece) => piece.role === role)?.along ?? 0;
}

/** Sews a pair of squares for every way of laying them, and compares with the recipe. */
function checkPair(
  kind: string,
  method: string,
  roles: readonly [string, string],
  sew: (bottom: Fragment, top: Fragment, side: number, seam: number) => Fragment[][],
): void {
  fc.assert(
    fc.property(sizes, seams, (finished, seam) => {
      const design = plainDesign(fromInteger(finished), fromInteger(finished));
      const recipe = recipeOf(kind, method, design, how(seam));
      const side = sideOf(recipe, roles[0]);
      expect(sideOf(recipe, roles[1])).toBe(side);
      const sewn = TURNS.flatMap((a) =>
        TURNS.map((b) => {
          const bottom = lay(roles[0], 0, 0, side, side, a, true);
          const top = lay(roles[1], 0, 0, side, side, b, false);
          const units = sew(bottom, top, side, seam);
          expect(units).toHaveLength(recipe.unitsPerSet);
          return read(units, kind, design, seam);
        }),
      );
      const told = layings(recipe).map((lies) => foretold(lies, recipe.unitsPerSet, kind, design));
      expect(distinct(sewn)).toEqual(distinct(told));
    }),
    { seed: 1880, numRuns: 8 },
  );
}

describe("squares sewn in pairs", () => {
  test("half-square triangles, two at a time", () => {
    checkPair("half-square triangle", "two at a time", ["upper", "lower"], (bottom, top, side, seam) =>
      sewBothSides([bottom], [top], rising(side), seam),
    );
  });

  test("half-square triangles, four at a time", () => {
    checkPair("half-square triangle", "four at a time", ["upper", "lower"], (bottom, top, side, seam) => {
      const middle = side / 2;
      const edges: [Line, 1 | -1][] = [
        [{ x: 0, y: seam, dx: 1, dy: 0 }, 1],
        [{ x: side - seam, y: 0, dx: 0, dy: 1 }, 1],
        [{ x: side, y: side - seam, dx: -1, dy: 0 }, 1],
        [{ x: seam, y: side, dx: 0, dy: -1 }, 1],
      ];
      const corners = [
        [0, 0, side, 0],
        [side, 0, side, side],
        [side, side, 0, side],
        [0, side, 0, 0],
      ] as const;
      return edges.map(([line, sign], i) => {
        const [ax, ay, bx, by] = corners[i] ?? [0, 0, 0, 0];
        const quarter = (one: Fragment): Fragment => ({
          ...one,
          outline: [
            { x: ax, y: ay },
            { x: bx, y: by },
            { x: middle, y: middle },
          ],
        });
        return stitchAndOpen([quarter(bottom)], [quarter(top)], line, sign);
      });
    });
  });

  test("half-square triangles, eight at a time", () => {
    checkPair("half-square triangle", "eight at a time", ["upper", "lower"], (bottom, top, side, seam) => {
      const h = side / 2;
      return [
        [0, 0],
        [h, 0],
        [h, h],
        [0, h],
      ].flatMap(([x = 0, y = 0]) => {
        const quarter = (one: Fragment): Fragment => ({
          ...one,
          outline: lay("", x, y, h, h, 0, true).outline,
        });
        const line: Line = x === y ? { x, y, dx: 1, dy: 1 } : { x, y: y + h, dx: 1, dy: -1 };
        return sewBothSides([quarter(bottom)], [quarter(top)], line, seam);
      });
    });
  });

  test("hourglasses, two at a time", () => {
    checkPair("quarter-square triangle", "two at a time", ["ends", "sides"], (bottom, top, side, seam) => {
      const pair = sewBothSides([bottom], [top], rising(side), seam);
      // Each half as it was made: bring both to the same corner, the seam rising, and lay one on the other face down,
      // unlike fabrics facing.
      const raw = side - seam * Math.SQRT2;
      const settled = pair.map((half) => settle(half, raw));
      const [first = [], second = []] = settled;
      const faced = second.map((one) => turnOverDiagonal(one, raw));
      const over =
        roleAtTopLeft(first) === roleAtTopLeft(faced) ? faced.map((one) => halfTurn(one, raw)) : faced;
      return sewBothSides(first, over, falling, seam);
    });
  });
});

/** Moves a square half-square unit so that its raw corner is the origin. */
function settle(half: readonly Fragment[], raw: number): Fragment[] {
  const points = half.flatMap((one) => one.outline);
  const left = Math.min(...points.map((p) => p.x));
  const top = Math.min(...points.map((p) => p.y));
  expect(Math.max(...points.map((p) => p.x)) - left).toBeCloseTo(raw, 3);
  return half.map((one) => ({ ...one, outline: one.outline.map((p) => ({ x: p.x - left, y: p.y - top })) }));
}

/** Turned face down about the rising diagonal. */
function turnOverDiagonal(one: Fragment, raw: number): Fragment {
  return {
    role: one.role,
    outline: one.outline.map((p) => ({ x: raw - p.y, y: raw - p.x })),
    up: { x: -one.up.y, y: -one.up.x },
    faceUp: !one.faceUp,
  };
}

function halfTurn(one: Fragment, raw: number): Fragment {
  return {
    ...one,
    outline: one.outline.map((p) => ({ x: raw - p.x, y: raw - p.y })),
    up: { x: -one.up.x, y: -one.up.y },
  };
}

/** The fabric at the top left. */
function roleAtTopLeft(half: readonly Fragment[]): string {
  const near = (one: Fragment): number => Math.min(...one.outline.map((p) => p.x + p.y));
  return half.toSorted((a, b) => near(a) - near(b))[0]?.role ?? "";
}

describe("flying geese", () => {
  /** A small square face down with its outer corner on a corner of what lies below. */
  function cornerSquare(x: number, y: number, side: number, up: number): Fragment {
    return lay("sky", x, y, side, side, up, false);
  }

  function fourGeese(large: number, small: number, seam: number, ups: readonly number[]): Fragment[][] {
    const [l = 0, a = 0, b = 0, c = 0, d = 0] = ups;
    const base = lay("goose", 0, 0, large, large, l, true);
    const far = large - small;
    const halves = sewBothSides(
      [base],
      [cornerSquare(0, 0, small, a), cornerSquare(far, far, small, b)],
      falling,
      seam,
    );
    return halves.flatMap((half) => {
      // The half's right angle is at the top right or the bottom left, where the large square's corner was.
      const goose = half.find((one) => one.role === "goose")?.outline ?? [];
      const atTopRight = goose.some((p) => Math.hypot(p.x - large, p.y) < 1);
      const square = atTopRight ? cornerSquare(far, 0, small, c) : cornerSquare(0, far, small, d);
      return sewBothSides(half, [square], rising(large), seam);
    });
  }

  test("four at a time", () => {
    fc.assert(
      fc.property(sizes, seams, (height, seam) => {
        const design = plainDesign(fromInteger(2 * height), fromInteger(height));
        const recipe = recipeOf("flying geese", "four at a time", design, how(seam));
        const [large, small] = [sideOf(recipe, "goose"), sideOf(recipe, "sky")];
        const all = TURNS.flatMap((l) =>
          TURNS.flatMap((a) => TURNS.flatMap((b) => TURNS.map((c) => [l, a, b, c]))),
        );
        const sewn = all.flatMap((ups) =>
          TURNS.map((d) => read(fourGeese(large, small, seam, [...ups, d]), "flying geese", design, seam)),
        );
        const told = layings(recipe).map((lies) => foretold(lies, 4, "flying geese", design));
        expect(distinct(sewn)).toEqual(distinct(told));
      }),
      { seed: 1880, numRuns: 1 },
    );
  });

  test("stitch-and-flip", () => {
    fc.assert(
      fc.property(sizes, seams, fc.constantFrom(...TURNS), (height, seam, up) => {
        const design = plainDesign(fromInteger(2 * height), fromInteger(height));
        const recipe = recipeOf("flying geese", "stitch-and-flip", design, how(seam));
        const rectangle = recipe.pieces[0];
        const s = sideOf(recipe, "sky");
        if (rectangle === undefined) throw new Error("no rectangle");
        const base = lay("goose", 0, 0, rectangle.across, rectangle.along, up, true);
        const left = flipCorner([base], cornerSquare(0, 0, s, 2), { x: 0, y: s, dx: 1, dy: -1 });
        const right = flipCorner(left, cornerSquare(rectangle.across - s, 0, s, 6), {
          x: rectangle.across - s,
          y: 0,
          dx: 1,
          dy: 1,
        });
        expect(read([right], "flying geese", design, seam)).toEqual([`goose:${up} sky-left:0 sky-right:0`]);
      }),
      { seed: 1880, numRuns: 25 },
    );
  });
});

/** A small square sewn on its diagonal over a corner and folded out; the line runs with the corner on its left. */
function flipCorner(base: readonly Fragment[], square: Fragment, line: Line): Fragment[] {
  const inward = base[0]?.outline ?? [];
  const middle = { x: avg(inward.map((p) => p.x)), y: avg(inward.map((p) => p.y)) };
  const side = line.dx * (middle.y - line.y) - line.dy * (middle.x - line.x) > 0 ? 1 : -1;
  return stitchAndOpen(base, [square], line, side);
}

function avg(values: readonly number[]): number {
  return values.reduce((sum, v) => sum + v, 0) / values.length;
}

describe("corners flipped over a square", () => {
  test.each([
    ["square-in-a-square", 2, "centre"],
    ["snowball", 3, "ball"],
  ] as const)("%s", (kind, parts, centre) => {
    fc.assert(
      fc.property(sizes, seams, (part, seam) => {
        const finished = part * parts;
        const design = plainDesign(fromInteger(finished), fromInteger(finished));
        const recipe = recipeOf(kind, "stitch-and-flip", design, how(seam));
        const [whole, s] = [sideOf(recipe, centre), sideOf(recipe, "corners")];
        const far = whole - s;
        let lying: Fragment[] = [lay(centre, 0, 0, whole, whole, 0, true)];
        for (const [x, y, up, line] of [
          [0, 0, 2, { x: 0, y: s, dx: 1, dy: -1 }],
          [far, far, 2, { x: far, y: whole, dx: 1, dy: -1 }],
          [far, 0, 6, { x: far, y: 0, dx: 1, dy: 1 }],
          [0, far, 6, { x: 0, y: far, dx: 1, dy: 1 }],
        ] as const)
          lying = flipCorner(lying, lay("corners", x, y, s, s, up, false), line);
        const spots = spotsOf(kind, design).map((spot) => `${spot.spot}:0`);
        expect(read([lying], kind, design, seam)).toEqual([spots.toSorted().join(" ")]);
      }),
      { seed: 1880, numRuns: 25 },
    );
  });
});
