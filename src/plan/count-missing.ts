import type { Wanting } from "../diagnostics/planning.ts";
import { atMost, type EngineJob, hasPlan } from "../engine/index.ts";
import type { PackingProblem, SearchLimits } from "../engine/types.ts";
import { nth } from "../length/nth.ts";
import type { Chosen } from "./choose-cut-lists.ts";
import type { FixedPiece } from "./pose-problem.ts";
import type { Solve } from "./request.ts";

/** Most milliseconds for one question. */
const BUDGET = 2000;

/**
 * For fabrics that may not be bought and whose cloth to hand is too little: how many more of one kind of it would
 * hold everything. The kind is the first given that holds every piece left over. Null where no kind does, or where
 * cloth is not what is missing.
 */
export async function countMissing(
  short: readonly Chosen[],
  limits: SearchLimits,
  solve: Solve,
): Promise<(Wanting | null)[]> {
  const asked = short.map((one) => {
    const kind = one.problem.roll === null ? kindWanted(one) : -1;
    return kind < 0 ? null : { kind, problem: withMore(one.problem, kind) };
  });
  const jobs = asked.flatMap((ask): EngineJob[] =>
    ask === null ? [] : [{ kind: "pack", problem: ask.problem, limits: atMost(limits, BUDGET) }],
  );
  const results = jobs.length === 0 ? [] : await solve(jobs);
  let next = 0;
  return asked.map((ask, i): Wanting | null => {
    if (ask === null) return null;
    const result = nth(results, next++);
    const piece = short[i]?.fixedStock[ask.kind];
    if (!hasPlan(result) || piece === undefined) return null;
    const { objective: more, status } = result;
    return { cloth: piece.name, more, toHand: piece.available, proven: status === "proven" };
  });
}

function kindWanted({ problem, result, fixedStock }: Chosen): number {
  const left = result.missing.map(({ item }) => nth(problem.items, item));
  const holds = ({ across, along }: FixedPiece) =>
    left.every(
      (item) =>
        (item.across <= across && item.along <= along) ||
        (item.turnable && item.along <= across && item.across <= along),
    );
  return fixedStock.findIndex(holds);
}

/** What is to hand for nothing, and as many more of one kind as there are pieces, at one each. */
function withMore(problem: PackingProblem, kind: number): PackingProblem {
  const { across, along, firstCut } = nth(problem.sheets, kind);
  const most = problem.items.reduce((sum, { demand }) => sum + demand, 0);
  const free = problem.sheets.map((sheet) => ({ ...sheet, cost: 0 }));
  return { ...problem, sheets: [...free, { across, along, firstCut, available: most, cost: 1 }] };
}
