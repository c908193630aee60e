import { familyOf, formatLength, formatSize, METRE, type Ticks, YARD } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";

/** Lines under a title or a step. */
export function indented(lines: readonly string[]): string[] {
  return lines.map((line) => (line === "" ? "" : `  ${line}`));
}

/** Seams and thread in whole yards or metres, rounded up. */
export function longLength(length: Ticks, plan: Plan): string {
  return familyOf(plan.ruler.unit) === "imperial"
    ? `${Math.ceil(length / YARD)} yd`
    : `${Math.ceil(length / METRE)} m`;
}

/** A length that may lie off the marks, as something that is measured and not cut: to the nearest mark. */
export function measured(length: Ticks, plan: Plan): string {
  return formatLength(nearestMark(length, plan), plan.ruler);
}

export function measuredSize(across: Ticks, down: Ticks, plan: Plan): string {
  return formatSize(nearestMark(across, plan), nearestMark(down, plan), plan.ruler);
}

function nearestMark(length: Ticks, { ruler }: Plan): Ticks {
  return Math.round(length / ruler.mark) * ruler.mark;
}

/** `2 x square, flying geese`: runs of like parts gathered. */
export function partsTold(from: readonly string[]): string {
  const runs: { part: string; count: number }[] = [];
  for (const part of from) {
    const last = runs.at(-1);
    if (last?.part === part) last.count += 1;
    else runs.push({ part, count: 1 });
  }
  return runs.map(({ part, count }) => (count === 1 ? part : `${count} x ${part}`)).join(", ");
}
