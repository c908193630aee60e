import * as q from "../../length/rational.ts";
import { asEighth } from "../turning/whole-turns.ts";
import { sideOf } from "./allowance.ts";
import { areaOf, bounds, type RootOutline, withSeamsBlunted } from "./outlines/outlines.ts";
import type { RootSum } from "./outlines/roots.ts";
import * as r from "./outlines/roots.ts";
import type { Eighth } from "./types.ts";

/** How a patch is cut when it is placed on foundation by eye: close to its shape, and a little larger. */
export type FoundationCut =
  /** The rectangle round the patch and its seam allowances. */
  | { kind: "rectangle"; across: RootSum; along: RootSum }
  /** Standing on its point, cut straight: its side. */
  | { kind: "on-point"; side: RootSum }
  /** A right-angled triangle with two equal sides: the sides, and where the right angle points. */
  | { kind: "half"; leg: RootSum; faces: Eighth }
  /** The same with its long side upright or level: the long side. */
  | { kind: "quarter"; long: RootSum; faces: Eighth };

function sameLength(a: RootSum, b: RootSum): boolean {
  return r.compareRoots(a, b) === 0;
}

/** Eighths clockwise from up of a direction along an axis or a diagonal. */
function eighthOf(x: number, y: number): Eighth {
  const around = ["0,-1", "1,-1", "1,0", "1,1", "0,1", "-1,1", "-1,0", "-1,-1"];
  return asEighth(Math.max(0, around.indexOf(`${x},${y}`)));
}

/** The rectangle round a patch and its seam allowances. */
export function aroundOf(outline: RootOutline, seam: q.Rational): FoundationCut {
  const { across, along } = bounds(withSeamsBlunted(outline, seam));
  return { kind: "rectangle", across, along };
}

/*
 *   half:  +--+     quarter:   /\        on-point:  /\
 *          | /                /__\                  \/
 *          |/
 */
/** How a patch is cut. */
export function cutOf(outline: RootOutline, seam: q.Rational): FoundationCut {
  const box = bounds(outline);
  const asRectangle = aroundOf(outline, seam);
  const inBox = outline.map(({ x, y }) => ({
    x: r.signOf(r.minus(r.times(r.whole(q.fromInteger(2)), r.minus(x, box.x)), box.across)),
    y: r.signOf(r.minus(r.times(r.whole(q.fromInteger(2)), r.minus(y, box.y)), box.along)),
  }));
  const area = areaOf(outline);
  const half = r.times(r.times(box.across, box.along), r.whole(q.rational(1n, 2n)));
  if (outline.length === 4 && sameLength(area, half) && inBox.every(({ x, y }) => x === 0 || y === 0))
    return sameLength(box.across, box.along) ? { kind: "on-point", side: sideOf(box.across) } : asRectangle;
  if (outline.length !== 3) return asRectangle;
  if (sameLength(box.across, box.along)) {
    // The right angle is the corner whose neighbours lie level with it and upright to it.
    const corner = outline.findIndex((p, i) => {
      const [a, b] = [outline[(i + 1) % 3], outline[(i + 2) % 3]];
      if (a === undefined || b === undefined) return false;
      const level = (one: typeof p, two: typeof p) => sameLength(one.y, two.y);
      const upright = (one: typeof p, two: typeof p) => sameLength(one.x, two.x);
      return (level(p, a) && upright(p, b)) || (level(p, b) && upright(p, a));
    });
    const at = inBox[corner];
    if (at !== undefined) return { kind: "half", leg: box.across, faces: eighthOf(at.x, at.y) };
  }
  const double = (side: RootSum) => r.times(side, r.whole(q.fromInteger(2)));
  const apex = inBox.findIndex(({ x, y }) => (x === 0) !== (y === 0));
  const at = inBox[apex];
  const onItsSide = sameLength(box.along, double(box.across));
  if (at !== undefined && (sameLength(box.across, double(box.along)) || onItsSide)) {
    const long = onItsSide ? box.along : box.across;
    return { kind: "quarter", long, faces: eighthOf(at.x, at.y) };
  }
  return asRectangle;
}
