import type { Ticks } from "../length/types.ts";
import type { PatchShape } from "../quilt/units/types.ts";
import type { Print } from "../spec/types.ts";

/** Pieces of one letter that are cut with a template. */
export interface TemplateUse {
  /** Index into the plan's `fabrics`, and into that fabric's `pieces`. */
  fabric: number;
  piece: number;
  /** How many are cut with the template as drawn, and how many with it turned face down. */
  asDrawn: number;
  reversed: number;
  /** `rectangle`: one from each piece of that letter; `strip`: one after another from a strip. */
  from: "rectangle" | "strip";
}

/**
 * An outline to copy at full size. The lines lie as the cloth does: y along the selvage, which is the grain; on a
 * print whose up runs across the fabric, up is to the right. Clockwise corners from the upper left corner of the
 * box round the cut line.
 */
export interface Template extends PatchShape {
  /** `T1`, `T2` ... in the order of the fabrics and their letters. */
  name: string;
  /** The box round the cut line. */
  across: Ticks;
  along: Ticks;
  /** The print it must lie straight on; `none` when it may be turned by quarters. */
  print: Print;
  uses: TemplateUse[];
}
