import type { FoundationMaking } from "../../making/foundation-types.ts";
import { shared } from "./compare.ts";
import { outlineOf } from "./designed.ts";
import { areaOf, dot, edgesOf, girth, NEAR, type Polygon, type Spot } from "./polygon.ts";
import type { Workroom } from "./types.ts";

type Pieced = Extract<FoundationMaking["parts"][number], { kind: "pieced" }>;

/** Parts pieced on printed lines: every patch where it is designed, in its fabric, added once by a seam of its own. */
export function checkFoundationParts(room: Workroom): void {
  const { foundation } = room.making;
  for (const part of foundation?.parts ?? []) {
    if (part.kind !== "pieced") continue;
    checkOrder(part, room);
    checkPlaces(part, foundation?.grid ?? 0, room);
  }
}

/** The first patch lies alone; each seam adds the next, on one of its edges, with all before on the other side. */
function checkOrder({ letter, patches, seams }: Pieced, room: Workroom): void {
  const where = `foundation part ${letter}`;
  if (patches.some(({ number }, i) => number !== i + 1))
    room.faults.push(`${where}: its patches are not numbered in order`);
  const added = seams.map(({ adds }) => adds);
  for (const { number } of patches.slice(1)) {
    const times = added.filter((adds) => adds === number).length;
    if (times !== 1) room.faults.push(`${where}: patch ${number} is added by ${times} seams, not one`);
  }
  if (seams.length !== patches.length - 1)
    room.faults.push(`${where}: ${seams.length} seams for ${patches.length} patches`);
  for (const { adds, x1, y1, x2, y2, length } of seams) {
    const patch = patches.find(({ number }) => number === adds);
    const run = Math.hypot(x2 - x1, y2 - y1) || 1;
    if (Math.abs(run - length) > NEAR)
      room.faults.push(`${where}: the seam of patch ${adds} is not as long as told`);
    const out = { x: (y2 - y1) / run, y: -(x2 - x1) / run };
    const at = out.x * x1 + out.y * y1;
    const sides = (patch?.corners ?? []).map((spot) => dot(spot, out) - at);
    const beyond = sides.every((side) => side > -NEAR) || sides.every((side) => side < NEAR);
    const touches = sides.filter((side) => Math.abs(side) <= NEAR).length >= 2;
    if (!beyond || !touches) room.faults.push(`${where}: patch ${adds} is not added along one of its edges`);
  }
}

function checkPlaces({ letter, patches, places, finished }: Pieced, grid: number, room: Workroom): void {
  const [wide, high] = [finished.across * grid, finished.down * grid];
  for (const place of places) {
    const design = room.top.designs[place.design];
    if (design === undefined) continue;
    const inBlock = ({ x, y }: Spot): Spot => {
      const [a, b] =
        place.turn === 90
          ? [high - y, x]
          : place.turn === 180
            ? [wide - x, high - y]
            : place.turn === 270
              ? [y, wide - x]
              : [x, y];
      return { x: a + place.x, y: b + place.y };
    };
    const own = design.patches.filter(
      ({ origin }) => origin.unit !== null && place.units.includes(origin.unit),
    );
    const laid = patches.map(({ fabric, corners }): { fabric: string; polygon: Polygon } => ({
      fabric,
      polygon: corners.map(inBlock),
    }));
    for (const patch of own) {
      const target = outlineOf(patch);
      const shown = laid
        .filter(({ fabric }) => fabric === patch.fabric)
        .reduce((sum, { polygon }) => sum + shared(polygon, target), 0);
      if (edgesOf(target).length > 2 && shown < areaOf(target) - NEAR * girth(target))
        room.faults.push(
          `foundation part ${letter} in ${design.name}: ${patch.origin.part} is not ${patch.fabric} where it was designed`,
        );
    }
  }
}
