import type { BlockDesign, Exact, Patch, PlacedBlock, Point, QuiltTop, SewnStop } from "../../quilt/types.ts";
import { clockwise, type Polygon, type Spot } from "./polygon.ts";
import type { DesignedUnit } from "./types.ts";

/*
 * What was designed, read off the finished top: every patch of a placed block, seen in the frame of its unit.
 */

export function lengthOf({ n, r, d, root }: Exact): number {
  return (n + r * Math.sqrt(root ?? 2)) / d;
}

export function spotOf({ x, y }: Point): Spot {
  return { x: lengthOf(x), y: lengthOf(y) };
}

export function outlineOf(patch: Pick<Patch, "outline">): Polygon {
  return clockwise(patch.outline.map(spotOf));
}

const around = (degrees: number): number => (((Math.round(degrees * 1e6) / 1e6) % 360) + 360) % 360;

/** A unit and where it came from. */
export interface PlacedUnit {
  block: number;
  design: number;
  unit: number;
  designed: DesignedUnit;
}

/** Where a place in a block lies while it is sewn larger than it finishes, before it is trimmed whole. */
export function placeAsSewn({ sewn }: Pick<BlockDesign, "sewn">, { x, y }: Spot): Spot {
  const at = (stops: readonly SewnStop[] | undefined, place: number): number => {
    const known = [
      { at: 0, to: 0 },
      ...(stops ?? []).map((stop) => ({ at: stop.at.n / stop.at.d, to: stop.to.n / stop.to.d })),
    ];
    const next = Math.max(
      1,
      known.findIndex((stop) => stop.at >= place - 1e-6),
    );
    const [from, to] = [known[next - 1], known[next]];
    return from === undefined || to === undefined
      ? place
      : from.to + ((place - from.at) * (to.to - from.to)) / (to.at - from.at);
  };
  return { x: at(sewn?.across, x), y: at(sewn?.down, y) };
}

/** Every unit of every placed block, as large as it is sewn; prints as they lie in the quilt. */
export function designedUnits(top: QuiltTop): PlacedUnit[] {
  const own = new Map<number, Patch[]>();
  for (const patch of top.patches) {
    const { block, unit } = patch.origin;
    if (block === null || unit === null) continue;
    const list = own.get(block);
    if (list === undefined) own.set(block, [patch]);
    else list.push(patch);
  }
  return top.blocks.flatMap((block, index) => unitsOf(block, index, own.get(index) ?? [], top));
}

function unitsOf(block: PlacedBlock, index: number, patches: readonly Patch[], top: QuiltTop): PlacedUnit[] {
  const design = top.designs[block.design];
  const [p0, p1] = block.outline.map(spotOf);
  if (design === undefined || p0 === undefined || p1 === undefined) return [];
  const angle = Math.atan2(p1.y - p0.y, p1.x - p0.x);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const inBlock = ({ x, y }: Spot): Spot => ({
    x: (x - p0.x) * cos + (y - p0.y) * sin,
    y: -(x - p0.x) * sin + (y - p0.y) * cos,
  });
  return design.units.map((unit, number): PlacedUnit => {
    const [x, y] = [lengthOf(unit.x), lengthOf(unit.y)];
    const [across, down] = [lengthOf(unit.across), lengthOf(unit.down)];
    const from = placeAsSewn(design, { x, y });
    const to = placeAsSewn(design, { x: x + across, y: y + down });
    const [wide, high] = [to.x - from.x, to.y - from.y];
    const atTurn0 = (spot: Spot): Spot => {
      // A unit over several columns is larger as a whole.
      const [a, b] = [((spot.x - x) * wide) / across, ((spot.y - y) * high) / down];
      if (unit.turn === 90) return { x: b, y: wide - a };
      if (unit.turn === 180) return { x: wide - a, y: high - b };
      if (unit.turn === 270) return { x: high - b, y: a };
      return { x: a, y: b };
    };
    const onItsSide = unit.turn % 180 !== 0;
    return {
      block: index,
      design: block.design,
      unit: number,
      designed: {
        across: onItsSide ? high : wide,
        along: onItsSide ? wide : high,
        patches: patches
          .filter(({ origin }) => origin.unit === number)
          .map((patch) => ({
            spot: patch.origin.part,
            fabric: patch.fabric,
            up: patch.up === null ? null : around(patch.up - (angle * 180) / Math.PI - unit.turn),
            polygon: outlineOf(patch).map((spot) => atTurn0(inBlock(spot))),
          })),
      },
    };
  });
}

/** Units that are sewn alike have the same of this. */
export function likenessOf({ across, along, patches }: DesignedUnit): string {
  const said = patches.map(
    ({ spot, fabric, up, polygon }) =>
      `${spot}/${fabric}/${up === null ? "" : Math.round(up)}/${polygon.map(({ x, y }) => `${Math.round(x)},${Math.round(y)}`).join(" ")}`,
  );
  return `${Math.round(across)}x${Math.round(along)} ${said.join("|")}`;
}
