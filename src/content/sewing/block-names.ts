import type { HeapRecord, UnitRecord } from "../../cutlist/record/unit-record.ts";
import type { BlockKind, JoinName, JoinPart, Making, RawSize, UnitInPlace } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import type { Eighth } from "../../quilt/units/types.ts";
import type { Turn } from "../../words/en/sewing/blocks.ts";
import type { Words } from "../../words/index.ts";
import { foundationPartName, foundationPartOfBlock } from "../foundation-part.ts";

/** Names of what goes into blocks and rows: heaps of units, bags of single patches, kinds of block. */

const eighth = (up: number, turn: number): Eighth => ((((up + turn / 45) % 8) + 8) % 8) as Eighth;

function twoWay(fabric: string, plan: Plan): boolean {
  return plan.fabrics.find(({ name }) => name === fabric)?.print.kind === "two-way";
}

/**
 * Where the heads of a unit's print point, when all its prints have an up and point one way: the unit lies in its heap
 * with them up, so that a turn would be told from another start. Null where a turn has to tell it.
 */
function headsIn(heap: HeapRecord, unit: UnitRecord, turn: number, plan: Plan, words: Words): string | null {
  const prints = Object.entries(heap.prints);
  const [first] = prints;
  if (first === undefined || unit.heaps.length < 2) return null;
  const [, up] = first;
  const alike = prints.every(([role, own]) => own === up && !twoWay(unit.fabrics[role] ?? "", plan));
  return alike && up % 2 === 0 ? words.units.heads(eighth(up, turn), false) : null;
}

/**
 * A unit in its block by its heap, or by its bag where it is a single patch.
 * @param block.turn degrees clockwise by which the block is turned
 * @param block.drawn by which the block's drawing turns it; null where that is not known
 */
export function unitNamed(
  place: UnitInPlace,
  { turn, drawn }: { turn: number; drawn: number | null },
  making: Making,
  plan: Plan,
  words: Words,
): string | null {
  const unit = making.units[place.unit];
  const heap = unit?.heaps[place.heap];
  if (unit === undefined || heap === undefined) return null;
  const whole = (((place.turn + turn) % 360) + 360) % 360;
  if (unit.steps.length > 0) {
    const heads = drawn === null ? null : headsIn(heap, unit, drawn + turn, plan, words);
    return heads === null
      ? heap.name + words.blocks.turned(whole as Turn)
      : words.blocks.heap(heap.name, heads);
  }
  const [patch, more] = heap.patches;
  if (patch === undefined || more !== undefined || patch.letters.length === 0) return null;
  const letters = patch.letters.join("/");
  if (patch.up !== null) {
    const heads = words.units.heads(eighth(patch.up, whole), twoWay(patch.fabric, plan));
    return words.blocks.bag(letters, patch.fabric, heads);
  }
  const { across, along } = unit.raw;
  const upright = whole % 180 === 0 ? along > across : across > along;
  return words.blocks.bag(letters, patch.fabric, across === along ? "" : words.blocks.lying(upright));
}

/** A block that is one single patch is told by its bag: its design has nothing to sew. */
export function patchOfKind(kind: BlockKind, making: Making): UnitInPlace | null {
  const [only, more] = making.blocks[kind.making]?.units ?? [];
  if (only === undefined || only === null || more !== undefined) return null;
  return making.units[only.unit]?.steps.length === 0 ? only : null;
}

/** A kind's name, said to be a block's where a bag or a unit is called so. */
function kindNamed(kind: BlockKind, making: Making, plan: Plan, words: Words): string {
  const letters = plan.fabrics.flatMap(({ pieces }) => pieces.map(({ letter }) => letter));
  const heaps = making.units.flatMap(({ name, heaps }) => [name, ...heaps.map((heap) => heap.name)]);
  const plain = plan.top?.designs[making.blocks[kind.making]?.design ?? -1]?.name ?? "";
  return [...letters, ...heaps].includes(plain) ? words.blocks.block(kind.name) : kind.name;
}

/** Words that leave out how a block is turned. */
export function unturned(words: Words): Words {
  return { ...words, blocks: { ...words.blocks, turned: () => "" } };
}

/** A block in its place in the rows. */
export function blockNamed(index: number, making: Making, plan: Plan, words: Words): string | null {
  const block = plan.top?.blocks[index];
  const kind = making.kinds[making.kindOf[index] ?? -1];
  if (block === undefined || kind === undefined) return null;
  const turn = (((block.turn % 360) + 360) % 360) as Turn;
  const design = plan.top?.designs[block.design];
  const laid = foundationPartOfBlock(block.design, design?.units.length ?? 0, making, turn);
  const onFoundation = foundationPartName(laid === null ? [] : [laid], making, words);
  if (onFoundation !== null) return onFoundation + words.blocks.turned(turn);
  const patch = patchOfKind(kind, making);
  const bag = patch === null ? null : unitNamed(patch, { turn, drawn: null }, making, plan, words);
  return bag ?? kindNamed(kind, making, plan, words) + words.blocks.turned(turn);
}

/** Letters of the bags that hold cloth of this raw size. */
function bagsOfSize(fabric: string, across: number, down: number, plan: Plan): string {
  const near = (a: number, b: number): boolean => Math.abs(a - b) <= plan.ruler.mark;
  const own = plan.fabrics.find(({ name }) => name === fabric)?.pieces ?? [];
  const found = own.filter(
    (piece) =>
      piece.subcut === "none" &&
      ((near(piece.across, across) && near(piece.along, down)) ||
        (near(piece.across, down) && near(piece.along, across))),
  );
  return found.map(({ letter }) => letter).join("/");
}

/** Names of the parts of a joining, in order. */
export function partNames(
  join: {
    takes: readonly JoinPart[];
    from: readonly JoinName[];
    parts?: readonly RawSize[];
    design?: number | null;
  },
  units: readonly (UnitInPlace | null)[],
  making: Making,
  plan: Plan,
  words: Words,
): string[] {
  const named = (part: JoinPart, given: string, size: RawSize | undefined): string => {
    switch (part.of) {
      case "made":
        return given;
      case "unit": {
        const place = units[part.unit];
        const drawn = plan.top?.designs[join.design ?? -1]?.units[part.unit]?.turn ?? null;
        return (place == null ? null : unitNamed(place, { turn: 0, drawn }, making, plan, words)) ?? given;
      }
      case "block":
        return blockNamed(part.block, making, plan, words) ?? given;
      case "cloth": {
        const { scale } = making;
        const letter =
          size === undefined ? "" : bagsOfSize(part.fabric, size.across / scale, size.down / scale, plan);
        return words.blocks.cloth(
          letter,
          part.place === "block" ? part.fabric : words.blocks.clothAt(part.fabric, part.place),
        );
      }
    }
  };
  return join.takes.map((part, i) => {
    const from = join.from[i];
    return named(part, from === undefined ? "" : words.blocks.named(from), join.parts?.[i]);
  });
}
