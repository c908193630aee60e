import type { InFile } from "./reading.ts";
import type { Diagnostic } from "./types.ts";

/** A shape whose fields do not fit together. `why` says what was found. */
export function shapeUnfit(where: InFile, why: string, expected: string, example: string): Diagnostic {
  return {
    code: "SHAPE-UNFIT",
    severity: "error",
    message: `This shape cannot be cut as written: ${why}; ${expected}.`,
    hint: `For example \`${example}\`.`,
    path: where.path,
    at: where.at,
  };
}
