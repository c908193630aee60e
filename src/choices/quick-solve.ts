import type { EngineJob } from "../engine/index.ts";
import type { PackingResult } from "../engine/types.ts";
import type { Solve } from "../plan/index.ts";

/** The answer that a trial of a narrower width is given: not looked into. */
function unanswered({ problem }: EngineJob): PackingResult {
  return {
    status: "none-found",
    objective: 0,
    rollLength: 0,
    bound: { value: 0, kind: "area", style: problem.style },
    layouts: [],
    missing: [],
    stats: { milliseconds: 0, cutShort: null },
  };
}

/**
 * For setting many plans of one quilt side by side: a fabric that is cut alike in two of them is solved once, and
 * narrower widths, which change no purchase, are not tried.
 */
export function quickSolve(solve: Solve): Solve {
  const known = new Map<string, PackingResult>();
  return async (jobs) => {
    const keys = jobs.map((job) => JSON.stringify(job));
    const isTrial = (job: EngineJob) => job.kind === "pack" && job.limits.target !== undefined;
    const open = jobs.flatMap((job, i) => {
      const key = keys[i] ?? "";
      const repeated = keys.indexOf(key) !== i;
      return known.has(key) || repeated || isTrial(job) ? [] : [{ job, key }];
    });
    if (open.length > 0) {
      const results = await solve(open.map(({ job }) => job));
      open.forEach(({ key }, i) => {
        const result = results[i];
        if (result !== undefined) known.set(key, result);
      });
    }
    return jobs.map((job, i) => known.get(keys[i] ?? "") ?? unanswered(job));
  };
}

/** Leaves the first cutting that was found as it is: enough to know what is bought. */
export function withoutEasing(solve: Solve): Solve {
  return async (jobs) => {
    const asked = jobs.filter(({ kind }) => kind !== "lessen-work" && kind !== "lessen-joins");
    const results = asked.length === 0 ? [] : await solve(asked);
    let next = 0;
    return jobs.map((job) =>
      job.kind === "lessen-work" || job.kind === "lessen-joins"
        ? job.result
        : (results[next++] ?? unanswered(job)),
    );
  };
}
