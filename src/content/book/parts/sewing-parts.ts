import type { UnitRecord } from "../../../cutlist/record/unit-record.ts";
import type { Making } from "../../../making/types.ts";
import type { Plan } from "../../../plan/types.ts";
import type { Words } from "../../../words/index.ts";
import { toldBlocks } from "../../sewing/blocks.ts";
import { foundationTold, inOrder } from "../../sewing/foundation.ts";
import { partialTold, partLines } from "../../sewing/making.ts";
import { borderLines } from "../../sewing/making-borders.ts";
import { finishingLines } from "../../sewing/making-finishing.ts";
import { topLines } from "../../sewing/rows.ts";
import { unitGroups } from "../../sewing/unit-groups.ts";
import { toldGroup, unitGroupLines } from "../../sewing/unit-told.ts";
import type { ToldRun } from "../../sewing/units.ts";
import type { Step, StepGroup } from "../content.ts";
import { sentence } from "../typeset.ts";
import { stepGroups } from "./told-steps.ts";
import { toldBatches } from "./unit-cards.ts";

/** Steps of blocks: which designs of the top they make, and how many of each step are done. */
interface BlockSteps extends StepGroup {
  /** By index into the top's designs; none where they speak of no block by itself. */
  designs: number[];
  counts: number[];
}

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
  blocks: BlockSteps[];
  rows: StepGroup[];
  borders: StepGroup[];
  finishing: StepGroup[];
}

function counted(
  lines: readonly string[],
  designs: number[],
  countsOf: (steps: readonly Step[]) => number[],
): BlockSteps[] {
  return stepGroups(lines, `block-${designs.join("-")}`).map((group) => ({
    ...group,
    designs,
    counts: countsOf(group.steps),
  }));
}

/** Parts of several units that are sewn before they are laid on a foundation. */
function laidParts(making: Making, plan: Plan, words: Words): BlockSteps[] {
  const counts = making.joins.filter(({ stage }) => stage === "unit").map(({ count }) => count);
  return counted(partLines(making, plan, words), [], () => counts);
}

/** What is made on the foundation; its parts are made one by one. */
function onFoundation(making: Making, plan: Plan, words: Words): BlockSteps[] {
  const told = foundationTold(making, plan, words);
  if (told === null) return [];
  const before = stepGroups([told.title, ...told.before], "before")[0]?.steps.length ?? 0;
  const made = making.foundation?.parts.map(({ count }) => count) ?? [];
  return counted([told.title, ...inOrder(told)], [], (steps) => steps.map((_, i) => made[i - before] ?? 1));
}

/** Null for a plain cut list, which nobody says how to sew. */
export function sewingParts(plan: Plan, words: Words): SewingParts | null {
  const { making, top } = plan;
  if (making === undefined || top === null) return null;
  const { about, blocks } = toldBlocks(making, plan, words);
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
    aboutBlocks: about.map(sentence),
    blocks: [
      ...laidParts(making, plan, words),
      ...onFoundation(making, plan, words),
      ...blocks.flatMap(({ designs, lines, counts }) => counted(lines, designs, () => counts)),
      ...partialTold(making, plan, words).flatMap(({ design, lines }) => {
        const count = Math.max(1, top.designs[design]?.count ?? 1);
        return counted(lines, [design], (steps) => steps.map(() => count));
      }),
    ],
    rows: stepGroups(topLines(making, plan, words), "rows"),
    borders: stepGroups(borderLines(making, plan, words), "borders"),
    finishing: stepGroups(finishingLines(making, plan, words), "finishing"),
  };
}
