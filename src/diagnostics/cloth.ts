import { tell } from "./tell.ts";

import type { Diagnostic, InFile } from "./types.ts";

/** What is told of each, to be put in words. */
export interface ClothFacts {
  clothUnreadable: { key: "have" | "ready-cut"; written: string; why: string };
  mixUnpriced: { fabric: string; why: string };
}

/** A line of `have` or `ready-cut` that says no cloth. */
export function clothUnreadable(
  where: InFile,
  key: "have" | "ready-cut",
  written: string,
  why: string,
): Diagnostic {
  return tell("CLOTH-UNREADABLE", "error", where, "clothUnreadable", { key, written, why });
}

/** Cloth ready cut can be weighed against yardage only when all of it has a price, in one currency. */
export function mixUnpriced(where: InFile, fabric: string, why: string): Diagnostic {
  return tell("MIX-UNPRICED", "error", where, "mixUnpriced", { fabric, why });
}
