import type { Place } from "../diagnostics/types.ts";
import type { Ticks } from "../length/types.ts";
import type { AFTER } from "./key-words.ts";
import type { FabricWord } from "./quilt-types.ts";

/** A foundation printed with squares, on which blocks are made. */
export interface FoundationSpec {
  fabric: FabricWord;
  /** Side of one printed square. */
  grid: Ticks;
  /** Seams may lie half-way between two lines. */
  halves: boolean;
  /**
   * `pieced`: patch by patch on flat foundation, the finished design lies on the lines; `folded`: finished parts
   * laid edge to edge, each line between them folded and sewn on the printed line one allowance from the fold.
   */
  way: "pieced" | "folded";
  /** What one piece of foundation carries. */
  per: "unit" | "motif" | "block" | "row";
  /** Squares between the outermost seam line and the edge of the foundation. */
  allowance: number;
  /** Patches are cut larger by this both ways; only `pieced`. */
  ease: Ticks;
  hold: "fusible" | "sew-in";
  /** As the file says it. */
  after: (typeof AFTER)[number];
  /** Keys of the blocks made on it; null: all of more than one patch. */
  blocks: FabricWord[] | null;
  path: string;
  at: Place | null;
}
