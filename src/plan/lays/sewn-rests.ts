import type { CutPiece } from "../../cutlist/types.ts";
import type { Leftover } from "../types.ts";

/**
 * Cloth of pieces that sewing leaves: the end of every joined run that what is cut from it does not take, and the sides of
 * panels sewn side by side and the ends of strips longer than their set. Derived geometry: a run of k strips has their sum, less (k - 1) joins, less its lengths.
 * @param kits cut together; each joins its own share of the strips
 */
export function restsOfSewing(pieces: readonly CutPiece[], kits: number): Leftover[] {
  const runs = new Map<string, CutPiece[]>();
  const rests: Leftover[] = [];
  pieces.forEach((piece, index) => {
    const { joined, along } = piece;
    // In a class of several sorts of kits it lies with those who sew them.
    if (piece.inKits !== undefined) return;
    for (const { cause, count, across } of piece.rests ?? [])
      rests.push({ lay: -1, across, along, count, cause });
    if (joined === undefined) return;
    const key = joined.run === undefined ? `piece ${index}` : `run ${joined.run}`;
    runs.set(key, [...(runs.get(key) ?? []), piece]);
  });
  for (const sources of runs.values()) {
    const [first] = sources;
    if (first?.joined === undefined) continue;
    const count = first.joined.perKit === true ? kits : 1;
    const strips = sources.reduce((sum, source) => sum + source.count, 0) / count;
    const cloth = sources.reduce((sum, source) => sum + source.across * source.count, 0) / count;
    const across = cloth - (strips - 1) * first.joined.loss - first.joined.length;
    if (across > 0) rests.push({ lay: -1, across, along: first.along, count, cause: "run-end" });
  }
  return gathered(rests);
}

/** Rests of one size and cause as one. */
function gathered(rests: readonly Leftover[]): Leftover[] {
  const found = new Map<string, Leftover>();
  for (const rest of rests) {
    const key = `${rest.across} ${rest.along} ${rest.cause}`;
    found.set(key, { ...rest, count: rest.count + (found.get(key)?.count ?? 0) });
  }
  return [...found.values()];
}
