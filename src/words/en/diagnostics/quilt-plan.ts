import type { QuiltPlanFacts } from "../../../diagnostics/quilts/quilt-plan.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { list } from "../language.ts";
import { spoken } from "../quilt/spoken.ts";
import { unitTold } from "../quilt/unit-names.ts";

export const quiltPlan: WordsOf<QuiltPlanFacts> = {
  cannotBeCut: ({ what, fabric, usable }) => ({
    message: `The ${what} cannot be cut from ${fabric}: its usable width is ${usable}.`,
    hint: "Use a wider fabric.",
  }),

  backingSideways: ({ fabric, seams, along }) => {
    const other = seams === "vertical" ? "horizontal" : "vertical";
    return {
      message: `The backing's seams are ${seams}, so that the print of ${fabric}, whose up runs ${along ? "along the selvage" : "across the fabric"}, lies on its side behind the quilt.`,
      hint: `To have it upright write \`seams: ${other}\`, or leave \`seams\` out: the print then says how they run.`,
    };
  },

  backingTooNarrow: ({ what, fabric, found }) => {
    const { usable, seams, size } = found;
    return {
      message: `The ${what} of ${size} cannot be pieced from ${fabric}: its usable width is ${usable}, and the seams on both sides of a panel take ${seams} of it.`,
      hint: `Expected: fabric much wider than ${seams}, for example \`- { name: ${fabric}, width: 44 in }\`, or a wide backing, \`width: 108 in\`.`,
    };
  },

  mitreDirectional: ({ border, fabric, round }) => {
    const what = round
      ? "it runs round the quilt, and its motifs meet in the corners only where they are matched"
      : "it stands upright on all four sides and meets itself at an angle in the corners";
    const needed =
      "Needed to match it: four strips cut alike, one repeat of the print to spare on each (`over-long:`), a motif on the middle of every side";
    return {
      message: `${typeof border === "number" ? `Border ${border}` : `The border "${border}"`} is mitred in ${fabric}, a print with a direction: ${what}.`,
      hint: round
        ? `${needed}. Or butt the corners: \`corners: sides first\`.`
        : `Upright it looks best butted: \`corners: sides first\`. To let it run round the quilt write \`prints: round\` in this border. ${needed}.`,
    };
  },

  roundingDiffers: ({ what, taken: cut, other: otherwise, by }) => {
    const [taken, other] = [spoken.size(cut), spoken.size(otherwise)];
    const told =
      "unit" in what ? `${unitTold(what.unit)}, ${list(what.parts)}` : `${what.triangles} setting triangles`;
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
    return { message: `${told}: ${messages[by]}`, hint: hints[by] };
  },

  waddingSize: ({ size }) => ({ message: `Wadding: ${size}.`, hint: "" }),

  waddingOverPackages: ({ size, largest }) => ({
    message: `Wadding: ${size}, larger than the largest package (${largest}).`,
    hint: "Buy it off the roll: add `- { name: wadding roll, width: 96 in, selvage: 0 }` to the fabrics and write `wadding: { fabric: wadding roll }`, which plans the lengths; or lay two packages edge to edge and join them by hand.",
  }),
};
