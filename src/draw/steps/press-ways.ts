import type { StepRecord } from "../../cutlist/record/unit-record.ts";

type Pressed = Extract<StepRecord, { press: unknown }>;

/**
 * The ways in which the seams between parts in a row are pressed: -1 back towards the part before, 1 on towards the
 * part after, both where a seam is pressed open. One entry for each seam.
 * @param parts by name, role or spot, in the order of the row
 */
export function pressWays(step: Pressed, parts: readonly string[]): (-1 | 1)[][] {
  const seams = Math.max(0, parts.length - 1);
  const named = step.pressTo?.part ?? (step.press.to === "part" ? step.press.part : null);
  const target = named === null ? -1 : parts.indexOf(named);
  return Array.from({ length: seams }, (_, i): (-1 | 1)[] => {
    if (step.press.to === "open") return [-1, 1];
    if (step.press.to === "outside") return [i + 1 <= seams / 2 ? -1 : 1];
    if (target >= 0) {
      // With two alike beside each other the nearest one named takes the allowances.
      if (parts[i] === named) return [-1];
      if (parts[i + 1] === named) return [1];
      return [target <= i ? -1 : 1];
    }
    return [1];
  });
}
