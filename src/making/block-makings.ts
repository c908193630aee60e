import type { UnitRecord } from "../cutlist/record/unit-record.ts";
import type { QuiltWork } from "../quilt/index.ts";
import type { BlockDesign, QuiltTop } from "../quilt/types.ts";
import { seenTurn } from "./seen-turn.ts";
import type { BlockKind, BlockMaking, Pressing, UnitInPlace } from "./types.ts";

/** Blocks gathered, and which of them every block of the top is. */
export interface Gathered {
  blocks: BlockMaking[];
  /** By index into the top's `blocks`; null for a block that is not told of. */
  makingOf: (number | null)[];
}

/**
 * Blocks gathered by what is sewn alike: the same design out of the same heaps. A block turned in the quilt takes
 * other heaps only where a print has to stand upright all the same.
 */
export function blockMakings(work: QuiltWork, units: readonly UnitRecord[], top: QuiltTop): Gathered {
  const places = new Map<string, Pick<UnitInPlace, "unit" | "heap">>();
  for (const [unit, { demand, wants }] of units.entries())
    for (const [heap, want] of wants.entries()) places.set(`${demand} ${want}`, { unit, heap });
  // Without a print to mind all wants of a demand are one heap.
  const found = (demand: number, want: number): Pick<UnitInPlace, "unit" | "heap"> | null =>
    places.get(`${demand} ${want}`) ?? places.get(`${demand} -1`) ?? null;
  const turns = new Map<string, UnitInPlace["turn"]>();
  const turnOf = (design: BlockDesign, unit: number): UnitInPlace["turn"] => {
    const key = `${top.designs.indexOf(design)} ${unit}`;
    const turn = turns.get(key) ?? seenTurn(design, unit);
    turns.set(key, turn);
    return turn;
  };
  const made = new Map<string, BlockMaking>();
  const makingOf: (number | null)[] = top.blocks.map(() => null);
  for (const { design, turn, count, blocks, units: cells } of work.placings) {
    if (design === null) continue;
    const drawn = top.designs[design];
    const own = cells.map((cell, i): UnitInPlace | null => {
      const place = cell === null ? null : found(cell.demand, cell.want);
      return place === null || drawn === undefined ? null : { ...place, turn: turnOf(drawn, i) };
    });
    const key = JSON.stringify([design, own]);
    const before = made.get(key);
    if (before === undefined) made.set(key, { design, turns: [turn], count, units: own });
    else {
      before.count += count;
      if (!before.turns.includes(turn)) before.turns.push(turn);
    }
    const index = [...made.keys()].indexOf(key);
    for (const block of blocks) makingOf[block] = index;
  }
  return { blocks: [...made.values()], makingOf };
}

/**
 * The heaps of finished blocks: blocks that take the same units and are pressed alike. Where a design has one such
 * heap it has the block's own name, else the name and a number, in the order in which they are met in the rows.
 */
export function blockKinds(
  { blocks, makingOf }: Gathered,
  top: QuiltTop,
  pressing: Pressing | null,
): { kinds: BlockKind[]; kindOf: (number | null)[] } {
  const found = new Map<string, BlockKind>();
  const keys = makingOf.map((making, block) => {
    if (making === null) return null;
    const variant = pressing?.variantOf[block] ?? "";
    const key = `${making} ${variant}`;
    const kind = found.get(key) ?? { name: "", number: 0, making, variant, count: 0 };
    kind.count += 1;
    found.set(key, kind);
    return key;
  });
  const order = [...found.keys()];
  const all = [...found.values()];
  const designOf = ({ making }: BlockKind): number => blocks[making]?.design ?? -1;
  const taken = new Set(top.designs.map(({ name, colourway }) => fullName(name, colourway)));
  const kinds = all.map((kind) => {
    const { name = "", colourway = "" } = top.designs[designOf(kind)] ?? {};
    const own = all.filter((other) => designOf(other) === designOf(kind));
    const plain = fullName(name, colourway);
    if (own.length === 1) return { ...kind, name: plain };
    // Another block of the file may have such a name already.
    let number = own.indexOf(kind) + 1;
    while (taken.has(`${plain} ${number}`)) number += own.length;
    return { ...kind, number, name: `${plain} ${number}` };
  });
  return { kinds, kindOf: keys.map((key) => (key === null ? null : order.indexOf(key))) };
}

function fullName(name: string, colourway: string): string {
  return colourway === "" ? name : `${name} ${colourway}`;
}
