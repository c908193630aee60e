import type { WasteCause } from "../../plan/types.ts";
import { WASTE_INK } from "./palette.ts";
import { circle, line, type PatternDef, path, type SceneNode } from "./scene.ts";

/** Texture, not colour, tells the kinds of waste apart, so that grey printing loses nothing. */
interface Hatch {
  size: number;
  marks: SceneNode[];
}

const THIN = { stroke: WASTE_INK, strokeWidth: 0.8 };

/** A slanting line across a tile, with its ends carried over into the neighbouring tiles. */
function slant(size: number, rising: boolean): SceneNode[] {
  const place = (x: number): number => (rising ? x : size - x);
  const stroke = (x1: number, y1: number, x2: number, y2: number): SceneNode =>
    path(
      [
        [place(x1), y1],
        [place(x2), y2],
      ],
      false,
      { ...THIN, fill: "none" },
    );
  return [
    stroke(-1, size + 1, size + 1, -1),
    stroke(-1, 1, 1, -1),
    stroke(size - 1, size + 1, size + 1, size - 1),
  ];
}

const HATCHES: Readonly<Record<WasteCause, Hatch>> = {
  shrinkage: { size: 5, marks: [line(2.5, 0, 2.5, 5, THIN)] },
  selvage: { size: 5, marks: [circle(2.5, 2.5, 0.9, { fill: WASTE_INK })] },
  straightening: { size: 4, marks: [line(0, 2, 4, 2, THIN)] },
  trimming: { size: 7, marks: slant(7, true) },
  "strip-end": { size: 9, marks: [...slant(9, true), ...slant(9, false)] },
  "uncut-end": { size: 11, marks: [line(3.5, 5.5, 7.5, 5.5, THIN), line(5.5, 3.5, 5.5, 7.5, THIN)] },
};

function idOf(cause: WasteCause): string {
  return `waste-${cause}`;
}

/** Paint for waste of one kind. */
export function hatchFill(cause: WasteCause, idPrefix: string): string {
  return `url(#${idPrefix}${idOf(cause)})`;
}

/** Tiles for `causes`, without a ground (tiles with one show their edges), at their size on the page although used inside groups scaled by `scale`. */
export function hatchPatterns(causes: readonly WasteCause[], scale: number): PatternDef[] {
  return causes.map((cause) => {
    const { size, marks } = HATCHES[cause];
    return { id: idOf(cause), size, scale: 1 / scale, nodes: marks };
  });
}
