import type { CutList, CutPiece, NestedLie } from "../cutlist/types.ts";
import type {
  CuttingStyle,
  JoinedRun,
  Nest,
  PackingItem,
  PackingProblem,
  StackLimit,
} from "../engine/types.ts";
import type { Ticks } from "../length/types.ts";
import type { FixedStock, SquareUp } from "./types.ts";

/** Cloth to hand: fat quarters, precuts, scraps. Usable size, as it lies with its selvage upright. */
export interface FixedPiece {
  name: string;
  across: Ticks;
  along: Ticks;
  /** How many are to hand, or can be of use. */
  available: number;
  /** Where it comes from. Default `to-hand`. */
  from?: FixedStock["from"];
  /** A strip that is cut already: it is only subcut. Default false. */
  strip?: boolean;
  /** Left of what is cut already: it is used up first. Default false. */
  begun?: boolean;
  /** A rest that ends where the fabric does: what is measured of the fabric's width holds for it. Default false. */
  atEdge?: boolean;
  /** Taken off each edge before; the size is what that leaves. Default 0. */
  trim?: Ticks;
  /** Lost in squaring it, of each side. Default: what the fabric says. */
  squareUp?: SquareUp;
  /** Price of one in hundredths; null without one. Default null. */
  price?: number | null;
  /** Sign or code of the price. Default: empty. */
  currency?: string;
}

/** Cloth that is square as it is. */
export const UNSQUARED: SquareUp = { across: 0, along: 0 };

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
 * a bolt the least money is spent, then as few pieces of cloth as can be are cut into.
 * A full-width piece is as wide as the bolt posed here, so that other widths can be tried.
 */
export function posePackingProblem(
  { pieces }: CutList,
  { usable, fixedStock }: Sources,
  style: CuttingStyle,
  stacks?: StackLimit,
): PackingProblem {
  const items = pieces.map(
    (piece): PackingItem => ({
      across: piece.fullWidth && usable !== null ? usable : piece.across,
      along: piece.along,
      demand: piece.count,
      turnable: piece.turnable,
      place: piece.cut === "lengthwise" ? "bands" : piece.cut,
      ...openRun(piece),
      ...nestOf(piece),
    }),
  );
  // What is left of a strip is joined as it is, and shapes stand in whole strips: without stacked subcuts.
  const joins = items.some(({ run, nest }) => run !== undefined || nest !== undefined);
  return {
    style: joins ? "strips-2" : style,
    ...(joins || style === "strips-2" || stacks === undefined ? {} : { stacks }),
    items,
    roll: usable === null ? null : { width: usable, available: null, costPerLength: 1 },
    sheets: fixedStock.map(
      ({ across, along, available, strip = false, price = null, squareUp = UNSQUARED }) => ({
        // One side is straightened before the first cut, the other as the end of every strip.
        across: Math.max(1, across - squareUp.across),
        along: Math.max(1, along - squareUp.along),
        available,
        cost: usable === null ? (price ?? 0) * perMoney(fixedStock) + 1 : 0,
        firstCut: strip ? "none" : "either",
      }),
    ),
  };
}

function nestOf({ nest }: CutPiece): { nest?: Nest } {
  if (nest === undefined) return {};
  const lie = ({ turned, height, first, advances }: NestedLie) => ({ turned, height, first, advances });
  return { nest: { across: nest.across.map(lie), along: nest.along.map(lie) } };
}

/** A run of which it is not settled yet how many strips and which ends make it. */
function openRun({ joined }: CutPiece): { run?: JoinedRun } {
  if (joined === undefined || joined.run !== undefined || joined.perKit === true) return {};
  const { length, loss, leastEnd } = joined;
  return { run: { length, loss, leastEnd } };
}

/** What a hundredth of the currency counts beside one piece of cloth: more than all pieces together. */
function perMoney(fixedStock: readonly FixedPiece[]): number {
  return 1 + fixedStock.reduce((sum, { available }) => sum + available, 0);
}
