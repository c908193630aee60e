import { tell } from "./tell.ts";

import type { Diagnostic, InFile } from "./types.ts";

/** What is told of each, to be put in words. */
export interface ShapesFacts {
  shapeUnfit: { why: string; expected: string; example: string };
}

/** A shape whose fields do not fit together. `why` says what was found. */
export function shapeUnfit(where: InFile, why: string, expected: string, example: string): Diagnostic {
  return tell("SHAPE-UNFIT", "error", where, "shapeUnfit", { why, expected, example });
}
