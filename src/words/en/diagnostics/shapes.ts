import type { ShapesFacts } from "../../../diagnostics/shapes.ts";
import type { WordsOf } from "../../diagnostics.ts";

export const shapes: WordsOf<ShapesFacts> = {
  shapeUnfit: ({ why, expected, example }) => ({
    message: `This shape cannot be cut as written: ${why}; ${expected}.`,
    hint: `For example \`${example}\`.`,
  }),
};
