import type { FabricPlan, Part, Plan } from "../plan/types.ts";
import { isStripOrBand, leaves, piecesIn, walk } from "./walk.ts";

/** Kits said to come from strips of their own do: every strip fills some, and what it holds is what they need. */
export function checkKits(fabric: FabricPlan, { kits = 1, sorts = [] }: Plan): string[] {
  const { kitShares, lays, pieces } = fabric;
  const mixed = checkSorts(fabric, sorts);
  if (mixed.length > 0) return mixed;
  if (!(Number.isSafeInteger(kits) && kits >= 1)) return [`${kits} kits are no number of kits`];
  if (kitShares === undefined) return [];
  const faults: string[] = [];
  if (lays.length === 0 || lays.some(({ source }) => source !== "bolt"))
    return ["kits are filled from strips of a bolt that is not the only cloth"];
  const strips = new Map<string, Part>();
  for (const [bolt, { root }] of lays.entries())
    for (const { part } of walk(root)) if (isStripOrBand(part)) strips.set(`${bolt} ${part.number}`, part);
  const given = new Set<string>();
  let next = 1;
  for (const { first, last, strips: own, bolts } of kitShares) {
    const where = `kits ${first} to ${last}`;
    if (first !== next || last < first) faults.push(`${where} do not follow kit ${next - 1}`);
    next = last + 1;
    const held = pieces.map(() => 0);
    if (bolts?.length !== (lays.length === 1 ? undefined : own.length))
      faults.push(`${where} are filled from strips of bolts that are not told`);
    for (const [i, number] of own.entries()) {
      const key = `${bolts?.[i] ?? 0} ${number}`;
      const strip = strips.get(key);
      if (strip === undefined) faults.push(`${where} are filled from strip ${number}, which is not there`);
      if (given.has(key)) faults.push(`strip ${number} fills two groups of kits`);
      given.add(key);
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

/** For a class of several sorts of kits: what all kits of every sort get of a bag is all that is cut of it. */
function checkSorts({ pieces }: FabricPlan, sorts: NonNullable<Plan["sorts"]>): string[] {
  return pieces.flatMap(({ letter, count, inKits = [] }) => {
    if (inKits.length !== sorts.length) return [`${letter} is dealt to ${inKits.length} sorts of kits`];
    if (sorts.length === 0) return [];
    let dealt = 0;
    for (const [i, { kits, each }] of inKits.entries()) {
      if (kits !== sorts[i]?.kits || !Number.isSafeInteger(each) || each < 0)
        return [`${letter}: ${kits} kits with ${each} each are not those of the class`];
      dealt += kits * each;
    }
    return dealt === count ? [] : [`kits get ${dealt} of ${letter}, cut are ${count}`];
  });
}
