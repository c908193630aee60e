import { formatCut, formatCutSize, formatLength, formatSize } from "../../../length/format.ts";
import type { Words } from "../../types.ts";
import { partName } from "./unit-names.ts";

type Formula = Parameters<Words["unitSizes"]["formula"]>[0];
type Side = Extract<Formula, { rule: "seams" }>["side"];
type Constants = "quarter-inch" | "three-quarter-cm" | "seams";

/** Finished lengths that sizes are made from. */
const SIDES: Readonly<Record<Side, string>> = {
  size: "fertiges Maß",
  side: "fertige Seite",
  width: "fertige Breite",
  height: "fertige Höhe",
  "half-size": "halbes fertiges Maß",
  corner: "fertige Ecke",
  leg: "fertiger Schenkel",
  "long-side": "fertige lange Seite",
  "diamond-side": "Seite der Raute",
  "between-parallels": "Breite zwischen parallelen Seiten",
};

/** What is usually added: to squares halved, and to squares quartered. */
const HALVED: Readonly<Record<Constants, string>> = {
  "quarter-inch": "7/8 in",
  "three-quarter-cm": "2,5 cm",
  seams: "3 1/2 Nahtzugaben",
};
const QUARTERED: Readonly<Record<Constants, string>> = {
  "quarter-inch": "1 1/4 in",
  "three-quarter-cm": "3,5 cm",
  seams: "5 Nahtzugaben",
};

const EASE = " + Zugabe zum Auflegen";

function formula(of: Formula): string {
  switch (of.rule) {
    case "seams":
      return `${SIDES[of.side]} + ${of.seams} Nahtzugaben${of.ease === true ? EASE : ""}`;
    case "halved": {
      const extra = of.trade === undefined ? "Nahtzugabe x (2 + Wurzel 2)" : HALVED[of.trade];
      return `${SIDES[of.side]} + ${extra}${of.ease === true ? EASE : ""}`;
    }
    case "quartered": {
      const extra = of.trade === undefined ? "Nahtzugabe x (2 + 2 Wurzel 2)" : QUARTERED[of.trade];
      return `${SIDES[of.side]} + ${extra}${of.ease === true ? EASE : ""}`;
    }
    case "four-at-a-time":
      return of.trade
        ? "(fertiges Maß + 2 Nahtzugaben) / 0,64"
        : "Wurzel 2 x (fertiges Maß + 2 Nahtzugaben) + 2 Nahtzugaben";
    case "eight-at-a-time":
      return of.trade === undefined
        ? "2 x fertiges Maß + Nahtzugabe x (4 + 2 Wurzel 2)"
        : `2 x (fertiges Maß + ${HALVED[of.trade]})`;
    case "on-point":
      return of.trade
        ? "halbes fertiges Maß x 1,414 + 2 Nahtzugaben"
        : "fertiges Maß / Wurzel 2 + 2 Nahtzugaben";
    case "half-rectangle":
      return "fertige Seite + Nahtzugabe x (beide Seiten + Diagonale) / andere Seite";
    case "template":
      return "Patch mit einer Nahtzugabe an jeder Kante, sehr spitze Ecken gekappt";
    case "setting-side":
      return of.trade === undefined
        ? "Block x Wurzel 2 + Nahtzugabe x (2 + 2 Wurzel 2)"
        : `Block x 1,414 + ${QUARTERED[of.trade]}`;
    case "setting-corner":
      return of.trade === undefined
        ? "Block / Wurzel 2 + Nahtzugabe x (2 + Wurzel 2)"
        : `Block / 1,414 + ${HALVED[of.trade]}`;
  }
}

const SUBCUT = {
  none: "",
  "once-diagonal": "diagonal halbiert",
  "twice-diagonal": "über beide Diagonalen geviertelt",
  template: "nach Schablone geschnitten",
} as const;

/** Cut sizes of a unit, by its methods. */
export const unitSizes: Words["unitSizes"] = {
  part: ({ part, set }) => (set === null ? partName(part) : `${partName(part)}, Streifenset ${set}`),
  size: ({ across, along }, ruler) =>
    across === null ? `Streifen, ${formatCut(along, ruler)} breit` : formatCutSize(across, along, ruler),
  further: (piece, ruler) => {
    if (typeof piece.further === "string") return SUBCUT[piece.further];
    const { cut, length, perUnit } = piece.further;
    switch (cut) {
      case "square":
        return `Segmente, ${formatCut(length, ruler)} lang, ${perUnit} je Einheit`;
      case "diamond-45":
        return `Rauten im 45-Grad-Winkel, ${formatCut(length, ruler)} Abstand, ${perUnit} je Einheit`;
      case "triangle-60":
        return `Dreiecke hin und her im 60-Grad-Winkel, ${perUnit} je Einheit`;
    }
  },
  other: ({ other }, ruler) => (other === null ? "" : formatSize(other.across, other.along, ruler)),
  trim: ({ trimTo }, ruler) => (trimTo === null ? "" : formatCutSize(trimTo.across, trimTo.along, ruler)),
  formula,
  seam: ({ seam, seamExact, ruler }) => (seamExact ? formatLength(seam, ruler) : ""),
  note: (note) =>
    ({
      "constants-short":
        "Die üblichen Zugaben reichen bei diesem Maß nicht an die genaue Geometrie heran: Geschnitten wird das genaue Maß, sonst wäre das Teil zu klein.",
    })[note],
};
