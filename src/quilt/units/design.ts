import type { UnitFault } from "../../diagnostics/quilts/design-faults.ts";
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
export function notSquare(design: UnitDesign): { fault: UnitFault } | null {
  return sub(design.across, design.along).n === 0n ? null : { fault: { why: "not-square" } };
}
