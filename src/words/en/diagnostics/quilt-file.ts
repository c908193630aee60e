import { nearest } from "../../../diagnostics/nearest.ts";
import type { QuiltFileFacts } from "../../../diagnostics/quilts/quilt-file.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";

export const quiltFile: WordsOf<QuiltFileFacts> = {
  blockHasNoDrawing: ({ block }) => ({
    message: `Block ${quote(block)} has no drawing.`,
    hint: "Give `grid:` and `cells:`, or `cell:` when one unit fills the block.",
  }),

  cornerInSquares: ({ found }) => ({
    message: `${quote(found)} has a measure, but corners are counted in squares here (\`drawn-on\`).`,
    hint: "Write the number of squares alone, `2` or `2 1/2`; or leave out `drawn-on` and write lengths.",
  }),

  drawingUnreadable: ({ found, fault }) => ({
    message: `${quote(found)} cannot be read in a drawing: ${
      fault.is === "colourway"
        ? "a colourway follows one `/`"
        : `it is repeated ${fault.count} times, at most ${fault.most}`
    }.`,
    hint: "A cell is a code, perhaps with a turn and a colourway: `g`, `g>`, `star>/night`; `-` and `|` continue a unit.",
  }),

  gridsizeUnreadable: ({ field, found, most }) => ({
    message: `\`${field}\` is ${quote(found)}; it counts cells, across first, each from 1 to ${most}.`,
    hint: `For example \`${field}: 3 x 4\`.`,
  }),

  turnNotQuarter: ({ found }) => ({
    message: `The turn is ${quote(found)}; units and blocks turn by quarters, clockwise: 0, 90, 180 or 270.`,
    hint: "In a drawing `>` is 90, `v` 180 and `<` 270. A quilt on point is set with `layout: on point`.",
  }),

  unitNotOne: ({ found, fields }) => {
    if (found.length === 0) {
      return { message: "This cell names no unit.", hint: "For example `{ square: cream }`." };
    }
    const near = found
      .map((word) => [word, nearest(word, fields)] as const)
      .find(([, field]) => field !== null);
    return {
      message: `This cell names ${found.length} units: ${found.map((word) => quote(word)).join(", ")}.`,
      hint:
        near === undefined ? "Keep one unit to a cell." : `Did you mean \`${near[1]}\` by ${quote(near[0])}?`,
    };
  },
};
