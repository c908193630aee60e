import * as q from "../../../length/rational.ts";
import { METHOD, UNIT } from "../../terms/names.ts";
import { asEighth } from "../../turning/whole-turns.ts";
import { diagonalOf, halfSquareExtra, quarterSquareExtra } from "../allowance.ts";
import { notSquare } from "../design.ts";
import { at } from "../outlines/outlines.ts";
import * as r from "../outlines/roots.ts";
import { lie, methodsOf, NOTHING_MORE, square } from "../recipe.ts";
import { templatesMethod } from "../templates.ts";
import type { UnitDesign, UnitKind } from "../types.ts";
import { quarteredFormula, quarteredSquare } from "./quarter-square-triangle.ts";

/*
 *   +-------+      top, right, bottom and left, each of its own fabric
 *   | \ t / |
 *   | l X r |
 *   | / b \ |
 *   +-------+
 */
const NAME = UNIT.fourTriangleSquare;
const SPOTS = ["top", "right", "bottom", "left"] as const;
const HALF = q.rational(1n, 2n);

function patches(design: UnitDesign): ReturnType<UnitKind["patches"]> {
  const { across: w, along: h } = design;
  const middle = at(q.mul(w, HALF), q.mul(h, HALF));
  const corners = [at(q.ZERO, q.ZERO), at(w, q.ZERO), at(w, h), at(q.ZERO, h)];
  return SPOTS.map((spot, i) => ({
    role: spot,
    spot,
    outline: [corners[i] ?? middle, corners[(i + 1) % 4] ?? middle, middle],
    shape: "quarter",
    facing: asEighth(2 * i),
  }));
}

const singleTriangles = methodsOf(NAME)(METHOD.singleTriangles, (design, how) => {
  const finished = r.whole(design.across);
  const side = { ...quarteredSquare(finished, how), room: r.whole(how.oversize) };
  const short = r.times(diagonalOf(r.plus(finished, quarterSquareExtra(how.seam))), r.whole(HALF));
  return {
    ...NOTHING_MORE,
    unitsPerSet: 4,
    loose: true,
    pieces: SPOTS.map((spot) =>
      square({
        role: spot,
        side,
        formula: quarteredFormula("size", how),
        subcut: "twice-diagonal",
        lies: [[0, 2, 4, 6].map((print, unit) => lie(unit, spot, print))],
      }),
    ),
    seams: [
      { what: "short-edges", length: short, count: 8, bias: true },
      {
        what: "halves",
        length: diagonalOf(r.plus(finished, halfSquareExtra(how.seam))),
        count: 4,
        bias: true,
      },
    ],
    steps: [
      { do: "cut-triangles", pieces: [0, 1, 2, 3] },
      {
        do: "join",
        makes: "upper-pair",
        parts: ["top", "right"],
        way: "edge",
        press: { to: "part", part: "top" },
      },
      {
        do: "join",
        makes: "lower-pair",
        parts: ["bottom", "left"],
        way: "edge",
        press: { to: "part", part: "bottom" },
      },
      {
        do: "join",
        makes: "unit",
        parts: ["upper-pair", "lower-pair"],
        way: "edge",
        press: { to: "one-way" },
      },
      { do: "trim", by: "cross" },
    ],
    // Derived geometry: finished + seam x (2 + 2 root 2).
    // Cutting Quarter Square Triangles, Quiltville, 2005: finished + 1 1/4 in.
  };
});

/** Four triangles that meet in the middle, four fabrics. */
export const fourTriangleSquare: UnitKind = {
  name: NAME,
  alsoCalled: ["four-fabric quarter-square triangle", "four triangles"],
  reads: [],
  check: (design) => notSquare(design),
  roles: () => [...SPOTS],
  patches,
  methods: [singleTriangles, templatesMethod(NAME, patches)],
};
