import type { ShapesFacts } from "../../../diagnostics/shapes.ts";
import type { WordsOf } from "../../diagnostics.ts";

export const shapes: WordsOf<ShapesFacts> = {
  shapeUnfit: ({ why, expected, example }) => ({
    message: `Diese Form lässt sich so nicht schneiden: ${why}; ${expected}.`,
    hint: `Zum Beispiel \`${example}\`.`,
  }),
};
