import * as q from "../../../length/rational.ts";
import { alike, twoSeams } from "../../terms/formulas.ts";
import { METHOD, UNIT } from "../../terms/names.ts";
import { type Asked, cutSize, diagonalOf, straightExtra } from "../allowance.ts";
import { flipped, flipStep, overMark } from "../flip.ts";
import { at } from "../outlines/outlines.ts";
import type { RootSum } from "../outlines/roots.ts";
import * as r from "../outlines/roots.ts";
import { lie, methodsOf, NOTHING_MORE, patchPiece, plain, square, withSeamsAdded } from "../recipe.ts";
import { templatesMethod } from "../templates.ts";
import type { HowMade, UnitDesign, UnitKind } from "../types.ts";
import { halvedFormula, halvedSquare } from "./half-square-triangle.ts";
import { quarteredFormula, quarteredSquare } from "./quarter-square-triangle.ts";

/*
 *   +---------------+
 *   | sky  / \  sky |     twice as wide as high, the goose flying up
 *   |    / goose\   |
 *   +---------------+
 */
const NAME = UNIT.flyingGeese;

function patches(design: UnitDesign): ReturnType<UnitKind["patches"]> {
  const { across: w, along: h } = design;
  const tip = at(q.mul(w, q.rational(1n, 2n)), q.ZERO);
  const [a, b, c, d] = [at(q.ZERO, q.ZERO), at(w, q.ZERO), at(w, h), at(q.ZERO, h)];
  return [
    { role: "goose", spot: "goose", outline: [tip, c, d], shape: "goose", facing: 0 },
    { role: "sky", spot: "sky-left", outline: [a, tip, d], shape: "sky", facing: 0 },
    { role: "sky", spot: "sky-right", outline: [tip, b, c], shape: "sky", facing: 2 },
  ];
}

const method = methodsOf(NAME);
const across = (design: UnitDesign): RootSum => r.whole(design.across);
const along = (design: UnitDesign): RootSum => r.whole(design.along);
const besideDiagonal = (side: RootSum, seam: q.Rational): RootSum =>
  r.minus(diagonalOf(side), straightExtra(seam));

/**
 * The point lies half as deep as the large square is wide, and the small ones must reach a seam allowance beyond it. On one
 * ruler's marks both are rounded up so that they do; not so where one is rounded further than the other.
 */
function beyondPoint(large: number, { seam }: HowMade): RootSum {
  return r.times(r.plus(r.whole(q.fromInteger(large)), straightExtra(seam)), r.whole(q.rational(1n, 2n)));
}

/*
 * Two small squares on opposite corners of the large one, sewn either side of its diagonal and cut; then one
 * more on the remaining corner of each half. The four geese are the four quarters of the large square, base
 * on its edge, so its print points four ways. Each small square serves two geese: one as the sky on the
 * right, the other, a quarter-turn on, as the sky on the left.
 */
const fourAtATime = method(METHOD.fourAtATime, (design, how) => {
  // Room to trim goes on the small squares, as charts with a trimming step print it (1/8 in: 5 1/4 and 3 in
  // for 2 x 4, "Quadruple Square Method", Quilting Passion, 2004).
  const large = quarteredSquare(across(design), how);
  const small: Asked = {
    ...halvedSquare(along(design), how),
    room: r.whole(how.oversize),
    ...(how.ruler === undefined ? {} : { meets: beyondPoint(cutSize(large, how).ticks, how) }),
  };
  return {
    ...NOTHING_MORE,
    unitsPerSet: 4,
    pieces: [
      square({
        role: "goose",
        side: large,
        formula: quarteredFormula("width", how),
        lies: [[lie(0, "goose", 0), lie(1, "goose", 2), lie(2, "goose", 4), lie(3, "goose", 6)]],
      }),
      square({
        role: "sky",
        side: small,
        formula: halvedFormula("height", how),
        diagonal: "falling",
        lies: [0, 1, 2, 3].map((unit) => [lie(unit, "sky-right", 0), lie((unit + 1) % 4, "sky-left", 2)]),
      }),
    ],
    seams: [
      {
        what: "small-squares-to-large",
        length: besideDiagonal(large.exact, how.seam),
        count: 2,
        bias: true,
      },
      {
        what: "small-square-to-each-half",
        length: besideDiagonal(small.exact, how.seam),
        count: 4,
        bias: true,
      },
    ],
    steps: [
      { do: "small-on-large", large: 0, small: 1, round: 1, press: { to: "part", part: "sky" } },
      { do: "small-on-large", large: 0, small: 1, round: 2, press: { to: "part", part: "sky" } },
      { do: "trim", by: "point" },
    ],
    // Derived geometry: width + seam x (2 + 2 root 2), height + seam x (2 + root 2).
    // Four-at-a-Time Flying Geese, Quilter's World magazine, 2024: 5 1/4 and 2 7/8 in for 2 x 4.
  };
});

