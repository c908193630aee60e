import type { Making, PartialSeam } from "../../making/types.ts";
import type { BlockDesign, Patch } from "../../quilt/types.ts";
import { type Corner, type Placing, patchNodes, ticksOf } from "../quilt/patches.ts";
import { arrowBoxes, touch } from "../quilt/unit-tags.ts";
import { TICKS_PER_MM } from "../scene/frame.ts";
import { numberMark } from "../scene/marks.ts";
import type { Box, SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText } from "../scene/text-fit.ts";
import type { DrawnFabric } from "../scene/textures.ts";

const TALLEST = 210;
/** For the numbers of the rows of other blocks: all stand alike. */
const LEFT = 16;
/** Page units that open about the middle unit. */
const GAP = 11;

type Side = NonNullable<PartialSeam["order"]>[number];

/** The order of sewing of a block that is four units round one; null for any other. */
export function whorlOf(making: Making, index: number): readonly Side[] | null {
  const joined = making.joins.some((join) => join.design === index && join.stage === "block");
  return joined ? null : (making.partial.find(({ design }) => design === index)?.order ?? null);
}

/** Room for a number in a unit: its middle, or the nearest place along its long side that covers no arrow. */
function besideArrows(unit: Box, arrows: readonly Box[]): Box {
  const size = 14;
  const middle = { x: unit.x + unit.width / 2 - size / 2, y: unit.y + unit.height / 2 - size / 2 };
  const [most, lying] = [(Math.max(unit.width, unit.height) - size) / 2, unit.width >= unit.height];
  for (let away = 0; away < most; away += 2)
    for (const by of [-away, away]) {
      const box = {
        x: middle.x + (lying ? by : 0),
        y: middle.y + (lying ? 0 : by),
        width: size,
        height: size,
      };
      if (!arrows.some((arrow) => touch(arrow, box))) return box;
    }
  return { ...middle, width: size, height: size };
}

interface Edges {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

const mm = (value: BlockDesign["across"]): number => ticksOf(value) / TICKS_PER_MM;

function boxesOf({ units }: BlockDesign): Edges[] {
  return units.map(({ x, y, across, down }) => ({
    left: mm(x),
    top: mm(y),
    right: mm(x) + mm(across),
    bottom: mm(y) + mm(down),
  }));
}

/** Says on which side of the middle one a unit lies; null for the middle one. */
function sidesOf(boxes: readonly Edges[], across: number, down: number): (unit: number) => Side | null {
  const middle = boxes.find(
    (box) => box.left > 0 && box.top > 0 && box.right < across - 1e-6 && box.bottom < down - 1e-6,
  );
  return (unit) => {
    const box = boxes[unit];
    if (box === undefined || middle === undefined || box === middle) return null;
    if (box.bottom <= middle.top + 1e-6) return "upper";
    if (box.top >= middle.bottom - 1e-6) return "lower";
    return box.right <= middle.left + 1e-6 ? "left" : "right";
  };
}

/** Four units round one, set apart from the middle and numbered as they are sewn on. */
export function whorlPanel(
  design: BlockDesign,
  order: readonly Side[],
  fabrics: readonly DrawnFabric[],
  title: string,
  frame: { x: number; y: number; width: number; id: string },
): { nodes: SceneNode[]; height: number; scale: number } {
  const [across, down] = [mm(design.across), mm(design.down)];
  const gap = GAP;
  const scale = Number(
    Math.min((frame.width - LEFT - 2 * gap) / across, (TALLEST - 2 * gap) / down, 1).toFixed(6),
  );
  const at: Placing = { x: frame.x + LEFT + gap, y: frame.y + 18 + gap, scale };
  const boxes = boxesOf(design);
  const sideOf = sidesOf(boxes, across, down);
  const out: Record<Side, Corner> = { upper: [0, -gap], lower: [0, gap], left: [-gap, 0], right: [gap, 0] };
  const shift = (patch: Patch): Corner => {
    const side = sideOf(patch.origin.unit ?? -1);
    const [dx, dy] = side === null ? [0, 0] : out[side];
    return [dx / scale, dy / scale];
  };
  const arrows = arrowBoxes(design.patches, at, shift);
  const numbers = design.units.flatMap((_, unit): SceneNode[] => {
    const [side, box] = [sideOf(unit), boxes[unit]];
    if (side === null || box === undefined) return [];
    const [dx, dy] = out[side];
    const x = at.x + ((box.left + box.right) / 2) * scale + dx;
    const y = at.y + ((box.top + box.bottom) / 2) * scale + dy;
    const [wide, high] = [(box.right - box.left) * scale, (box.bottom - box.top) * scale];
    const mark = besideArrows({ x: x - wide / 2, y: y - high / 2, width: wide, height: high }, arrows);
    return numberMark(String(order.indexOf(side) + 1), mark);
  });
  const { x, y, width } = frame;
  return {
    nodes: [
      textIn(cleanText(title), { x, y, width, height: 14 }, { size: 10, bold: true }),
      ...patchNodes(design.patches, fabrics, at, {
        id: frame.id,
        shift,
      }),
      ...numbers,
    ],
    height: 18 + down * scale + 2 * gap + 16,
    scale,
  };
}
