import { parentPort, workerData } from "node:worker_threads";
import type { EngineJob } from "../engine/index.ts";
import { runJob } from "../engine/index.ts";
import type { PackingResult } from "../engine/types.ts";

/** What a worker is started with. */
export interface WorkerTask {
  jobs: EngineJob[];
  /** How many jobs have been taken by any thread, in shared memory: the next to take. */
  taken: Int32Array;
}

/** What it sends back for each job it solved. A job that failed is not reported: the pool does it again. */
export interface Solved {
  id: number;
  result: PackingResult;
}

const { jobs, taken } = workerData as WorkerTask;
for (let id = Atomics.add(taken, 0, 1); id < jobs.length; id = Atomics.add(taken, 0, 1)) {
  const job = jobs[id];
  if (job === undefined) break;
  const result = await runJob(job).catch(() => null);
  if (result !== null) parentPort?.postMessage({ id, result } satisfies Solved);
}
