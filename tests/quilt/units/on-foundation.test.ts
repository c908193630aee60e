import { describe, expect, test } from "vitest";
import { fromInteger } from "../../../src/length/rational.ts";
import { plainDesign } from "../../../src/quilt/units/design.ts";
import { foundationRecipe, ON_FOUNDATION } from "../../../src/quilt/units/on-foundation.ts";
import { findUnitKind } from "../../../src/quilt/units/registry.ts";
import type { HowMade, UnitDesign } from "../../../src/quilt/units/types.ts";

const INCH = 16256;
const HOW: HowMade = {
  seam: fromInteger(INCH / 4),
  mark: INCH / 8,
  rounding: "exact",
  oversize: fromInteger(0),
};

function design(across: number, along: number, more: Partial<UnitDesign> = {}): UnitDesign {
  return { ...plainDesign(fromInteger(across * INCH), fromInteger(along * INCH)), ...more };
}

function recipe(kind: string, asked: UnitDesign, ease = 0) {
  const found = findUnitKind(kind);
  if (found === null) throw new Error(`no ${kind}`);
  expect(found.check(asked)).toBe(null);
  return foundationRecipe(found, asked, HOW, ease * INCH, { method: ON_FOUNDATION, printed: new Set() });
}

const told = (kind: string, asked: UnitDesign, ease = 0) => {
  const { pieces, unitsPerSet } = recipe(kind, asked, ease);
  return [
    unitsPerSet,
    ...pieces.map(
      ({ role, across, along, countPerSet, subcut }) =>
        `${countPerSet} ${role} ${across / INCH} x ${along / INCH} ${subcut}`,
    ),
  ];
};

describe("patches for a foundation, cut exact", () => {
  // Quilty Math, Christa Quilts: width + 1 1/4 and height + 7/8 in; Four-at-a-Time Flying Geese, Quilter's World
  // magazine, 2024: 5 1/4 and 2 7/8 in for 2 x 4: triangles are the same size whatever they are sewn to.
  test("flying geese 4 x 2 in", () => {
    expect(told("flying geese", design(4, 2))).toEqual([
      4,
      "1 goose 5.25 x 5.25 twice-diagonal",
      "4 sky 2.875 x 2.875 once-diagonal",
    ]);
  });

  // derived geometry: 3 + 1/4 x (2 + root 2) = 3.854, to the next eighth 3 7/8 in.
  test("half-square triangle 3 in", () => {
    expect(told("half-square triangle", design(3, 3))).toEqual([
      2,
      "1 upper 3.875 x 3.875 once-diagonal",
      "1 lower 3.875 x 3.875 once-diagonal",
    ]);
  });

  // Corner triangles for setting blocks on point, Scrapish: 3 3/4 in squares round a 4 in centre, by trade constants;
  // derived geometry: 4 / root 2 + 1/2 = 3.328, 2 + 1/4 x (2 + root 2) = 2.854 in.
  test("square-in-a-square 4 in", () => {
    expect(told("square-in-a-square", design(4, 4))).toEqual([
      2,
      "2 centre 3.375 x 3.375 none",
      "4 corners 2.875 x 2.875 once-diagonal",
    ]);
  });

  // derived geometry: 6 + 1/2; corners 2 + 1/4 x (2 + root 2) = 2.854 in, one left over of three to a set of two.
  test("snowball with three corners", () => {
    const corners = ["top-left", "top-right", "bottom-left"] as const;
    expect(told("snowball", design(6, 6, { corner: fromInteger(2 * INCH), corners }))).toEqual([
      2,
      "2 ball 6.5 x 6.5 none",
      "3 corners 2.875 x 2.875 once-diagonal",
    ]);
  });

  // derived geometry: every rail its finished size and 1/2 in.
  test("rails 6 in of three", () => {
    expect(told("rails", design(6, 6))).toEqual([
      1,
      "1 rail 1 6.5 x 2.5 none",
      "1 rail 2 6.5 x 2.5 none",
      "1 rail 3 6.5 x 2.5 none",
    ]);
  });
});

describe("whatever the ease", () => {
  const kinds: [string, UnitDesign][] = [
    ["flying geese", design(4, 2)],
    ["half-square triangle", design(3, 3)],
    ["square-in-a-square", design(4, 4)],
    ["snowball", design(6, 6, { corner: fromInteger(2 * INCH) })],
    ["rails", design(6, 6)],
    ["log cabin", design(6, 6, { centre: fromInteger(2 * INCH), strips: [fromInteger(INCH)], count: 2 })],
  ];

  test.each(kinds)("%s: nothing is trimmed, and sizes grow by it", (kind, asked) => {
    const exact = recipe(kind, asked);
    const eased = recipe(kind, asked, 1 / 4);
    expect(eased.method).toBe(ON_FOUNDATION);
    expect([exact.trimTo.needed, eased.trimTo.needed]).toEqual([false, false]);
    // The raw unit is its finished size and two seams, foundation or not: never smaller than its squares.
    expect(eased.trimTo.across).toBe(Number(asked.across.n) + INCH / 2);
    expect(eased.pieces.map(({ across }) => across)).toEqual(
      exact.pieces.map(({ across }) => across + INCH / 4),
    );
    // Every patch of every unit comes from one piece.
    const lies = eased.pieces.flatMap((piece) => piece.lies.flat());
    const spots = findUnitKind(kind)?.patches(asked).length ?? 0;
    expect(new Set(lies.map(({ unit, spot }) => `${unit} ${spot}`)).size).toBe(spots * eased.unitsPerSet);
    const { cut, finished, seams, corners, trimmed } = eased.areas;
    expect(finished + seams + corners + trimmed).toBe(cut);
  });

  // A goose's print may point each of four ways: the four quarters of a square.
  test("four geese from a square point four ways", () => {
    const goose = recipe("flying geese", design(4, 2)).pieces[0];
    expect(goose?.lies[0]?.map(({ print }) => print)).toEqual([4, 2, 0, 6]);
  });
});
