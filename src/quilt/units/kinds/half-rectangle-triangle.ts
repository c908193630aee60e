import type { Rational } from "../../../length/rational.ts";
import * as q from "../../../length/rational.ts";
import { alike } from "../../terms/formulas.ts";
import { METHOD, UNIT } from "../../terms/names.ts";
import type { Asked } from "../allowance.ts";
import { at } from "../outlines/outlines.ts";
import type { RootSum } from "../outlines/roots.ts";
import * as r from "../outlines/roots.ts";
import { lie, methodsOf, NOTHING_MORE, type PieceDraft } from "../recipe.ts";
import { templatesMethod } from "../templates.ts";
import type { HowMade, UnitDesign, UnitKind } from "../types.ts";

/*
 *   +---+  rising     +---+  falling
 *   |u /|             |\ u|
 *   | / |             | \ |
 *   |/ l|             |l \|
 *   +---+             +---+
 * The two are mirror images: no turn makes one from the other.
 */
const NAME = UNIT.halfRectangleTriangle;

function patches(design: UnitDesign): ReturnType<UnitKind["patches"]> {
  const { across: w, along: h } = design;
  const [a, b, c, d] = [at(q.ZERO, q.ZERO), at(w, q.ZERO), at(w, h), at(q.ZERO, h)];
  const upper = design.leaning === "rising" ? [a, b, d] : [a, b, c];
  const lower = design.leaning === "rising" ? [b, c, d] : [a, c, d];
  return [
    { role: "upper", spot: "upper", outline: upper, shape: "half", facing: 0 },
    { role: "lower", spot: "lower", outline: lower, shape: "half", facing: 4 },
  ];
}

/** Length of the diagonal. */
function diagonal(design: UnitDesign): RootSum {
  return r.rootOf(q.add(q.mul(design.across, design.across), q.mul(design.along, design.along)));
}

/**
 * Side of the rectangle whose two halves keep a full seam: a right triangle with a seam all round is the
 * same triangle enlarged, so side a becomes a + seam x (a + b + diagonal) / b (derived geometry; a = b gives
 * the half-square rule).
 */
function side(a: Rational, b: Rational, design: UnitDesign, how: HowMade): RootSum {
  const sum = r.plus(r.whole(q.add(a, b)), diagonal(design));
  return r.plus(r.whole(a), r.times(sum, r.whole(q.div(how.seam, b))));
}

/**
 * Both sides on the ruler's marks. Rounded up one by one they tilt the diagonal, and with it the halves that are sewn
 * along it: a half must still reach all raw edges, or its flatter side is cut a mark larger. Derived geometry: tilted,
 * the foot of its right angle moves along the diagonal by its height times the difference of the slopes.
 */
function sides(design: UnitDesign, how: HowMade): { across: Asked; along: Asked } {
  const exact = {
    across: side(design.across, design.along, design, how),
    along: side(design.along, design.across, design, how),
  };
  const [w, h] = [r.rootsToNumber(exact.across), r.rootsToNumber(exact.along)];
  const room = r.whole(how.oversize);
  const up = (length: RootSum): number => r.upToMark(r.plus(length, room), how.mark);
  const cut = { across: up(exact.across), along: up(exact.along) };
  const height = (w * h) / Math.hypot(w, h);
  const short = (): number => {
    const flatter = Math.max(0, cut.across / cut.along - w / h);
    const steeper = Math.max(0, cut.along / cut.across - h / w);
    return Math.hypot(w, h) + height * (flatter + steeper) - Math.hypot(cut.across, cut.along);
  };
  // A tick is lost in doubles; every mark brings the slope nearer, and then the half is larger all round.
  while (short() > 1) cut[cut.across / cut.along > w / h ? "along" : "across"] += how.mark;
  const asked = (one: RootSum, ticks: number): Asked => ({
    exact: one,
    trade: null,
    room,
    meets: r.whole(q.fromInteger(ticks)),
  });
  return { across: asked(exact.across, cut.across), along: asked(exact.along, cut.along) };
}

function halves(role: "upper" | "lower", design: UnitDesign, how: HowMade): PieceDraft {
  const formula = { rule: "half-rectangle" } as const;
  return {
    role,
    ...sides(design, how),
    subcut: "once-diagonal",
    diagonal: design.leaning,
    lies: [[lie(0, role, 0), lie(1, role, 4)]],
    formula: alike(formula),
    template: null,
    freeLay: null,
  };
}

const singleTriangles = methodsOf(NAME)(METHOD.singleTriangles, (design, how) => {
  const across = side(design.across, design.along, design, how);
  // The cut rectangle is the finished one enlarged, and so is its diagonal.
  const length = r.over(r.times(diagonal(design), across), r.whole(design.across));
  return {
    ...NOTHING_MORE,
    unitsPerSet: 2,
    loose: true,
    pieces: [halves("upper", design, how), halves("lower", design, how)],
    seams: [{ what: "along-diagonal", length, count: 2, bias: true }],
    steps: [
      { do: "cut-triangles", pieces: [0, 1] },
      { do: "join", makes: "unit", parts: ["upper", "lower"], way: "edge", press: { to: "darker" } },
      { do: "trim", by: "corners" },
    ],
    // Derived geometry: side + seam x (both sides + diagonal) / other side.
  };
});

/** Two triangles that make a rectangle. */
export const halfRectangleTriangle: UnitKind = {
  name: NAME,
  alsoCalled: ["half-rectangle triangles", "hrt"],
  reads: ["leaning"],
  check: () => null,
  roles: () => ["upper", "lower"],
  patches,
  methods: [singleTriangles, templatesMethod(NAME, patches)],
};
