import type { Filling } from "./oracles/oracle.ts";
import { framesOf, type StripCount } from "./problem/assemble.ts";
import { type Clock, endedBy, startClock } from "./problem/clock.ts";
import { toLayouts } from "./problem/layouts.ts";
import { checkProblem, gatherKinds, type Kind } from "./problem/reduce.ts";
import { lengthOf, rulesOf } from "./problem/roll-question.ts";
import { groupSheets, type SheetGroup } from "./problem/sheet-groups.ts";
import { divided, stepOf } from "./problem/steps.ts";
import { type StockAnswer, solveStock } from "./search/stock.ts";
import { absentSolver } from "./solver/absent.ts";
import { dropSolver, highsSolver } from "./solver/highs.ts";
import type { Solver } from "./solver/types.ts";
import type {
  LowerBound,
  PackingProblem,
  PackingResult,
  SearchLimits,
  Section,
  SegmentUse,
} from "./types.ts";

/**
 * Finds the cheapest way to cut every item from the stock in the problem's cutting style, with a true lower
 * bound. All sizes are whole numbers of the caller's steps. Sheets beside a roll cost nothing; what is to be paid for
 * is chosen by `choose`. `now` is the clock on the
 * wall, in milliseconds; `load` brings the solver.
 * @throws RangeError when the problem holds anything but whole numbers in range, or sheets with a cost beside a roll.
 */
export async function pack(
  problem: PackingProblem,
  limits: SearchLimits = {},
  now?: () => number,
  load: (clock: Clock) => Promise<Solver> = highsSolver,
): Promise<PackingResult> {
  checkProblem(problem);
  if (problem.roll !== null && problem.sheets.some(({ cost }) => cost > 0))
    throw new RangeError("packing problem: sheets with a cost beside a roll are a choice, asked by its aims");
  // Loading the solver is not part of the search's time.
  await highsSolver().catch(() => null);
  const clock = startClock(limits, now);
  const posed = pose(problem);
  const { kinds, groups, step } = posed;
  const roll =
    problem.roll === null
      ? null
      : {
          run: Math.floor(problem.roll.width / step),
          available: problem.roll.available === null ? null : Math.floor(problem.roll.available / step),
          costPerLength: problem.roll.costPerLength * step,
        };
  const answer = await withSolver(
    (solver) =>
      solveStock({
        kinds,
        groups,
        roll,
        ...rulesOf(problem, step),
        solver,
        clock,
        target: limits.target ?? null,
      }),
    () => load(clock),
  );
  return toResult(posed, answer, clock);
}

/** A problem as the search sees it. */
export interface Posed {
  problem: PackingProblem;
  kinds: readonly Kind[];
  groups: readonly SheetGroup[];
  /** Sizes are divided by this. */
  step: number;
}

export function pose(problem: PackingProblem, sheets = problem.sheets): Posed {
  const step = stepOf(problem);
  const kinds = gatherKinds(divided(problem.items, step));
  return { problem, kinds, groups: groupSheets(sheets, step), step };
}

/**
 * Runs a search on the solver. When the solver breaks down (its module aborted, or would not load) the
 * search is begun again on a fresh one, and after that on none at all: slower, but whole and honest.
 */
export async function withSolver<T>(
  search: (solver: Solver) => T,
  load: () => Promise<Solver> = highsSolver,
): Promise<T> {
  for (let attempt = 0; attempt < 2; attempt++)
    try {
      return search(await load());
    } catch (fault) {
      if (!isSolverFault(fault)) throw fault;
      dropSolver();
    }
  return search(absentSolver());
}

/** Faults of our own stay loud; what the module throws carries its name or WebAssembly's. */
function isSolverFault(fault: unknown): boolean {
  if (fault instanceof WebAssembly.RuntimeError || fault instanceof WebAssembly.CompileError) return true;
  return fault instanceof Error && /^Highs|wasm|abort/i.test(`${fault.name} ${fault.message}`);
}

/** The answer in the problem's own steps and items. */
export function toResult(
  { problem, kinds, groups, step }: Posed,
  answer: StockAnswer,
  clock: Clock,
): PackingResult {
  const bound: LowerBound = { value: answer.lower, kind: answer.boundKind, style: problem.style };
  const run = problem.roll === null ? 0 : Math.floor(problem.roll.width / step);
  const layouts = toLayouts(framesOf(kinds), answer, groups, run, step);
  const rollLength = lengthOf(answer.strips, answer.bands) * step;
  const cost = answer.strips.reduce(
    (sum, strip) => sum + costOf(strip, groups, answer.groupOf),
    rollLength * (problem.roll?.costPerLength ?? 0),
  );
  if (answer.missing !== null) {
    const missing = dealMissing(problem, layouts);
    const status = answer.impossible ? "infeasible" : "none-found";
    const stats = toldOf(clock, answer.impossible);
    return { status, objective: cost, rollLength, bound: { ...bound, value: 0 }, layouts, missing, stats };
  }
  const status = cost === bound.value ? "proven" : "best-found";
  const stats = toldOf(clock, status === "proven");
  return { status, objective: cost, rollLength, bound, layouts, missing: [], stats };
}

/** What was proved before time was up is no less proved. */
function toldOf(clock: Clock, proved: boolean): PackingResult["stats"] {
  return { milliseconds: clock.spent(), cutShort: proved ? null : endedBy(clock) };
}

function costOf(
  { filling, count }: StripCount,
  groups: readonly SheetGroup[],
  groupOf: (filling: Filling) => number,
): number {
  return filling.sheet === undefined ? 0 : (groups[groupOf(filling)]?.cost ?? 0) * count;
}

/** What the layouts do not hold, item by item. */
function dealMissing(problem: PackingProblem, layouts: PackingResult["layouts"]): PackingResult["missing"] {
  const left = problem.items.map(({ demand, run }) => (run === undefined ? demand : run.length - run.loss));
  const take = (segments: readonly SegmentUse[], times: number): void => {
    for (const segment of segments)
      for (const use of segment.stack) left[use.item]! -= use.count * segment.count * times;
  };
  const visit = (sections: readonly Section[], times: number): void => {
    for (const section of sections)
      if (section.kind === "strips") {
        take(section.column.segments, times * section.count);
        const { end } = section.column;
        if (end !== undefined)
          left[end.item]! -= (end.across - problem.items[end.item]!.run!.loss) * times * section.count;
      } else {
        take(section.bands, times * section.count);
        visit(section.rest, times * section.count);
      }
  };
  for (const layout of layouts) visit(layout.sections, layout.count);
  return left.flatMap((count, item) => {
    if (count <= 0) return [];
    return [{ item, count: problem.items[item]!.run === undefined ? count : 1 }];
  });
}
