import * as q from "../../length/rational.ts";
import { halfSquareExtra, quarterSquareExtra, straightExtra } from "../units/allowance.ts";
import { aroundOf, cutOf, type FoundationCut } from "../units/foundation-cut.ts";
import { bounds, type RootOutline, withSeams, withSeamsBlunted } from "../units/outlines/outlines.ts";
import * as r from "../units/outlines/roots.ts";
import type { HowMade } from "../units/types.ts";
import type { FoundationPatch, FoundationSeam } from "./types.ts";

interface Spot {
  x: number;
  y: number;
}

/** Room round patches, and how sizes are rounded. */
export interface ClothFor {
  how: HowMade;
  /** In ticks, added to every size. */
  ease: number;
}

const spotsOf = (outline: RootOutline): Spot[] =>
  outline.map(({ x, y }) => ({ x: r.rootsToNumber(x), y: r.rootsToNumber(y) }));

const plus = (a: Spot, b: Spot, by = 1): Spot => ({ x: a.x + by * b.x, y: a.y + by * b.y });

/** Size of the cut cloth by what it needs at least: how much larger it is each way. */
function growth(cut: FoundationCut, { how, ease }: ClothFor): Spot {
  const more = r.whole(q.fromInteger(ease));
  const by = (exact: r.RootSum): number => r.upToMark(r.plus(exact, more), how.mark) / r.rootsToNumber(exact);
  if (cut.kind === "rectangle") return { x: by(cut.across), y: by(cut.along) };
  const side =
    cut.kind === "half"
      ? r.plus(cut.leg, halfSquareExtra(how.seam))
      : cut.kind === "quarter"
        ? r.plus(cut.long, quarterSquareExtra(how.seam))
        : r.plus(cut.side, straightExtra(how.seam));
  return { x: by(side), y: by(side) };
}

/** What the cloth is at least: the patch with its seam allowances, or the upright rectangle round it. */
function leastCloth(cut: FoundationCut, outline: RootOutline, { how }: ClothFor): Spot[] {
  if (cut.kind !== "rectangle") return spotsOf(withSeams(outline, how.seam));
  const { x, y, across, along } = bounds(withSeamsBlunted(outline, how.seam));
  const [left, upper] = [r.rootsToNumber(x), r.rootsToNumber(y)];
  const [wide, high] = [r.rootsToNumber(across), r.rootsToNumber(along)];
  return [
    { x: left, y: upper },
    { x: left + wide, y: upper },
    { x: left + wide, y: upper + high },
    { x: left, y: upper + high },
  ];
}

/**
 * How the cloth of a patch comes to lie, right side up and pressed over, in the part's frame. An edge of it one seam
 * allowance beyond the line says where it lies; where it has no edge along the line it is laid over its place and
 * creased along the line first.
 * @param leans true when its print must not lean, so that a square is not laid on its point
 */
export function laidCloth(
  corners: readonly Spot[],
  leans: boolean,
  seam: Pick<FoundationSeam, "x1" | "y1" | "x2" | "y2" | "slanting"> | null,
  cloth: ClothFor,
): Pick<FoundationPatch, "lay" | "laid"> {
  const outline = corners.map(({ x, y }) => ({ x: r.whole(q.fromInteger(x)), y: r.whole(q.fromInteger(y)) }));
  const shaped = cutOf(outline, cloth.how.seam);
  const cut = leans && shaped.kind === "on-point" ? aroundOf(outline, cloth.how.seam) : shaped;
  const least = leastCloth(cut, outline, cloth);
  const by = growth(cut, cloth);
  const lay = seam === null ? "first" : seam.slanting && cut.kind === "rectangle" ? "crease" : "edge";
  const still = lay === "edge" && seam !== null ? beyondLine(seam, corners, cloth) : middleOf(least);
  return {
    lay,
    laid: least.map(({ x, y }) => ({
      x: Math.round(still.x + (x - still.x) * by.x),
      y: Math.round(still.y + (y - still.y) * by.y),
    })),
  };
}

function middleOf(spots: readonly Spot[]): Spot {
  const xs = spots.map(({ x }) => x);
  const ys = spots.map(({ y }) => y);
  return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
}

/** The middle of the sewn edge of the cloth: beside the middle of the patch's edge, one seam allowance outside it. */
function beyondLine(
  { x1, y1, x2, y2 }: Pick<FoundationSeam, "x1" | "y1" | "x2" | "y2">,
  corners: readonly Spot[],
  { how }: ClothFor,
): Spot {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const out = { x: (y2 - y1) / length, y: -(x2 - x1) / length };
  const beside = ({ x, y }: Spot): number => (x - x1) * out.x + (y - y1) * out.y;
  const on = corners.filter((corner) => Math.abs(beside(corner)) < 1);
  const [a, b] = [on[0] ?? { x: x1, y: y1 }, on.at(-1) ?? { x: x2, y: y2 }];
  const inside = corners.reduce((sum, corner) => sum + beside(corner), 0) > 0;
  const seam = q.toNumber(how.seam) * (inside ? -1 : 1);
  return plus({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, out, seam);
}
