import type { Comparison } from "../choices/methods/comparison.ts";
import type { Outcome } from "../diagnostics/types.ts";

import type { Io } from "./io.ts";
import { type Planned, poolOf } from "./planning.ts";
import { startProgress } from "./threads/progress.ts";

/** The ways of making a planned quilt side by side, each of them planned, with progress on the terminal. */
export async function comparisonOf({ spec, options }: Planned, io: Io): Promise<Outcome<Comparison>> {
  const { compareMethods, USUAL_MINUTES } = await import("../index.ts");
  const progress = startProgress(io);
  const { solve } = await poolOf({ ...io, showsProgress: false }, options);
  const minutes = spec.kind === "quilt" ? spec.minutes : USUAL_MINUTES;
  const found = await compareMethods(spec, options, minutes, solve, (done, of) =>
    progress.show(io.words.commandLine.comparing.planningEachWayOf(done, of)),
  );
  progress.clear();
  return found;
}
