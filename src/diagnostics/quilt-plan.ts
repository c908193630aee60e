import type { InFile } from "./reading.ts";
import type { Diagnostic } from "./types.ts";

/** A strip, panel or square that cannot be had from the fabric at all. */
export function cannotBeCut(where: InFile, what: string, fabric: string, usable: string): Diagnostic {
  return {
    code: "CANNOT-BE-CUT",
    severity: "error",
    message: `The ${what} cannot be cut from ${fabric}: its usable width is ${usable}.`,
    hint: "Use a wider fabric.",
    path: where.path,
    at: where.at,
  };
}

/** A print with an up in a mitred border: upright on all sides, it does not turn the corner. */
export function mitreDirectional(where: InFile, border: string, fabric: string): Diagnostic {
  return {
    code: "MITRE-DIRECTIONAL",
    severity: "warning",
    message: `Border ${border} is mitred in ${fabric}, a print with a direction: it stands upright on all four sides and meets itself at an angle in the corners.`,
    hint: "For a print that runs round the quilt cut the four strips alike and say `print: none` for a fabric of its own; for an upright one butt the corners, `corners: sides first`.",
    path: where.path,
    at: where.at,
  };
}

/** Trade constants and exact geometry give different sizes: which was taken, and what the other would be. */
export function roundingDiffers(
  where: InFile,
  what: string,
  taken: string,
  other: string,
  trade: boolean,
): Diagnostic {
  return {
    code: "ROUNDING-DIFFERS",
    severity: "info",
    message: `${what}: squares of ${taken} ${trade ? "by the usual constants" : "by exact geometry rounded up"}; ${other} ${trade ? "by exact geometry" : "by the usual constants"}.`,
    hint: trade
      ? "For exact sizes write `rounding: exact`."
      : "For the usual constants write `rounding: trade`.",
    path: where.path,
    at: where.at,
  };
}

export function waddingSize(where: InFile, size: string): Diagnostic {
  return {
    code: "WADDING-SIZE",
    severity: "info",
    message: `Wadding: ${size}.`,
    hint: "",
    path: where.path,
    at: where.at,
  };
}