const stitchAndFlip = method(METHOD.stitchAndFlip, (design, how) => {
  // Half of what the width is over goes off the lower edge, the rest off the upper: the point keeps its seam.
  const over = r.times(overMark(across(design), how), r.whole(q.rational(1n, 2n)));
  const high = r.plus(along(design), over);
  const side = withSeamsAdded(high, how);
  const flip = flipped(side, how, 2);
  return {
    ...NOTHING_MORE,
    unitsPerSet: 1,
    pieces: [
      patchPiece("goose", across(design), high, how, [[lie(0, "goose", 0)]]),
      square({
        role: "sky",
        side: plain(side),
        formula: alike(twoSeams("height")),
        diagonal: "rising",
        lies: [[lie(0, "sky-left", 0)]],
      }),
      square({
        role: "sky",
        side: plain(side),
        formula: alike(twoSeams("height")),
        diagonal: "falling",
        lies: [[lie(0, "sky-right", 0)]],
      }),
    ],
    seams: [{ what: "square-to-rectangle", length: flip.seam, count: 2, bias: true }],
    steps: flipStep(
      0,
      [
        { piece: 1, corner: "top-left" },
        { piece: 2, corner: "top-right" },
      ],
      "sky",
      "point",
    ),
    corners: flip.corners,
    bonus: [flip.bonus],
    // Derived geometry: each a finished size and 2 seams.
    // Rectangle Method, Quilting Passion, 2004: 4 1/2 x 8 1/2 and two 4 1/2 in squares for 4 x 8.
  };
});

const singleTriangles = method(METHOD.singleTriangles, (design, how) => {
  const large = { ...quarteredSquare(across(design), how), room: r.whole(how.oversize) };
  const small = { ...halvedSquare(along(design), how), room: r.whole(how.oversize) };
  const seam = diagonalOf(small.exact);
  return {
    ...NOTHING_MORE,
    unitsPerSet: 4,
    loose: true,
    pieces: [
      square({
        role: "goose",
        side: large,
        formula: quarteredFormula("width", how),
        subcut: "twice-diagonal",
        lies: [[0, 2, 4, 6].map((print, unit) => lie(unit, "goose", print))],
      }),
      square({
        role: "sky",
        side: small,
        formula: halvedFormula("height", how),
        subcut: "once-diagonal",
        diagonal: "falling",
        lies: [0, 1, 2, 3].map((unit) => [lie(unit, "sky-right", 0), lie(unit, "sky-left", 2)]),
      }),
    ],
    seams: [{ what: "sky-to-goose", length: seam, count: 8, bias: true }],
    steps: [
      { do: "cut-triangles", pieces: [0, 1] },
      {
        do: "join",
        makes: "goose-and-sky",
        parts: ["goose", "sky-left"],
        way: "edge",
        press: { to: "part", part: "sky" },
      },
      {
        do: "join",
        makes: "unit",
        parts: ["goose-and-sky", "sky-right"],
        way: "edge",
        press: { to: "part", part: "sky" },
      },
      { do: "trim", by: "point" },
    ],
    // Derived geometry: width + seam x (2 + 2 root 2), height + seam x (2 + root 2).
    // Quilty Math, Christa Quilts: width + 1 1/4 and height + 7/8 in.
  };
});

/** A large triangle between two small ones, twice as wide as high. */
export const flyingGeese: UnitKind = {
  name: NAME,
  alsoCalled: ["flying goose", "goose", "geese"],
  reads: [],
  check: (design) =>
    q.equal(design.across, q.mul(design.along, q.fromInteger(2)))
      ? null
      : {
          fault: { why: "goose-not-twice-as-wide" },
        },
  roles: () => ["goose", "sky"],
  patches,
  methods: [fourAtATime, stitchAndFlip, singleTriangles, templatesMethod(NAME, patches)],
};
