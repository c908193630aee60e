import * as q from "../../../length/rational.ts";
import type { Formula, FormulaSide } from "../../terms/formulas.ts";
import { METHOD, UNIT } from "../../terms/names.ts";
import {
  type Asked,
  diagonalOf,
  halfSquareExtra,
  quarterSquareExtra,
  straightExtra,
  tradeExtras,
} from "../allowance.ts";
import { notSquare } from "../design.ts";
import { at } from "../outlines/outlines.ts";
import type { RootSum } from "../outlines/roots.ts";
import * as r from "../outlines/roots.ts";
import { lie, methodsOf, NOTHING_MORE, type PieceDraft, square } from "../recipe.ts";
import { templatesMethod } from "../templates.ts";
import type { HowMade, Lie, UnitDesign, UnitKind } from "../types.ts";

/*
 *   +-------+      ends:  the triangles at the top and the bottom
 *   | \ e / |      sides: the triangles at the left and the right
 *   | s X s |
 *   | / e \ |
 *   +-------+
 */
const NAME = UNIT.quarterSquareTriangle;
const HALF = q.rational(1n, 2n);

/** The four triangles between the centre and the edges, clockwise from the top. */
function patches(design: UnitDesign): ReturnType<UnitKind["patches"]> {
  const { across: w, along: h } = design;
  const middle = at(q.mul(w, HALF), q.mul(h, HALF));
  const a = at(q.ZERO, q.ZERO);
  const b = at(w, q.ZERO);
  const c = at(w, h);
  const d = at(q.ZERO, h);
  return [
    { role: "ends", spot: "top", outline: [a, b, middle], shape: "quarter", facing: 0 },
    { role: "sides", spot: "right", outline: [b, c, middle], shape: "quarter", facing: 2 },
    { role: "ends", spot: "bottom", outline: [c, d, middle], shape: "quarter", facing: 4 },
    { role: "sides", spot: "left", outline: [d, a, middle], shape: "quarter", facing: 6 },
  ];
}

/** Finished long side and the quarter-square extra: `5 1/4` for 4 in ("Cutting Quarter Square Triangles", Quiltville, 2005). */
export function quarteredSquare(finished: RootSum, how: HowMade): Asked {
  return {
    exact: r.plus(finished, quarterSquareExtra(how.seam)),
    trade: r.plus(finished, r.whole(tradeExtras(how.seam).quarter)),
    room: [],
  };
}

/** The same, said. */
export function quarteredFormula(side: FormulaSide, how: HowMade): { exact: Formula; trade: Formula } {
  return {
    exact: { rule: "quartered", side },
    trade: { rule: "quartered", side, trade: tradeExtras(how.seam).named },
  };
}

/*
 * One square of each role gives two units. Its top and bottom quarters stay upright in the first; its left
 * and right quarters are turned a quarter to become the ends of the second.
 */
const ENDS: readonly Lie[] = [lie(0, "top", 0), lie(0, "bottom", 0), lie(1, "top", 2), lie(1, "bottom", 2)];
const SIDES: readonly Lie[] = [lie(0, "right", 0), lie(0, "left", 0), lie(1, "right", 2), lie(1, "left", 2)];

function squares(design: UnitDesign, how: HowMade): PieceDraft[] {
  const side = { ...quarteredSquare(r.whole(design.across), how), room: r.whole(how.oversize) };
  const formula = quarteredFormula("size", how);
  return [
    square({ role: "ends", side, formula, lies: [ENDS] }),
    square({ role: "sides", side, formula, lies: [SIDES] }),
  ];
}

const method = methodsOf(NAME);
// Derived geometry: finished + seam x (2 + 2 root 2).
// Cutting Quarter Square Triangles, Quiltville, 2005: finished + 1 1/4 in.

const twoAtATime = method(METHOD.twoAtATime, (design, how) => {
  const side = r.plus(r.whole(design.across), quarterSquareExtra(how.seam));
  const inner = r.plus(r.whole(design.across), halfSquareExtra(how.seam));
  const seam = (of: RootSum): RootSum => r.minus(diagonalOf(of), straightExtra(how.seam));
  return {
    ...NOTHING_MORE,
    unitsPerSet: 2,
    pieces: squares(design, how),
    seams: [
      { what: "along-first-diagonal", length: seam(side), count: 2, bias: true },
      { what: "along-second-diagonal", length: seam(inner), count: 2, bias: true },
    ],
    steps: [
      { do: "pair", under: 0, over: 1, lines: "one", line: "rising", press: { to: "darker" } },
      { do: "cross-pair", press: { to: "one-way" } },
      { do: "trim", by: "cross" },
    ],
  };
});

const singleTriangles = method(METHOD.singleTriangles, (design, how) => {
  const side = r.plus(r.whole(design.across), quarterSquareExtra(how.seam));
  const leg = r.times(diagonalOf(side), r.whole(HALF));
  const raw = r.plus(r.whole(design.across), halfSquareExtra(how.seam));
  return {
    ...NOTHING_MORE,
    unitsPerSet: 2,
    loose: true,
    pieces: squares(design, how).map((piece) => ({ ...piece, subcut: "twice-diagonal" as const })),
    seams: [
      { what: "short-edges", length: leg, count: 4, bias: true },
      { what: "halves", length: diagonalOf(raw), count: 2, bias: true },
    ],
    steps: [
      { do: "cut-triangles", pieces: [0, 1] },
      { do: "join", makes: "upper-pair", parts: ["top", "right"], way: "edge", press: { to: "darker" } },
      { do: "join", makes: "lower-pair", parts: ["bottom", "left"], way: "edge", press: { to: "darker" } },
      {
        do: "join",
        makes: "unit",
        parts: ["upper-pair", "lower-pair"],
        way: "edge",
        press: { to: "one-way" },
      },
      { do: "trim", by: "cross" },
    ],
  };
});

/** Four triangles that meet in the middle. */
export const quarterSquareTriangle: UnitKind = {
  name: NAME,
  alsoCalled: ["hourglass", "quarter-square triangles", "qst"],
  reads: [],
  check: (design) => notSquare(design),
  roles: () => ["ends", "sides"],
  patches,
  methods: [twoAtATime, singleTriangles, templatesMethod(NAME, patches)],
};
