import type { EngineJob } from "../engine/index.ts";
import { nth } from "../length/nth.ts";
import type { Solve } from "./request.ts";

/** However little work is left, a search gets so much of it: enough for a plan, though hardly for a proof. */
const LEAST = 5;

/**
 * The same solver with so much counted work for everything it is asked, from now on. What is left is dealt out evenly to
 * the jobs of a batch, and what some of them do not ask for goes to the others. A job gets all it asks for, a half, a
 * quarter and so on, so that what it gets seldom hangs on the rest.
 */
export function withinWork(solve: Solve, together: number): Solve {
  let left = together;
  return async (jobs) => {
    const most = shares(
      jobs.map(({ limits }) => limits.effort ?? Infinity),
      left,
    );
    const results = await solve(jobs.map((job, i) => limited(job, nth(most, i))));
    for (const { stats } of results) left -= stats.milliseconds;
    return results;
  };
}

function limited(job: EngineJob, most: number): EngineJob {
  const { effort = Infinity } = job.limits;
  if (effort <= most) return job;
  let given = Number.isFinite(effort) ? effort : most;
  while (given > most) given /= 2;
  return { ...job, limits: { ...job.limits, effort: Math.max(LEAST, Math.floor(given)) } };
}

/** Most for each, so that together they get no more than there is: the modest ones first. */
function shares(asked: readonly number[], together: number): number[] {
  const order = asked.map((_, i) => i).sort((a, b) => nth(asked, a) - nth(asked, b) || a - b);
  const given = asked.map(() => 0);
  let left = Math.max(0, together);
  order.forEach((i, at) => {
    given[i] = Math.min(nth(asked, i), left / (order.length - at));
    left -= nth(given, i);
  });
  return given;
}
