import { withUpAtTop } from "../turning/turning.ts";
import { asEighth } from "../turning/whole-turns.ts";
import type { Lie, Quarter, RecipePiece, WayToCut } from "./types.ts";

const QUARTERS: readonly Quarter[] = [0, 1, 2, 3];

/** A patch's print turned with the cloth it is cut from. */
function turnedLie(lie: Lie, quarters: Quarter): Lie {
  return { ...lie, print: asEighth(lie.print + 2 * quarters) };
}

/**
 * The four ways to lay a piece on a print. At turn `t` the print's up points `t` quarter-turns clockwise of
 * where it pointed at turn 0, in every patch made from the piece; the rest is told with the print's up at the top.
 */
export function waysToCut(piece: RecipePiece): readonly WayToCut[] {
  const { across, along, diagonal, template } = piece;
  return QUARTERS.map((turn) => ({
    turn,
    ...withUpAtTop({ across, along, diagonal, template }, turn),
    lies: piece.lies.map((list) => list.map((one) => turnedLie(one, turn))),
  }));
}
