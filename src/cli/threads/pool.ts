import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import type { EngineJob } from "../../engine/index.ts";
import { runJob } from "../../engine/index.ts";
import type { PackingResult } from "../../engine/types.ts";
import type { Words } from "../../words/index.ts";
import { stopFlag, wantsStop, whileSearching } from "./stopping.ts";
import type { Ready, Solved, WorkerTask } from "./worker.ts";

/** Told how many jobs are done of how many. */
export type JobProgress = (done: number, of: number) => void;

/** Beside the bundle; missing when the sources are run directly, as tests do. */
const WORKER = new URL("./worker.js", import.meta.url);

/** Milliseconds after which other threads are called in: what is done sooner costs less than starting one. */
const ALONE = 150;

/** Each thread holds a solver of its own, so memory sets a limit before the processor does. */
const MOST_THREADS = 4;

/** Functions do not reach a worker; the budget, which is a number, does. */
function sendable(job: EngineJob): EngineJob {
  const { shouldStop: _shouldStop, ...limits } = job.limits;
  return { ...job, limits };
}

/** A thread that waits for jobs between batches. */
interface Helper {
  worker: Worker;
  /** Told whatever the thread sends, and `null` when it has ended. */
  heard: (message: Solved | Ready | null) => void;
  /** It has answered once: only then may it be ended without harm. */
  answered: boolean;
}

/** Threads that are kept: starting one takes as long as many a search. They do not keep the program running. */
const helpers = new Set<Helper>();

function startHelper(): Helper {
  const worker = new Worker(WORKER, { resourceLimits: { maxYoungGenerationSizeMb: 8 } });
  const helper: Helper = { worker, heard: () => {}, answered: false };
  const ended = () => {
    helpers.delete(helper);
    helper.heard(null);
  };
  worker.on("message", (message: Solved | Ready) => {
    helper.answered = true;
    helper.heard(message);
  });
  worker.on("error", ended);
  worker.on("exit", ended);
  helpers.add(helper);
  return helper;
}

/** Ends the threads that are kept and gives back their memory, once nothing more is to be solved. */
export async function endThreads(): Promise<void> {
  const ended = [...helpers].filter(({ answered }) => answered);
  // A thread let go while it ends would let the program end first, with this promise still open.
  for (const helper of ended) helper.heard = () => {};
  await Promise.all(ended.map(({ worker }) => worker.terminate()));
}

let batches = 0;

/**
 * Solves engine jobs, on as many threads as the machine has to offer when they take long, this one included; results
 * in the order of the jobs. A job whose worker broke down is solved again in this thread; an error it throws here
 * is thrown to the caller.
 */
export function solveInPool(
  jobs: readonly EngineJob[],
  words: Words,
  onProgress?: JobProgress,
  onBegin?: () => void,
): Promise<PackingResult[]> {
  return whileSearching(() => solveAll(jobs, onProgress, onBegin), words);
}

/** Counted or real milliseconds from which a search is long enough to wish it stopped. */
const LONG = 5000;

function isLong({ limits: { effort, budget } }: EngineJob): boolean {
  return Math.min(effort ?? Infinity, budget ?? Infinity) >= LONG;
}

async function solveAll(
  jobs: readonly EngineJob[],
  onProgress: JobProgress | undefined,
  onBegin: (() => void) | undefined,
): Promise<PackingResult[]> {
  const results: (PackingResult | undefined)[] = jobs.map(() => undefined);
  let done = 0;
  const keep = (id: number, result: PackingResult) => {
    results[id] = result;
    done += 1;
    onProgress?.(done, jobs.length);
  };
  const solveHere = async (id: number) => {
    const job = jobs[id];
    if (job === undefined) return;
    keep(id, await runJob({ ...job, limits: { ...job.limits, shouldStop: () => wantsStop() } }));
  };

  batches += 1;
  const batch = batches;
  const taken = new Int32Array(new SharedArrayBuffer(4));
  const threads = existsSync(WORKER) ? Math.min(availableParallelism(), jobs.length, MOST_THREADS) : 1;
  const task = { batch, jobs: jobs.map(sendable), taken, stop: stopFlag() };
  const others: ReturnType<typeof ask> = [];
  // A thread that searches hears nothing: where it may take long, this one stays free for Ctrl-C.
  if (existsSync(WORKER) && jobs.some(isLong)) others.push(...ask(threads, task, keep));
  onBegin?.();
  const all = others.length > 0;
  const begun = performance.now();
  for (
    let id = all ? jobs.length : Atomics.add(taken, 0, 1);
    id < jobs.length;
    id = Atomics.add(taken, 0, 1)
  ) {
    const left = jobs.length - id;
    const worthwhile = helpers.size > 0 || performance.now() - begun >= ALONE;
    if (others.length === 0 && threads > 1 && left > 1 && worthwhile)
      others.push(...ask(Math.min(threads, left) - 1, task, keep));
    await solveHere(id);
  }
  // A thread that has only just started may have taken nothing: it is not waited for when all is done.
  while (done < jobs.length && others.some(({ busy }) => busy())) {
    await Promise.race(others.flatMap(({ busy, next }) => (busy() ? [next()] : [])));
  }
  for (const [id, result] of results.entries()) if (result === undefined) await solveHere(id);
  return results.filter((result) => result !== undefined);
}

/** Hands a batch to threads, kept ones first. */
function ask(
  count: number,
  task: WorkerTask,
  keep: (id: number, result: PackingResult) => void,
): { busy(): boolean; next(): Promise<void> }[] {
  const kept = [...helpers];
  const chosen = Array.from({ length: count }, (_, i) => kept[i] ?? startHelper());
  return chosen.map((helper) => {
    let busy = true;
    let wake = () => {};
    helper.heard = (message) => {
      if (message === null || ("ready" in message && message.batch === task.batch)) busy = false;
      else if ("result" in message && message.batch === task.batch) keep(message.id, message.result);
      if (!busy) helper.worker.unref();
      wake();
    };
    helper.worker.ref();
    helper.worker.postMessage(task);
    return {
      busy: () => busy,
      next: () =>
        new Promise<void>((resolve) => {
          wake = resolve;
        }),
    };
  });
}
