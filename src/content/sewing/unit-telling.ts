import type { LaidRecord, StepRecord, UnitRecord } from "../../cutlist/record/unit-record.ts";
import { formatLength } from "../../length/index.ts";
import { nth } from "../../length/nth.ts";
import type { Plan } from "../../plan/types.ts";
import type { Eighth } from "../../quilt/units/types.ts";
import type { Words } from "../../words/index.ts";
import { aboutSize } from "../lengths.ts";
import type { UnitGroup } from "./unit-groups.ts";

/** What the steps of a unit are told with. */
export interface Telling {
  unit: UnitRecord;
  plan: Plan;
  /** Bags are called by the columns of a table, which says their letters and fabrics. */
  grouped: boolean;
  seam: string;
  size(size: { across: number; along: number }): string;
  twoWay(fabric: string): boolean;
  /** The pressing of the blocks decides how the seams inside are pressed: told once, after the steps. */
  pressedInBlocks: boolean;
}

/**
 * @param group the units it is told with, and which of them it is
 */
export function telling(group: UnitGroup, index: number, plan: Plan, words: Words): Telling {
  const kinds = new Map(plan.fabrics.map(({ name, print }) => [name, print.kind]));
  const unit = nth(group.told, index);
  const grouped = group.units.length > 1;
  return {
    unit,
    plan,
    grouped,
    seam: formatLength(plan.making?.seam ?? 0, plan.ruler),
    size: ({ across, along }) => aboutSize(across, along, plan, words),
    twoWay: (fabric) => (grouped ? group.twoWay.includes(fabric) : kinds.get(fabric) === "two-way"),
    pressedInBlocks:
      plan.making?.unitPressing.some((each) => plan.making?.units[each.unit] === group.units[index]) === true,
  };
}

/** Where a print's heads point; empty for a fabric without direction. */
export function headsOf(up: Eighth | null, fabric: string, { twoWay }: Telling, words: Words): string {
  return up === null ? "" : words.units.heads(up, twoWay(fabric));
}

/** A bag by its letter and fabric, or by the column of the table that says both. */
export function bagTold(letters: string, fabric: string, { grouped }: Telling, words: Words): string {
  return grouped ? letters : words.units.bag(letters, fabric);
}

export function bagOf({ letter, fabric }: LaidRecord, tell: Telling, words: Words): string {
  return bagTold(letter, fabric, tell, words);
}

/** Towards what a seam is pressed. */
export function pressLine(step: StepRecord, { pressedInBlocks }: Telling, words: Words): string[] {
  if (!("press" in step) || (pressedInBlocks && (step.do === "join" || step.do === "strip-set"))) return [];
  if (step.pressTo !== null) {
    const { part, fabric } = step.pressTo;
    return [words.units.press.to(fabric === "" || fabric === part ? words.unitNames.part(part) : fabric)];
  }
  return step.press.to === "part" ? [] : [words.units.press[step.press.to]];
}
