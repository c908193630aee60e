import type { ReadTop } from "./read-top.ts";
import type { Junction } from "./seams.ts";
import type { PinOrder } from "./types.ts";

/**
 * Where seams meet along each seam between two rows, in the order of pinning: the place nearest the middle first,
 * then outwards. Corners of blocks are pinned; where a seam has none, whatever meets along it. Common practice, no
 * source.
 */
export function pinOrders(
  read: ReadTop,
  junctions: readonly Junction[],
  place: (x: number, y: number) => { x: number; y: number },
): PinOrder[] {
  const { centre } = read;
  if (centre.kind !== "join" || centre.way !== "down") return [];
  const along = new Map<number, Junction[]>();
  for (const junction of junctions) {
    if (!junction.a.upright) continue;
    const own = along.get(junction.y) ?? [];
    own.push(junction);
    along.set(junction.y, own);
  }
  return centre.parts.slice(1).flatMap(({ box }, i): PinOrder[] => {
    const all = along.get(box.y) ?? [];
    const corners = all.filter(({ a, b }) => a.joining.startsWith("top.") && b.joining.startsWith("top."));
    const met = (corners.length > 0 ? corners : all).sort((p, q) => p.x - q.x);
    if (met.length === 0) return [];
    // On point the seam is as long as the longer of the rows it joins.
    const above = centre.parts[i]?.box ?? box;
    const [left, right] = [Math.min(box.x, above.x), Math.max(box.x + box.across, above.x + above.across)];
    const off = met.map(({ x }) => Math.abs(2 * x - left - right));
    const rounds = [...new Set(off)].sort((p, q) => p - q);
    return [
      {
        row: i + 1,
        places: met.map(({ x, y }) => place(x, y)),
        order: rounds.map((round) => off.flatMap((each, n) => (each === round ? [n + 1] : []))),
      },
    ];
  });
}
