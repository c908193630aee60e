import type { CuttingStep, FabricPlan, Plan, StepFlag } from "../../plan/types.ts";
import { alikeLays, stockOfLay } from "./bought.ts";
import { cutPhrase, filledPhrases, groupsOf, subcutPhrases, type Table } from "./sentence.ts";

/** One thing to do at the mat: steps of the plan whose strips have one width are cut at one ruler setting. */
export interface Instruction {
  lay: number;
  /** What follows one another: the strips, then what is cut from all of them. */
  phrases: string[];
  /** Numbers of all its strips in the diagram. */
  strips: number[];
  /** What is cut from some strips only; empty when `phrases` says it all. */
  parts: { strips: number[]; phrases: string[] }[];
  flags: StepFlag[];
}

function sameCut(a: CuttingStep, b: CuttingStep): boolean {
  return (
    a.kind === "strips" && b.kind === "strips" && a.lay === b.lay && a.width === b.width && a.run === b.run
  );
}

function asInstruction(table: Table, steps: readonly CuttingStep[]): Instruction {
  const [first, second] = steps;
  if (first === undefined) throw new Error("an instruction without steps");
  const count = steps.reduce((sum, step) => sum + step.count, 0);
  // A strip that is cut already is only subcut.
  const lay = table.fabric.lays[first.lay];
  const isStrip = lay !== undefined && stockOfLay(table.fabric, lay)?.strip === true;
  if (isStrip) return asSubcuts(table, steps);
  const cut = cutPhrase(table, first, count);
  const whole = {
    lay: first.lay,
    strips: steps.flatMap(({ strips }) => strips),
    flags: [...new Set(steps.flatMap(({ flags }) => flags))],
  };
  const read = steps.map((step) => ({ groups: groupsOf(table.fabric, step), strips: step.count }));
  const [one, two] = read;
  if (one !== undefined && second === undefined) {
    return { ...whole, phrases: [cut, ...subcutPhrases(table, one.groups, one.strips)], parts: [] };
  }
  if (one !== undefined && two !== undefined && steps.length === 2) {
    const filled = filledPhrases(table, one, two);
    if (filled !== null) return { ...whole, phrases: [cut, ...filled], parts: [] };
  }
  const parts = steps.map((step) => ({
    strips: step.strips,
    phrases: subcutPhrases(table, groupsOf(table.fabric, step), step.count),
  }));
  return { ...whole, phrases: [cut], parts };
}

function asSubcuts(table: Table, steps: readonly CuttingStep[]): Instruction {
  const phrases = steps.flatMap((step) => subcutPhrases(table, groupsOf(table.fabric, step), step.count));
  const [begins = "", ...rest] = phrases;
  return {
    lay: steps[0]?.lay ?? 0,
    phrases: [begins.charAt(0).toUpperCase() + begins.slice(1), ...rest],
    strips: [],
    parts: [],
    flags: [...new Set(steps.flatMap(({ flags }) => flags))],
  };
}

/** The cutting steps of a fabric as they are followed at the mat. Cloths cut alike are told once. */
export function instructionsFor(plan: Plan, fabric: FabricPlan): Instruction[] {
  const runs: CuttingStep[][] = [];
  const alike = alikeLays(fabric.lays);
  for (const step of fabric.steps) {
    if (alike[step.lay] === 0) continue;
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run !== undefined && last !== undefined && sameCut(last, step)) run.push(step);
    else runs.push([step]);
  }
  return runs.map((run) => asInstruction({ plan, fabric }, run));
}
