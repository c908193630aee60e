import type { LaidRecord, StepRecord, UnitRecord } from "../../cutlist/unit-record.ts";
import { formatLength } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Eighth } from "../../quilt/units/types.ts";
import { aboutSize } from "./lengths.ts";
import { unitWords } from "./unit-words.ts";

/** What the steps of a unit are told with. */
export interface Telling {
  unit: UnitRecord;
  plan: Plan;
  seam: string;
  size(size: { across: number; along: number }): string;
  twoWay(fabric: string): boolean;
  /** The pressing of the blocks decides how the seams inside are pressed: told once, after the steps. */
  pressedInBlocks: boolean;
}

export function telling(unit: UnitRecord, plan: Plan): Telling {
  const kinds = new Map(plan.fabrics.map(({ name, print }) => [name, print.kind]));
  return {
    unit,
    plan,
    seam: formatLength(plan.making?.seam ?? 0, plan.ruler),
    size: ({ across, along }) => aboutSize(across, along, plan),
    twoWay: (fabric) => kinds.get(fabric) === "two-way",
    pressedInBlocks:
      plan.making?.unitPressing.some((each) => plan.making?.units[each.unit] === unit) === true,
  };
}

/** Where a print's heads point; empty for a fabric without direction. */
export function headsOf(up: Eighth | null, fabric: string, { twoWay }: Telling): string {
  return up === null ? "" : unitWords.heads(up, twoWay(fabric));
}

export function bagOf({ letter, fabric }: LaidRecord): string {
  return unitWords.bag(letter, fabric);
}

/** Towards what a seam is pressed. */
export function pressLine(step: StepRecord, { pressedInBlocks }: Telling): string[] {
  if (!("press" in step) || (pressedInBlocks && (step.do === "join" || step.do === "strip-set"))) return [];
  if (step.pressTo !== null) {
    const { part, fabric } = step.pressTo;
    return [unitWords.press.to(fabric === "" || fabric === part ? part : fabric)];
  }
  return step.press.to === "part" ? [] : [unitWords.press[step.press.to]];
}
