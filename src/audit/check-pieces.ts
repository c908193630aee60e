import type { FabricPlan, Lay } from "../plan/types.ts";
import { at, type Placed, piecesIn, walk } from "./walk.ts";

/** Every piece is cut to its size, in a turn and place it is allowed, exactly as often as wanted. */
export function checkPieces({ pieces, lays, usable, done }: FabricPlan): string[] {
  const faults: string[] = [];
  const counts = pieces.map(() => 0);
  const look = ({ part, within }: Placed, source: Lay["source"]): void => {
    if (part.piece === null) return;
    const piece = pieces[part.piece];
    if (piece === undefined) {
      faults.push(`${at(part)} is piece ${part.piece}, which is not in the cut list`);
      return;
    }
    counts[part.piece] = (counts[part.piece] ?? 0) + piecesIn(part);
    if (part.turned && !piece.turnable) faults.push(`${at(part)} lies turned, but ${piece.letter} must not`);
    const [across, along] = part.turned ? [piece.along, piece.across] : [piece.across, piece.along];
    // How a run of shapes fills its part is looked at shape by shape.
    if (part.shapes === undefined && (part.across !== across || part.along !== along))
      faults.push(`${at(part)} is not the size of ${piece.letter}, ${across} x ${along}`);
    // Where a piece may lie is a rule for the bolt: on cloth of a fixed size its grain is all that matters.
    const inBand = within.some(({ role }) => role === "band");
    if (source === "bolt" && (inBand ? piece.cut === "strips" : piece.cut === "lengthwise"))
      faults.push(
        `${at(part)} is cut ${inBand ? "lengthwise" : "from a strip"}, which ${piece.letter} must not be`,
      );
  };
  for (const { root, source } of lays) for (const placed of walk(root)) look(placed, source);
  pieces.forEach(({ letter, count, fullWidth, across }, index) => {
    const still = count - (done?.cut[index] ?? 0);
    if (counts[index] !== still) faults.push(`${letter} is cut ${counts[index]} times, wanted ${still}`);
    if (fullWidth && across !== usable) faults.push(`${letter} is not as wide as the fabric`);
  });
  const letters = new Set(pieces.map(({ letter }) => letter));
  if (letters.size < pieces.length) faults.push("two pieces have the same letter");
  return faults;
}
