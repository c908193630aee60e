import type { Place } from "../diagnostics/types.ts";
import type { Ticks } from "../length/types.ts";
import type { FoundationWork } from "./foundation/types.ts";
import type { Eighth, Recipe } from "./units/types.ts";

/** How many are wanted for something, in words. */
export interface Wanted {
  text: string;
  count: number;
}

/** Units wanted with the prints of their directional parts pointing one particular way. */
export interface UnitWant {
  /** Part to direction of its print's up in the unit's frame, in eighths; only parts with a direction. */
  prints: Record<string, Eighth>;
  count: number;
}

/** One finished patch of a unit, as the cut list needs it. */
export interface SpotFacts {
  spot: string;
  role: string;
  shape: string;
  facing: Eighth;
  /** Finished area, and with its seam allowances inside the raw unit, in square ticks (to the nearest). */
  finished: number;
  raw: number;
}

/** All units of one kind, size, method and set of fabrics. */
export interface UnitDemand {
  /** In trade words: `flying geese 4 x 2 in`. */
  text: string;
  /** Ways to make it, the wanted one first. */
  recipes: Recipe[];
  /** True when the maker wrote the method. */
  chosen: boolean;
  /** Part to fabric. */
  fabrics: Record<string, string>;
  spots: SpotFacts[];
  wants: UnitWant[];
  uses: Wanted[];
  path: string;
  at: Place | null;
}

/** Long straight strips: borders and long sashes. Sizes are as cut, seam allowance included. */
export interface StripDemand {
  text: string;
  fabric: string;
  /** Along the strip, any over-long allowance included. */
  run: Ticks;
  /** Across the strip. */
  width: Ticks;
  roundedUp: boolean;
  count: number;
  /**
   * Where a directional print points: `along` the strip's run, `across` it, or null when it does not matter.
   */
  print: "along" | "across" | null;
  cut: "strips" | "lengthwise" | "either";
  join: "no" | "straight" | "diagonal";
  note: string;
  /** Finished area of all of them, in square ticks to the nearest. */
  finished: number;
  path: string;
  at: Place | null;
}

/** Side or corner setting triangles of one fabric. */
export interface TriangleDemand {
  text: string;
  fabric: string;
  subcut: "once-diagonal" | "twice-diagonal";
  /** Cut side of the square they come from. */
  square: Ticks;
  roundedUp: boolean;
  otherRounding: Ticks | null;
  /**
   * Count by where the right angle points, as the cloth lies with the print's up at the top: eighths. A fabric
   * without direction has them all under 0.
   */
  facing: { eighth: Eighth; count: number }[];
  /** Finished area of all of them, in square ticks to the nearest. */
  finished: number;
  path: string;
  at: Place | null;
}

/** Everything the top is sewn from, ready to be turned into pieces of cloth. Plain data. */
export interface QuiltWork {
  units: UnitDemand[];
  strips: StripDemand[];
  triangles: TriangleDemand[];
  /** What is made on gridded foundation; null when nothing is. */
  foundation: FoundationWork | null;
  /** Raw size of the finished top, edge to edge, rounded up to the ruler mark. */
  top: { across: Ticks; down: Ticks };
}
