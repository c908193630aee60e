import { TICKS_PER } from "../length/measures.ts";
import { ceil } from "../length/rational.ts";
import type { Ticks } from "../length/types.ts";
import type { QuiltSpec } from "./quilt-types.ts";
import type { WrittenLength } from "./written.ts";

/** The usual room to square one end of a strip set, in ticks: 1/2 in, or 1 cm (common practice). */
export function usualStraightenSets(inches: boolean): Ticks {
  return inches ? TICKS_PER.in / 2 : TICKS_PER.cm;
}

/** What squaring a sewn set takes. What is usual is told as assumed by the plan, and only where a set is sewn. */
export function fillStraightenSets(
  written: WrittenLength | undefined,
  inches: boolean,
): QuiltSpec["straightenSets"] {
  if (written !== undefined) return { off: Number(ceil(written.value)), told: true };
  return { off: usualStraightenSets(inches), told: false };
}
