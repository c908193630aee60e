import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import type { EngineJob } from "../engine/index.ts";
import { runJob } from "../engine/index.ts";
import type { PackingResult } from "../engine/types.ts";
import type { Solved, WorkerTask } from "./worker.ts";

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
  const { shouldStop: _shouldStop, onProgress: _onProgress, ...limits } = job.limits;
  return { ...job, limits };
}

function startWorkers(count: number, task: WorkerTask, keep: (solved: Solved) => void) {
  return Array.from({ length: count }, () => {
    const worker = new Worker(WORKER, { workerData: task, resourceLimits: { maxYoungGenerationSizeMb: 8 } });
    worker.on("message", keep);
    const ended = new Promise<void>((resolve) => {
      worker.on("error", () => resolve());
      worker.on("exit", () => resolve());
    });
    return { worker, ended };
  });
}

/**
 * Solves engine jobs, on as many threads as the machine has to offer when they take long, this one included; results
 * in the order of the jobs. A job whose worker broke down is solved again in this thread; an error it throws here
 * is thrown to the caller.
 */
export async function solveInPool(
  jobs: readonly EngineJob[],
  onProgress?: JobProgress,
): Promise<PackingResult[]> {
  const results: (PackingResult | undefined)[] = jobs.map(() => undefined);
  let done = 0;
  let tellAllDone = () => {};
  const allDone = new Promise<void>((resolve) => {
    tellAllDone = resolve;
  });
  const keep = ({ id, result }: Solved) => {
    results[id] = result;
    done += 1;
    onProgress?.(done, jobs.length);
    if (done === jobs.length) tellAllDone();
  };
  const solveHere = async (id: number) => {
    const job = jobs[id];
    if (job !== undefined) keep({ id, result: await runJob(job) });
  };

  const taken = new Int32Array(new SharedArrayBuffer(4));
  const threads = existsSync(WORKER) ? Math.min(availableParallelism(), jobs.length, MOST_THREADS) : 1;
  const task = { jobs: jobs.map(sendable), taken };
  const helpers: ReturnType<typeof startWorkers> = [];
  const begun = performance.now();
  try {
    for (let id = Atomics.add(taken, 0, 1); id < jobs.length; id = Atomics.add(taken, 0, 1)) {
      const left = jobs.length - id;
      if (helpers.length === 0 && left > 1 && performance.now() - begun >= ALONE)
        helpers.push(...startWorkers(Math.min(threads, left) - 1, task, keep));
      await solveHere(id);
    }
    await Promise.race([allDone, Promise.all(helpers.map(({ ended }) => ended))]);
  } finally {
    // Not waited for: they hold nothing, and stopping a thread takes a while.
    for (const { worker } of helpers) void worker.terminate();
  }
  for (const [id, result] of results.entries()) if (result === undefined) await solveHere(id);
  return results.filter((result) => result !== undefined);
}
