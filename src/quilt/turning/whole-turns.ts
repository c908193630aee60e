import type { QuarterTurn } from "../../spec/quilt-types.ts";
import type { Eighth, Quarter } from "../units/types.ts";

/*
 * Whole turns: numbers taken into one round. What is no whole eighth or quarter would lay a print or a block askew, so it
 * is our fault wherever it comes from, and throws.
 */

const EIGHTHS: readonly Eighth[] = [0, 1, 2, 3, 4, 5, 6, 7];
const QUARTERS: readonly Quarter[] = [0, 1, 2, 3];

function within<T>(round: readonly T[], turn: number): T {
  const found = round[((turn % round.length) + round.length) % round.length];
  if (found === undefined) throw new Error(`${turn} is no whole turn of ${round.length} to the round`);
  return found;
}

/** Eighths of a turn, in one round. */
export const asEighth = (eighths: number): Eighth => within(EIGHTHS, eighths);

/** Quarters of a turn, in one round. */
export const asQuarter = (quarters: number): Quarter => within(QUARTERS, quarters);

const IN_DEGREES = [0, 90, 180, 270] as const satisfies readonly QuarterTurn[];

/** Degrees that are whole quarters of a turn, in one round. */
export const asQuarterTurn = (degrees: number): QuarterTurn => IN_DEGREES[asQuarter(degrees / 90)];
