import { readModel } from "../../edits/model.ts";
import {
  type Cutting,
  type Diagnostic,
  type EngineJob,
  layOutQuilt,
  listCutting,
  type Plan,
  type PlanOptions,
  planCutting,
  planListed,
  planSpec,
  quickSolve,
  readSpecFile,
  runJob,
  type Spec,
  USUAL_OPTIONS,
  withoutEasing,
} from "../../planning.ts";
import { language } from "../words/index.ts";
import { type Amounts, amountsOf } from "./amounts.ts";
import { type Completed, completed } from "./complete.ts";
import { jobText, type Keeps, type Kept } from "./keeps.ts";
import type { Answer } from "./messages.ts";
import { pictureOf } from "./picture.ts";
import { drawnSoFar } from "./so-far.ts";

/** Counted milliseconds of search for each fabric in the first, quick pass. */
const QUICK = 40;

/** As the command line plans a file, what strips cut once more would save told with it. */
const AS_COMMAND: PlanOptions = { ...USUAL_OPTIONS, suggestStacks: true };

/** What the planner needs from where it runs. */
export interface Around {
  keeps: Keeps;
  tell(answer: Answer): void;
  /** A newer question has come: this one is to end. */
  overtaken(): boolean;
  /** Lets waiting messages in. */
  pause(): Promise<void>;
  /** Waits until the hand rests for a moment, or a newer question has come. */
  rest(): Promise<void>;
}

type Solve = Parameters<typeof planSpec>[2];
type Planned = ReturnType<typeof planSpec>;

/** Thrown inside a search that nobody waits for any more. */
export class Overtaken extends Error {}

/** Thrown where an answer would have to be searched for. */
class NotKept extends Error {}

/** Solves what has not been solved before, one job at a time, so that a newer question is heard between two. */
export function solveKeeping(around: Around): Solve {
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

export async function unless<T>(kind: new () => Error, work: () => Promise<T>): Promise<T | null> {
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
  cutting: Cutting;
  diagnostics: Diagnostic[];
}

/** The quick plan: kept results, no easing, no narrower widths, little search, and no thought of the sewing. */
function quickly({ spec, cutting, diagnostics }: Ready, around: Around): Planned {
  const options: PlanOptions = { ...USUAL_OPTIONS, effort: QUICK };
  return planCutting(spec, cutting, diagnostics, options, withoutEasing(quickSolve(solveKeeping(around))));
}

/** Reads a text and lists what is cut, telling what can be drawn of it; null where it cannot be planned. */
function readyText(
  id: number,
  whole: Completed,
  name: string,
  { tell }: Around,
): (Ready & { read: Diagnostic[] }) | null {
  const { empty } = whole;
  const read = readSpecFile(whole.text, name, null, language);
  const spec = read.value;
  const cutting = spec === null ? null : listCutting(spec);
  // Where the cutting cannot be listed the top can often be drawn all the same.
  const laid =
    spec?.kind === "quilt" && cutting?.value == null ? layOutQuilt(spec).value?.top : cutting?.value?.top;
  const diagnostics = [...read.diagnostics, ...(cutting?.diagnostics ?? [])];
  const picture = laid != null ? pictureOf(laid) : spec === null ? null : drawnSoFar(readModel(whole.text));
  tell({ kind: "laid", id, picture, diagnostics, empty });
  if (spec !== null && cutting?.value != null)
    return { spec, cutting: cutting.value, diagnostics: cutting.diagnostics, read: read.diagnostics };
  tell({ kind: "failed", id, diagnostics });
  return null;
}

/** Faults told at the lines of her own text, where empty squares had to be filled for the planning. */
function atOwnLines(answer: Answer, { empty, ownLine }: Completed): Answer {
  if (empty === 0 || !("diagnostics" in answer)) return answer;
  const diagnostics = answer.diagnostics.map((one) =>
    one.at === null ? one : { ...one, at: { ...one.at, line: ownLine(one.at.line) } },
  );
  return { ...answer, diagnostics };
}

/**
 * From a text to what the page shows of it, told piece by piece: the top as laid out, quick amounts, then the plan
 * that the command line makes of the same text, to the byte. Squares with nothing on them are left out of the amounts.
 * @returns the plan; null where there is none, or a newer question has come
 */
export async function planText(id: number, text: string, name: string, around: Around): Promise<Plan | null> {
  const whole = completed(text);
  const tell = (answer: Answer): void => around.tell(atOwnLines(answer, whole));
  const ready = readyText(id, whole, name, { ...around, tell });
  if (ready === null) return null;
  const { spec, cutting } = ready;
  await around.pause();
  if (around.overtaken()) return null;
  // Amounts first: what is kept needs no search, and how it is sewn changes no amount.
  const kept = await unless(NotKept, () =>
    planCutting(spec, cutting, ready.diagnostics, USUAL_OPTIONS, solveFromKeeps(around)),
  );
  const first = kept ?? (await unless(Overtaken, () => quickly(ready, around)));
  if (first === null || around.overtaken()) return null;
  if (first.value !== null) tell({ kind: "amounts", id, amounts: amountsOf(first.value) });
  await around.pause();
  if (around.overtaken()) return null;
  if (kept === null) {
    // What is to be proved is searched for at once, heard between two searches.
    const solved = await unless(Overtaken, () =>
      planCutting(spec, cutting, ready.diagnostics, AS_COMMAND, solveKeeping(around)),
    );
    if (solved === null || around.overtaken()) return null;
  }
  // The sewing and the audit take as long as a search and hear nothing: they begin when no gesture follows.
  await around.rest();
  if (around.overtaken()) return null;
  const listed = cutting.sewn();
  await around.pause();
  if (around.overtaken()) return null;
  const planned = await unless(Overtaken, () =>
    planListed(spec, listed, ready.diagnostics, AS_COMMAND, solveKeeping(around)),
  );
  if (planned === null || around.overtaken()) return null;
  const diagnostics = [...ready.read, ...planned.diagnostics];
  if (planned.value === null) {
    tell({ kind: "failed", id, diagnostics });
    return null;
  }
  const plan = { ...planned.value, diagnostics };
  tell({ kind: "planned", id, amounts: amountsOf(plan), diagnostics, whole: whole.empty === 0 });
  return plan;
}

/** What a gesture has done before its amounts stand, where nothing is to be solved: read, laid out, listed and planned. */
export async function readyAgain(text: string, name: string, keeps: Keeps): Promise<void> {
  const still = () => Promise.resolve();
  const around: Around = { keeps, tell() {}, overtaken: () => false, pause: still, rest: still };
  const ready = readyText(0, completed(text), name, around);
  if (ready === null) return;
  const { spec, cutting, diagnostics } = ready;
  const planned = await unless(NotKept, () =>
    planCutting(spec, cutting, diagnostics, USUAL_OPTIONS, solveFromKeeps(around)),
  );
  if (planned?.value != null) amountsOf(planned.value);
}

/** Amounts of another text of the same quilt, for setting beside it; null where it cannot be planned. */
export async function tryText(text: string, name: string, around: Around): Promise<Amounts | null> {
  const read = readSpecFile(completed(text).text, name, null, language);
  if (read.value === null) return null;
  const spec = read.value;
  const planned = await unless(Overtaken, () =>
    planSpec(spec, USUAL_OPTIONS, withoutEasing(quickSolve(solveKeeping(around)))),
  );
  return planned?.value == null ? null : amountsOf(planned.value);
}
