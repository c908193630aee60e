import { sewnAt } from "../quilt/sizes/as-sewn.ts";
import type { BlockDesign } from "../quilt/types.ts";
import type { JoinStep, RawSize } from "./types.ts";

/**
 * The joinings of a block as large as they are sewn. A block whose cells lie off the ruler's marks is sewn larger than
 * it finishes, and the last joining says to what it is trimmed.
 * @param allowance a seam allowance in the joinings' own measure
 * @param mark a ruler mark in the same
 */
export function asSewn(
  joins: readonly JoinStep[],
  { sewn }: Pick<BlockDesign, "sewn">,
  allowance: number,
  mark: number,
  scale: number,
): JoinStep[] {
  if (sewn === undefined) return [...joins];
  const seams = 2 * allowance;
  const run = (stops: typeof sewn.across, from: number, raw: number): number =>
    (sewnAt(stops, (from + raw - seams) / scale) - sewnAt(stops, from / scale)) * scale + seams;
  const larger = ({ across, down }: RawSize, at: { x: number; y: number }): RawSize => ({
    across: run(sewn.across, at.x, across),
    down: run(sewn.down, at.y, down),
  });
  const partsOf = ({ parts, at, way }: JoinStep): RawSize[] => {
    let { x, y } = at;
    return parts.map((part) => {
      const sized = larger(part, { x, y });
      if (way === "across") x += part.across - seams;
      else y += part.down - seams;
      return sized;
    });
  };
  const up = (side: number): number => Math.ceil(side / mark - 1e-6) * mark;
  return joins.map((join, i) => {
    const size = larger(join.size, join.at);
    const last = i === joins.length - 1;
    const { across, down } = join.size;
    return {
      ...join,
      parts: partsOf(join),
      size,
      seamLength: Math.round((join.way === "across" ? size.down : size.across) / scale),
      ...(last ? { trim: { across: up(across), down: up(down) } } : {}),
    };
  });
}
