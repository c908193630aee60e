import type { MeasureFamily } from "../../length/measures.ts";
import { ceil } from "../../length/rational.ts";
import { SQUARED_END } from "../../length/squared-end.ts";
import type { QuiltSpec } from "../quilt-types.ts";
import type { WrittenLength } from "../written/written.ts";

/** What squaring a sewn set takes. What is usual is told as assumed by the plan, and only where a set is sewn. */
export function fillStraightenSets(
  written: WrittenLength | undefined,
  family: MeasureFamily,
): QuiltSpec["straightenSets"] {
  if (written !== undefined) return { off: Number(ceil(written.value)), told: true };
  return { off: SQUARED_END[family], told: false };
}
