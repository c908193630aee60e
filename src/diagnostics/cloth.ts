import type { LengthFault } from "../length/problem.ts";
import { tell } from "./tell.ts";

import type { Diagnostic, InFile } from "./types.ts";

/** Why a line says no cloth. */
export type ClothFault =
  | { is: "no-size-sold"; text: string }
  | { is: "no-cloth"; text: string }
  | { is: "trim"; text: string; fault: LengthFault }
  | { is: "trim-below-nothing" }
  | { is: "too-long" }
  | { is: "count"; most: number }
  | { is: "word"; word: string }
  | { is: "no-count" }
  /** A comma between brackets has made two entries of it. */
  | { is: "torn" }
  | { is: "all-trimmed" };

/** Why what is sold ready cut cannot be weighed by its prices. */
export type Unweighed = "no-price" | "not-every-price" | "two-currencies";

/** What is told of each, to be put in words. */
export interface ClothFacts {
  clothUnreadable: { key: "have" | "ready-cut"; written: string; why: ClothFault; parted: boolean };
  mixUnpriced: { fabric: string; why: Unweighed };
}

/** A line of `have` or `ready-cut` that says no cloth; `parted` where a comma between brackets has torn it apart. */
export function clothUnreadable(
  where: InFile,
  key: "have" | "ready-cut",
  written: string,
  why: ClothFault,
  parted = false,
): Diagnostic {
  return tell("CLOTH-UNREADABLE", "error", where, "clothUnreadable", { key, written, why, parted });
}

/** Cloth ready cut can be weighed against yardage only when all of it has a price, in one currency. */
export function mixUnpriced(where: InFile, fabric: string, why: Unweighed): Diagnostic {
  return tell("MIX-UNPRICED", "error", where, "mixUnpriced", { fabric, why });
}
