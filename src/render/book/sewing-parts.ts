import type { UnitRecord } from "../../cutlist/record/unit-record.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { onFoundationAndBlocks } from "../text/making.ts";
import { borderLines } from "../text/making-borders.ts";
import { finishingLines } from "../text/making-finishing.ts";
import { topLines } from "../text/rows.ts";
import { unitGroups } from "../text/unit-groups.ts";
import { toldGroup, unitGroupLines } from "../text/unit-told.ts";
import type { ToldRun } from "../text/units.ts";
import type { Step, StepGroup } from "./content.ts";
import { stepGroups } from "./told-steps.ts";
import { sentence } from "./typeset.ts";
import { toldBatches } from "./unit-cards.ts";

/** The sewing by what is in hand, as the book tells it: units that are sewn alike are one step. */
export interface SewingParts {
  units: {
    units: UnitRecord[];
    count: number;
    step: Step;
    /** The same step by step, for each batch of its own. */
    batches: ToldRun[][];
    /** What is said once all steps are done. */
    after: string[];
  }[];
  /** What goes for every block. */
  aboutBlocks: string[];
  blocks: StepGroup[];
  rows: StepGroup[];
  borders: StepGroup[];
  finishing: StepGroup[];
}

/** Null for a plain cut list, which nobody says how to sew. */
export function sewingParts(plan: Plan, words: Words): SewingParts | null {
  const { making, top } = plan;
  if (making === undefined || top === null) return null;
  const blocks = stepGroups(onFoundationAndBlocks(making, plan, words), "blocks");
  const isAbout = ({ title }: StepGroup): boolean => title === sentence(words.blocks.aboutTitle);
  return {
    units: unitGroups(plan, words).flatMap((group, i) => {
      const [step] =
        stepGroups(["-", ...unitGroupLines(group, plan, words)], `unit-${i + 1}`)[0]?.steps ?? [];
      const count = group.units.reduce((sum, { units }) => sum + units, 0);
      const told = toldGroup(group, plan, words);
      if (step === undefined || told === null) return [];
      const after = told.after.map((line) => sentence(line.trim())).filter((line) => line !== "");
      return [{ units: group.units, count, step, batches: toldBatches(told), after }];
    }),
    aboutBlocks: blocks
      .filter(isAbout)
      .flatMap(({ steps }) => steps.flatMap(({ title, details }) => [title, ...details])),
    blocks: blocks.filter((group) => !isAbout(group)),
    rows: stepGroups(topLines(making, plan, words), "rows"),
    borders: stepGroups(borderLines(making, plan, words), "borders"),
    finishing: stepGroups(finishingLines(making, plan, words), "finishing"),
  };
}
