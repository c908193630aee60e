import * as q from "../../../length/rational.ts";
import { METHOD, UNIT } from "../../terms/names.ts";
import { diagonalOf, halfSquareExtra, quarterSquareExtra } from "../allowance.ts";
import { notSquare } from "../design.ts";
import { at } from "../outlines/outlines.ts";
import * as r from "../outlines/roots.ts";
import { lie, methodsOf, NOTHING_MORE, square } from "../recipe.ts";
import { templatesMethod } from "../templates.ts";
import type { UnitDesign, UnitKind } from "../types.ts";
import { halvedFormula, halvedSquare } from "./half-square-triangle.ts";
import { quarteredFormula, quarteredSquare } from "./quarter-square-triangle.ts";

/*
 *   +-------+      half:  the large triangle, right angle at the bottom right
 *   | \ t / |      top:   the quarter at the top
 *   | l X h |      left:  the quarter at the left
 *   | /   h |
 *   +-------+
 */
const NAME = UNIT.threePatchSquare;

function patches(design: UnitDesign): ReturnType<UnitKind["patches"]> {
  const { across: w, along: h } = design;
  const middle = at(q.mul(w, q.rational(1n, 2n)), q.mul(h, q.rational(1n, 2n)));
  const [a, b, c, d] = [at(q.ZERO, q.ZERO), at(w, q.ZERO), at(w, h), at(q.ZERO, h)];
  return [
    { role: "half", spot: "half", outline: [b, c, d], shape: "half", facing: 4 },
    { role: "top", spot: "top", outline: [a, b, middle], shape: "quarter", facing: 0 },
    { role: "left", spot: "left", outline: [d, a, middle], shape: "quarter", facing: 6 },
  ];
}

const singleTriangles = methodsOf(NAME)(METHOD.singleTriangles, (design, how) => {
  const finished = r.whole(design.across);
  const halves = { ...halvedSquare(finished, how), room: r.whole(how.oversize) };
  const quarters = { ...quarteredSquare(finished, how), room: r.whole(how.oversize) };
  const quarter = quarteredFormula("size", how);
  const cut = { side: quarters, formula: quarter, subcut: "twice-diagonal" as const };
  const leg = r.times(
    diagonalOf(r.plus(finished, quarterSquareExtra(how.seam))),
    r.whole(q.rational(1n, 2n)),
  );
  return {
    ...NOTHING_MORE,
    unitsPerSet: 4,
    loose: true,
    pieces: [
      square({
        role: "half",
        side: halves,
        formula: halvedFormula("size", how),
        subcut: "once-diagonal",
        diagonal: "rising",
        lies: [
          [lie(0, "half", 0), lie(1, "half", 4)],
          [lie(2, "half", 0), lie(3, "half", 4)],
        ],
      }),
      square({ ...cut, role: "top", lies: [[0, 2, 4, 6].map((print, unit) => lie(unit, "top", print))] }),
      square({ ...cut, role: "left", lies: [[0, 2, 4, 6].map((print, unit) => lie(unit, "left", print))] }),
    ],
    seams: [
      { what: "quarters", length: leg, count: 4, bias: true },
      {
        what: "quarters-to-half",
        length: diagonalOf(r.plus(finished, halfSquareExtra(how.seam))),
        count: 4,
        bias: true,
      },
    ],
    steps: [
      { do: "cut-triangles", pieces: [0, 1, 2] },
      { do: "join", makes: "pair", parts: ["left", "top"], way: "edge", press: { to: "darker" } },
      {
        do: "join",
        makes: "unit",
        parts: ["pair", "half"],
        way: "edge",
        press: { to: "part", part: "half" },
      },
      { do: "trim", by: "diagonal" },
    ],
    // Derived geometry: finished + seam x (2 + root 2) for the half, + seam x (2 + 2 root 2) for the quarters.
  };
});

/** A half and two quarters. */
export const threePatchSquare: UnitKind = {
  name: NAME,
  alsoCalled: ["three-patch quarter-square triangle", "split quarter-square triangle"],
  reads: [],
  check: (design) => notSquare(design),
  roles: () => ["half", "top", "left"],
  patches,
  methods: [singleTriangles, templatesMethod(NAME, patches)],
};
