import {
  areaOf,
  bounds,
  edgeLengths,
  type RootOutline,
  type RootPoint,
  toRoots,
  withSeamsBlunted,
} from "./outlines.ts";
import { finishRecipe, lie, NOTHING_MORE, type PieceDraft, plain, type RecipeDraft } from "./recipe.ts";
import type { RootSum } from "./roots.ts";
import * as r from "./roots.ts";
import type { HowMade, RecipeStep, UnitDesign, UnitMethod, UnitPatch } from "./types.ts";

/** True for a rectangle standing upright: it needs no template. */
function isUprightRectangle(outline: RootOutline): boolean {
  const box = bounds(outline);
  return outline.length === 4 && r.compareRoots(areaOf(outline), r.times(box.across, box.along)) === 0;
}

/** The piece one patch is cut from: its bounding rectangle with the seam allowance on by exact offset. */
export function templatePiece(patch: UnitPatch, how: HowMade): { draft: PieceDraft; waste: RootSum } {
  const outline = toRoots(patch.outline);
  const raw = withSeamsBlunted(outline, how.seam);
  const box = bounds(raw);
  const upright = isUprightRectangle(outline);
  const formula = upright
    ? "finished size + 2 seams"
    : "patch with a seam added along every edge, very sharp points cut off one seam beyond the corner";
  return {
    draft: {
      role: patch.role,
      across: plain(box.across),
      along: plain(box.along),
      subcut: upright ? "none" : "template",
      diagonal: "any",
      lies: [[lie(0, patch.spot, 0)]],
      formula: { exact: formula, trade: formula },
      template: upright ? null : raw,
    },
    waste: r.minus(r.times(box.across, box.along), areaOf(raw)),
  };
}

const STEPS: readonly RecipeStep[] = [
  {
    kind: "cut",
    text: "Cut the rectangles, then cut each patch to its template along the straight grain marked.",
  },
  { kind: "sew", text: "Join the patches, matching the seam lines at the corners." },
  { kind: "press", text: "Press after every seam." },
];

/** The edges of a unit's patches that lie inside it; each is met by a neighbour, so their sum counts seams twice. */
function innerEdges(
  outlines: readonly RootOutline[],
  design: UnitDesign,
): { length: RootSum; bias: boolean }[] {
  const rims = (from: RootPoint, to: RootPoint): boolean =>
    liesOn(from.x, to.x, r.whole(design.across)) || liesOn(from.y, to.y, r.whole(design.along));
  return outlines.flatMap((outline) => {
    const lengths = edgeLengths(outline);
    return outline.flatMap((from, i) => {
      const to = outline[(i + 1) % outline.length] ?? from;
      if (rims(from, to)) return [];
      const straight = r.compareRoots(from.x, to.x) === 0 || r.compareRoots(from.y, to.y) === 0;
      return [{ length: lengths[i] ?? [], bias: !straight }];
    });
  });
}

/** Both values on the near rim (0) or both on the far one. */
function liesOn(a: RootSum, b: RootSum, far: RootSum): boolean {
  return r.compareRoots(a, b) === 0 && (a.length === 0 || r.compareRoots(a, far) === 0);
}

/**
 * The method that makes any kind: each patch cut by itself from its bounding rectangle. Directional prints
 * stay as the design has them, since every patch is laid by itself.
 */
export function templatesMethod(
  name: string,
  patchesOf: (design: UnitDesign) => readonly UnitPatch[],
): UnitMethod {
  return {
    name: "templates",
    summary: "every patch cut by itself to a template; keeps any print upright, takes the most cloth",
    recipe(design, how) {
      const patches = patchesOf(design);
      const pieces = patches.map((patch) => templatePiece(patch, how));
      const inner = innerEdges(
        patches.map((patch) => toRoots(patch.outline)),
        design,
      );
      const draft: RecipeDraft = {
        ...NOTHING_MORE,
        kind: name,
        method: "templates",
        unitsPerSet: 1,
        loose: true,
        pieces: pieces.map((piece) => piece.draft),
        seams: [
          {
            what: "patches together, all seams end to end",
            length: r.times(r.plus(...inner.map((edge) => edge.length)), r.whole({ n: 1n, d: 2n })),
            count: 1,
            bias: inner.some((edge) => edge.bias),
          },
        ],
        steps: STEPS,
        corners: r.plus(...pieces.map((piece) => piece.waste)),
        sources: [
          "derived geometry: every edge moved outwards by the seam, corners where the moved edges meet, sharp ones blunted",
        ],
      };
      return { ok: true, recipe: finishRecipe(draft, design, how) };
    },
  };
}
