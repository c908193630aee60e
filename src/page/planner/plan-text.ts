import {
  type EngineJob,
  layOutQuilt,
  type PlanOptions,
  planSpec,
  quickSolve,
  readSpecFile,
  runJob,
  type Spec,
  USUAL_OPTIONS,
  withoutEasing,
} from "../../planning.ts";
import { type Amounts, amountsOf } from "./amounts.ts";
import { completed } from "./complete.ts";
import { jobText, type Keeps, type Kept } from "./keeps.ts";
import type { Answer } from "./messages.ts";

/** Counted milliseconds of search for each fabric in the first, quick pass. */
const QUICK = 40;

/** What the planner needs from where it runs. */
export interface Around {
  keeps: Keeps;
  tell(answer: Answer): void;
  /** A newer question has come: this one is to end. */
  overtaken(): boolean;
  /** Lets waiting messages in. */
  pause(): Promise<void>;
}

type Solve = Parameters<typeof planSpec>[2];

/** Thrown inside a search that nobody waits for any more. */
class Overtaken extends Error {}

/** Thrown where an answer would have to be searched for. */
class NotKept extends Error {}

/** Solves what has not been solved before, one job at a time, so that a newer question is heard between two. */
function solveKeeping(around: Around): Solve {
  return async (jobs) => {
    const results = [];
    for (const job of jobs) {
      const key = jobText(job);
      let result = around.keeps.find(key);
      if (result === undefined) {
        await around.pause();
        if (around.overtaken()) throw new Overtaken();
        result = await runJob(job);
        const entries: Kept[] = [[key, result]];
        around.keeps.keep(entries);
        around.tell({ kind: "kept", entries });
      }
      results.push(result);
    }
    return results;
  };
}

/** Only what is kept. */
function solveFromKeeps({ keeps }: Around): Solve {
  return async (jobs: readonly EngineJob[]) =>
    jobs.map((job) => {
      const found = keeps.find(jobText(job));
      if (found === undefined) throw new NotKept();
      return found;
    });
}

async function unless<T>(kind: new () => Error, work: () => Promise<T>): Promise<T | null> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof kind) return null;
    throw error;
  }
}

/** The quick plan: kept results, no easing, no narrower widths, little search. */
function quickly(spec: Spec, around: Around): ReturnType<typeof planSpec> {
  const options: PlanOptions = { ...USUAL_OPTIONS, effort: QUICK };
  return planSpec(spec, options, withoutEasing(quickSolve(solveKeeping(around))));
}

/**
 * From a text to what the page shows of it, told piece by piece: the top as laid out, quick amounts, then the plan
 * that the command line makes of the same text, to the byte. Squares with nothing on them are left out of the amounts.
 */
export async function planText(id: number, text: string, name: string, around: Around): Promise<void> {
  const { tell } = around;
  const whole = completed(text);
  const read = readSpecFile(whole.text, name);
  if (read.value === null) {
    tell({ kind: "laid", id, top: null, diagnostics: read.diagnostics, empty: whole.empty });
    tell({ kind: "failed", id, diagnostics: read.diagnostics });
    return;
  }
  const spec = read.value;
  if (spec.kind === "quilt") {
    const laid = layOutQuilt(spec);
    const diagnostics = [...read.diagnostics, ...laid.diagnostics];
    tell({ kind: "laid", id, top: laid.value?.top ?? null, diagnostics, empty: whole.empty });
    if (laid.value === null) {
      tell({ kind: "failed", id, diagnostics });
      return;
    }
  }
  await around.pause();
  if (around.overtaken()) return;
  let planned = await unless(NotKept, () => planSpec(spec, USUAL_OPTIONS, solveFromKeeps(around)));
  if (planned === null) {
    const quick = await unless(Overtaken, () => quickly(spec, around));
    if (quick === null || around.overtaken()) return;
    if (quick.value !== null) tell({ kind: "amounts", id, amounts: amountsOf(quick.value) });
    planned = await unless(Overtaken, () => planSpec(spec, USUAL_OPTIONS, solveKeeping(around)));
    if (planned === null || around.overtaken()) return;
  }
  const diagnostics = [...read.diagnostics, ...planned.diagnostics];
  if (planned.value === null) tell({ kind: "failed", id, diagnostics });
  else {
    const plan = { ...planned.value, diagnostics };
    tell({ kind: "planned", id, plan, amounts: amountsOf(plan), whole: whole.empty === 0 });
  }
}

/** Amounts of another text of the same quilt, for setting beside it; null where it cannot be planned. */
export async function tryText(text: string, name: string, around: Around): Promise<Amounts | null> {
  const read = readSpecFile(completed(text).text, name);
  if (read.value === null) return null;
  const spec = read.value;
  const planned = await unless(Overtaken, () =>
    planSpec(spec, USUAL_OPTIONS, withoutEasing(quickSolve(solveKeeping(around)))),
  );
  return planned?.value == null ? null : amountsOf(planned.value);
}
