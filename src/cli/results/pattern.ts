import type { PatternSource } from "../../index.ts";
import { EXIT, type ExitCode } from "../command.ts";
import type { Io } from "../io.ts";
import { type Planned, type PlanningValues, poolOf } from "../planning.ts";
import { failWith, report } from "../report.ts";
import { startProgress } from "../threads/progress.ts";

/**
 * The pattern of a quilt with its further sizes, those typed or else those of the file, each planned whole. Null for a
 * plain cut list, which has none.
 */
export async function patternFor(
  { spec, options, plan }: Planned,
  typed: string | null,
  values: Pick<PlanningValues, "json">,
  io: Io,
): Promise<{ value: PatternSource | null } | { code: ExitCode }> {
  const { nothingToRepeat, quickSolve, readSizes, sizesBeside, wholeSizes } = await import("../../index.ts");
  if (spec.kind !== "quilt" || plan.top === null) {
    return typed === null
      ? { value: null }
      : { code: failWith([nothingToRepeat()], undefined, values.json, io) };
  }
  const wanted = typed ?? spec.pattern.sizes;
  if (wanted === "") return { value: { told: spec.pattern, sizes: [] } };
  const asked = readSizes(wanted, spec.ruler);
  if (asked.value === null) {
    const code = failWith(asked.diagnostics, undefined, values.json, io);
    return { code: typed === null ? code : EXIT.usage };
  }
  const progress = startProgress(io);
  const { solve } = await poolOf({ ...io, showsProgress: false }, options);
  const found = await wholeSizes(spec, asked.value, { ...options, kits: 1 }, quickSolve(solve), (done, of) =>
    progress.show(io.words.commandLine.buy.planningEachSizeOf(done, of)),
  );
  progress.clear();
  if (found.value === null) return { code: failWith(found.diagnostics, undefined, values.json, io) };
  report(found.diagnostics, undefined, io);
  return { value: { told: spec.pattern, sizes: sizesBeside(plan, found.value) } };
}
