import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fromInteger, mul, rational, ZERO } from "../../../src/length/rational.ts";
import { rationalPart } from "../../../src/length/surd.ts";
import {
  areaOf,
  bounds,
  type RootOutline,
  toRoots,
  turned,
  withSeams,
  withSeamsBlunted,
} from "../../../src/quilt/units/outlines/outlines.ts";
import * as r from "../../../src/quilt/units/outlines/roots.ts";
import { type PlanePoint, tiles } from "../../../src/quilt/units/outlines/tiling.ts";
import { UNIT_KINDS } from "../../../src/quilt/units/registry.ts";
import type {
  Eighth,
  Lie,
  Recipe,
  RecipePiece,
  StripSet,
  UnitDesign,
  UnitKind,
  UnitPatch,
} from "../../../src/quilt/units/types.ts";
import { english } from "../../../src/words/index.ts";
import { designsOf, exactly, ways } from "./support/designs.ts";

function recipes(
  kind: UnitKind,
  design: UnitDesign,
  how: Parameters<UnitKind["methods"][number]["recipe"]>[1],
): Recipe[] {
  expect(kind.check(design)).toBeNull();
  return kind.methods.map((method) => {
    const made = method.recipe(design, how);
    if (!made.ok) throw new Error(made.fault.why);
    return made.recipe;
  });
}

/** Corners as fractions, or null when a root is left in one. */
function asFractions(patch: UnitPatch): PlanePoint[] | null {
  const points = patch.outline.map((p) => ({ x: rationalPart(p.x), y: rationalPart(p.y) }));
  return points.every((p): p is PlanePoint => p.x !== null && p.y !== null) ? points : null;
}

/** The outline as it lies in its piece at turn 0: turned back by the way its print points in the unit. */
function asCut(
  patch: UnitPatch,
  lie: Lie,
  seam: ReturnType<typeof fromInteger>,
  add: typeof withSeams,
): RootOutline {
  return turned(add(toRoots(patch.outline), seam), ((8 - lie.print) % 8) as Eighth);
}

/** Farthest an outline reaches in a direction. */
function reach(outline: RootOutline, x: number, y: number): r.RootSum {
  const [dx, dy] = [r.whole(fromInteger(x)), r.whole(fromInteger(y))];
  return r.largest(outline.map((p) => r.plus(r.times(p.x, dx), r.times(p.y, dy))));
}

type Side = { x: number; y: number; weight: number };

/**
 * A triangle of cloth, by the outward directions of its sides with weights that sum to nothing: another outline
 * fits into it somewhere just when the weighted room left is not negative.
 */
function fits(outline: RootOutline, sides: readonly Side[], cloth: RootOutline): boolean {
  const room = sides.map((s) =>
    r.times(r.minus(reach(cloth, s.x, s.y), reach(outline, s.x, s.y)), r.whole(fromInteger(s.weight))),
  );
  return r.signOf(r.plus(...room)) >= 0;
}

function corners(points: readonly (readonly [number, number])[]): RootOutline {
  return points.map(([x, y]) => ({
    x: r.whole(rational(BigInt(2 * x), 2n)),
    y: r.whole(rational(BigInt(2 * y), 2n)),
  }));
}

/** The parts a piece falls into, each with the sides that bound it. `less` makes the piece smaller by so many ticks. */
function parts(piece: RecipePiece, less: number): { cloth: RootOutline; sides: Side[] }[] {
  const [a, b] = [piece.across - less, piece.along - less];
  const [tl, tr, br, bl] = [
    [0, 0],
    [a, 0],
    [a, b],
    [0, b],
  ] as const;
  const half = (points: readonly (readonly [number, number])[], x: -1 | 1, y: -1 | 1) => ({
    cloth: corners(points),
    sides: [
      { x, y: 0, weight: b },
      { x: 0, y, weight: a },
      { x: -x * b, y: -y * a, weight: 1 },
    ],
  });
  if (piece.subcut === "once-diagonal")
    return piece.diagonal === "rising"
      ? [half([tl, tr, bl], -1, -1), half([br, bl, tr], 1, 1)]
      : [half([tr, br, tl], 1, -1), half([bl, tl, br], -1, 1)];
  const quarter = (p: readonly [number, number], q: readonly [number, number], x: number, y: number) => ({
    cloth: [...corners([p, q]), { x: r.whole(rational(BigInt(a), 2n)), y: r.whole(rational(BigInt(b), 2n)) }],
    sides: [
      { x, y, weight: 2 },
      { x: -x + y, y: -y + x, weight: 1 },
      { x: -x - y, y: -y - x, weight: 1 },
    ],
  });
  return [quarter(tl, tr, 0, -1), quarter(tr, br, 1, 0), quarter(br, bl, 0, 1), quarter(bl, tl, -1, 0)];
}

