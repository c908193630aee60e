import type { Making } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import type { Side } from "../../words/en/sewing/borders.ts";
import type { Words } from "../../words/index.ts";
import { blockNamed } from "./block-names.ts";
import { partsTold } from "./making-lines.ts";

/** Value of an exact length, near enough to find which block lies where. */
const near = ({ n, r, d, root }: { n: number; r: number; d: number; root?: 3 }): number =>
  (n + r * Math.sqrt(root ?? 2)) / d;

/** One side of a border. */
export interface BorderSide {
  /** Of the border, as it is told. */
  number: number;
  side: Side;
  /** The corners belong to this side. */
  corners: boolean;
}

/** Which blocks of a pieced border lie on one side, from its start to its end. */
export function borderRow(
  { number, side, corners }: BorderSide,
  making: Making,
  plan: Plan,
  words: Words,
): string {
  const { top } = plan;
  const border = top?.borders.find((each) => each.number === number);
  if (top === null || border === undefined) return "";
  const index = top.borders.indexOf(border);
  const own = new Set(
    top.patches.flatMap(({ origin }) =>
      origin.border === index && origin.block !== null ? [origin.block] : [],
    ),
  );
  const [x, y, across, down] = [near(border.x), near(border.y), near(border.across), near(border.down)];
  const [wide, high] = [near(border.side), near(border.end)];
  const upright = side === "left" || side === "right";
  const on = (middle: { x: number; y: number }): boolean => {
    const inside = {
      left: middle.x < x + wide,
      right: middle.x > x + across - wide,
      top: middle.y < y + high,
      bottom: middle.y > y + down - high,
    };
    const between = upright
      ? middle.y > y + high && middle.y < y + down - high
      : middle.x > x + wide && middle.x < x + across - wide;
    return inside[side] && (corners || between);
  };
  const row = [...own].flatMap((block) => {
    const outline = top.blocks[block]?.outline ?? [];
    const middle = {
      x: outline.reduce((sum, point) => sum + near(point.x), 0) / Math.max(1, outline.length),
      y: outline.reduce((sum, point) => sum + near(point.y), 0) / Math.max(1, outline.length),
    };
    return on(middle) ? [{ block, at: upright ? middle.y : middle.x }] : [];
  });
  const names = row
    .sort((a, b) => a.at - b.at)
    .map(({ block }) => blockNamed(block, making, plan, words) ?? "");
  return partsTold(names);
}
