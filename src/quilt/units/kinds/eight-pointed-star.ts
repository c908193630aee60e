import * as q from "../../../length/rational.ts";
import { addSurd, type Surd, scaleSurd, surd } from "../../../length/surd.ts";
import { alike, twoSeams } from "../../terms/formulas.ts";
import { METHOD, UNIT } from "../../terms/names.ts";
import { diagonalOf } from "../allowance.ts";
import { notSquare } from "../design.ts";
import { sewJoins } from "../join-order.ts";
import { atSurd, toRoots } from "../outlines/outlines.ts";
import * as r from "../outlines/roots.ts";
import { enlargedShape } from "../outlines/shapes.ts";
import { lie, methodsOf, NOTHING_MORE, plain, type SetDraft, square, withSeamsAdded } from "../recipe.ts";
import { templatesMethod } from "../templates.ts";
import type { Eighth, ExactPoint, HowMade, RecipeStep, UnitDesign, UnitKind, UnitPatch } from "../types.ts";
import { quarteredFormula, quarteredSquare } from "./quarter-square-triangle.ts";

/*
 * Eight 45-degree diamonds round a point, squares in the corners, triangles at the sides. The block is
 * (2 + root 2) times the side of a diamond ("Formulas for Quilters", Karen Combs Studio, 2002: 3.41).
 *
 *   +--+-------+--+
 *   |  |\  s  /|  |     diamonds: first and second by turns, first from twelve to half past one
 *   +--+ \   / +--+     squares in the corners, triangles at the sides
 *   |\   1\|/   / |
 */
const NAME = UNIT.eightPointedStar;
const DIAMONDS: readonly Eighth[] = [0, 1, 2, 3, 4, 5, 6, 7];
const FACINGS = [0, 2, 4, 6] as const;

/** Numbers of the form p + q root 2, as parts of the block's width. */
function part(width: q.Rational, whole: q.Rational, root: q.Rational): Surd {
  return surd(q.mul(width, whole), q.mul(width, root), 2);
}

/** Side of a diamond: width x (1 - root 2 / 2). */
function diamondSide(width: q.Rational): Surd {
  return part(width, q.ONE, q.rational(-1n, 2n));
}

/** Points on a circle round the centre in steps of an eighth, clockwise from the top. */
function spokes(width: q.Rational): {
  spoke(eighth: number): ExactPoint;
  tip(eighth: number): ExactPoint;
  centre: ExactPoint;
} {
  const half = surd(q.mul(width, q.rational(1n, 2n)));
  const side = diamondSide(width);
  const slant = part(width, q.rational(-1n, 2n), q.rational(1n, 2n)); // side / root 2
  const minus = (x: Surd): Surd => scaleSurd(x, q.fromInteger(-1));
  const zero = surd(q.ZERO);
  const steps: readonly [Surd, Surd][] = [
    [zero, minus(side)],
    [slant, minus(slant)],
    [side, zero],
    [slant, slant],
    [zero, side],
    [minus(slant), slant],
    [minus(side), zero],
    [minus(slant), minus(slant)],
  ];
  const step = (eighth: number): [Surd, Surd] => steps[eighth % 8] ?? [zero, zero];
  const spoke = (eighth: number): ExactPoint => {
    const [x, y] = step(eighth);
    return atSurd(addSurd(half, x), addSurd(half, y));
  };
  const tip = (eighth: number): ExactPoint => {
    const from = spoke(eighth);
    const [x, y] = step(eighth + 1);
    return atSurd(addSurd(from.x, x), addSurd(from.y, y));
  };
  return { spoke, tip, centre: atSurd(half, half) };
}

function patches(design: UnitDesign): readonly UnitPatch[] {
  const w = design.across;
  const { spoke, tip, centre } = spokes(w);
  const [near, far] = [surd(q.ZERO), surd(w)];
  const outer: readonly ExactPoint[] = [
    atSurd(far, near),
    atSurd(far, far),
    atSurd(near, far),
    atSurd(near, near),
  ];
  const diamonds = DIAMONDS.map(
    (eighth): UnitPatch => ({
      role: eighth % 2 === 0 ? "first" : "second",
      spot: `diamond ${eighth + 1}`,
      outline: [centre, spoke(eighth), tip(eighth), spoke(eighth + 1)],
      shape: "diamond",
      facing: eighth,
    }),
  );
  const corners = FACINGS.map((facing, i): UnitPatch => {
    const corner = outer[i] ?? centre;
    const outline = [spoke(facing + 1), tip(facing), corner, tip(facing + 1)];
    return { role: "corners", spot: `corner ${i + 1}`, outline, shape: "square", facing };
  });
  const sides = FACINGS.map(
    (facing, i): UnitPatch => ({
      role: "sides",
      spot: `side ${i + 1}`,
      outline: [spoke(facing), tip(facing + 7), tip(facing)],
      shape: "side",
      facing,
    }),
  );
  return [...diamonds, ...corners, ...sides];
}

