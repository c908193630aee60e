import type { FoundationPatch } from "../../quilt/foundation/types.ts";
import type { Patch } from "../../quilt/types.ts";
import type { Placing } from "../quilt/patches.ts";
import { TICKS_PER_MM } from "../scene/frame.ts";
import { mix, QUIET_INK, WASTE_GROUND } from "../scene/palette.ts";
import { group, line, rect, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";

/** The colour of printed lines. */
const PRINTED = mix("#4a7fb0", "#ffffff", 0.35);
/** Below this many page units squares are not counted one by one. */
const LEAST_COUNTED = 18;
/** Page units between printed lines that can still be told apart. */
const LEAST_SEEN = 2.5;
/** Room for the count of squares above and beside a sheet. */
export const COUNT_ROOM = 16;

/** A sheet of foundation so many squares each way, its top left corner at `at`; `side` is a square in page units. */
export interface Sheet {
  x: number;
  y: number;
  across: number;
  down: number;
  side: number;
}

/** Page units to a square, so that a sheet fits; tidy, so that the same sheet is the same everywhere. */
export function sideFor(across: number, down: number, width: number, height: number): number {
  return Number(Math.min(width / across, height / down, 60).toFixed(4));
}

function counted(count: number, side: number): number[] {
  const step = Math.max(1, [1, 2, 4, 5, 10, 20, 50].find((every) => every * side >= LEAST_COUNTED) ?? 100);
  return Array.from({ length: count }, (_, i) => i + 1).filter((n) => n % step === 0);
}

/** Lines that belong to the cloth: numbers on discs and badges of their own lie over them. */
export function onCloth(nodes: readonly SceneNode[], id: string): SceneNode {
  return group([...nodes], { id, move: { x: 0, y: 0, scale: 1 } });
}

/** The sheet and its printed lines. */
export function printedGrid({ x, y, across, down, side }: Sheet, id: string): SceneNode {
  const [width, height] = [across * side, down * side];
  const stroke = { stroke: PRINTED, strokeWidth: side < 6 ? 0.3 : 0.6 };
  // Where squares are too small to see, only every so many lines.
  const every = Math.ceil(LEAST_SEEN / side);
  const seen = (count: number) =>
    Array.from({ length: count + 1 }, (_, i) => i).filter((i) => i % every === 0);
  const upright = seen(across).map((i) => line(x + i * side, y, x + i * side, y + height, stroke));
  const level = seen(down).map((i) => line(x, y + i * side, x + width, y + i * side, stroke));
  return onCloth([rect({ x, y, width, height }, { fill: WASTE_GROUND }), ...upright, ...level], id);
}

/** Squares counted along the upper and the left edge. */
export function squareCount({ x, y, across, down, side }: Sheet): SceneNode[] {
  const look = { size: 8.3, fill: QUIET_INK };
  const wide = 24;
  return [
    ...counted(across, side).map((n) =>
      textIn(
        String(n),
        { x: x + (n - 0.5) * side - wide / 2, y: y - COUNT_ROOM + 2, width: wide, height: 12 },
        { ...look, anchor: "middle" },
      ),
    ),
    ...counted(down, side).map((n) =>
      textIn(
        String(n),
        { x: x - COUNT_ROOM - 2, y: y + (n - 0.5) * side - 6, width: COUNT_ROOM, height: 12 },
        { ...look, anchor: "end" },
      ),
    ),
  ];
}

/** Corners in ticks as a patch that the drawings of blocks know how to paint. */
export function asPatch({
  fabric,
  corners,
  up = null,
}: Pick<FoundationPatch, "fabric" | "corners"> & { up?: number | null }): Patch {
  return {
    outline: corners.map(({ x, y }) => ({ x: { n: x, r: 0, d: 1 }, y: { n: y, r: 0, d: 1 } })),
    fabric,
    up,
    origin: { place: "block", block: null, unit: null, part: "", border: null },
  };
}

/** Where a part stands on its sheet: patches are in millimetres of the finished part. */
export function placingOn(sheet: Sheet, allowance: { x: number; y: number }, grid: number): Placing {
  return {
    x: sheet.x + allowance.x * sheet.side,
    y: sheet.y + allowance.y * sheet.side,
    scale: (sheet.side * TICKS_PER_MM) / grid,
  };
}
