import type { Ticks } from "../../length/types.ts";
import type { StripSet, StripSetCount } from "./types.ts";

function setHeight(set: StripSet): Ticks {
  return set.strips.reduce((sum, strip) => sum + strip.width, 0);
}

/** How many segments a set of this strip length gives. */
export function segmentsFrom(set: StripSet, stripLength: Ticks): number {
  const fits = (length: Ticks, size: Ticks): number => Math.max(0, Math.floor(length / size));
  switch (set.cut) {
    case "square":
      return fits(stripLength, set.segment);
    case "diamond-45":
      // The first slanting cut loses a triangle as long as the strip is wide.
      return fits(stripLength - setHeight(set), set.segment);
    case "triangle-60":
      // Triangles lean to and fro: every one after the first adds half a base.
      return Math.max(0, fits(2 * stripLength, set.segment) - 1);
  }
}

/** The least strip length that gives so many segments. */
function lengthForSegments(set: StripSet, segments: number): Ticks {
  if (segments === 0) return 0;
  switch (set.cut) {
    case "square":
      return segments * set.segment;
    case "diamond-45":
      return segments * set.segment + setHeight(set);
    case "triangle-60":
      return Math.ceil(((segments + 1) * set.segment) / 2);
  }
}

/**
 * Strip sets for a number of units. Full sets run the usable width; what is left is made from one more set
 * of shorter strips, just long enough (to the ruler mark) for the segments still wanted, so no cloth is sewn to be thrown away.
 * @param units finished units wanted
 * @param usableWidth strip length of a full set, selvages off
 * @returns null when not even one segment fits the width
 */
export function countSets(set: StripSet, units: number, usableWidth: Ticks): StripSetCount | null {
  const wanted = units * set.segmentsPerUnit;
  const perFull = segmentsFrom(set, usableWidth);
  if (perFull === 0) return wanted === 0 ? noSets(perFull, usableWidth) : null;
  const fullSets = Math.floor(wanted / perFull);
  const lastSegments = wanted - fullSets * perFull;
  return {
    fullSets,
    segmentsPerFullSet: perFull,
    lastLength: Math.min(usableWidth, Math.ceil(lengthForSegments(set, lastSegments) / set.mark) * set.mark),
    lastSegments,
    fullLength: usableWidth,
    straighten: 0,
  };
}

function noSets(segmentsPerFullSet: number, fullLength: Ticks): StripSetCount {
  return { fullSets: 0, segmentsPerFullSet, lastLength: 0, lastSegments: 0, fullLength, straighten: 0 };
}
