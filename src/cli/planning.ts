import type { Diagnostic } from "../diagnostics/types.ts";
import type { EngineJob } from "../index.ts";
import type { Plan } from "../plan/types.ts";
import type { ExitCode } from "./command.ts";
import type { Io } from "./io.ts";
import { startProgress } from "./progress.ts";
import { readInput } from "./read.ts";
import { failWith, report } from "./report.ts";

/** What the planning commands ask for; null where the file decides. */
export interface PlanningValues {
  style: "strips-2" | "strips-3" | null;
  prefer: "sparing" | "simple" | null;
  thorough: boolean;
  budget: number | null;
  json: boolean;
}

/** What a batch of searches is for, to be told while it runs. */
function doing(jobs: readonly EngineJob[]): string {
  const [job] = jobs;
  if (job?.kind === "lessen-work") return "Making the cutting simpler";
  return job?.limits.target === undefined ? "Looking for the least fabric" : "Trying other widths and ways";
}

/**
 * Plans a text, with the machine's threads and progress on the terminal, and tells all there is to tell.
 * `reworded` is for a text the maker has not written: its places are then not shown.
 */
export async function planText(
  text: string,
  name: string,
  values: PlanningValues,
  io: Io,
  reworded: ((diagnostic: Diagnostic) => Diagnostic) | null = null,
): Promise<{ plan: Plan } | { code: ExitCode }> {
  const [{ planQuilt }, { solveInPool }] = await Promise.all([import("../index.ts"), import("./pool.ts")]);
  const progress = startProgress(io);
  const { style, prefer, thorough, budget } = values;
  const milliseconds = budget === null ? null : budget * 1000;
  const outcome = await planQuilt(text, name, { style, prefer, thorough, budget: milliseconds }, (jobs) =>
    solveInPool(jobs, (done, of) => progress.show(`${doing(jobs)}: ${done} of ${of}`)),
  );
  progress.clear();
  const source = reworded === null ? text : undefined;
  const diagnostics = reworded === null ? outcome.diagnostics : outcome.diagnostics.map(reworded);
  if (outcome.value === null) return { code: failWith(diagnostics, source, values.json, io) };
  report(diagnostics, source, io);
  return { plan: outcome.value };
}

/** Reads and plans the file named on the command line. */
export async function planFile(
  file: string,
  values: PlanningValues,
  io: Io,
): Promise<{ plan: Plan } | { code: ExitCode }> {
  const input = await readInput(file, io);
  if (input.value === null) return { code: failWith(input.diagnostics, undefined, values.json, io) };
  return planText(input.value.text, input.value.name, values, io);
}
