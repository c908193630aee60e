import { turnedShape } from "./shapes.ts";
import type { Diagonal, Eighth, Lie, Quarter, RecipePiece, WayToCut } from "./types.ts";

const QUARTERS: readonly Quarter[] = [0, 1, 2, 3];

function turnedDiagonal(diagonal: Diagonal, quarters: Quarter): Diagonal {
  if (diagonal === "any" || quarters % 2 === 0) return diagonal;
  return diagonal === "rising" ? "falling" : "rising";
}

/** A patch's print turned with the cloth it is cut from. */
function turnedLie(lie: Lie, quarters: Quarter): Lie {
  return { ...lie, print: ((lie.print + 2 * quarters) % 8) as Eighth };
}

/**
 * The four ways to lay a piece on a print. At turn `t` the print's up points `t` quarter-turns clockwise of
 * where it pointed at turn 0, in every patch made from the piece; sizes are told as the cloth lies, `along`
 * in the direction of the print's up.
 */
export function waysToCut(piece: RecipePiece): readonly WayToCut[] {
  return QUARTERS.map((turn) => ({
    turn,
    across: turn % 2 === 0 ? piece.across : piece.along,
    along: turn % 2 === 0 ? piece.along : piece.across,
    diagonal: turnedDiagonal(piece.diagonal, turn),
    lies: piece.lies.map((list) => list.map((one) => turnedLie(one, turn))),
    // Seen with the print's up at the top again, the patch lies turned the other way.
    template: piece.template === null ? null : turnedShape(piece.template, ((4 - turn) % 4) as Quarter),
  }));
}
