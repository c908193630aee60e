import type { UnitRecord } from "../../cutlist/record/unit-record.ts";
import { designedUnits, likenessOf, outlineOf, type PlacedUnit } from "./designed.ts";
import { between, boxOf, moved, NEAR } from "./polygon.ts";
import type { DesignedUnit, Workroom } from "./types.ts";

/*
 * From the blocks of the top to the heaps they take: every unit of every placed block is taken from one heap, and the
 * heaps hold just so many.
 */

/** By record and heap: what the quilt has in its place, each different way once. */
export function designsByHeap(room: Workroom): DesignedUnit[][][] {
  const { making, top, faults } = room;
  const found = making.units.map(({ heaps }) => heaps.map(() => new Map<string, DesignedUnit>()));
  const counts = making.units.map(({ heaps }) => heaps.map(() => 0));
  const take = (unit: number, heap: number, designed: DesignedUnit, where: string): void => {
    const own = found[unit]?.[heap];
    const tally = counts[unit];
    if (own === undefined || tally === undefined) {
      faults.push(`${where} takes a unit from a heap that is not there`);
      return;
    }
    tally[heap] = (tally[heap] ?? 0) + 1;
    own.set(likenessOf(designed), designed);
  };
  checkBlockCounts(room);
  const placed = new Map<number, PlacedUnit[]>();
  for (const each of designedUnits(top)) placed.set(each.block, [...(placed.get(each.block) ?? []), each]);
  top.blocks.forEach((block, index) => {
    const name = top.designs[block.design]?.name ?? `block ${block.design + 1}`;
    const ways = making.blocks.filter(
      ({ design, turns }) => design === block.design && turns.includes(block.turn),
    );
    const [way] = ways;
    if (way === undefined || ways.length > 1) {
      faults.push(`${name} turned ${block.turn} degrees is made in ${ways.length} ways, not one`);
      return;
    }
    for (const { unit, designed } of placed.get(index) ?? []) {
      const from = way.units[unit];
      if (from == null) faults.push(`${name}: nothing makes its unit ${unit + 1}`);
      else take(from.unit, from.heap, designed, name);
    }
  });
  takePlain(room, take);
  making.units.forEach(({ heaps }, unit) => {
    heaps.forEach(({ name, count }, heap) => {
      const wanted = counts[unit]?.[heap] ?? 0;
      if (wanted !== count) faults.push(`heap ${name}: ${count} are made, and the quilt takes ${wanted}`);
    });
  });
  return found.map((heaps) => heaps.map((own) => [...own.values()]));
}

function checkBlockCounts({ making, top, faults }: Workroom): void {
  for (const { design, turns, count } of making.blocks) {
    const placed = top.blocks.filter((block) => block.design === design && turns.includes(block.turn)).length;
    if (placed !== count)
      faults.push(
        `${top.designs[design]?.name ?? "a block"}: ${count} blocks are told, and ${placed} are placed`,
      );
  }
}

type Take = (unit: number, heap: number, designed: DesignedUnit, where: string) => void;

/** Units of one patch, which plain cloth may be taken from, with how many of each heap are left once blocks have theirs. */
interface PlainUnit {
  unit: number;
  record: UnitRecord;
  left: number[];
}

function plainUnits({ making }: Workroom): PlainUnit[] {
  const plain = making.units.flatMap((record, unit) =>
    record.heaps.every(({ patches }) => patches.length === 1)
      ? [{ unit, record, left: record.heaps.map(({ count }) => count) }]
      : [],
  );
  // A heap that blocks draw on too is counted with them first.
  for (const { unit, left } of plain)
    for (const { units, count } of making.blocks)
      for (const each of units) if (each?.unit === unit) left[each.heap] = (left[each.heap] ?? 0) - count;
  return plain;
}

/** A patch of plain cloth, its edges level and upright. */
interface PlainPatch {
  fabric: string;
  spot: string;
  polygon: ReturnType<typeof outlineOf>;
  box: ReturnType<typeof boxOf>;
  up: number | null;
}

interface PlainChoice {
  from: PlainUnit;
  heap: number;
  turn: number;
}

