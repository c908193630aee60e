import { tell } from "./tell.ts";

import type { Diagnostic, InFile } from "./types.ts";

/** How the fields of a shape do not fit together. Kinds and fields are words of the file. */
export type ShapeFault =
  | { is: "angle"; found: string; least: number; most: number }
  /** A field that this kind has not; `takes` are those it may have. */
  | { is: "odd"; kind: string; field: string; takes: readonly string[] }
  | { is: "missing"; kind: string; field: string; needs: readonly string[] }
  /** Height and angle of a triangle: one says the other. */
  | { is: "both" }
  /** The slanting sides of a trapezoid meet below its height. */
  | { is: "sides-meet" };

/** What is told of each, to be put in words. */
export interface ShapesFacts {
  shapeUnfit: ShapeFault;
}

/** A shape whose fields do not fit together. */
export function shapeUnfit(where: InFile, fault: ShapeFault): Diagnostic {
  return tell("SHAPE-UNFIT", "error", where, "shapeUnfit", fault);
}
