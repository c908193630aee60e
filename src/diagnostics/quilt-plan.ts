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

/** Seams that were asked for and a print that lies on its side by them. */
export function backingSideways(
  where: InFile,
  fabric: string,
  seams: "vertical" | "horizontal",
  along: boolean,
): Diagnostic {
  const other = seams === "vertical" ? "horizontal" : "vertical";
  return {
    code: "BACKING-SIDEWAYS",
    severity: "warning",
    message: `The backing's seams are ${seams}, so that the print of ${fabric}, whose up runs ${along ? "along the selvage" : "across the fabric"}, lies on its side behind the quilt.`,
    hint: `To have it upright write \`seams: ${other}\`, or leave \`seams\` out: the print then says how they run.`,
    path: where.path,
    at: where.at,
  };
}

/** Cloth so narrow that the seams between its panels take all of it. */
export function backingTooNarrow(
  where: InFile,
  what: string,
  fabric: string,
  found: { usable: string; seams: string; size: string },
): Diagnostic {
  const { usable, seams, size } = found;
  return {
    code: "BACKING-TOO-NARROW",
    severity: "error",
    message: `The ${what} of ${size} cannot be pieced from ${fabric}: its usable width is ${usable}, and the seams on both sides of a panel take ${seams} of it.`,
    hint: `Expected: cloth much wider than ${seams}, for example \`- { name: ${fabric}, width: 44 in }\`, or a wide backing, \`width: 108 in\`.`,
    path: where.path,
    at: where.at,
  };
}

/**
 * A print with a direction in a mitred border: upright, it meets itself at an angle; running round, its motifs do not
 * meet by themselves.
 * @param round the print turns with the side it lies on
 */
export function mitreDirectional(where: InFile, border: string, fabric: string, round: boolean): Diagnostic {
  const what = round
    ? "it runs round the quilt, and its motifs meet in the corners only where they are matched"
    : "it stands upright on all four sides and meets itself at an angle in the corners";
  const needed =
    "Needed to match it: four strips cut alike, one repeat of the print to spare on each (`over-long:`), a motif on the middle of every side";
  return {
    code: "MITRE-DIRECTIONAL",
    severity: "warning",
    message: `Border ${border} is mitred in ${fabric}, a print with a direction: ${what}.`,
    hint: round
      ? `${needed}. Or butt the corners: \`corners: sides first\`.`
      : `Upright it looks best butted: \`corners: sides first\`. To let it run round the quilt write \`prints: round\` in this border. ${needed}.`,
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
  /** By which rounding it was taken; `too-small`: the constants were asked for, and the exact size is cut. */
  by: "exact" | "trade" | "too-small",
): Diagnostic {
  const [exactly, usual] = ["by exact geometry", "by the usual constants"];
  const messages = {
    exact: `squares of ${taken} ${exactly} rounded up; ${other} ${usual}.`,
    trade: `squares of ${taken} ${usual}; ${other} ${exactly}.`,
    "too-small": `squares of ${taken} ${exactly} rounded up, as ${other} ${usual} is too small here.`,
  };
  const hints = {
    exact: "For the usual constants write `rounding: trade`.",
    trade: "For exact sizes write `rounding: exact`.",
    "too-small": "",
  };
  return {
    code: "ROUNDING-DIFFERS",
    severity: "info",
    message: `${what}: ${messages[by]}`,
    hint: hints[by],
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

/** Wadding that comes in no packet so large. */
export function waddingOverPackages(where: InFile, size: string, largest: string): Diagnostic {
  return {
    code: "WADDING-OVER-PACKAGES",
    severity: "warning",
    message: `Wadding: ${size}, larger than the largest package (${largest}).`,
    hint: "Buy it off the roll: add `- { name: wadding roll, width: 96 in, selvage: 0 }` to the fabrics and write `wadding: { fabric: wadding roll }`, which plans the lengths; or lay two packages edge to edge and join them by hand.",
    path: where.path,
    at: where.at,
  };
}
