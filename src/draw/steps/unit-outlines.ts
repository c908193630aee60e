import type { Making } from "../../making/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import { type Corner, ticksOf } from "../quilt/patches.ts";
import { turnPoint } from "./geometry.ts";

/** The finished patches of a unit as it stands at turn 0, in ticks from its upper left corner. */
export interface UnitOutline {
  across: number;
  along: number;
  patches: { spot: string; corners: Corner[] }[];
}

/** Outlines by index of the unit's record: read off the first block of the top that holds one, turned back. */
export function unitOutlines(top: QuiltTop, making: Making): Map<number, UnitOutline> {
  const found = new Map<number, UnitOutline>();
  for (const block of making.blocks) {
    const design = top.designs[block.design];
    if (design === undefined) continue;
    for (const [index, place] of block.units.entries()) {
      const own = design.units[index];
      if (place === null || own === undefined || found.has(place.unit)) continue;
      const [x, y] = [ticksOf(own.x), ticksOf(own.y)];
      const [wide, high] = [ticksOf(own.across), ticksOf(own.down)];
      const onSide = own.turn % 180 !== 0;
      const [across, along] = onSide ? [high, wide] : [wide, high];
      const back = (8 - own.turn / 45) % 8;
      const patches = design.patches
        .filter(({ origin }) => origin.unit === index)
        .map(({ origin, outline }) => ({
          spot: origin.part,
          corners: outline.map((point): Corner => {
            const [dx, dy] = turnPoint(
              [ticksOf(point.x) - x - wide / 2, ticksOf(point.y) - y - high / 2],
              back,
            );
            return [dx + across / 2, dy + along / 2];
          }),
        }));
      found.set(place.unit, { across, along, patches });
    }
  }
  return found;
}

/**
 * The same of a row of triangles with three equal sides whose ends are trimmed once it is sewn: the part triangles at
 * its ends are whole until then. Up and down by turns, the first standing on its base about the row's left edge.
 */
export function wholeTriangles(outline: UnitOutline): UnitOutline {
  const half = outline.along / Math.sqrt(3);
  const patches = outline.patches.map(({ spot }, k) => {
    const [point, base] = k % 2 === 0 ? [0, outline.along] : [outline.along, 0];
    const left: Corner = [(k - 1) * half, base];
    const right: Corner = [(k + 1) * half, base];
    const tip: Corner = [k * half, point];
    return { spot, corners: k % 2 === 0 ? [tip, right, left] : [left, right, tip] };
  });
  return { ...outline, patches };
}
