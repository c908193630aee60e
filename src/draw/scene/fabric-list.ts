import { INK } from "./palette.ts";
import { type Cell, section } from "./rows.ts";
import { cornersOf, group, type SceneNode } from "./scene.ts";
import { textIn } from "./text.ts";
import { cleanText } from "./text-fit.ts";
import { type DrawnFabric, fabricNodes } from "./textures.ts";

/** Swatch and name of every fabric used, from `top` down. */
export function fabricList(
  fabrics: readonly DrawnFabric[],
  used: ReadonlySet<string>,
  frame: { scale: number; heading: string; top: number },
): { nodes: SceneNode[]; bottom: number } {
  const { scale, heading, top } = frame;
  const cells = fabrics.flatMap((fabric, index): Cell[] => {
    if (!used.has(fabric.name)) return [];
    return [
      (box) => {
        const inner = { x: 0, y: 0, width: 26 / scale, height: 13 / scale };
        const shapes = fabricNodes(fabrics, index, [cornersOf(inner)], scale);
        const paint = { stroke: INK, strokeWidth: 0.8 / scale };
        const swatch = group(shapes, { paint, move: { x: box.x + 1, y: box.y + 2, scale } });
        const room = { x: box.x + 34, y: box.y, width: box.width - 34, height: box.height };
        return [swatch, textIn(cleanText(fabric.name), room, { size: 9.5 })];
      },
    ];
  });
  return section(heading, cells, { columns: 3, cellHeight: 18, top });
}