/**
 * Diamonds of one role from a strip: as wide as the diamond between parallel sides and two seams, cut off
 * at 45 degrees the same width again ("Rotary cutting, part 7: 45-degree diamonds", Chris and Barbara
 * Quilts, 2015). The strip's edge becomes a side of the diamond; the cuts rise from left to right.
 */
function diamondStrip(name: string, role: string, design: UnitDesign, how: HowMade): SetDraft {
  const finished = r.fromSurd(part(design.across, q.rational(-1n, 2n), q.rational(1n, 2n)));
  const width = withSeamsAdded(finished, how);
  const asCut = r.upToMark(width, how.mark);
  const mine = DIAMONDS.filter((eighth) => (eighth % 2 === 0 ? "first" : "second") === role);
  const lying = toRoots(patches(design)[1]?.outline ?? []);
  return {
    name,
    cut: "diamond-45",
    segment: plain(diagonalOf(width)),
    segmentsPerUnit: mine.length,
    shape: enlargedShape(lying, r.over(r.whole(q.fromInteger(asCut)), finished)),
    strips: [
      {
        role,
        width: plain(width),
        formula: twoSeams("between-parallels"),
        // In the strip the sides point to half past one and three: diamond 2 of the star, as it lies.
        lies: mine.map((eighth) => [lie(0, `diamond ${eighth + 1}`, eighth - 1)]),
      },
    ],
  };
}

type Join = Extract<RecipeStep, { do: "join" }>;

/** Diamonds in pairs, pairs in halves, halves into the star; then side triangles and corner squares are set in. */
function starJoins(): Join[] {
  const join = (makes: string, parts: string[], setIn: boolean): Join => ({
    do: "join",
    makes,
    parts,
    way: "edge",
    press: setIn ? { to: "part", part: "star" } : { to: "one-way" },
    ...(setIn ? { setIn: true as const } : {}),
  });
  const pairs = FACINGS.map((facing, i) =>
    join(`pair ${i + 1}`, [`diamond ${facing + 1}`, `diamond ${facing + 2}`], false),
  );
  const set = [...FACINGS.map((_, i) => `side ${i + 1}`), ...FACINGS.map((_, i) => `corner ${i + 1}`)];
  return [
    ...pairs,
    join("right-half", ["pair 1", "pair 2"], false),
    join("left-half", ["pair 3", "pair 4"], false),
    join("star", ["right-half", "left-half"], false),
    ...set.map((spot, i) => {
      const makes = i === set.length - 1 ? "unit" : `star-with/${spot}`;
      return join(makes, [i === 0 ? "star" : `star-with/${set[i - 1]}`, spot], true);
    }),
  ];
}

const fromStrips = methodsOf(NAME)(METHOD.fromStrips, (design, how) => {
  const side = r.fromSurd(diamondSide(design.across));
  const long = diagonalOf(side);
  const raw = withSeamsAdded(side, how);
  const lying = patches(design).map(({ spot, outline }) => ({ spot, outline: toRoots(outline) }));
  const sewn = sewJoins(starJoins(), lying, Math.round(q.toNumber(how.seam)));
  return {
    ...NOTHING_MORE,
    unitsPerSet: 1,
    loose: true,
    pieces: [
      ...FACINGS.map((_, i) =>
        square({
          role: "corners",
          side: plain(raw),
          formula: alike(twoSeams("diamond-side")),
          lies: [[lie(0, `corner ${i + 1}`, 0)]],
        }),
      ),
      square({
        role: "sides",
        side: quarteredSquare(long, how),
        formula: quarteredFormula("long-side", how),
        subcut: "twice-diagonal",
        lies: [FACINGS.map((_, i) => lie(0, `side ${i + 1}`, 0))],
      }),
    ],
    stripSets: [diamondStrip("A", "first", design, how), diamondStrip("B", "second", design, how)],
    // Cut from strips, every diamond has two edges off the grain, whichever way it lies in the star.
    seams: sewn.seams.map((seam) => ({ ...seam, bias: true })),
    steps: [
      { do: "cut-shapes", set: 0 },
      { do: "cut-shapes", set: 1 },
      { do: "cut-triangles", pieces: [4] },
      ...sewn.joins,
      { do: "trim", by: "point" },
    ],
    // Derived geometry: block = (2 + root 2) x side of the diamond.
    // Rotary cutting, part 7: 45-degree diamonds, Chris and Barbara Quilts, 2015: width + 1/2 in.
  };
});

/** Eight diamonds, four squares and four triangles. */
export const eightPointedStar: UnitKind = {
  name: NAME,
  alsoCalled: ["diamond star", "45-degree diamonds"],
  reads: [],
  check: (design) => notSquare(design),
  roles: () => ["first", "second", "corners", "sides"],
  patches,
  methods: [fromStrips, templatesMethod(NAME, patches, starJoins)],
};
