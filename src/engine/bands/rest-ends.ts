import { normalPositions } from "../oracles/positions.ts";
import { fitsRun } from "../problem/reduce.ts";
import type { Rest, RollQuestion } from "../problem/roll-question.ts";

/** Ends of strips farther than this beyond a band are not listed: there would be too many. */
const FARTHEST = 200_000;

/** A rest, and whether every length it may usefully have is listed. */
export type RestWithEnds = Rest & { whole: boolean };

/**
 * How long the width beside bands may usefully be made, so that the strips in it come out even: to an end of strips
 * laid one below another. An overhang as high as a strip is never needed: that strip may as well be cut across the
 * full width. With stacks a strip may be as high as the whole plan, and so may the overhang, up to `limit`.
 */
export function restEnds({ kinds, style }: Pick<RollQuestion, "kinds" | "style">, limit: number) {
  const strips = kinds.filter((kind) => kind.place !== "bands" && kind.demand > 0);
  const known = new Map<string, RestWithEnds>();
  const beside = (across: number, along: number): RestWithEnds => {
    const key = `${across}x${along}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const heights = strips.flatMap(({ lies, run }) => {
      if (run !== undefined) return fitsRun({ lies, run }, across) ? [run.height] : [];
      return lies.filter((lie) => lie.width <= across).map(({ height }) => height);
    });
    const highest = Math.max(0, ...heights);
    const wanted = Math.min(limit, along + (style === "strips-3" && highest > 0 ? limit : highest));
    const farthest = Math.min(wanted, along + Math.max(highest, FARTHEST));
    const { sums } = normalPositions(heights, Math.max(0, farthest));
    const beyond = style === "strips-3" ? Infinity : along + highest;
    const ends = sums.filter((end) => end > along && end < beyond);
    const rest = { across, along, ends, whole: farthest >= wanted };
    known.set(key, rest);
    return rest;
  };
  return { beside };
}
