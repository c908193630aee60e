import type { Ticks } from "../length/types.ts";
import type { BorderPair } from "./quilts/design-faults.ts";
import type { UnitTold } from "./quilts/quilt.ts";

/** A border by the maker's own name for it, or by its number from the inside. */
export type BorderName = string | number;

/** Where in the quilt a unit goes. */
export type PlaceTold =
  | { in: "block"; block: string }
  /** Null: of plain cloth. */
  | { in: "sashes" | "cornerstones"; block: string | null }
  | { in: "border"; border: BorderName; block: string }
  | { in: "corners"; border: BorderName };

/** What a piece of cloth is cut for. */
export type Purpose =
  /** What the maker calls it. */
  | { for: "label"; label: string }
  /** A piece of a cut list without a label, by its place in the list, from 1; and by its size. */
  | { for: "number"; number: number }
  | { for: "size"; across: Ticks; along: Ticks }
  /** Parts of a unit, and what it is trimmed to; `made` is null where the piece is all of the unit. */
  | {
      for: "unit";
      places: readonly PlaceTold[];
      made: {
        kind: string;
        method: string;
        parts: readonly string[];
        trimTo: { across: Ticks; along: Ticks } | null;
      } | null;
    }
  | { for: "long-sashes" }
  | { for: "border"; border: BorderName; pair: BorderPair }
  /** So many of the triangles that the squares give are used. */
  | { for: "triangles"; part: "side" | "corner"; used: number; of: number }
  | { for: "binding"; bias: boolean; length: Ticks; fold: "single" | "double" }
  | { for: "backing" | "backing-panels" | "wadding" }
  /** A piece of foundation, in printed squares. */
  | {
      for: "foundation";
      per: "unit" | "motif" | "block" | "row";
      letter: string;
      across: number;
      down: number;
    }
  /** One run for all of these. */
  | { for: "several"; all: readonly Purpose[] }
  /** A shorter strip of the run for it. */
  | { for: "shorter-strip"; of: Purpose };

/** What a diagnostic calls a piece: what it is cut for, or the unit it is a part of. */
export type PieceTold = Purpose | UnitTold;

/** The same purposes once each, as one. */
export function together(purposes: readonly Purpose[]): Purpose {
  const unlike = [...new Map(purposes.map((purpose) => [JSON.stringify(purpose), purpose])).values()];
  const [first] = unlike;
  return unlike.length === 1 && first !== undefined ? first : { for: "several", all: unlike };
}
