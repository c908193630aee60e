import type { Ticks } from "../length/types.ts";
import type { FoundationWork } from "../quilt/foundation/types.ts";

/** The lines of one folded part, in the order of sewing: every upright one, then the level ones. */
export interface FoldedLines {
  letter: string;
  /** How many lines there are each way, and how long each is sewn. */
  upright: number;
  uprightLength: Ticks;
  level: number;
  levelLength: Ticks;
  /** Crossings to pin on each level line, counted from the left: the middle first, then outwards. */
  pins: number[];
  /** Size once all lines are sewn, seam allowances included. */
  sewn: { across: Ticks; down: Ticks };
}

/** What is made on gridded foundation, and how its lines are sewn. */
export interface FoundationMaking extends FoundationWork {
  /** One entry for each folded part; empty when it is pieced. */
  lines: FoldedLines[];
}
