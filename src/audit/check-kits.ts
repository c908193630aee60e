import type { FabricPlan, Part, Plan } from "../plan/types.ts";
import { isStripOrBand, leaves, piecesIn, walk } from "./walk.ts";

/** Kits said to come from strips of their own do: every strip fills some, and what it holds is what they need. */
export function checkKits(fabric: FabricPlan, { kits = 1 }: Plan): string[] {
  const { kitShares, lays, pieces } = fabric;
  if (!(Number.isSafeInteger(kits) && kits >= 1)) return [`${kits} kits are no number of kits`];
  if (kitShares === undefined) return [];
  const faults: string[] = [];
  const [bolt, another] = lays;
  if (bolt === undefined || bolt.source !== "bolt" || another !== undefined)
    return ["kits are filled from strips of a bolt that is not the only cloth"];
  const strips = new Map<number, Part>();
  for (const { part } of walk(bolt.root)) if (isStripOrBand(part)) strips.set(part.number, part);
  const given = new Set<number>();
  let next = 1;
  for (const { first, last, strips: own } of kitShares) {
    const where = `kits ${first} to ${last}`;
    if (first !== next || last < first) faults.push(`${where} do not follow kit ${next - 1}`);
    next = last + 1;
    const held = pieces.map(() => 0);
    for (const number of own) {
      const strip = strips.get(number);
      if (strip === undefined) faults.push(`${where} are filled from strip ${number}, which is not there`);
      if (given.has(number)) faults.push(`strip ${number} fills two groups of kits`);
      given.add(number);
      for (const leaf of strip === undefined ? [] : leaves(strip)) {
        if (leaf.piece !== null) held[leaf.piece] = (held[leaf.piece] ?? 0) + piecesIn(leaf);
      }
    }
    pieces.forEach(({ letter, count }, piece) => {
      const wanted = (count / kits) * (last - first + 1);
      if (held[piece] !== wanted) faults.push(`${where} get ${held[piece]} of ${letter}, wanted ${wanted}`);
    });
  }
  if (next !== kits + 1) faults.push(`${next - 1} of ${kits} kits are filled`);
  if (given.size !== strips.size) faults.push(`${strips.size - given.size} strips fill no kits`);
  return faults;
}
