import type { Rational } from "../../../length/rational.ts";
import * as q from "../../../length/rational.ts";
import type { Ticks } from "../../../length/types.ts";
import { diagonalOf, straightExtra } from "../allowance.ts";
import type { HowMade } from "../types.ts";
import type { RootSum } from "./roots.ts";
import * as r from "./roots.ts";

/*
 * Shapes cut from a strip with slanting cuts, for makers who want the numbers and no unit: how wide to cut
 * the strip, how far apart the cuts lie along its edge, and how long a finished side is.
 */
export interface StripShape {
  strip: Ticks;
  roundedUp: boolean;
  /** Distance between like cuts along the strip's edge, up to a tick: the strip as cut. */
  spacing: Ticks;
  /** Finished side, up to a tick. */
  side: Ticks;
}

const ROOT3 = r.rootOf(q.fromInteger(3));

function shape(
  strip: RootSum,
  spacing: (strip: RootSum) => RootSum,
  side: RootSum,
  how: HowMade,
): StripShape {
  const ticks = r.upToMark(strip, how.mark);
  const asCut = r.whole(q.fromInteger(ticks));
  return {
    strip: ticks,
    roundedUp: r.compareRoots(asCut, strip) !== 0,
    spacing: r.upToMark(spacing(asCut), 1),
    side: r.upToMark(side, 1),
  };
}

/** 45-degree diamond by its finished width between parallel sides: width + 2 seams, cuts strip x root 2 apart. */
export function diamond45(width: Rational, how: HowMade): StripShape {
  const finished = r.whole(width);
  const strip = r.plus(finished, straightExtra(how.seam));
  return shape(strip, diagonalOf, diagonalOf(finished), how);
}

/** 60-degree triangle by its finished height, points left on: height + 3 seams; base = strip x 2 / root 3. */
export function triangle60(height: Rational, how: HowMade): StripShape {
  const finished = r.whole(height);
  const strip = r.whole(q.add(height, q.mul(how.seam, q.fromInteger(3))));
  const base = (high: RootSum): RootSum => r.times(high, r.times(ROOT3, r.whole(q.rational(2n, 3n))));
  return shape(strip, base, base(finished), how);
}

/**
 * Hexagon by its finished width between parallel sides: width + 2 seams ("How to cut the hexagon shape",
 * Slaney Quilting Studio). It is cut as a 60-degree diamond of the strip's width and two points cut off.
 * Hexagons are named by their finished side, width / root 3.
 */
export function hexagon(width: Rational, how: HowMade): StripShape {
  const finished = r.whole(width);
  const strip = r.plus(finished, straightExtra(how.seam));
  const third = r.times(ROOT3, r.whole(q.rational(1n, 3n)));
  const spacing = (high: RootSum): RootSum => r.times(high, r.times(third, r.whole(q.fromInteger(2))));
  return shape(strip, spacing, r.times(finished, third), how);
}
