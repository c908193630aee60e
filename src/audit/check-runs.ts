import type { CutPiece } from "../cutlist/types.ts";
import type { FabricPlan } from "../plan/types.ts";

/**
 * Strips and ends joined end to end make what they are for: together, less what the joins take, at least the lengths
 * cut from them; all of one width, no end too short to join.
 */
export function checkRuns({ pieces }: FabricPlan): string[] {
  const runs = new Map<string, CutPiece[]>();
  pieces.forEach((piece, index) => {
    // Kits share out whole strips; the sewing audit follows each kit's own share.
    if (piece.joined === undefined || piece.joined.perKit === true) return;
    const key = piece.joined.run === undefined ? `piece ${index}` : `run ${piece.joined.run}`;
    runs.set(key, [...(runs.get(key) ?? []), piece]);
  });
  return [...runs.values()].flatMap(checkRun);
}

function checkRun(sources: readonly CutPiece[]): string[] {
  const faults: string[] = [];
  const { joined, along } = sources[0]!;
  if (joined === undefined) return faults;
  const { length, loss, leastEnd, lengths } = joined;
  const letters = sources.map(({ letter }) => letter).join(" and ");
  let made = 0;
  let joins = -1;
  for (const source of sources) {
    made += source.across * source.count;
    joins += source.count;
    const other = source.joined;
    if (source.along !== along || other === undefined || other.loss !== loss || other.length !== length)
      faults.push(`${letters} are joined in one run, and are not alike`);
    if (!source.fullWidth && source.across < leastEnd)
      faults.push(`${source.letter} is an end of ${source.across}, too short to join`);
    if (source.turnable) faults.push(`${source.letter} is joined, and may be turned`);
  }
  if (made - joins * loss < length)
    faults.push(`${letters} joined make ${made - joins * loss}, wanted ${length}`);
  const cut = lengths.reduce((sum, each) => sum + each.length * each.count, 0);
  if (lengths.length > 0 && cut !== length) faults.push(`${cut} is cut from a run of ${length}`);
  return faults;
}
