import * as q from "../../length/rational.ts";
import { UNIT } from "../terms/names.ts";
import { diagonalOf, straightExtra } from "./allowance.ts";
import type { RootSum } from "./outlines/roots.ts";
import * as r from "./outlines/roots.ts";
import type { RecipeDraft } from "./recipe.ts";
import type { Corner, HowMade, RecipeStep } from "./types.ts";

/** What stitch-and-flip corners cost. */
export interface Flipped {
  /** Length of one seam, corner to corner of the square. */
  seam: RootSum;
  /** Area of both layers cut off, all corners. */
  corners: RootSum;
  bonus: RecipeDraft["bonus"][number];
}

/**
 * A square sewn corner to corner on a larger piece and folded back over the corner. Two triangles with legs
 * `square - root 2 x seam` are cut off each corner; sewn together on a second line before cutting they
 * make a half-square unit of `square - 2 root 2 x seam`, unfinished (derived geometry).
 * @param side cut side of the small square
 * @param corners how many corners are flipped
 */
export function flipped(side: RootSum, how: HowMade, corners: number): Flipped {
  const offset = r.times(diagonalOf(straightExtra(how.seam)), r.whole(q.rational(1n, 2n)));
  const leg = r.minus(side, offset);
  return {
    seam: diagonalOf(side),
    // two layers of leg x leg / 2
    corners: r.times(r.whole(q.fromInteger(corners)), r.times(leg, leg)),
    bonus: { kind: UNIT.halfSquareTriangle, count: corners, unfinished: r.minus(leg, offset) },
  };
}

/**
 * By how much a base cut to the mark is larger than finished size and seams. Squares flipped over its corners are
 * larger by as much: what is then trimmed off all round leaves their points where they belong. Derived geometry.
 */
export function overMark(finished: RootSum, how: HowMade): RootSum {
  const raw = r.plus(finished, straightExtra(how.seam));
  return r.minus(r.whole(q.fromInteger(r.upToMark(raw, how.mark))), raw);
}

/**
 * The steps of flipped corners: they are folded out, so their seams are pressed to them. A base that was rounded up
 * is trimmed afterwards.
 */
export function flipStep(
  base: number,
  squares: readonly { piece: number; corner: Corner }[],
  role: string,
  trim: "point" | "round",
): RecipeStep[] {
  return [
    { do: "flip", base, squares, press: { to: "part", part: role } },
    { do: "trim", by: trim },
  ];
}
