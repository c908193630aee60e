import type { Rational } from "../../length/rational.ts";
import * as q from "../../length/rational.ts";
import { diagonalOf, halfSquareExtra, quarterSquareExtra, sideOf, tradeExtras } from "./allowance.ts";
import type { RootSum } from "./outlines/roots.ts";
import * as r from "./outlines/roots.ts";
import { finishPiece, lie, square } from "./recipe.ts";
import type { HowMade, RecipePiece } from "./types.ts";

/*
 * Blocks standing on their points leave triangles at the edges. Their outer edges lie on the straight grain
 * when side triangles are quarters of a square and corner triangles are halves.
 *
 *     /\  side /\          side:   long edge = block x root 2, a square cut on both diagonals gives 4
 *    /  \/\  \/  \         corner: short edge = block / root 2, a square cut on one diagonal gives 2
 */

/** Squares for the setting triangles, rounded to the marks. */
export interface SettingPieces {
  /** Cut on both diagonals: one triangle for each edge of the quilt, print upright in all of them at turn 0. */
  side: RecipePiece;
  /** Cut on the rising diagonal: the corners at the top left and bottom right. */
  risingCorner: RecipePiece;
  /** Cut on the falling diagonal: the corners at the top right and bottom left. */
  fallingCorner: RecipePiece;
}

// The trade's round number for root 2 ("On-point triangle chart", Tani; "Quilty Math", Christa Quilts).
const TRADE_ROOT2 = q.rational(1414n, 1000n);

/**
 * Squares to cut for the triangles round blocks set on point.
 * Exact: side = block x root 2 + seam x (2 + 2 root 2), corner = block / root 2 + seam x (2 + root 2)
 * (derived geometry). Trade: block x 1.414 + 1 1/4 and block / 1.414 + 7/8. Both are rounded up to the
 * mark; between 3 and 16 in, in half-inch steps, they part at 4, 5 1/2, 7, 8 1/2, 10, 11 1/2, 13 and 14 1/2 in
 * (`otherRounding` is set there).
 * @param block finished side of the block, sashing included when blocks are sashed
 */
export function settingPieces(block: Rational, how: HowMade): SettingPieces {
  const finished = r.whole(block);
  const extras = tradeExtras(how.seam);
  const room: RootSum = r.whole(how.oversize);
  const side = square({
    role: "side-triangles",
    side: {
      exact: r.plus(diagonalOf(finished), quarterSquareExtra(how.seam)),
      trade: r.whole(q.add(q.mul(block, TRADE_ROOT2), extras.quarter)),
      room,
    },
    subcut: "twice-diagonal",
    formula: {
      exact: { rule: "setting-side" },
      trade: { rule: "setting-side", trade: extras.named },
    },
    lies: [["top", "right", "bottom", "left"].map((spot) => lie(0, spot, 0))],
  });
  const corner = {
    role: "corner-triangles",
    side: {
      exact: r.plus(sideOf(finished), halfSquareExtra(how.seam)),
      trade: r.whole(q.add(q.div(block, TRADE_ROOT2), extras.half)),
      room,
    },
    subcut: "once-diagonal" as const,
    formula: {
      exact: { rule: "setting-corner" } as const,
      trade: { rule: "setting-corner", trade: extras.named } as const,
    },
  };
  const corners = (diagonal: "rising" | "falling", spots: readonly string[]): RecipePiece =>
    finishPiece(square({ ...corner, diagonal, lies: [spots.map((spot) => lie(0, spot, 0))] }), how);
  return {
    side: finishPiece(side, how),
    risingCorner: corners("rising", ["top-left", "bottom-right"]),
    fallingCorner: corners("falling", ["top-right", "bottom-left"]),
  };
}
