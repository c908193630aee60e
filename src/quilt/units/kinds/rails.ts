import type { Rational } from "../../../length/rational.ts";
import * as q from "../../../length/rational.ts";
import { METHOD, UNIT } from "../../terms/names.ts";
import { columnSet } from "../grid.ts";
import { rectangle } from "../outlines/outlines.ts";
import * as r from "../outlines/roots.ts";
import { lie, methodsOf, NOTHING_MORE, patchPiece, withSeamsAdded } from "../recipe.ts";
import type { HowMade, UnitDesign, UnitKind, UnitMethod } from "../types.ts";

/*
 *   +---------+
 *   | rail 1  |     rails from top to bottom
 *   +---------+
 *   | rail 2  |
 *   +---------+
 *   | rail 3  |
 *   +---------+
 */
const NAME = UNIT.rails;
const MOST = 60;

function heightsOf(design: UnitDesign): readonly Rational[] {
  if (design.strips.length > 0) return design.strips;
  return Array.from({ length: design.count }, () => q.div(design.along, q.fromInteger(design.count)));
}

function rolesOf(design: UnitDesign): string[] {
  return heightsOf(design).map((_, i) => `rail ${i + 1}`);
}

function check(design: UnitDesign): ReturnType<UnitKind["check"]> {
  if (
    design.strips.length === 0 &&
    (!Number.isInteger(design.count) || design.count < 2 || design.count > MOST)
  )
    return {
      fault: { why: "rails-count", most: MOST },
    };
  const heights = heightsOf(design);
  if (heights.length > MOST) return { fault: { why: "rails-too-many", most: MOST } };
  if (heights.some((height) => q.sign(height) <= 0))
    return {
      fault: { why: "rail-width" },
    };
  const sum = heights.reduce((all, height) => q.add(all, height), q.ZERO);
  return q.equal(sum, design.along)
    ? null
    : {
        fault: { why: "rails-sum" },
      };
}

function patches(design: UnitDesign): ReturnType<UnitKind["patches"]> {
  let top = q.ZERO;
  return heightsOf(design).map((height, i) => {
    const outline = rectangle(q.ZERO, top, design.across, height);
    top = q.add(top, height);
    const role = `rail ${i + 1}`;
    return { role, spot: role, outline, shape: role, facing: 0 as const };
  });
}

/** Share of a rail that has to be left where it was designed, for the unit still to be the one that was drawn. */
const LEAST_SHOWN = 0.7;

/**
 * Whether every rail is still seen where it was designed once the unit is trimmed alike on both sides: cut to the
 * ruler's marks, many narrow rails grow together to so much that the trim takes the outer ones.
 */
function railsLast(design: UnitDesign, how: HowMade): boolean {
  const heights = heightsOf(design).map(q.toNumber);
  const seams = 2 * q.toNumber(how.seam);
  const grown = heights.map((height) => Math.ceil((height + seams) / how.mark) * how.mark - height - seams);
  let [designed, sewn] = [0, -grown.reduce((sum, more) => sum + more, 0) / 2];
  return heights.every((height, i) => {
    const end = sewn + height + (grown[i] ?? 0);
    const shown = Math.min(end, designed + height) - Math.max(sewn, designed);
    [designed, sewn] = [designed + height, end];
    return shown >= LEAST_SHOWN * height;
  });
}

/** A way of making that says when the ruler's marks are too far apart for it. */
function withinMarks(way: UnitMethod): UnitMethod {
  return {
    ...way,
    recipe: (design, how) =>
      railsLast(design, how)
        ? way.recipe(design, how)
        : {
            ok: false,
            fault: { why: "rails-outgrow" },
          },
  };
}

const method = methodsOf(NAME);

const stripSets = method(METHOD.stripSets, (design, how) => {
  const heights = heightsOf(design);
  const roles = rolesOf(design);
  const column = { roles, segments: [{ spots: roles, turned: false }] };
  return {
    ...NOTHING_MORE,
    unitsPerSet: 1,
    pieces: [],
    stripSets: [columnSet("A", column, design.across, heights, how)],
    seams: [
      {
        what: "strip-to-strip",
        length: withSeamsAdded(r.whole(design.across), how),
        count: heights.length - 1,
        bias: false,
        strips: true,
      },
    ],
    steps: [{ do: "strip-set", set: 0, press: { to: "one-way" } }],
    // Derived geometry: finished rail + 2 seams.
    // Rail Fence quilt blocks: a strip piecing tutorial, New Quilters: block / rails + 1/2 in.
  };
});

const singlePieces = method(METHOD.singlePieces, (design, how) => ({
  ...NOTHING_MORE,
  unitsPerSet: 1,
  loose: true,
  pieces: heightsOf(design).map((height, i) =>
    patchPiece(`rail ${i + 1}`, r.whole(design.across), r.whole(height), how, [[lie(0, `rail ${i + 1}`, 0)]]),
  ),
  seams: [
    {
      what: "rail-to-rail",
      length: withSeamsAdded(r.whole(design.across), how),
      count: heightsOf(design).length - 1,
      bias: false,
    },
  ],
  steps: [{ do: "join", makes: "unit", parts: rolesOf(design), way: "down", press: { to: "one-way" } }],
  // Derived geometry: finished rail + 2 seams.
}));

/** Strips one above the other. */
export const rails: UnitKind = {
  name: NAME,
  alsoCalled: ["rail", "rail fence", "strips", "two-patch"],
  reads: ["strips", "count"],
  check,
  roles: rolesOf,
  patches,
  methods: [stripSets, singlePieces].map(withinMarks),
};
