import { type Posed, pose, toResult, withSolver } from "./pack.ts";
import { type Clock, startClock } from "./problem/clock.ts";
import { checkProblem } from "./problem/reduce.ts";
import { lengthOf, rulesOf } from "./problem/roll-question.ts";
import { chooseStock, type Portion } from "./search/choose-stock.ts";
import { NOTHING_CUT } from "./search/stock.ts";
import { highsSolver } from "./solver/highs.ts";
import type { PackingProblem, PackingResult, SearchLimits } from "./types.ts";

/** Stock to choose from, and what is to be least, in order. */
export interface StockAims {
  /** Lengths of the roll that can be bought, ascending, the first of them nothing at no price; whole steps. */
  portions: readonly Portion[];
  /** What one sheet of every kind counts in each aim, whole numbers. Of the first, portions count their price too. */
  aims: readonly (readonly number[])[];
}

/**
 * The stock that comes to least in the first aim, among such in the second, and so on, and a plan on it. `result.aims`
 * tells what it comes to in each and the least that is proved. What sheets and roll cost in the problem says nothing here.
 * @throws RangeError when the problem holds anything but whole numbers in range.
 */
export async function choose(
  problem: PackingProblem,
  { portions, aims }: StockAims,
  limits: SearchLimits = {},
): Promise<PackingResult> {
  checkProblem(problem);
  await highsSolver().catch(() => null);
  const clock = startClock(limits);
  // Sheets alike in size may count differently: none are gathered.
  const posed = pose(
    problem,
    problem.sheets.map((sheet, i) => ({ ...sheet, cost: i })),
  );
  const { kinds, groups, step } = posed;
  const roll = { run: Math.floor((problem.roll?.width ?? 0) / step), available: null, costPerLength: 1 };
  const found = await withSolver(
    (solver) =>
      chooseStock({
        ...{ kinds, groups, roll, solver, clock, target: null },
        ...rulesOf(problem, step),
        portions: portions.map(({ length, price }) => ({ length: Math.floor(length / step), price })),
        aims: aims.map((costs) => groups.map(({ cost }) => costs[cost]!)),
      }),
    () => highsSolver(clock),
  );
  return told(posed, found, clock);
}

function told(
  posed: Posed,
  { answer, values, bounds }: ReturnType<typeof chooseStock>,
  clock: Clock,
): PackingResult {
  const { problem, kinds, groups, step } = posed;
  const free = { ...posed, groups: groups.map((group) => ({ ...group, cost: 0 })) };
  const missing = kinds.map(({ demand }) => demand);
  if (answer === null)
    return toResult(free, { ...NOTHING_CUT, missing, impossible: bounds[0] === Infinity }, clock);
  const lower = Math.min(answer.lower, lengthOf(answer.strips, answer.bands));
  const proved = lower * step * (problem.roll?.costPerLength ?? 0);
  const result = toResult(free, { ...answer, lower: proved }, clock);
  return { ...result, aims: values.map((value, i) => ({ value, bound: bounds[i]! })) };
}
