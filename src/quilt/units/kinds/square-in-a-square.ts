import * as q from "../../../length/rational.ts";
import { alike, twoSeams } from "../../terms/formulas.ts";
import { METHOD, UNIT } from "../../terms/names.ts";
import { type Asked, diagonalOf, sideOf } from "../allowance.ts";
import { notSquare } from "../design.ts";
import { flipped, flipStep, overMark } from "../flip.ts";
import { at } from "../outlines/outlines.ts";
import type { RootSum } from "../outlines/roots.ts";
import * as r from "../outlines/roots.ts";
import { lie, methodsOf, NOTHING_MORE, patchPiece, plain, square, withSeamsAdded } from "../recipe.ts";
import type { RecipeStep } from "../step-types.ts";
import { templatesMethod } from "../templates.ts";
import type { HowMade, UnitDesign, UnitKind } from "../types.ts";
import { halvedFormula, halvedSquare } from "./half-square-triangle.ts";

/*
 *   +---^---+
 *   | / c \ |     centre:  the square standing on its point
 *   <   c   >     corners: the four triangles round it
 *   | \ c / |
 *   +---v---+
 */
const NAME = UNIT.squareInASquare;
const HALF = q.rational(1n, 2n);

/** Corner triangles, clockwise from the top left, with how far each is turned from the first. */
const CORNERS = ["top-left", "top-right", "bottom-right", "bottom-left"] as const;

function patches(design: UnitDesign): ReturnType<UnitKind["patches"]> {
  const { across: w, along: h } = design;
  const [mx, my] = [q.mul(w, HALF), q.mul(h, HALF)];
  const [top, right, bottom, left] = [at(mx, q.ZERO), at(w, my), at(mx, h), at(q.ZERO, my)];
  const corner = { role: "corners", shape: "corner" };
  return [
    { role: "centre", spot: "centre", outline: [top, right, bottom, left], shape: "centre", facing: 0 },
    { ...corner, spot: "top-left", outline: [at(q.ZERO, q.ZERO), top, left], facing: 0 },
    { ...corner, spot: "top-right", outline: [top, at(w, q.ZERO), right], facing: 2 },
    { ...corner, spot: "bottom-right", outline: [right, at(w, h), bottom], facing: 4 },
    { ...corner, spot: "bottom-left", outline: [left, bottom, at(q.ZERO, h)], facing: 6 },
  ];
}

const method = methodsOf(NAME);

/** Half the block times 1.414 and two seams ("Lesson 5: A Square in a Square", class handout). */
function centreSide(design: UnitDesign, how: HowMade): Asked {
  const finished = r.whole(design.across);
  return {
    exact: withSeamsAdded(sideOf(finished), how),
    trade: withSeamsAdded(r.times(finished, r.whole(q.rational(707n, 1000n))), how),
    room: [],
  };
}

/** Two corners are sewn on opposite sides, then the other two across them. */
const CORNERS_ON: RecipeStep[] = [
  { do: "cut-triangles", pieces: [1, 2] },
  {
    do: "join",
    makes: "centre-and-two",
    parts: ["top-left", "centre", "bottom-right"],
    way: "edge",
    press: { to: "outside" },
  },
  {
    do: "join",
    makes: "unit",
    parts: ["top-right", "centre-and-two", "bottom-left"],
    way: "edge",
    press: { to: "outside" },
  },
  { do: "trim", by: "point" },
];

const cornerTriangles = method(METHOD.cornerTriangles, (design, how) => {
  const leg = r.whole(q.mul(design.across, HALF));
  const side = { ...halvedSquare(leg, how), room: r.whole(how.oversize) };
  const centre = centreSide(design, how);
  const triangles = {
    role: "corners",
    side,
    formula: halvedFormula("half-size", how),
    subcut: "once-diagonal" as const,
  };
  return {
    ...NOTHING_MORE,
    unitsPerSet: 1,
    loose: true,
    pieces: [
      square({
        role: "centre",
        side: centre,
        formula: {
          exact: { rule: "on-point", trade: false },
          trade: { rule: "on-point", trade: true },
        },
        // Cut straight and set on its point, the print leans by an eighth of a turn.
        lies: [[lie(0, "centre", 1)]],
      }),
      square({
        ...triangles,
        diagonal: "rising",
        lies: [[lie(0, "top-left", 0), lie(0, "bottom-right", 0)]],
      }),
      square({
        ...triangles,
        diagonal: "falling",
        lies: [[lie(0, "top-right", 0), lie(0, "bottom-left", 0)]],
      }),
    ],
    seams: [
      { what: "first-corners", length: centre.exact, count: 2, bias: true },
      { what: "other-corners", length: diagonalOf(side.exact), count: 2, bias: true },
    ],
    steps: CORNERS_ON,
    // Derived geometry: centre finished / root 2 + 2 seams; corners finished / 2 + seam x (2 + root 2).
    // Corner triangles for setting blocks on point, Scrapish: 3 3/4 in squares round a 4 in centre.
  };
});

const stitchAndFlip = method(METHOD.stitchAndFlip, (design, how) => {
  const over = overMark(r.whole(design.across), how);
  const side: RootSum = r.plus(withSeamsAdded(r.whole(q.mul(design.across, HALF)), how), over);
  const flip = flipped(side, how, 4);
  return {
    ...NOTHING_MORE,
    unitsPerSet: 1,
    pieces: [
      patchPiece("centre", r.whole(design.across), r.whole(design.along), how, [[lie(0, "centre", 0)]]),
      ...CORNERS.map((spot, i) =>
        square({
          role: "corners",
          side: plain(side),
          formula: alike(twoSeams("half-size")),
          diagonal: i % 2 === 0 ? "rising" : "falling",
          lies: [[lie(0, spot, 0)]],
        }),
      ),
    ],
    seams: [{ what: "square-to-square", length: flip.seam, count: 4, bias: true }],
    steps: flipStep(
      0,
      // Opposite corners first: the second pair overlaps the first at the points.
      [
        { piece: 1, corner: "top-left" },
        { piece: 3, corner: "bottom-right" },
        { piece: 2, corner: "top-right" },
        { piece: 4, corner: "bottom-left" },
      ],
      "corners",
      "point",
    ),
    corners: flip.corners,
    bonus: [flip.bonus],
    // Derived geometry: finished + 2 seams; half the finished size + 2 seams.
  };
});

/** A square on its point inside a square. */
export const squareInASquare: UnitKind = {
  name: NAME,
  alsoCalled: ["economy block", "diamond in a square"],
  reads: [],
  check: (design) => notSquare(design),
  roles: () => ["centre", "corners"],
  patches,
  methods: [cornerTriangles, stitchAndFlip, templatesMethod(NAME, patches)],
};
