import { type MeasureFamily, TICKS_PER } from "./measures.ts";
import type { Ticks } from "./types.ts";

/** What squaring one end of something sewn takes, where the maker does not say: 1/2 in, or 1 cm (common practice). */
export const SQUARED_END: Readonly<Record<MeasureFamily, Ticks>> = {
  imperial: TICKS_PER.in / 2,
  metric: TICKS_PER.cm,
};
