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
  if (centre.kind !== "join") return [];
  const rows = centre.way === "down";
  const along = new Map<number, Junction[]>();
  for (const junction of junctions) {
    if (junction.a.upright !== rows) continue;
    const line = rows ? junction.y : junction.x;
    const own = along.get(line) ?? [];
    own.push(junction);
    along.set(line, own);
  }
  return centre.parts.slice(1).flatMap(({ box }, i): PinOrder[] => {
    const all = along.get(rows ? box.y : box.x) ?? [];
    const corners = all.filter(({ a, b }) => a.joining.startsWith("top.") && b.joining.startsWith("top."));
    const far = ({ x, y }: { x: number; y: number }): number => (rows ? x : y);
    const met = (corners.length > 0 ? corners : all).sort((p, q) => far(p) - far(q));
    if (met.length === 0) return [];
    // On point the seam is as long as the longer of the rows it joins.
    const above = centre.parts[i]?.box ?? box;
    const start = Math.min(far(box), far(above));
    const end = Math.max(...[box, above].map((each) => far(each) + (rows ? each.across : each.down)));
    const off = met.map((place) => Math.abs(2 * far(place) - start - end));
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
