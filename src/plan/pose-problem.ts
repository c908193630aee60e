import type { CutList } from "../cutlist/types.ts";
import type { CuttingStyle, PackingItem, PackingProblem } from "../engine/types.ts";
import type { Ticks } from "../length/types.ts";

/** Cloth to hand: fat quarters, precuts, scraps. Usable size, as it lies with its selvage upright. */
export interface FixedPiece {
  name: string;
  across: Ticks;
  along: Ticks;
  /** How many are to hand. */
  available: number;
}

/** Where the cloth comes from. */
export interface Sources {
  /** Usable width of the bolt; null when nothing may be bought. */
  usable: Ticks | null;
  /** Used before the bolt, whichever way the first cut suits. */
  fixedStock: readonly FixedPiece[];
}

/**
 * Puts a cut list to the engine: what is in trade words a piece becomes an item at the same index. Cloth
 * to hand costs nothing, so it is used first, and the objective is the length taken from the bolt. Without
 * a bolt each piece of cloth costs one, so that as few as can be are cut into.
 * A full-width piece is as wide as the bolt posed here, so that other widths can be tried.
 */
export function posePackingProblem(
  { pieces }: CutList,
  { usable, fixedStock }: Sources,
  style: CuttingStyle,
): PackingProblem {
  const items = pieces.map(
    (piece): PackingItem => ({
      across: piece.fullWidth && usable !== null ? usable : piece.across,
      along: piece.along,
      demand: piece.count,
      turnable: piece.turnable,
      place: piece.cut === "lengthwise" ? "bands" : piece.cut,
    }),
  );
  return {
    style,
    items,
    roll: usable === null ? null : { width: usable, available: null, costPerLength: 1 },
    sheets: fixedStock.map(({ across, along, available }) => ({
      across,
      along,
      available,
      cost: usable === null ? 1 : 0,
      firstCut: "either",
    })),
  };
}
