import { nearest } from "../../../diagnostics/nearest.ts";
import type { FoundationArea, FoundationBlockFault } from "../../../diagnostics/quilts/design-faults.ts";
import type { FoundationClash, FoundationFacts, OffGrid } from "../../../diagnostics/quilts/foundation.ts";
import type { Said, WordsOf } from "../../diagnostics.ts";
import { counted } from "../language.ts";
import { spoken } from "../quilt/spoken.ts";
import { methodName, unitName, unitTold } from "../quilt/unit-names.ts";

/** Counted in printed squares: `3 squares`, `1 square`, `3/4 of a square`. */
function squaresSaid(count: string): string {
  if (count === "1") return "1 square";
  return count.includes("/") && !count.includes(" ") ? `${count} of a square` : `${count} squares`;
}

function areaName(area: FoundationArea): string {
  return "block" in area ? `Block ${area.block}` : `Row ${area.row}`;
}

function offGrid(off: OffGrid): string {
  if (off.of === "unit") {
    const seam = off.seam === null ? "" : `, with a seam ${off.seam} squares in`;
    return `${unitTold(off)} is ${off.across} x ${off.down} squares${seam}`;
  }
  const finished = spoken.length(off.finished);
  return `${areaName(off.area)}: ${off.of} ${off.number} of its parts, finishing ${finished}, is ${squaresSaid(off.squares)}`;
}

const FOLDED = "Use `way: pieced`, or list the blocks that are made on it: `blocks: [...]`.";

function foundationBlockFault(fault: FoundationBlockFault): Said {
  switch (fault.why) {
    case "nothing":
      return {
        message: "Nothing is made on the foundation.",
        hint:
          fault.way === "pieced"
            ? "Its blocks are single patches: leave `foundation` out, or name blocks of more than one patch."
            : "No seam runs right across any block, so no line can be folded: use `way: pieced`.",
      };
    case "row-setting":
      return {
        message:
          "A row of blocks goes onto one piece of foundation only in a straight setting, not turned and without sashes.",
        hint: "Write `per: block`.",
      };
    case "row-with-other":
      return {
        message: `Row ${fault.row} holds block ${fault.block}, which is not made on the foundation.`,
        hint: "Write `per: block`, or list that block too.",
      };
    case "off-squares":
      return {
        message: `${areaName(fault.area)}: its parts do not come to whole printed squares.`,
        hint: FOLDED,
      };
    case "no-line":
      return {
        message: `${areaName(fault.area)}: no seam runs right across it, so no line can be folded.`,
        hint: FOLDED,
      };
    case "not-one-piece":
      return {
        message: `Block ${fault.block} cannot be pieced on one piece of foundation: its patches cannot be added one by one with straight seams.`,
        hint: "Write `per: motif` for the largest parts that can, or `way: folded` for finished parts laid edge to edge.",
      };
  }
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

  foundationBlock: ({ fault }) => foundationBlockFault(fault),

  foundationChoice: clash,

  foundationGrid: ({ found }) => ({
    message: `The printed squares are \`${found}\`; no ruler has a mark for their lines.`,
    hint: "For example `grid: 1 in`, `grid: 1/4 in` or `grid: 2 cm`.",
  }),

  foundationMarks: ({ block, size, mark }) => ({
    message: `In block ${block} a unit that is not pieced on the foundation measures ${spoken.size(size)} with its seams: no mark of a ruler of ${mark} is there, and printed lines cannot give way.`,
    hint: "Use a ruler in the measure of the printed squares (`ruler: 1/8 in`, `ruler: 1 mm`), or squares in the measure of the ruler.",
  }),

  foundationMethod: ({ unit, method }) => ({
    message: `${unitName(unit)}: made on the foundation, not ${methodName(method)}.`,
    hint: "To keep the method, list the blocks that are made on the foundation: `blocks: [...]`.",
  }),

  foundationOffGrid: ({ off, nearest: { sizes, lengths: sides, blocks }, halves }) => ({
    message: `${offGrid(off)}: its seams would not lie on the printed lines.`,
    hint: `Nearest sizes that fit: ${[...sizes.map(spoken.size), ...sides.map(spoken.length)].join(" or ")}${
      blocks.length === 0 ? "" : `; for the whole block ${blocks.map(spoken.size).join(" or ")}`
    }.${halves ? "" : " Where a seam may lie half-way between two lines, write `half-lines: true`."}`,
  }),

  foundationSeam: ({ seam, squares, fits }) => ({
    message: `Folded on a line, the seam lies one allowance from the fold: ${seam} is ${squaresSaid(squares)}, so it would miss the printed lines.`,
    hint: `Use squares of ${fits.join(" or ")}, or piece patch by patch: \`way: pieced\`.`,
  }),

  foundationUnit: ({ unit, why }) => {
    const [reason, hint] = {
      "off-corners": [
        "its seams do not run between corners of printed squares.",
        "List the blocks that are made on it without this one: `blocks: [...]`.",
      ],
      "no-order": [
        "its patches cannot be added one by one with straight seams.",
        "Draw it as smaller cells with a unit each, or list the blocks that are made on it: `blocks: [...]`.",
      ],
    }[why] as [string, string];
    return { message: `${unitName(unit)} cannot be pieced on a foundation: ${reason}`, hint };
  },

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
