import { parentPort } from "node:worker_threads";
import type { EngineJob } from "../../engine/index.ts";
import { runJob } from "../../engine/index.ts";
import type { PackingResult } from "../../engine/types.ts";
import { wantsStop } from "./stopping.ts";

/** Jobs for all threads, of which each takes the next that none has taken. */
export interface WorkerTask {
  batch: number;
  jobs: EngineJob[];
  /** How many jobs have been taken by any thread, in shared memory: the next to take. */
  taken: Int32Array;
  /** Set when the best so far is wanted, in shared memory. */
  stop: Int32Array;
}

/** What is sent back for each job solved. A job that failed is not reported: the pool does it again. */
export interface Solved {
  batch: number;
  id: number;
  result: PackingResult;
}

/** Sent when a thread finds nothing more to take: it is ready for the next batch. */
export interface Ready {
  batch: number;
  ready: true;
}

async function work({ batch, jobs, taken, stop }: WorkerTask): Promise<void> {
  for (let id = Atomics.add(taken, 0, 1); id < jobs.length; id = Atomics.add(taken, 0, 1)) {
    const job = jobs[id];
    if (job === undefined) break;
    const limits = { ...job.limits, shouldStop: () => wantsStop(stop) };
    const result = await runJob({ ...job, limits }).catch(() => null);
    if (result !== null) parentPort?.postMessage({ batch, id, result } satisfies Solved);
  }
  parentPort?.postMessage({ batch, ready: true } satisfies Ready);
}

// Nothing is awaited here: a thread that is stopped while a module waits brings the whole program down.
parentPort?.on("message", (task: WorkerTask) => void work(task));
