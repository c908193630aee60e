import type { Io } from "./io.ts";
import { type Beside, type Planned, poolOf } from "./planning.ts";
import { report } from "./report.ts";
import type { Files } from "./write.ts";

/** The lists that answer what was asked besides the plan: what the stash gives, fat quarters, kits. */
export async function besideFiles(made: Planned, beside: Beside, io: Io): Promise<Files> {
  const { compareKits, fatQuarterList, kitsList, stashUse } = await import("../index.ts");
  const files: Record<string, string> = {};
  const { plan, spec, options, fromFatQuarters } = made;
  if (beside.stash !== null) files["stash.txt"] = stashUse(plan, beside.stash);
  if (beside.fatQuarters) files["fat-quarters.txt"] = fatQuarterList(plan, fromFatQuarters);
  if (beside.kits > 1) {
    const pool = await poolOf(io);
    const kits = await compareKits(spec, plan, options, pool.solve);
    pool.clear();
    if (kits.value === null) report(kits.diagnostics, undefined, io);
    else files["kits.txt"] = kitsList(kits.value);
  }
  return files;
}
