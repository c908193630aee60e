import { runJob } from "../../src/engine/index.ts";
import type { PackingResult } from "../../src/engine/types.ts";
import type { Solve } from "../../src/plan/request.ts";
import type { CutListSpec, FabricSpec, PieceSpec } from "../../src/spec/types.ts";

/** Ticks to an inch and to a centimetre. */
export const IN = 16256;
export const CM = 6400;

/** A piece of a size in inches, as a cut-list file would give it with nothing else said. */
export function piece(
  label: string,
  across: number,
  along: number,
  count: number,
  more: Partial<PieceSpec> = {},
): PieceSpec {
  return {
    label,
    across: across * IN,
    along: along * IN,
    fullWidth: false,
    count,
    turn: "free",
    cut: "strips",
    join: "no",
    note: "",
    at: null,
    ...more,
  };
}

/** A strip across the whole width, `along` inches wide. */
export function fullWidth(label: string, along: number, count: number): PieceSpec {
  return piece(label, 0, along, count, { fullWidth: true, turn: "fixed" });
}

/** A fabric 44 in wide with 42 in usable, sold by the eighth of a yard, nothing lost in straightening. */
export function fabric(
  name: string,
  pieces: readonly PieceSpec[],
  more: Partial<FabricSpec> = {},
): FabricSpec {
  return {
    name,
    colour: "#3b6ea5",
    width: 44 * IN,
    selvage: IN,
    print: { kind: "none", axis: "along" },
    shrinkAcross: 0,
    shrinkAlong: 0,
    straighten: 0,
    sold: { unit: "yd", step: 4.5 * IN, least: 4.5 * IN },
    price: null,
    spare: 0,
    have: [],
    readyCut: [],
    yardage: true,
    note: "",
    pieces: [...pieces],
    at: null,
    ...more,
  };
}

export function cutListSpec(fabrics: readonly FabricSpec[], more: Partial<CutListSpec> = {}): CutListSpec {
  return {
    kind: "cut-list",
    name: "Test",
    ruler: { unit: "in", mark: IN / 8 },
    defaultUnit: "in",
    style: "strips-2",
    prefer: "sparing",
    rulerLength: 24 * IN,
    folded: true,
    keepFrom: 4 * IN,
    joinFrom: 16 * IN,
    fabrics: [...fabrics],
    assumptions: [],
    ...more,
  };
}

const solved = new Map<string, Promise<PackingResult>>();

/**
 * The engine in this thread, one job after another. A job limited by counted work has one answer, and the same fixtures are
 * planned by many tests: it is solved once. That it is solved alike each time is held by the engine's own tests.
 */
export const solveHere: Solve = async (jobs) => {
  const results = [];
  for (const job of jobs) {
    const { effort, budget, shouldStop } = job.limits;
    const isFixed = effort !== undefined && (budget ?? shouldStop) === undefined;
    const key = isFixed ? JSON.stringify(job) : "";
    const result = (isFixed && solved.get(key)) || runJob(job);
    if (isFixed) solved.set(key, result);
    results.push(await result);
  }
  return results;
};
