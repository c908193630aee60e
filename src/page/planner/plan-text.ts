import {
  type Diagnostic,
  type EngineJob,
  type Listed,
  layOutQuilt,
  listAll,
  type Plan,
  type PlanOptions,
  planListed,
  planSpec,
  quickSolve,
  readSpecFile,
  runJob,
  type Spec,
  USUAL_OPTIONS,
  withoutEasing,
} from "../../planning.ts";
import { type Amounts, amountsOf } from "./amounts.ts";
import { type Completed, completed } from "./complete.ts";
import { jobText, type Keeps, type Kept } from "./keeps.ts";
import type { Answer } from "./messages.ts";
import { pictureOf } from "./picture.ts";

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
type Planned = ReturnType<typeof planSpec>;

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

/** A quilt read and listed: what both passes plan. */
interface Ready {
  spec: Spec;
  listed: Listed;
  diagnostics: Diagnostic[];
}

/** The quick plan: kept results, no easing, no narrower widths, little search. */
function quickly({ spec, listed, diagnostics }: Ready, around: Around): Planned {
  const options: PlanOptions = { ...USUAL_OPTIONS, effort: QUICK };
  return planListed(spec, listed, diagnostics, options, withoutEasing(quickSolve(solveKeeping(around))));
}

/** Reads a text and lists what is cut, telling what can be drawn of it; null where it cannot be planned. */
function readyText(
  id: number,
  whole: Completed,
  name: string,
  { tell }: Around,
): (Ready & { read: Diagnostic[] }) | null {
  const { empty } = whole;
  const read = readSpecFile(whole.text, name);
  const spec = read.value;
  const listed = spec === null ? null : listAll(spec);
  // Where the cutting cannot be listed the top can often be drawn all the same.
  const laid =
    spec?.kind === "quilt" && listed?.value == null ? layOutQuilt(spec).value?.top : listed?.value?.top;
  const diagnostics = [...read.diagnostics, ...(listed?.diagnostics ?? [])];
  tell({ kind: "laid", id, picture: laid == null ? null : pictureOf(laid), diagnostics, empty });
  if (spec !== null && listed?.value != null)
    return { spec, listed: listed.value, diagnostics: listed.diagnostics, read: read.diagnostics };
  tell({ kind: "failed", id, diagnostics });
  return null;
}

/**
 * From a text to what the page shows of it, told piece by piece: the top as laid out, quick amounts, then the plan
 * that the command line makes of the same text, to the byte. Squares with nothing on them are left out of the amounts.
 * @returns the plan; null where there is none, or a newer question has come
 */
export async function planText(id: number, text: string, name: string, around: Around): Promise<Plan | null> {
  const { tell } = around;
  const whole = completed(text);
  const ready = readyText(id, whole, name, around);
  if (ready === null) return null;
  const { spec, listed } = ready;
  await around.pause();
  if (around.overtaken()) return null;
  const thoroughly = (solve: Solve) => planListed(spec, listed, ready.diagnostics, USUAL_OPTIONS, solve);
  let planned = await unless(NotKept, () => thoroughly(solveFromKeeps(around)));
  if (planned === null) {
    const quick = await unless(Overtaken, () => quickly(ready, around));
    if (quick === null || around.overtaken()) return null;
    if (quick.value !== null) tell({ kind: "amounts", id, amounts: amountsOf(quick.value) });
    planned = await unless(Overtaken, () => thoroughly(solveKeeping(around)));
    if (planned === null || around.overtaken()) return null;
  }
  const diagnostics = [...ready.read, ...planned.diagnostics];
  if (planned.value === null) {
    tell({ kind: "failed", id, diagnostics });
    return null;
  }
  const plan = { ...planned.value, diagnostics };
  tell({ kind: "planned", id, amounts: amountsOf(plan), diagnostics, whole: whole.empty === 0 });
  return plan;
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
