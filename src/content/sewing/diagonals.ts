import type { FabricPlan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";

type Piece = FabricPlan["pieces"][number];

/** Where a print's heads point as the cloth lies on the mat, the selvage up and down; empty without a print. */
function headsOnCloth({ print }: Pick<FabricPlan, "print">, words: Words): string {
  if (print.kind === "none") return "";
  return words.units.heads(print.axis === "across" ? 2 : 0, print.kind === "two-way");
}

/**
 * Which diagonal a piece is cut on; empty where it does not matter. A plain rectangle has no heads to tell how it lies:
 * laid on its long side the same corners would give mirror images.
 */
export function diagonalOf(
  { diagonal, across, along }: Piece,
  { print }: Pick<FabricPlan, "print">,
  words: Words,
): string {
  if (diagonal === "any") return "";
  const line = words.units.line[diagonal];
  return print.kind === "none" && across !== along ? words.units.standing(line, across < along) : line;
}

/** The heads are told of a piece only where they say how it lies under the ruler. */
export function headsOfCut(piece: Piece, fabric: Pick<FabricPlan, "print">, words: Words): string {
  return piece.diagonal === "any" && piece.subcut === "once-diagonal" ? "" : headsOnCloth(fabric, words);
}
