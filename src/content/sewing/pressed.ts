import type { JoinStep, Making, PressedSeam } from "../../making/types.ts";
import type { Presses } from "../../words/en/sewing/blocks.ts";

/** Ticks by which a rounded place may be off. */
const NEAR = 2;

/** Which way the seams of one joining are pressed, from its first part to its last. */
export function pressesOf(
  join: Pick<JoinStep, "way" | "at" | "parts" | "size">,
  seams: readonly PressedSeam[],
  { scale, seam }: Making,
): Presses {
  const across = join.way === "across";
  const allowance = 2 * seam * scale;
  let place = across ? join.at.x : join.at.y;
  const from = (across ? join.at.y : join.at.x) / scale;
  const to = from + ((across ? join.size.down : join.size.across) - allowance) / scale;
  return join.parts.slice(0, -1).map((part) => {
    place += (across ? part.across : part.down) - allowance;
    const line = place / scale;
    const own = seams.filter(({ x1, y1, x2, y2 }) => {
      const on = across ? [x1, x2] : [y1, y2];
      const along = across ? [y1, y2] : [x1, x2];
      return (
        on.every((value) => Math.abs(value - line) <= NEAR) &&
        Math.min(...along) >= from - NEAR &&
        Math.max(...along) <= to + NEAR
      );
    });
    const ways = new Set(own.map(({ press }) => press));
    const [only] = ways;
    return ways.size === 1 && only !== undefined ? only : null;
  });
}
