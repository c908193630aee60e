import * as q from "../../length/rational.ts";
import { alike, type Formula, twoSeams } from "../terms/formulas.ts";
import { METHOD, type UnitName } from "../terms/names.ts";
import { joinOrder, sewJoins } from "./join-order.ts";
import {
  areaOf,
  bounds,
  directionsOf,
  laidAlong,
  type RootOutline,
  type RootPoint,
  toRoots,
  withSeamsBlunted,
} from "./outlines/outlines.ts";
import type { RootSum } from "./outlines/roots.ts";
import * as r from "./outlines/roots.ts";
import { finishShape, type ShapeDraft } from "./outlines/shapes.ts";
import { isSimple } from "./outlines/tiling.ts";
import { finishRecipe, lie, NOTHING_MORE, type PieceDraft, plain, type RecipeDraft } from "./recipe.ts";
import type { HowMade, UnitDesign, UnitMethod, UnitPatch } from "./types.ts";

/** True for a rectangle standing upright: it needs no template. */
function isUprightRectangle(outline: RootOutline): boolean {
  const box = bounds(outline);
  return outline.length === 4 && r.compareRoots(areaOf(outline), r.times(box.across, box.along)) === 0;
}

/** Ticks within which a corner is taken to lie on an edge: a finding for marks, not for sizes. */
const ON_EDGE = 0.01;

/** Corners of the neighbours that lie within an edge of a patch: what the maker matches when sewing. */
function marksOn(outline: RootOutline, neighbours: readonly RootOutline[]): RootPoint[] {
  const plainly = ({ x, y }: RootPoint) => ({ x: r.rootsToNumber(x), y: r.rootsToNumber(y) });
  const own = outline.map(plainly);
  const found: { x: number; y: number }[] = [];
  return neighbours.flat().filter((corner) => {
    const p = plainly(corner);
    const within = own.some((a, i) => {
      const b = own[(i + 1) % own.length] ?? a;
      const run = Math.hypot(b.x - a.x, b.y - a.y);
      const along = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / run;
      const beside = ((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / run;
      return Math.abs(beside) < ON_EDGE && along > ON_EDGE && along < run - ON_EDGE;
    });
    const known = found.some((each) => Math.hypot(each.x - p.x, each.y - p.y) < ON_EDGE);
    if (within && !known) found.push(p);
    return within && !known;
  });
}

/**
 * A patch without an edge on the straight grain gains nothing by lying as it does in the unit: the same shape
 * with one of its edges on the grain, where that takes a smaller rectangle. Null where it does not.
 */
function freeLayOf(lines: ShapeDraft, how: HowMade): PieceDraft["freeLay"] {
  const directions = directionsOf(lines.seam);
  if (directions.some(({ x, y }) => r.signOf(x) === 0 || r.signOf(y) === 0)) return null;
  const cloth = (box: { across: RootSum; along: RootSum }): number =>
    r.upToMark(box.across, how.mark) * r.upToMark(box.along, how.mark);
  let least = cloth(bounds(lines.cut));
  let best: PieceDraft["freeLay"] = null;
  for (const direction of directions) {
    const cut = laidAlong(lines.cut, direction);
    const box = bounds(cut);
    if (cloth(box) >= least) continue;
    least = cloth(box);
    const [seam, marks] = [laidAlong(lines.seam, direction), laidAlong(lines.marks, direction)];
    best = { across: box.across, along: box.along, template: { cut, seam, marks } };
  }
  return best;
}

/** True where the moved edges cross: a notch too narrow for two seam allowances, or a step too short. */
function crossesItself(lines: ShapeDraft): boolean {
  const { cut, seam } = finishShape(lines);
  // The moved edges of a patch whose corners all point outwards cannot meet.
  const pointsInwards = seam.some((b, i) => {
    const [a, c] = [seam[(i + seam.length - 1) % seam.length] ?? b, seam[(i + 1) % seam.length] ?? b];
    return (b.x - a.x) * (c.y - b.y) < (b.y - a.y) * (c.x - b.x);
  });
  return pointsInwards && !isSimple(cut.map(({ x, y }) => ({ x: q.fromInteger(x), y: q.fromInteger(y) })));
}

/**
 * The piece one patch is cut from: its bounding rectangle with the seam allowance on by exact offset. Null when
 * its edges lie too near each other for that.
 */
function templatePiece(
  patch: UnitPatch,
  neighbours: readonly RootOutline[],
  how: HowMade,
): { draft: PieceDraft; waste: RootSum } | null {
  const outline = toRoots(patch.outline);
  const raw = withSeamsBlunted(outline, how.seam);
  const box = bounds(raw);
  const lines = { cut: raw, seam: outline, marks: marksOn(outline, neighbours) };
  if (crossesItself(lines)) return null;
  // A rectangle off the marks is cut to its template as its neighbours are, or their edges would not meet.
  const marked = [box.across, box.along].every(
    (side) => r.compareRoots(side, r.whole(q.fromInteger(r.upToMark(side, how.mark)))) === 0,
  );
  const upright = isUprightRectangle(outline) && marked;
  const formula: Formula = upright ? twoSeams("size") : { rule: "template" };
  return {
    draft: {
      role: patch.role,
      across: plain(box.across),
      along: plain(box.along),
      subcut: upright ? "none" : "template",
      diagonal: "any",
      lies: [[lie(0, patch.spot, 0)]],
      formula: alike(formula),
      template: upright ? null : lines,
      freeLay: upright ? null : freeLayOf(lines, how),
    },
    waste: r.minus(r.times(box.across, box.along), areaOf(raw)),
  };
}

/**
 * The method that makes any kind: each patch cut by itself from its bounding rectangle. Directional prints
 * stay as the design has them, since every patch is laid by itself.
 * @param order how the patches are joined, for kinds that have an order of their own
 */
export function templatesMethod(
  name: UnitName,
  patchesOf: (design: UnitDesign) => readonly UnitPatch[],
  order: typeof joinOrder = joinOrder,
): UnitMethod {
  return {
    name: METHOD.templates,
    recipe(design, how) {
      const patches = patchesOf(design);
      const outlines = patches.map((patch) => toRoots(patch.outline));
      const cut = patches.map((patch, i) =>
        templatePiece(
          patch,
          outlines.filter((_, other) => other !== i),
          how,
        ),
      );
      const pieces = cut.filter((piece) => piece !== null);
      if (pieces.length < cut.length) {
        const spot = patches[cut.indexOf(null)]?.spot ?? "";
        return {
          ok: false,
          fault: { why: "patch-too-sharp", spot },
        };
      }
      const lying = patches.map(({ spot }, i) => ({ spot, outline: outlines[i] ?? [] }));
      const sewn = sewJoins(order(lying), lying, Math.round(q.toNumber(how.seam)));
      const draft: RecipeDraft = {
        ...NOTHING_MORE,
        kind: name,
        method: METHOD.templates,
        unitsPerSet: 1,
        loose: true,
        pieces: pieces.map((piece) => piece.draft),
        true: true,
        seams: sewn.seams,
        steps: sewn.joins,
        corners: r.plus(...pieces.map((piece) => piece.waste)),
        // Derived geometry: every edge moved outwards by the seam, corners where the moved edges meet, sharp ones blunted.
      };
      return { ok: true, recipe: finishRecipe(draft, design, how) };
    },
  };
}
