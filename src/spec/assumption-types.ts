import type { Ticks } from "../length/types.ts";

/** What the reader took for granted. A length that moves belongs to the design and goes to the marks of another ruler. */
export type Assumed =
  | { is: "bare-numbers"; inches: boolean }
  | { is: "ruler-marks"; mark: Ticks }
  | { is: "ruler-length"; length: Ticks }
  | { is: "mat-length"; length: Ticks }
  | { is: "fold" }
  | { is: "cutting" }
  | { is: "leftovers-kept"; length: Ticks }
  | { is: "joined-from"; length: Ticks }
  | { is: "usable-width"; usable: Ticks; width: Ticks; selvage: Ticks }
  | { is: "usable-width-tried"; usable: Ticks }
  | { is: "selvage"; length: Ticks }
  | { is: "straightening"; length: Ticks }
  | { is: "straightening-to-line"; length: Ticks; moves: true }
  | { is: "sold-in"; step: Ticks; unit: "yd" | "m" | "in" | "cm" }
  /** Where a bolt ends at the shop. */
  | { is: "bolt"; length: Ticks; unit: "yd" | "m" | "in" | "cm" }
  | { is: "shrinkage" }
  | { is: "print" }
  | { is: "squaring"; off: Ticks }
  | { is: "seam-of-shapes"; length: Ticks }
  | { is: "seam"; length: Ticks; moves: true }
  | { is: "directional-prints" }
  | { is: "mitred-over-long"; length: Ticks; moves: true }
  | { is: "binding-width"; length: Ticks; moves: true }
  | { is: "binding-extra"; length: Ticks; moves: true }
  | { is: "backing-overhang"; length: Ticks; moves: true }
  | { is: "wadding-overhang"; length: Ticks; moves: true }
  | { is: "foundation-way" }
  | { is: "foundation-per"; per: "unit" | "motif" | "block" | "row" }
  | { is: "foundation-allowance"; squares: number }
  | { is: "foundation-ease"; length: Ticks; moves: true }
  /** Words of the file. */
  | { is: "foundation-kept"; hold: string; after: string }
  | { is: "set-squaring"; off: Ticks }
  | { is: "restated"; mark: Ticks };

/** One default the reader filled in, so that the plan can say what was assumed. */
export interface Assumption {
  /** Fabric name, or empty for the whole file. */
  fabric: string;
  of: Assumed;
  /** It holds for the fabrics that do not say otherwise. */
  elsewhere?: true;
}
