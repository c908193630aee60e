import { jointOracle, sheetLevels } from "../oracles/oracle-joint.ts";
import { framesOf } from "../problem/assemble.ts";
import { type Counts, isEmpty } from "../problem/counts.ts";
import { fitsRun } from "../problem/reduce.ts";
import { asOnRoll, canHold, type RollQuestion } from "../problem/roll-question.ts";
import { createMaster, refute } from "./master.ts";

/** False when the sheets given cannot hold, even in fractions, what nothing else can: proved in whole numbers. */
export function sheetsHold(question: RollQuestion, demand: Counts): boolean {
  const { kinds, run, given, rests = [], solver, clock } = question;
  const widest = Math.max(run, ...rests.map(({ across }) => across));
  const only = kinds.map((kind, k) => (fitsRun(asOnRoll(kind), widest) ? 0 : demand[k]!));
  if (isEmpty(only)) return true;
  const held = kinds.filter((_, k) => only[k]! > 0);
  if (held.some((kind) => !given.some(({ sheet }) => canHold(sheet, kind)))) return false;
  const frames = framesOf(held);
  const sheets = given.map(({ sheet }) => sheet);
  const oracle = jointOracle(
    frames,
    clock,
    null,
    sheetLevels(question, frames, sheets, () => 1),
  );
  const wanted = only.filter((count) => count > 0);
  const master = createMaster(oracle, wanted, solver);
  try {
    const all = given.map(({ count }) => count);
    return refute(master, all, () => clock.expired()) === null;
  } finally {
    master.pool.model.dispose();
  }
}
