import type { WasteCause } from "../../plan/types.ts";
import { WASTE_INK } from "./palette.ts";
import { circle, line, type Outline, type SceneNode } from "./scene.ts";
import { type Tile, textureLines } from "./texture-lines.ts";

const THIN = { stroke: WASTE_INK, strokeWidth: 0.8 };

/** A slanting line across a tile. */
function slant(size: number, rising: boolean): SceneNode[] {
  return [rising ? line(0, size, size, 0, THIN) : line(0, 0, size, size, THIN)];
}

/** Texture, not colour, tells the kinds of waste apart, so that grey printing loses nothing. */
const HATCHES: Readonly<Record<WasteCause, Tile>> = {
  shrinkage: { size: 5, nodes: [line(2.5, 0, 2.5, 5, THIN)] },
  selvage: { size: 5, nodes: [circle(2.5, 2.5, 0.9, { fill: WASTE_INK })] },
  straightening: { size: 4, nodes: [line(0, 2, 4, 2, THIN)] },
  trimming: { size: 7, nodes: slant(7, true) },
  "strip-end": { size: 9, nodes: [...slant(9, true), ...slant(9, false)] },
  "uncut-end": { size: 11, nodes: [line(3.5, 5.5, 7.5, 5.5, THIN), line(5.5, 3.5, 5.5, 7.5, THIN)] },
};

/** The hatching of waste of one kind over these outlines, at its size on the page; `scale`: page units to their unit. */
export function hatchLines(cause: WasteCause, outlines: readonly Outline[], scale: number): SceneNode[] {
  return textureLines(HATCHES[cause], outlines, scale);
}
