import { nth } from "../../length/nth.ts";
import type { Exact, Patch, Point } from "../../quilt/types.ts";
import { TICKS_PER_MM } from "../scene/frame.ts";
import { arrow } from "../scene/marks.ts";
import { INK, labelOn, safeColour } from "../scene/palette.ts";
import { group, line, region, type SceneNode } from "../scene/scene.ts";
import { type DrawnFabric, fabricNodes } from "../scene/textures.ts";

/** An exact length in ticks as a plain number, for drawing only. */
export function ticksOf({ n, r, d, root }: Exact): number {
  return (n + r * Math.sqrt(root ?? 2)) / d;
}

export type Corner = readonly [number, number];

/** Corners in millimetres. */
export function outlineOf(points: readonly Point[]): Corner[] {
  return points.map(({ x, y }) => [ticksOf(x) / TICKS_PER_MM, ticksOf(y) / TICKS_PER_MM] as const);
}

/** Where a piece of drawing stands: page place of its origin, page units to the millimetre. */
export interface Placing {
  x: number;
  y: number;
  scale: number;
}

/** Centre of gravity of a polygon, in its own units (shoelace formula). */
export function centreOf(corners: readonly Corner[]): Corner {
  let [area, cx, cy] = [0, 0, 0];
  for (const [i, [x1, y1]] of corners.entries()) {
    const [x2, y2] = nth(corners, (i + 1) % corners.length);
    const cross = x1 * y2 - x2 * y1;
    area += cross;
    cx += (x1 + x2) * cross;
    cy += (y1 + y2) * cross;
  }
  return area === 0 ? nth(corners, 0) : [cx / (3 * area), cy / (3 * area)];
}

/** Distance from a point to the nearest side of a polygon. */
export function clearance([px, py]: Corner, corners: readonly Corner[]): number {
  const distances = corners.map(([x1, y1], i) => {
    const [x2, y2] = nth(corners, (i + 1) % corners.length);
    const [dx, dy] = [x2 - x1, y2 - y1];
    const along = Math.min(1, Math.max(0, ((px - x1) * dx + (py - y1) * dy) / (dx * dx + dy * dy || 1)));
    return Math.hypot(px - x1 - along * dx, py - y1 - along * dy);
  });
  return Math.min(...distances);
}

/**
 * An arrow in a patch of a directional print, pointing where the print's up points; with two heads where it reads both
 * ways and has no top. None in a tiny patch.
 */
function printArrow(
  patch: Patch,
  corners: readonly Corner[],
  at: Placing,
  fabric: DrawnFabric | undefined,
): SceneNode[] {
  if (patch.up === null) return [];
  const centre = centreOf(corners);
  const room = clearance(centre, corners) * at.scale;
  if (room < 3.5) return [];
  const reach = Math.min(14, room * 0.7);
  const weight = Math.min(1, Math.max(0.6, reach / 8));
  const ends = fabric?.print?.kind === "two-way" ? 2 : 1;
  const angle = (patch.up * Math.PI) / 180;
  const [ux, uy] = [Math.sin(angle) * reach, -Math.cos(angle) * reach];
  const [x, y] = [at.x + centre[0] * at.scale, at.y + centre[1] * at.scale];
  const [tail, tip]: [Corner, Corner] = [
    [x - ux, y - uy],
    [x + ux, y + uy],
  ];
  const ground = safeColour(fabric?.colour ?? "");
  // On a photo an arrow has a ground of its own.
  const halo =
    fabric?.photo === undefined
      ? []
      : [line(tail[0], tail[1], tip[0], tip[1], { stroke: ground, strokeWidth: weight * 5 })];
  return [...halo, ...arrow(tail, tip, labelOn(ground), ends, weight)];
}

/**
 * Patches to scale: outlines in millimetres of the finished quilt, one group per fabric, and the arrows of
 * directional prints above them. A fabric that is not in the list is drawn in grey.
 */
export function patchNodes(
  patches: readonly Patch[],
  fabrics: readonly DrawnFabric[],
  at: Placing,
  options: { id: string; shift?: (patch: Patch) => Corner; arrows?: boolean },
): SceneNode[] {
  const { id, shift, arrows: withArrows = true } = options;
  // Patches of a photo lie apart by where its print's up points.
  const byFabric = fabrics.map(() => new Map<number | null, Corner[][]>());
  const others: Corner[][] = [];
  const arrows: SceneNode[] = [];
  for (const patch of patches) {
    const [dx, dy] = shift?.(patch) ?? [0, 0];
    const corners = outlineOf(patch.outline).map(([x, y]): Corner => [x + dx, y + dy]);
    const index = fabrics.findIndex(({ name }) => name === patch.fabric);
    const [own, up] = [byFabric[index], fabrics[index]?.photo === undefined ? null : patch.up];
    if (own === undefined) others.push(corners);
    else own.set(up, [...(own.get(up) ?? []), corners]);
    if (withArrows) arrows.push(...printArrow(patch, corners, at, fabrics[index]));
  }
  const seam = { stroke: INK, strokeWidth: 0.5 / at.scale };
  const groups = byFabric.flatMap((ways, i): SceneNode[] => {
    if (ways.size === 0) return [];
    const nodes = [...ways].flatMap(([up, outlines]) => fabricNodes(fabrics, i, outlines, at.scale, up));
    return [group(nodes, { id: `${id}-fabric-${i + 1}` })];
  });
  if (others.length > 0) groups.push(region(others, { fill: safeColour("") }));
  return [group(groups, { id, move: at, paint: seam }), ...arrows];
}

/** Outlines without a fill, in millimetres: blocks, borders, units. */
export function outlineNodes(
  outlines: readonly Corner[][],
  at: Placing,
  weight: number,
  id: string,
): SceneNode[] {
  if (outlines.length === 0) return [];
  const paint = { fill: "none", stroke: INK, strokeWidth: weight / at.scale };
  return [group([region([...outlines])], { id, move: at, paint })];
}

/** The corners of an upright rectangle. */
export function rectangle(x: number, y: number, across: number, down: number): Corner[] {
  return [
    [x, y],
    [x + across, y],
    [x + across, y + down],
    [x, y + down],
  ];
}