/** Whether every patch of one piece has a part of the cloth to itself, seam allowance and points included. */
function holdsAll(
  piece: RecipePiece,
  lies: readonly Lie[],
  patches: readonly UnitPatch[],
  seam: ReturnType<typeof fromInteger>,
  less: number,
): boolean {
  const outlines = lies.map((lie) => {
    const patch = patches.find((each) => each.spot === lie.spot);
    if (patch === undefined) throw new Error(`no spot ${lie.spot}`);
    return asCut(patch, lie, seam, piece.subcut === "template" ? withSeamsBlunted : withSeams);
  });
  if (piece.subcut === "none" || piece.subcut === "template")
    return outlines.every((outline) => {
      const box = bounds(outline);
      const within = (size: r.RootSum, room: number): boolean =>
        r.compareRoots(size, r.whole(fromInteger(room))) <= 0;
      return within(box.across, piece.across - less) && within(box.along, piece.along - less);
    });
  const taken = new Set<number>();
  return outlines.every((outline) => {
    const at = parts(piece, less).findIndex(
      (part, i) => !taken.has(i) && fits(outline, part.sides, part.cloth),
    );
    if (at >= 0) taken.add(at);
    return at >= 0;
  });
}

describe.each(UNIT_KINDS.map((kind) => [kind.name, kind] as const))("%s", (_, kind) => {
  // The line runs across the corner it is flipped out of: `/` at the upper left and lower right, `\` at the others.
  test("a square flipped over a corner has the line of its corner", () => {
    fc.assert(
      fc.property(designsOf(kind.name), exactly, (design, how) => {
        for (const { steps, pieces } of recipes(kind, design, how))
          for (const step of steps)
            for (const { piece, corner } of step.do === "flip" ? step.squares : [])
              expect([corner, pieces[piece]?.diagonal]).toEqual([
                corner,
                corner === "top-left" || corner === "bottom-right" ? "rising" : "falling",
              ]);
      }),
      { numRuns: 5 },
    );
  });

  test("patches fill the unit exactly", () => {
    fc.assert(
      fc.property(designsOf(kind.name), (design) => {
        expect(kind.check(design)).toBeNull();
        const patches = kind.patches(design);
        const { across: w, along: h } = design;
        const areas = patches.map((patch) => areaOf(toRoots(patch.outline)));
        expect(areas.every((area) => r.signOf(area) > 0)).toBe(true);
        expect(r.compareRoots(r.plus(...areas), r.whole(mul(w, h)))).toBe(0);
        const plain = patches.map(asFractions);
        if (plain.every((each) => each !== null)) {
          const frame = [
            { x: ZERO, y: ZERO },
            { x: w, y: ZERO },
            { x: w, y: h },
            { x: ZERO, y: h },
          ];
          expect(tiles(frame, plain)).toBe(true);
        }
        expect(new Set(patches.map((patch) => patch.spot)).size).toBe(patches.length);
        expect(new Set(patches.map((patch) => patch.role))).toEqual(new Set(kind.roles(design)));
      }),
      { seed: 1880, numRuns: 20 },
    );
  });

  test("like-shaped spots are the same patch turned", () => {
    fc.assert(
      fc.property(designsOf(kind.name), (design) => {
        const corner = (patch: UnitPatch): string[] => {
          const outline = turned(toRoots(patch.outline), ((8 - patch.facing) % 8) as Eighth);
          const box = bounds(outline);
          return outline
            .map((p) => [p.x, p.y].map((v, i) => r.nearest(r.minus(v, i === 0 ? box.x : box.y))).join())
            .toSorted();
        };
        const first = new Map<string, string[]>();
        for (const patch of kind.patches(design)) {
          const known = first.get(patch.shape);
          if (known === undefined) first.set(patch.shape, corner(patch));
          else expect(corner(patch)).toEqual(known);
        }
      }),
      { seed: 1880, numRuns: 10 },
    );
  });

  test("every patch of a set is cut once, and the areas add up", () => {
    fc.assert(
      fc.property(designsOf(kind.name), ways, (design, how) => {
        const spots = kind.patches(design).map((patch) => patch.spot);
        for (const recipe of recipes(kind, design, how)) {
          const cloth = [
            ...recipe.pieces.flatMap((piece) => piece.lies.flat()),
            ...recipe.stripSets.flatMap((set) => set.strips.flatMap((strip) => strip.lies.flat())),
          ];
          const made = cloth.map((lie) => `${lie.unit} ${lie.spot}`).toSorted();
          const wanted = Array.from({ length: recipe.unitsPerSet }, (_, unit) =>
            spots.map((spot) => `${unit} ${spot}`),
          );
          expect(made).toEqual(wanted.flat().toSorted());
          for (const set of recipe.stripSets)
            for (const strip of set.strips) expect(strip.lies).toHaveLength(set.segmentsPerUnit);
          const { cut, finished, seams, corners: offcuts, trimmed } = recipe.areas;
          expect(finished + seams + offcuts + trimmed).toBe(cut);
          expect(Math.min(finished, seams, offcuts, trimmed)).toBeGreaterThanOrEqual(0);
          expect(recipe.areas).toEqual(
            Object.fromEntries(Object.entries(recipe.areas).map(([k, v]) => [k, Math.round(v)])),
          );
          expect(english.unitNames.sources(recipe.kind, recipe.method).length).toBeGreaterThan(0);
          for (const seam of recipe.seams) expect(seam.length * seam.count).toBeGreaterThanOrEqual(0);
          for (const piece of recipe.pieces)
            expect([piece.across % how.mark, piece.along % how.mark]).toEqual([0, 0]);
        }
      }),
      { seed: 1880, numRuns: 12 },
    );
  });

  test("cut before sewing: every patch has its seam all round, and no tick less would do", () => {
    fc.assert(
      fc.property(designsOf(kind.name), exactly, (design, how) => {
        const patches = kind.patches(design);
        for (const recipe of recipes(kind, design, how)) {
          if (!recipe.loose) continue;
          for (const piece of recipe.pieces)
            for (const lies of piece.lies) {
              expect(holdsAll(piece, lies, patches, how.seam, 0)).toBe(true);
              expect(holdsAll(piece, lies, patches, how.seam, 4)).toBe(false);
            }
          for (const set of recipe.stripSets) checkStrips(set, patches, how.seam);
          if (kind.name === "sixty-degree triangles" && recipe.stripSets.length > 0) continue;
          const add = recipe.method === "templates" ? withSeamsBlunted : withSeams;
          // cut area = patches with their seams + corners + rounding, by a second route
          const raw = patches.map((patch) => areaOf(add(toRoots(patch.outline), how.seam)));
          const sewn = r.nearest(r.times(r.plus(...raw), r.whole(fromInteger(recipe.unitsPerSet))));
          expect(Math.abs(recipe.areas.finished + recipe.areas.seams - sewn)).toBeLessThan(4);
        }
      }),
      { seed: 1880, numRuns: 8 },
    );
  });
});

