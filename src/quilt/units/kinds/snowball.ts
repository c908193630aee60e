import type { Rational } from "../../../length/rational.ts";
import * as q from "../../../length/rational.ts";
import { alike, twoSeams } from "../../terms/formulas.ts";
import { METHOD, UNIT } from "../../terms/names.ts";
import { flipped, flipStep, overMark } from "../flip.ts";
import { at } from "../outlines/outlines.ts";
import * as r from "../outlines/roots.ts";
import { lie, methodsOf, NOTHING_MORE, patchPiece, plain, square, withSeamsAdded } from "../recipe.ts";
import { templatesMethod } from "../templates.ts";
import type { Corner, ExactPoint, UnitDesign, UnitKind, UnitPatch } from "../types.ts";

/*
 *   +--------+
 *   |/      \|     ball:    the large patch
 *   |  ball  |     corners: triangles over any of its corners
 *   |\      /|
 *   +--------+
 */
const NAME = UNIT.snowball;
const ORDER: readonly Corner[] = ["top-left", "top-right", "bottom-right", "bottom-left"];

function spotOf(corner: Corner): string {
  return corner.replace("-", " ");
}

/** Finished leg of the corners: as asked, or a third of the shorter side. */
function legOf(design: UnitDesign): Rational {
  if (design.corner !== null) return design.corner;
  const shorter = q.compare(design.across, design.along) < 0 ? design.across : design.along;
  return q.div(shorter, q.fromInteger(3));
}

/** The three points of a corner triangle, the unit's own corner in the middle, clockwise. */
function triangle(corner: Corner, design: UnitDesign): [ExactPoint, ExactPoint, ExactPoint] {
  const { across: w, along: h } = design;
  const c = legOf(design);
  const [right, low] = [q.sub(w, c), q.sub(h, c)];
  switch (corner) {
    case "top-left":
      return [at(q.ZERO, c), at(q.ZERO, q.ZERO), at(c, q.ZERO)];
    case "top-right":
      return [at(right, q.ZERO), at(w, q.ZERO), at(w, c)];
    case "bottom-right":
      return [at(w, low), at(w, h), at(right, h)];
    case "bottom-left":
      return [at(c, h), at(q.ZERO, h), at(q.ZERO, low)];
  }
}

function samePoint(a: ExactPoint, b: ExactPoint): boolean {
  return q.equal(a.x.a, b.x.a) && q.equal(a.y.a, b.y.a);
}

/** Corners that meet in one point leave that point in the ball's outline twice: once is enough. */
function tidyOutline(points: readonly ExactPoint[]): ExactPoint[] {
  return points.filter((point, i) => {
    const next = points[(i + 1) % points.length];
    return next === undefined || !samePoint(point, next);
  });
}

function patches(design: UnitDesign): readonly UnitPatch[] {
  const ball = ORDER.flatMap((corner) => {
    const [before, own, after] = triangle(corner, design);
    return design.corners.includes(corner) ? [before, after] : [own];
  });
  const corners = ORDER.filter((corner) => design.corners.includes(corner)).map((corner): UnitPatch => {
    const facing = ([0, 2, 4, 6] as const)[ORDER.indexOf(corner)] ?? 0;
    return {
      role: "corners",
      spot: spotOf(corner),
      outline: triangle(corner, design),
      shape: "corner",
      facing,
    };
  });
  return [{ role: "ball", spot: "ball", outline: tidyOutline(ball), shape: "ball", facing: 0 }, ...corners];
}

function check(design: UnitDesign): ReturnType<UnitKind["check"]> {
  const leg = legOf(design);
  if (design.corners.length === 0)
    return {
      fault: { why: "no-corner" },
    };
  if (new Set(design.corners).size !== design.corners.length) return { fault: { why: "corner-twice" } };
  if (q.sign(leg) <= 0)
    return {
      fault: { why: "corner-size" },
    };
  const both = q.mul(leg, q.fromInteger(2));
  const shares = (a: Corner, b: Corner): boolean => design.corners.includes(a) && design.corners.includes(b);
  const tooWide =
    q.compare(
      shares("top-left", "top-right") || shares("bottom-left", "bottom-right") ? both : leg,
      design.across,
    ) > 0;
  const tooHigh =
    q.compare(
      shares("top-left", "bottom-left") || shares("top-right", "bottom-right") ? both : leg,
      design.along,
    ) > 0;
  // Two opposite corners as long as the sides would leave nothing of the ball.
  const covered = q.mul(q.mul(leg, leg), q.rational(BigInt(design.corners.length), 2n));
  return tooWide || tooHigh || q.compare(covered, q.mul(design.across, design.along)) >= 0
    ? {
        fault: { why: "corners-overlap" },
      }
    : null;
}

const stitchAndFlip = methodsOf(NAME)(METHOD.stitchAndFlip, (design, how) => {
  const over = r.largest([design.across, design.along].map((whole) => overMark(r.whole(whole), how)));
  const side = r.plus(withSeamsAdded(r.whole(legOf(design)), how), over);
  const flip = flipped(side, how, design.corners.length);
  const formula = twoSeams("corner");
  const corners = ORDER.filter((corner) => design.corners.includes(corner));
  return {
    ...NOTHING_MORE,
    unitsPerSet: 1,
    pieces: [
      patchPiece("ball", r.whole(design.across), r.whole(design.along), how, [[lie(0, "ball", 0)]]),
      ...corners.map((corner) =>
        square({
          role: "corners",
          side: plain(side),
          formula: alike(formula),
          diagonal: ORDER.indexOf(corner) % 2 === 0 ? "rising" : "falling",
          lies: [[lie(0, spotOf(corner), 0)]],
        }),
      ),
    ],
    seams: [{ what: "square-to-corner", length: flip.seam, count: corners.length, bias: true }],
    steps: flipStep(
      0,
      corners.map((corner, i) => ({ piece: i + 1, corner })),
      "corners",
      "round",
    ),
    corners: flip.corners,
    bonus: [flip.bonus],
    // Derived geometry: finished corner + 2 seams; offcut legs square - root 2 x seam.
  };
});

/** A patch with one or more corners covered by triangles. */
export const snowball: UnitKind = {
  name: NAME,
  alsoCalled: ["snowball corners", "flipped corners", "connector corners"],
  reads: ["corner", "corners"],
  check,
  roles: () => ["ball", "corners"],
  patches,
  methods: [stitchAndFlip, templatesMethod(NAME, patches)],
};
