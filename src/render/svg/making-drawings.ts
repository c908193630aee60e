import type { Ruler } from "../../length/types.ts";
import type { Making } from "../../making/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import { drawAssembly } from "./making-assembly.ts";
import { drawBlockSteps } from "./making-blocks.ts";
import { drawBorders } from "./making-borders.ts";
import { drawFinishing } from "./making-finish.ts";
import { drawPressing } from "./making-pressing.ts";
import type { DrawnFabric } from "./textures.ts";

export type SewingDrawing = "blocks" | "assembly" | "pressing" | "borders" | "finishing";

/** Every drawing of the sewing that a quilt has something to show in, in the order of work. */
export function drawSewing(
  top: QuiltTop,
  making: Making,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
): { name: SewingDrawing; svg: string }[] {
  const drawn: [SewingDrawing, string | null][] = [
    ["blocks", drawBlockSteps(top, making, fabrics, ruler)],
    ["assembly", drawAssembly(top, making, fabrics, ruler)],
    ["pressing", drawPressing(top, making, ruler)],
    ["borders", drawBorders(top, making, fabrics, ruler)],
    ["finishing", drawFinishing(top, making, ruler)],
  ];
  return drawn.flatMap(([name, svg]) => (svg === null ? [] : [{ name, svg }]));
}
