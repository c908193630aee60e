import type { Rational } from "../../length/rational.ts";
import * as q from "../../length/rational.ts";
import { twoSeams } from "../terms/formulas.ts";
import { rectangle } from "./outlines/outlines.ts";
import * as r from "./outlines/roots.ts";
import { lie, type PieceDraft, patchPiece, plain, type SetDraft, withSeamsAdded } from "./recipe.ts";
import type { HowMade, UnitDesign, UnitPatch } from "./types.ts";

/** One cell of a unit made of equal rectangles. */
export interface GridCell {
  column: number;
  row: number;
  role: string;
  spot: string;
}

/** Finished size of a cell. */
export function cellSize(
  design: UnitDesign,
  columns: number,
  rows: number,
): { across: Rational; along: Rational } {
  return {
    across: q.div(design.across, q.fromInteger(columns)),
    along: q.div(design.along, q.fromInteger(rows)),
  };
}

/** The patches of a unit of equal rectangles. */
export function gridPatches(
  cells: readonly GridCell[],
  size: { across: Rational; along: Rational },
): UnitPatch[] {
  return cells.map((cell) => ({
    role: cell.role,
    spot: cell.spot,
    outline: rectangle(
      q.mul(size.across, q.fromInteger(cell.column)),
      q.mul(size.along, q.fromInteger(cell.row)),
      size.across,
      size.along,
    ),
    shape: "cell",
    facing: 0,
  }));
}

/** The same patches each cut by itself. */
export function gridPieces(
  cells: readonly GridCell[],
  size: { across: Rational; along: Rational },
  how: HowMade,
): PieceDraft[] {
  return cells.map((cell) =>
    patchPiece(cell.role, r.whole(size.across), r.whole(size.along), how, [[lie(0, cell.spot, 0)]]),
  );
}

/** A column of a unit, sewn as strips and cut off as a segment. Turned columns are the same segment half round. */
export interface SetColumn {
  /** Spots from top to bottom, for each segment; `turned` segments list theirs as the strips lie. */
  segments: readonly { spots: readonly string[]; turned: boolean }[];
  roles: readonly string[];
}

/** Strip set whose segments are columns `across` wide of cells with the heights given. */
export function columnSet(
  name: string,
  column: SetColumn,
  across: Rational,
  heights: readonly Rational[],
  how: HowMade,
): SetDraft {
  return {
    name,
    cut: "square",
    segment: plain(withSeamsAdded(r.whole(across), how)),
    segmentsPerUnit: column.segments.length,
    shape: null,
    strips: column.roles.map((role, i) => ({
      role,
      width: plain(withSeamsAdded(r.whole(heights[i] ?? q.ZERO), how)),
      formula: twoSeams("height"),
      lies: column.segments.map((segment) => [lie(0, segment.spots[i] ?? "", segment.turned ? 4 : 0)]),
    })),
  };
}
