import type { EngineJob } from "../../planning.ts";

type Result = Awaited<ReturnType<typeof import("../../planning.ts").runJob>>;

export type Kept = readonly [job: string, result: Result];

/** Results of the engine by what was asked, the least lately used given up first. */
export interface Keeps {
  find(job: string): Result | undefined;
  keep(entries: readonly Kept[]): void;
  all(): Kept[];
}

/** A job as the text it is known by: equal jobs of different quilts are one. */
export function jobText(job: EngineJob): string {
  return JSON.stringify(job);
}

/** @param most characters of jobs and results held together; the newest always stays */
export function keepsOf(most: number): Keeps {
  const held = new Map<string, { result: Result; size: number }>();
  let size = 0;
  const drop = (key: string): void => {
    size -= held.get(key)?.size ?? 0;
    held.delete(key);
  };
  return {
    find(job) {
      const found = held.get(job);
      if (found === undefined) return undefined;
      held.delete(job);
      held.set(job, found);
      return found.result;
    },
    keep(entries) {
      for (const [job, result] of entries) {
        drop(job);
        // A result is about as large as the job it answers.
        const own = 2 * job.length;
        held.set(job, { result, size: own });
        size += own;
      }
      for (const key of held.keys()) {
        if (size <= most || held.size === 1) break;
        drop(key);
      }
    },
    all: () => [...held].map(([job, { result }]) => [job, result] as const),
  };
}
