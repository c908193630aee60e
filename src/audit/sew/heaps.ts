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
  takePlain(room, found, take);
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

/** Blocks of plain cloth have no design of their own: their patches are matched by fabric, size and print. */
function takePlain(room: Workroom, found: readonly unknown[], take: Take): void {
  const { making, top, seam, faults } = room;
  const left = making.units.map(({ heaps }) => heaps.map(({ count }) => count));
  const inBlocks = new Set(
    making.blocks.flatMap(({ units }) => units.flatMap((each) => (each === null ? [] : [each.unit]))),
  );
  const plain = found.flatMap((_, unit) => {
    const record = making.units[unit];
    const one = record?.heaps.every(({ patches }) => patches.length === 1) === true;
    // A heap that blocks draw on too is counted with them first.
    return one ? [unit] : [];
  });
  for (const unit of plain)
    if (inBlocks.has(unit)) {
      for (const { units, count } of making.blocks)
        for (const each of units)
          if (each?.unit === unit)
            (left[unit] as number[])[each.heap] = (left[unit]?.[each.heap] ?? 0) - count;
    }
  for (const patch of top.patches) {
    const { block, unit, place, part } = patch.origin;
    if (block !== null || unit === null || place === "setting-triangle") continue;
    const level = levelled(outlineOf(patch), top.centre.onPoint);
    const box = boxOf([level.polygon]);
    const same = room.same.get(patch.fabric) ?? 0;
    const up = patch.up === null ? null : patch.up - level.degrees;
    let best: { unit: number; heap: number; turn: number } | null = null;
    for (const each of plain) {
      const record = making.units[each] as UnitRecord;
      record.heaps.forEach((heap, index) => {
        const own = heap.patches[0];
        if (own === undefined || own.fabric !== patch.fabric || (left[each]?.[index] ?? 0) <= 0) return;
        for (const turn of [0, 90, 180, 270]) {
          const [across, along] = turn % 180 === 0 ? [box.across, box.along] : [box.along, box.across];
          // Plain cloth is cut to the mark above, as the sashes and blocks beside it are.
          const upToMark = (raw: number, finished: number): boolean =>
            raw >= finished + 2 * seam - NEAR && raw < finished + 2 * seam + room.mark - NEAR;
          const fits = upToMark(record.raw.across, across) && upToMark(record.raw.along, along);
          const pointing =
            same === 0 || up === null || own.up === null || between(own.up * 45 + turn, up, same) < 0.5;
          if (fits && pointing && (best === null || turn < best.turn))
            best = { unit: each, heap: index, turn };
        }
      });
    }
    const chosen = best as { unit: number; heap: number; turn: number } | null;
    if (chosen === null) {
      faults.push(`${place}: a patch of ${patch.fabric} that nobody cuts`);
      continue;
    }
    (left[chosen.unit] as number[])[chosen.heap] = (left[chosen.unit]?.[chosen.heap] ?? 0) - 1;
    const onSide = chosen.turn % 180 !== 0;
    const { raw } = making.units[chosen.unit] as UnitRecord;
    const [across, along] = [raw.across - 2 * seam, raw.along - 2 * seam];
    const [wide, high] = onSide ? [along, across] : [across, along];
    const flat = moved(level.polygon, { x: -box.x, y: -box.y }).map(({ x, y }) => ({
      x: (x * wide) / box.across,
      y: (y * high) / box.along,
    }));
    take(
      chosen.unit,
      chosen.heap,
      {
        across,
        along,
        patches: [
          {
            spot: part,
            fabric: patch.fabric,
            up: up === null ? null : up - chosen.turn,
            polygon: onSide ? flat.map(({ x, y }) => ({ x: y, y: x })).reverse() : flat,
          },
        ],
      },
      place,
    );
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
