import type { Rational } from "../../length/rational.ts";
import { sub } from "../../length/rational.ts";
import type { UnitDesign } from "./types.ts";

/** A unit of a finished size with every default filled in. */
export function plainDesign(across: Rational, along: Rational): UnitDesign {
  return {
    across,
    along,
    corner: null,
    corners: ["top-left", "top-right", "bottom-right", "bottom-left"],
    strips: [],
    count: 3,
    centre: null,
    leaning: "rising",
    patches: [],
  };
}

/** What is wrong with a size that should be square; null when it is. */
export function notSquare(
  design: UnitDesign,
  name: string,
  instead: string,
): { reason: string; hint: string } | null {
  if (sub(design.across, design.along).n === 0n) return null;
  return { reason: `${name} is square, but the size asked is not.`, hint: instead };
}
