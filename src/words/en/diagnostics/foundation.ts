import type { FoundationClash, FoundationFacts } from "../../../diagnostics/foundation.ts";
import { nearest } from "../../../diagnostics/nearest.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { counted } from "../language.ts";

/** Counted in printed squares: `3 squares`, `1 square`, `3/4 of a square`. */
function squaresSaid(count: string): string {
  if (count === "1") return "1 square";
  return count.includes("/") && !count.includes(" ") ? `${count} of a square` : `${count} squares`;
}

function clash(fault: FoundationClash): { message: string; hint: string } {
  if (fault.is === "fusible-torn")
    return {
      message: "A fusible foundation is stuck to the patches and cannot be torn away.",
      hint: "Write `after: left in`, or `hold: sew-in`.",
    };
  if (fault.is === "folded-allowance")
    return {
      message: "Folded, parts are laid edge to edge up to the edge of the foundation: nothing lies beyond.",
      hint: "Leave `allowance` out.",
    };
  const pieced = fault.way === "pieced";
  const meant = pieced
    ? "Pieced patch by patch, a piece of foundation carries a unit, a motif or a block"
    : "Folded, a piece of foundation carries a block or a row of blocks";
  return {
    message: `${meant}, not a ${fault.per}.`,
    hint: `Write \`per: ${fault.allowed.join("`, `per: ")}\`, or \`way: ${pieced ? "folded" : "pieced"}\`.`,
  };
}

export const foundation: WordsOf<FoundationFacts> = {
  foundationAllowance: ({ squares, side, seam, needed }) => ({
    message: `The foundation reaches ${counted(squares, "square")} of ${side} beyond the outermost seam line; the seam allowance is ${seam}.`,
    hint: `Write \`allowance: ${needed}\`, counted in printed squares.`,
  }),

  foundationBlock: ({ message, hint }) => ({ message, hint }),

  foundationChoice: clash,

  foundationGrid: ({ found }) => ({
    message: `The printed squares are \`${found}\`; no ruler has a mark for their lines.`,
    hint: "For example `grid: 1 in`, `grid: 1/4 in` or `grid: 2 cm`.",
  }),

  foundationMarks: ({ block, size, mark }) => ({
    message: `In block ${block} a unit that is not pieced on the foundation measures ${size} with its seams: no mark of a ruler of ${mark} is there, and printed lines cannot give way.`,
    hint: "Use a ruler in the measure of the printed squares (`ruler: 1/8 in`, `ruler: 1 mm`), or squares in the measure of the ruler.",
  }),

  foundationMethod: ({ unit, method }) => ({
    message: `${unit}: made on the foundation, not ${method}.`,
    hint: "To keep the method, list the blocks that are made on the foundation: `blocks: [...]`.",
  }),

  foundationOffGrid: ({ what, squares, nearest, halves }) => ({
    message: `${what} is ${squares}: its seams would not lie on the printed lines.`,
    hint: `Nearest sizes that fit: ${nearest.sizes.join(" or ")}${
      nearest.blocks.length === 0 ? "" : `; for the whole block ${nearest.blocks.join(" or ")}`
    }.${halves ? "" : " Where a seam may lie half-way between two lines, write `half-lines: true`."}`,
  }),

  foundationSeam: ({ seam, squares, fits }) => ({
    message: `Folded on a line, the seam lies one allowance from the fold: ${seam} is ${squaresSaid(squares)}, so it would miss the printed lines.`,
    hint: `Use squares of ${fits.join(" or ")}, or piece patch by patch: \`way: pieced\`.`,
  }),

  foundationUnit: ({ unit, reason, hint }) => ({
    message: `${unit} cannot be pieced on a foundation: ${reason}`,
    hint,
  }),

  foundationUnknown: ({ what, word, known }) => {
    const near = nearest(word, [...known]);
    return {
      message: `There is no ${what} \`${word}\`.`,
      hint:
        near === null
          ? `Known here: ${known.map((each) => `\`${each}\``).join(", ")}.`
          : `Did you mean \`${near}\`?`,
    };
  },
};
