import type { Rational } from "../../../length/rational.ts";
import * as q from "../../../length/rational.ts";
import type { Formula, FormulaSide } from "../../terms/formulas.ts";
import { METHOD, UNIT } from "../../terms/names.ts";
import { type Asked, diagonalOf, halfSquareExtra, straightExtra, tradeExtras } from "../allowance.ts";
import { notSquare } from "../design.ts";
import { at } from "../outlines/outlines.ts";
import type { RootSum } from "../outlines/roots.ts";
import * as r from "../outlines/roots.ts";
import { lie, methodsOf, NOTHING_MORE, square } from "../recipe.ts";
import { templatesMethod } from "../templates.ts";
import type { HowMade, Lie, UnitDesign, UnitKind } from "../types.ts";

/*
 *   +------+      upper: the triangle at the top left
 *   | u  / |      lower: the triangle at the bottom right
 *   |  / l |      the diagonal rises
 *   +------+
 */
const NAME = UNIT.halfSquareTriangle;

function patches(design: UnitDesign): ReturnType<UnitKind["patches"]> {
  const { across: w, along: h } = design;
  const corners = { a: at(q.ZERO, q.ZERO), b: at(w, q.ZERO), c: at(w, h), d: at(q.ZERO, h) };
  return [
    { role: "upper", spot: "upper", outline: [corners.a, corners.b, corners.d], shape: "half", facing: 0 },
    { role: "lower", spot: "lower", outline: [corners.b, corners.c, corners.d], shape: "half", facing: 4 },
  ];
}

/** Finished size and the half-square extra: `2 7/8` for 2 in ("How to measure and cut triangles", Granny Maud's Girl, 2018). */
export function halvedSquare(finished: RootSum, how: HowMade): Asked {
  return {
    exact: r.plus(finished, halfSquareExtra(how.seam)),
    trade: r.plus(finished, r.whole(tradeExtras(how.seam).half)),
    room: [],
  };
}

/** The same, said. */
export function halvedFormula(side: FormulaSide, how: HowMade): { exact: Formula; trade: Formula } {
  return {
    exact: { rule: "halved", side },
    trade: { rule: "halved", side, trade: tradeExtras(how.seam).named },
  };
}

const times = (value: Rational, by: number): RootSum => r.whole(q.mul(value, q.fromInteger(by)));
const room = (how: HowMade, by: number): RootSum => times(how.oversize, by);

/** Two like squares, one of each role, whose patches end up as listed: `[upper print, lower print]` by unit. */
function pair(
  side: Asked,
  formula: { exact: Formula; trade: Formula },
  prints: readonly [number, number][],
  diagonal: "rising" | "any",
) {
  const lies = (role: "upper" | "lower"): Lie[] =>
    prints.map(([upper, lower], unit) => lie(unit, role, role === "upper" ? upper : lower));
  return (["upper", "lower"] as const).map((role) =>
    square({ role, side, formula, diagonal, lies: [lies(role)] }),
  );
}

/** Length of a line sewn `seam` away from the diagonal of a square of that side. */
function besideDiagonal(side: RootSum, how: HowMade): RootSum {
  return r.minus(diagonalOf(side), straightExtra(how.seam));
}

const method = methodsOf(NAME);

const twoAtATime = method(METHOD.twoAtATime, (design, how) => {
  const side = { ...halvedSquare(r.whole(design.across), how), room: room(how, 1) };
  return {
    ...NOTHING_MORE,
    unitsPerSet: 2,
    // The second unit is the first turned half round: so is its print.
    pieces: pair(
      side,
      halvedFormula("size", how),
      [
        [0, 0],
        [4, 4],
      ],
      "rising",
    ),
    seams: [{ what: "along-diagonal", length: besideDiagonal(side.exact, how), count: 2, bias: true }],
    steps: [
      { do: "pair", under: 0, over: 1, lines: "one", line: "rising", press: { to: "darker" } },
      { do: "trim", by: "diagonal" },
    ],
    // Derived geometry: finished + seam x (2 + root 2).
    // How to measure and cut triangles, Granny Maud's Girl, 2018: finished + 7/8 in.
  };
});

