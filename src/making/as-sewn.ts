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
  const [wide, high] = [sewn.across.n / sewn.across.d, sewn.down.n / sewn.down.d];
  const seams = 2 * allowance;
  const larger = ({ across, down }: RawSize): RawSize => ({
    across: (across - seams) * wide + seams,
    down: (down - seams) * high + seams,
  });
  const up = (side: number): number => Math.ceil(side / mark - 1e-6) * mark;
  return joins.map((join, i) => {
    const size = larger(join.size);
    const last = i === joins.length - 1;
    const { across, down } = join.size;
    return {
      ...join,
      parts: join.parts.map(larger),
      size,
      seamLength: Math.round((join.way === "across" ? size.down : size.across) / scale),
      ...(last ? { trim: { across: up(across), down: up(down) } } : {}),
    };
  });
}
