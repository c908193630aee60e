import { formatLength, formatSize, nearestMark, type Ticks } from "../length/index.ts";
import type { Plan } from "../plan/types.ts";
import type { Words } from "../words/index.ts";

/*
 * Lengths that are sewn or measured, never cut: one off the marks is told as about the nearest. What is cut is printed
 * by `formatCut` alone.
 */

/** `4 1/2 in`, or `about 3 1/8 in` where it lies off the marks. */
export function aboutLength(ticks: Ticks, { ruler }: Pick<Plan, "ruler">, words: Words): string {
  const near = nearestMark(Math.round(ticks), ruler);
  const said = formatLength(near.ticks, ruler);
  return near.exact ? said : words.units.about(said);
}

/** The same for a size, across first. */
export function aboutSize(across: Ticks, along: Ticks, { ruler }: Pick<Plan, "ruler">, words: Words): string {
  const [first, second] = [across, along].map((side) => nearestMark(Math.round(side), ruler));
  const said = formatSize(first?.ticks ?? 0, second?.ticks ?? 0, ruler);
  return first?.exact === true && second?.exact === true ? said : words.units.about(said);
}
