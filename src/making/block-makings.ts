import type { UnitRecord } from "../cutlist/unit-record.ts";
import type { QuiltWork } from "../quilt/index.ts";
import type { BlockMaking, UnitInPlace } from "./types.ts";

/**
 * Blocks gathered by what is sewn alike: the same design out of the same heaps. A block turned in the quilt takes
 * other heaps only where a print has to stand upright all the same.
 */
export function blockMakings(work: QuiltWork, units: readonly UnitRecord[]): BlockMaking[] {
  const places = new Map<string, UnitInPlace>();
  for (const [unit, { demand, wants }] of units.entries())
    for (const [heap, want] of wants.entries()) places.set(`${demand} ${want}`, { unit, heap });
  // Without a print to mind all wants of a demand are one heap.
  const found = (demand: number, want: number): UnitInPlace | null =>
    places.get(`${demand} ${want}`) ?? places.get(`${demand} -1`) ?? null;
  const made = new Map<string, BlockMaking>();
  for (const { design, turn, count, units: cells } of work.placings) {
    if (design === null) continue;
    const own = cells.map((cell) => (cell === null ? null : found(cell.demand, cell.want)));
    const key = JSON.stringify([design, own]);
    const before = made.get(key);
    if (before === undefined) made.set(key, { design, turns: [turn], count, units: own });
    else {
      before.count += count;
      if (!before.turns.includes(turn)) before.turns.push(turn);
    }
  }
  return [...made.values()];
}
