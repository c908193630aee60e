import type { Ruler } from "../../length/types.ts";
import type { Making } from "../../making/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { ticksOf } from "../quilt/patches.ts";
import type { Standing } from "../scene/frame.ts";
import type { Scene } from "../scene/scene.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import { assemblyScene, drawAssembly } from "./making-assembly.ts";
import { drawBlockSteps } from "./making-blocks.ts";
import { bordersScene, drawBorders } from "./making-borders.ts";
import { drawFinishing, finishScene } from "./making-finish.ts";
import { drawPressing, pressingScene } from "./making-pressing.ts";

export type SewingDrawing = "blocks" | "assembly" | "pressing" | "borders" | "finishing";

/** Every drawing of the sewing that a quilt has something to show in, in the order of work. */
export function drawSewing(
  top: QuiltTop,
  making: Making,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
  words: Words,
): { name: SewingDrawing; svg: string }[] {
  const quilt = { top, making, fabrics, ruler };
  const drawn: [SewingDrawing, string | null][] = [
    ["blocks", drawBlockSteps(top, making, fabrics, ruler, words)],
    ["assembly", drawAssembly(quilt, words)],
    ["pressing", drawPressing(quilt, words)],
    ["borders", drawBorders(quilt, words)],
    ["finishing", drawFinishing(top, making, ruler, words)],
  ];
  return drawn.flatMap(([name, svg]) => (svg === null ? [] : [{ name, svg }]));
}

/** Widths of the drawings that stand beside the steps they are about, in page units, and how high they may be. */
const BESIDE: Standing = { bare: true, width: 330, tallest: 220 };

/** The drawings of rows, borders, finishing and pressing as they stand among the words of a page. */
export function besideScenes(
  top: QuiltTop,
  making: Making,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
  words: Words,
): Record<Exclude<SewingDrawing, "blocks">, Scene | null> {
  const whole: Standing = { bare: true, tallest: 310 };
  // Half a page, so that words may stand beside it.
  const overview: Standing = { bare: true, width: 350, tallest: 200 };
  // Many rows have many steps beside them, and rows aslant want the width.
  const levels = new Set(
    top.blocks.map(({ outline }) => Math.round(Math.min(...outline.map(({ y }) => ticksOf(y))))),
  );
  const rows = making.diagonal.length > 0 ? making.diagonal.length : levels.size;
  const many: Standing = {
    bare: true,
    width: top.centre.onPoint ? 430 : 330,
    tallest: Math.min(360, 120 + 13 * rows),
  };
  const quilt = { top, making, fabrics, ruler };
  return {
    assembly: assemblyScene(quilt, words, many),
    pressing: pressingScene(quilt, words, overview),
    borders: bordersScene(quilt, words, BESIDE),
    finishing: finishScene(top, making, ruler, words, whole),
  };
}
