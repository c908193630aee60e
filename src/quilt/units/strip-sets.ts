import type { Ticks } from "../../length/types.ts";
import type { StripSet, StripSetCount } from "./types.ts";

function setHeight(set: StripSet): Ticks {
  return set.strips.reduce((sum, strip) => sum + strip.width, 0);
}

/**
 * What is lost at the end where the first cut is made. A sewn set is squared there; a single strip that is cut at a
 * slant needs no squaring, but its first slanting cut costs a triangle as long as the strip is wide.
 */
function firstEnd(set: StripSet, straighten: Ticks): Ticks {
  switch (set.cut) {
    case "square":
      return straighten;
    case "diamond-45":
      return setHeight(set);
    case "triangle-60":
      return 0;
  }
}

/**
 * How many segments a set of this strip length gives.
 * @param straighten what squaring its end takes, in ticks
 */
export function segmentsFrom(set: StripSet, stripLength: Ticks, straighten: Ticks): number {
  const left = stripLength - firstEnd(set, straighten);
  const fits = (length: Ticks): number => Math.max(0, Math.floor(length / set.segment));
  // Triangles lean to and fro: every one after the first adds half a base.
  return set.cut === "triangle-60" ? Math.max(0, fits(2 * left) - 1) : fits(left);
}

/** The least strip length that gives so many segments. */
function lengthForSegments(set: StripSet, segments: number, straighten: Ticks): Ticks {
  if (segments === 0) return 0;
  const run =
    set.cut === "triangle-60" ? Math.ceil(((segments + 1) * set.segment) / 2) : segments * set.segment;
  return run + firstEnd(set, straighten);
}

/**
 * Strip sets for a number of units. Full sets run the usable width; what is left is made from one more set
 * of shorter strips, just long enough (to the ruler mark) for the segments still wanted, so no cloth is sewn to be thrown away.
 * @param units finished units wanted
 * @param usableWidth strip length of a full set, selvages off
 * @param straighten taken off one end of every set to square it, the short one too; slanting cuts need none
 * @returns null when not even one segment fits the width
 */
export function countSets(
  set: StripSet,
  units: number,
  usableWidth: Ticks,
  straighten: Ticks,
): StripSetCount | null {
  const wanted = units * set.segmentsPerUnit;
  const perFull = segmentsFrom(set, usableWidth, straighten);
  const squared = set.cut === "square" ? straighten : 0;
  if (perFull === 0 && wanted > 0) return null;
  const fullSets = perFull === 0 ? 0 : Math.floor(wanted / perFull);
  const lastSegments = wanted - fullSets * perFull;
  const lastLength = Math.ceil(lengthForSegments(set, lastSegments, straighten) / set.mark) * set.mark;
  return {
    fullSets,
    segmentsPerFullSet: perFull,
    lastLength: Math.min(usableWidth, lastLength),
    lastSegments,
    fullLength: usableWidth,
    straighten: squared,
  };
}
