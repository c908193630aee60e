import { metered } from "../oracles/metered.ts";
import { jointOracle } from "../oracles/oracle-joint.ts";
import { sheetOracle } from "../oracles/oracle-sheet.ts";
import type { Frames } from "../problem/assemble.ts";
import { fitsRun, transposeKinds } from "../problem/reduce.ts";
import { asOnRoll, canHold, type RollQuestion } from "../problem/roll-question.ts";
import { createMaster } from "./master.ts";

/** False when the sheets given cannot hold, even in fractions, what nothing else can: proved in whole numbers. */
export function sheetsHold(question: RollQuestion, demand: readonly number[]): boolean {
  const { kinds, run, given, rests = [], solver, clock } = question;
  const widest = Math.max(run, ...rests.map(({ across }) => across));
  const only = kinds.map((kind, k) => (fitsRun(asOnRoll(kind), widest) ? 0 : demand[k]!));
  if (only.every((count) => count === 0)) return true;
  const held = kinds.filter((_, k) => only[k]! > 0);
  if (held.some((kind) => !given.some(({ sheet }) => canHold(sheet, kind)))) return false;
  const frames: Frames = { upright: held, transposed: transposeKinds(held) };
  const sheets = given.map(({ sheet }, index) => ({
    oracle: sheetOracle(question, frames, sheet, index),
    height: 1,
  }));
  const oracle = metered(jointOracle(held, null, sheets), clock);
  const master = createMaster(
    oracle,
    only.filter((count) => count > 0),
    solver,
  );
  try {
    return (
      master.testVector(
        given.map(({ count }) => count),
        () => clock.expired(),
      ).cut === null
    );
  } finally {
    master.dispose();
  }
}