/*
 * Sewn all round and cut on both diagonals. Each unit's diagonal is an edge of the squares, so the print
 * leans by an eighth of a turn and the unit's own edges are bias.
 */
const fourAtATime = method(METHOD.fourAtATime, (design, how) => {
  const raw = r.plus(r.whole(design.across), straightExtra(how.seam));
  const side: Asked = {
    exact: r.plus(diagonalOf(raw), straightExtra(how.seam)),
    trade: r.times(raw, r.whole(q.rational(100n, 64n))),
    room: diagonalOf(room(how, 1)),
  };
  return {
    ...NOTHING_MORE,
    unitsPerSet: 4,
    pieces: pair(
      side,
      {
        exact: { rule: "four-at-a-time", trade: false } as const,
        trade: { rule: "four-at-a-time", trade: true } as const,
      },
      [
        [3, 7],
        [1, 1],
        [7, 3],
        [5, 5],
      ],
      "any",
    ),
    seams: [{ what: "round-edge", length: side.exact, count: 4, bias: false }],
    steps: [
      { do: "pair", under: 0, over: 1, lines: "edges", line: "rising", press: { to: "darker" } },
      { do: "trim", by: "diagonal" },
    ],
    biasSides: ["top", "right", "bottom", "left"],
    // Derived geometry: root 2 x (finished + 2 seams) + 2 seams.
  };
});

/*
 * Two squares twice as wide, both diagonals drawn: four quarters, each a pair of squares sewn two at a
 * time. Opposite quarters have like diagonals, so the print comes out all four ways, twice.
 */
const eightAtATime = method(METHOD.eightAtATime, (design, how) => {
  const half = halvedSquare(r.whole(design.across), how);
  const two = r.whole(q.fromInteger(2));
  const side: Asked = {
    exact: r.times(half.exact, two),
    trade: half.trade === null ? null : r.times(half.trade, two),
    room: room(how, 2),
  };
  const quarters: [number, number][] = [
    [0, 0],
    [4, 4],
    [6, 2],
    [2, 6],
  ];
  return {
    ...NOTHING_MORE,
    unitsPerSet: 8,
    pieces: pair(
      side,
      {
        exact: { rule: "eight-at-a-time" },
        trade: { rule: "eight-at-a-time", trade: tradeExtras(how.seam).named },
      },
      [...quarters, ...quarters],
      "any",
    ),
    seams: [{ what: "along-both-diagonals", length: besideDiagonal(side.exact, how), count: 4, bias: true }],
    steps: [
      { do: "pair", under: 0, over: 1, lines: "both", line: "rising", press: { to: "darker" } },
      { do: "trim", by: "diagonal" },
    ],
    // Derived geometry: 2 x (finished + seam x (2 + root 2)).
    // Half square triangles, 8 at a time, Scrapish: 2 x finished + 1 3/4 in.
  };
});

const singleTriangles = method(METHOD.singleTriangles, (design, how) => {
  const side = { ...halvedSquare(r.whole(design.across), how), room: room(how, 1) };
  const squares = pair(
    side,
    halvedFormula("size", how),
    [
      [0, 0],
      [4, 4],
    ],
    "rising",
  );
  return {
    ...NOTHING_MORE,
    unitsPerSet: 2,
    loose: true,
    pieces: squares.map((piece) => ({ ...piece, subcut: "once-diagonal" as const })),
    seams: [{ what: "along-diagonal", length: diagonalOf(side.exact), count: 2, bias: true }],
    steps: [
      { do: "cut-triangles", pieces: [0, 1] },
      { do: "join", makes: "unit", parts: ["upper", "lower"], way: "edge", press: { to: "darker" } },
      { do: "trim", by: "diagonal" },
    ],
    // Derived geometry: finished + seam x (2 + root 2).
    // How to measure and cut triangles, Granny Maud's Girl, 2018: finished + 7/8 in.
  };
});

/** Two triangles that make a square. */
export const halfSquareTriangle: UnitKind = {
  name: NAME,
  alsoCalled: ["half-square triangles", "hst", "triangle square"],
  reads: [],
  check: (design) => notSquare(design),
  roles: () => ["upper", "lower"],
  patches,
  methods: [twoAtATime, fourAtATime, eightAtATime, singleTriangles, templatesMethod(NAME, patches)],
};
