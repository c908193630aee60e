import type { PlaceTold, Purpose } from "../diagnostics/purposes.ts";
import type { UnitTold } from "../diagnostics/quilts/quilt.ts";
import type { Place } from "../diagnostics/types.ts";
import type { Ticks } from "../length/types.ts";
import type { FoundationWork } from "./foundation/types.ts";
import type { Eighth, Recipe } from "./units/types.ts";

/** How many are wanted in a place. */
export interface Wanted {
  place: PlaceTold;
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
  /**
   * Of a right-angled triangle: from the middle of its long side to its right angle, in eighths clockwise from up
   * (a slanting one by its quarter of the compass). Null for any other shape.
   */
  pointing: Eighth | null;
  /** Finished area, and with its seam allowances inside the raw unit, in square ticks (to the nearest). */
  finished: number;
  raw: number;
}

/** A unit of a block in its place: which demand it belongs to, and which of its wants. */
interface UnitPlace {
  demand: number;
  want: number;
}

/** Blocks placed alike: the same design, turned alike. */
export interface BlockPlacing {
  /** Index into the top's `designs`; null for plain cloth. */
  design: number | null;
  /** Degrees clockwise, as `PlacedBlock.turn`. */
  turn: number;
  count: number;
  /** Indices into the top's `blocks`; empty for plain cloth. */
  blocks: number[];
  /** By unit of the design; null where a unit has no way to be made. */
  units: (UnitPlace | null)[];
}

/** All units of one kind, size, method and set of fabrics. */
export interface UnitDemand {
  told: UnitTold;
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
  purpose: Purpose;
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
  /** Cut over-long, and trimmed after it is sewn. */
  overLong: boolean;
  /** Finished area of all of them, in square ticks to the nearest. */
  finished: number;
  path: string;
  at: Place | null;
}

/** Side or corner setting triangles of one fabric. */
export interface TriangleDemand {
  part: "side" | "corner";
  fabric: string;
  subcut: "once-diagonal" | "twice-diagonal";
  /** Cut side of the square they come from. */
  square: Ticks;
  roundedUp: boolean;
  otherRounding: Ticks | null;
  /** The trade's constant was asked for and is too small here. */
  tradeShort: boolean;
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
  /** Which units the blocks take, by design and turn. */
  placings: BlockPlacing[];
  strips: StripDemand[];
  triangles: TriangleDemand[];
  /** What is made on gridded foundation; null when nothing is. */
  foundation: FoundationWork | null;
  /** Raw size of the finished top, edge to edge, rounded up to the ruler mark. */
  top: { across: Ticks; down: Ticks };
}
