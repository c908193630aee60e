import type { Rational } from "../length/rational.ts";
import type { BlockSpec, CellSpec, QuarterTurn } from "../spec/quilt-types.ts";
import type { UnitDesign, UnitKind } from "./units/types.ts";

/*
 * Geometry on the way from the file to the top: used inside this room only, so it may hold exact fractions
 * and functions.
 */

/** A unit in its place in a block; its fabrics depend on the colourway. */
export interface LaidUnit {
  cell: CellSpec;
  kind: UnitKind;
  /** Finished unit at turn 0. */
  design: UnitDesign;
  /** The same as it is sewn, in a block that is sewn larger and trimmed; absent where that is the design. */
  asSewn?: UnitDesign;
  /** Method names to try, the maker's or the file's first; the first is the maker's when `chosen`. */
  method: string | null;
  turn: QuarterTurn;
  column: number;
  row: number;
  columns: number;
  rows: number;
  x: Rational;
  y: Rational;
  /** Size in the block, after the unit's turn. */
  across: Rational;
  down: Rational;
}

export interface LaidBlock {
  spec: BlockSpec;
  across: Rational;
  down: Rational;
  columns: number;
  rows: number;
  units: LaidUnit[];
  /**
   * Where its columns and lines end as they finish and as they are sewn, before the block is trimmed; absent where it
   * comes out true.
   */
  sewn?: { across: { at: Rational; to: Rational }[]; down: { at: Rational; to: Rational }[] };
}