/** Segments of a strip hold their patches: squares straight, diamonds and triangles slanting. */
function checkStrips(
  set: StripSet,
  patches: readonly UnitPatch[],
  seam: ReturnType<typeof fromInteger>,
): void {
  const root3 = r.rootOf(fromInteger(3));
  for (const strip of set.strips)
    for (const lie of strip.lies.flat()) {
      const patch = patches.find((each) => each.spot === lie.spot);
      if (patch === undefined) throw new Error(`no spot ${lie.spot}`);
      if (patch.shape.startsWith("end")) continue;
      const outline = asCut(patch, lie, seam, withSeams);
      const box = bounds(outline);
      const within = (size: r.RootSum, room: number): void => {
        expect(r.compareRoots(size, r.whole(fromInteger(room)))).toBeLessThanOrEqual(0);
        expect(r.compareRoots(size, r.whole(fromInteger(room - 4)))).toBe(1);
      };
      within(box.along, strip.width);
      if (set.cut === "square") within(box.across, set.segment);
      // Cuts that rise from left to right lie `segment` apart along the edge.
      if (set.cut === "diamond-45") within(r.plus(reach(outline, 1, 1), reach(outline, -1, -1)), set.segment);
      if (set.cut === "triangle-60") {
        within(box.across, set.segment);
        // Standing on its base or on its point, its sides slant as the ruler does.
        const tips = outline.map((p) => r.minus(r.times(p.x, root3), p.y));
        const span = r.minus(r.largest(tips), r.smallest(tips));
        expect(r.compareRoots(span, r.plus(box.along, box.along))).toBe(0);
      }
    }
}
