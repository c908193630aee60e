import { formatCut, formatCutSize, formatLength, formatSize } from "../../../length/format.ts";
import type { Ruler } from "../../../length/types.ts";
import type { MethodSaid, PieceSaid, UnitSizes } from "../../../quilt/sizes/unit-sizes.ts";
import type { Formula, FormulaSide, TradeConstants } from "../../../quilt/terms/formulas.ts";
import type { PieceSubcut, RecipeNote } from "../../../quilt/units/types.ts";

/** Finished lengths that sizes are made from. */
const SIDES: Readonly<Record<FormulaSide, string>> = {
  size: "finished size",
  side: "finished side",
  width: "finished width",
  height: "finished height",
  "half-size": "half the finished size",
  corner: "finished corner",
  leg: "finished leg",
  "long-side": "finished long side",
  "diamond-side": "side of the diamond",
  "between-parallels": "width between parallel sides",
};

/** The constants makers know: for squares halved, and for squares quartered. */
const HALVED: Readonly<Record<TradeConstants, string>> = {
  "quarter-inch": "7/8 in",
  "three-quarter-cm": "2.5 cm",
  seams: "3 1/2 seams",
};
const QUARTERED: Readonly<Record<TradeConstants, string>> = {
  "quarter-inch": "1 1/4 in",
  "three-quarter-cm": "3.5 cm",
  seams: "5 seams",
};

const EASE = " + the ease";

function formula(of: Formula): string {
  switch (of.rule) {
    case "seams":
      return `${SIDES[of.side]} + ${of.seams} seams${of.ease === true ? EASE : ""}`;
    case "halved": {
      const extra = of.trade === undefined ? "seam x (2 + root 2)" : HALVED[of.trade];
      return `${SIDES[of.side]} + ${extra}${of.ease === true ? EASE : ""}`;
    }
    case "quartered": {
      const extra = of.trade === undefined ? "seam x (2 + 2 root 2)" : QUARTERED[of.trade];
      return `${SIDES[of.side]} + ${extra}${of.ease === true ? EASE : ""}`;
    }
    case "four-at-a-time":
      return of.trade ? "(finished size + 2 seams) / 0.64" : "root 2 x (finished size + 2 seams) + 2 seams";
    case "eight-at-a-time":
      return of.trade === undefined
        ? "2 x finished size + seam x (4 + 2 root 2)"
        : `2 x (finished size + ${HALVED[of.trade]})`;
    case "on-point":
      return of.trade ? "half the finished size x 1.414 + 2 seams" : "finished size / root 2 + 2 seams";
    case "half-rectangle":
      return "finished side + seam x (both sides + diagonal) / other side";
    case "template":
      return "patch with a seam added along every edge, very sharp points cut off beyond the corner";
    case "setting-side":
      return of.trade === undefined
        ? "block x root 2 + seam x (2 + 2 root 2)"
        : `block x 1.414 + ${QUARTERED[of.trade]}`;
    case "setting-corner":
      return of.trade === undefined
        ? "block / root 2 + seam x (2 + root 2)"
        : `block / 1.414 + ${HALVED[of.trade]}`;
  }
}

const SUBCUT: Readonly<Record<PieceSubcut, string>> = {
  none: "",
  "once-diagonal": "halved on the diagonal",
  "twice-diagonal": "quartered on both diagonals",
  template: "cut to a template",
};

function further(piece: PieceSaid, ruler: Ruler): string {
  if (typeof piece.further === "string") return SUBCUT[piece.further];
  const { cut, length, perUnit } = piece.further;
  switch (cut) {
    case "square":
      return `segments ${formatCut(length, ruler)} long, ${perUnit} to a unit`;
    case "diamond-45":
      return `diamonds cut at 45 degrees ${formatCut(length, ruler)} apart, ${perUnit} to a unit`;
    case "triangle-60":
      return `triangles cut to and fro at 60 degrees, ${perUnit} to a unit`;
  }
}

const NOTES: Readonly<Record<RecipeNote, string>> = {
  "constants-short":
    "The usual constants fall short of exact geometry at this size: the exact size is cut, or the piece would be too small.",
};

/** Cut sizes of a unit, by its methods. */
export const unitSizes = {
  part: ({ part, set }: PieceSaid): string => (set === null ? part : `${part}, set ${set}`),
  size: ({ across, along }: PieceSaid, ruler: Ruler): string =>
    across === null ? `strip ${formatCut(along, ruler)} wide` : formatCutSize(across, along, ruler),
  /** How it is cut further; empty when it is not. */
  further,
  /** Size by the other rounding; empty when it is the same. */
  other: ({ other }: PieceSaid, ruler: Ruler): string =>
    other === null ? "" : formatSize(other.across, other.along, ruler),
  /** What the sewn unit is trimmed to; empty when units come out true. */
  trim: ({ trimTo }: MethodSaid, ruler: Ruler): string =>
    trimTo === null ? "" : formatCutSize(trimTo.across, trimTo.along, ruler),
  formula,
  /** Seam allowance; empty where it lies between ticks. */
  seam: ({ seam, seamExact, ruler }: UnitSizes): string => (seamExact ? formatLength(seam, ruler) : ""),
  note: (note: RecipeNote): string => NOTES[note],
};
