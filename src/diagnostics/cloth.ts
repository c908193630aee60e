import { tell } from "./tell.ts";

import type { Diagnostic, InFile } from "./types.ts";

/** What is told of each, to be put in words. */
export interface ClothFacts {
  clothUnreadable: { key: "have" | "ready-cut"; written: string; why: string; parted: boolean };
  mixUnpriced: { fabric: string; why: string };
}

/** A line of `have` or `ready-cut` that says no cloth; `parted` where a comma between brackets has torn it apart. */
export function clothUnreadable(
  where: InFile,
  key: "have" | "ready-cut",
  written: string,
  why: string,
  parted = false,
): Diagnostic {
  return tell("CLOTH-UNREADABLE", "error", where, "clothUnreadable", { key, written, why, parted });
}

/** Cloth ready cut can be weighed against yardage only when all of it has a price, in one currency. */
export function mixUnpriced(where: InFile, fabric: string, why: string): Diagnostic {
  return tell("MIX-UNPRICED", "error", where, "mixUnpriced", { fabric, why });
}
