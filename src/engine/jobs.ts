import { choose, type StockAims } from "./choose.ts";
import { lessenJoins } from "./easing/lessen-joins.ts";
import { lessenWork } from "./easing/lessen-work.ts";
import { pack } from "./pack.ts";
import type { CuttingTable, PackingProblem, PackingResult, SearchLimits } from "./types.ts";

/** One thing for the engine to do, as plain data, so that it can be sent to a worker thread. */
export type EngineJob =
  | { kind: "pack"; problem: PackingProblem; limits: SearchLimits }
  | { kind: "choose"; problem: PackingProblem; choice: StockAims; limits: SearchLimits }
  | {
      kind: "lessen-joins";
      problem: PackingProblem;
      result: PackingResult;
      /** The roll may be used up to this length. */
      lengthLimit: number;
      limits: SearchLimits;
    }
  | {
      kind: "lessen-work";
      problem: PackingProblem;
      result: PackingResult;
      /** The roll may be used up to this length. */
      lengthLimit: number;
      /** Without it no cut is too long and no part too narrow. */
      table?: CuttingTable;
      limits: SearchLimits;
    };

/** Does one job. */
export function runJob(job: EngineJob): Promise<PackingResult> {
  switch (job.kind) {
    case "pack":
      return pack(job.problem, job.limits);
    case "choose":
      return choose(job.problem, job.choice, job.limits);
    case "lessen-joins":
      return lessenJoins(job.problem, job.result, job.lengthLimit, job.limits);
    case "lessen-work":
      return lessenWork(job.problem, job.result, job.lengthLimit, job.limits, job.table);
  }
}