/** The heap a patch of plain cloth is taken from: of its fabric, size and print, turned as little as may be. */
function heapFor(
  { fabric, box, up }: PlainPatch,
  plain: readonly PlainUnit[],
  room: Workroom,
): PlainChoice | null {
  const { seam } = room;
  const same = room.same.get(fabric) ?? 0;
  let best: PlainChoice | null = null;
  for (const from of plain)
    for (const [index, heap] of from.record.heaps.entries()) {
      const own = heap.patches[0];
      if (own === undefined || own.fabric !== fabric || (from.left[index] ?? 0) <= 0) continue;
      for (const turn of [0, 90, 180, 270]) {
        const [across, along] = turn % 180 === 0 ? [box.across, box.along] : [box.along, box.across];
        // Plain cloth is cut to the mark above, as the sashes and blocks beside it are.
        const upToMark = (raw: number, finished: number): boolean =>
          raw >= finished + 2 * seam - NEAR && raw < finished + 2 * seam + room.mark - NEAR;
        const { raw } = from.record;
        const fits = upToMark(raw.across, across) && upToMark(raw.along, along);
        const pointing =
          same === 0 || up === null || own.up === null || between(own.up * 45 + turn, up, same) < 0.5;
        if (fits && pointing && (best === null || turn < best.turn)) best = { from, heap: index, turn };
      }
    }
  return best;
}

/** A patch of plain cloth as a unit designed, turned back as it lies in its heap and stretched to the size it is cut. */
function asDesigned(patch: PlainPatch, { from, turn }: PlainChoice, seam: number): DesignedUnit {
  const { box, spot, fabric, up } = patch;
  const onSide = turn % 180 !== 0;
  const { raw } = from.record;
  const [across, along] = [raw.across - 2 * seam, raw.along - 2 * seam];
  const [wide, high] = onSide ? [along, across] : [across, along];
  const flat = moved(patch.polygon, { x: -box.x, y: -box.y }).map(({ x, y }) => ({
    x: (x * wide) / box.across,
    y: (y * high) / box.along,
  }));
  const polygon = onSide ? flat.map(({ x, y }) => ({ x: y, y: x })).reverse() : flat;
  return { across, along, patches: [{ spot, fabric, up: up === null ? null : up - turn, polygon }] };
}

/** Blocks of plain cloth have no design of their own: their patches are matched by fabric, size and print. */
function takePlain(room: Workroom, take: Take): void {
  const { top, seam, faults } = room;
  const plain = plainUnits(room);
  for (const designed of top.patches) {
    const { fabric } = designed;
    const { block, unit, place, part } = designed.origin;
    if (block !== null || unit === null || place === "setting-triangle") continue;
    const { polygon, degrees } = levelled(outlineOf(designed), top.centre.onPoint);
    const up = designed.up === null ? null : designed.up - degrees;
    const patch = { fabric, spot: part, polygon, box: boxOf([polygon]), up };
    const chosen = heapFor(patch, plain, room);
    if (chosen === null) {
      faults.push(`${place}: a patch of ${fabric} that nobody cuts`);
      continue;
    }
    const { from, heap } = chosen;
    from.left[heap] = (from.left[heap] ?? 0) - 1;
    take(from.unit, heap, asDesigned(patch, chosen, seam), place);
  }
}

/** An outline with its edges level and upright: rows on point lean by an eighth. */
function levelled(
  polygon: ReturnType<typeof outlineOf>,
  onPoint: boolean,
): { polygon: typeof polygon; degrees: number } {
  const [a, b] = polygon;
  if (!onPoint || a === undefined || b === undefined) return { polygon, degrees: 0 };
  const leaning = Math.abs(b.x - a.x) > NEAR && Math.abs(b.y - a.y) > NEAR;
  if (!leaning) return { polygon, degrees: 0 };
  const [cos, sin] = [Math.SQRT1_2, Math.SQRT1_2];
  return {
    polygon: polygon.map(({ x, y }) => ({ x: x * cos + y * sin, y: -x * sin + y * cos })),
    degrees: 45,
  };
}
