import type { SpokenSize } from "../../length/spoken.ts";
import type { BorderName } from "../purposes.ts";
import { tell } from "../tell.ts";
import type { Diagnostic, InFile } from "../types.ts";
import type { UnitTold } from "./quilt.ts";

/** What is cut from squares that the trade would cut otherwise. */
export type Rounded = { unit: UnitTold; parts: readonly string[] } | { triangles: "side" | "corner" };

/** What is told of each, to be put in words. */
export interface QuiltPlanFacts {
  cannotBeCut: { what: string; fabric: string; usable: string };
  backingSideways: { fabric: string; seams: "vertical" | "horizontal"; along: boolean };
  backingTooNarrow: { what: string; fabric: string; found: { usable: string; seams: string; size: string } };
  mitreDirectional: { border: BorderName; fabric: string; round: boolean };
  roundingDiffers: {
    what: Rounded;
    taken: SpokenSize;
    other: SpokenSize;
    by: "exact" | "trade" | "too-small";
  };
  waddingSize: { size: string };
  waddingOverPackages: { size: string; largest: string };
}

/** A strip, panel or square that cannot be had from the fabric at all. */
export function cannotBeCut(where: InFile, what: string, fabric: string, usable: string): Diagnostic {
  return tell("CANNOT-BE-CUT", "error", where, "cannotBeCut", { what, fabric, usable });
}

/** Seams that were asked for and a print that lies on its side by them. */
export function backingSideways(
  where: InFile,
  fabric: string,
  seams: "vertical" | "horizontal",
  along: boolean,
): Diagnostic {
  return tell("BACKING-SIDEWAYS", "warning", where, "backingSideways", { fabric, seams, along });
}

/** Cloth so narrow that the seams between its panels take all of it. */
export function backingTooNarrow(
  where: InFile,
  what: string,
  fabric: string,
  found: { usable: string; seams: string; size: string },
): Diagnostic {
  return tell("BACKING-TOO-NARROW", "error", where, "backingTooNarrow", { what, fabric, found });
}

/**
 * A print with a direction in a mitred border: upright, it meets itself at an angle; running round, its motifs do not
 * meet by themselves.
 * @param round the print turns with the side it lies on
 */
export function mitreDirectional(
  where: InFile,
  border: BorderName,
  fabric: string,
  round: boolean,
): Diagnostic {
  return tell("MITRE-DIRECTIONAL", "warning", where, "mitreDirectional", { border, fabric, round });
}

/** Trade constants and exact geometry give different sizes: which was taken, and what the other would be. */
export function roundingDiffers(
  where: InFile,
  what: Rounded,
  taken: SpokenSize,
  other: SpokenSize,
  /** By which rounding it was taken; `too-small`: the constants were asked for, and the exact size is cut. */
  by: "exact" | "trade" | "too-small",
): Diagnostic {
  return tell("ROUNDING-DIFFERS", "info", where, "roundingDiffers", { what, taken, other, by });
}

export function waddingSize(where: InFile, size: string): Diagnostic {
  return tell("WADDING-SIZE", "info", where, "waddingSize", { size });
}

/** Wadding that comes in no packet so large. */
export function waddingOverPackages(where: InFile, size: string, largest: string): Diagnostic {
  return tell("WADDING-OVER-PACKAGES", "warning", where, "waddingOverPackages", { size, largest });
}
