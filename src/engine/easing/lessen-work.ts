import type { Filling } from "../oracles/oracle.ts";
import { withSolver } from "../pack.ts";
import { dropSurplus, type StripCount } from "../problem/assemble.ts";
import { type Clock, startClock } from "../problem/clock.ts";
import { transposeKinds } from "../problem/reduce.ts";
import { type CuttingRules, makeOracle, rulesOf } from "../problem/roll-question.ts";
import { verify } from "../problem/verify.ts";
import { highsSolver } from "../solver/highs.ts";
import type { Solver } from "../solver/types.ts";
import {
  type CuttingTable,
  hasPlan,
  type PackingProblem,
  type PackingResult,
  type SearchLimits,
  type SearchStats,
  type StackLimit,
} from "../types.ts";
import { setAsideRuns } from "./set-aside.ts";
import { fewKindColumns, plainColumns } from "./work-columns.ts";
import { ANY_TABLE, cutsOf, measureStrips, type StripCuts, type StripShape, workOf } from "./work-measure.ts";
import { inSteps, partsOf, tableIn } from "./work-parts.ts";
import { closeStrips, lengthOfStrips, type OpenStrips, openStrips, shapeOf } from "./work-plan.ts";
import { gather, type Judge, polish, usedIn } from "./work-polish.ts";
import { priceColumns, textOf, toColumn, type WorkQuestion } from "./work-program.ts";
import { searchWork } from "./work-search.ts";

/** Most kinds of strip the search chooses from. */
const MOST_COLUMNS = 90;
/** Most partial plans seen in one search. */
const MOST_NODES = 1500;
/** Most plans the small changes try. */
const MOST_TRIED = 1000;

/**
 * Looks for a plan of less work at the cutting mat (see `workOf`) that takes no more than `lengthLimit` of the
 * roll; of equal work the shorter, of equal length the one whose waste is gathered in the largest strip ends.
 * Strips are rearranged among those of the roll, among those beside one group of bands and among those of one
 * sheet; the bands, and what lies on which sheet, stay as they are. The bound of `result` stays as it was proved.
 * Returns the plan of `result` when nothing better is found. `stats.milliseconds` tells of the easing alone.
 */
export async function lessenWork(
  problem: PackingProblem,
  result: PackingResult,
  lengthLimit: number,
  limits: SearchLimits = {},
  table: CuttingTable = ANY_TABLE,
  now?: () => number,
): Promise<PackingResult> {
  if (!hasPlan(result) || lengthLimit < result.rollLength) return result;
  const aside = setAsideRuns(problem, result);
  if (aside !== null) {
    const rest = {
      ...aside.problem,
      roll: problem.roll === null ? null : { ...problem.roll, available: null },
    };
    const most = Math.min(lengthLimit, problem.roll?.available ?? lengthLimit) - aside.length;
    const eased = await lessenWork(rest, aside.result, most, limits, table, now);
    const whole = aside.putBack(eased);
    return verify(problem, whole).length === 0 ? whole : result;
  }
  const clock = startClock(limits, now);
  /** How the easing ended, beside how the search did: the clock's word is the graver. */
  const told = (best: PackingResult): PackingResult => {
    const { cutShort } = result.stats;
    const ended = cutShort === "clock" || !clock.wasLate() ? cutShort : "clock";
    return { ...best, stats: { ...best.stats, milliseconds: clock.spent(), cutShort: ended } };
  };
  const most = Math.min(lengthLimit, problem.roll?.available ?? lengthLimit);
  return withSolver(
    (solver) => {
      // Repeated until it changes nothing, so that a plan once eased is not eased again.
      for (let best = result; ; ) {
        if (clock.expired()) return told(best);
        const better = easeOnce({ problem, lengthLimit: most, table, beside: [] }, best, clock, solver);
        const parts = easeParts(problem, better ?? best, table, clock, solver);
        if (better === null && parts === null) return told(best);
        best = parts ?? better ?? best;
      }
    },
    () => highsSolver(clock),
  );
}

/** What is to be eased, and within what. */
interface Ease {
  problem: PackingProblem;
  lengthLimit: number;
  table: CuttingTable;
  /** Strips that are cut besides: their ruler settings need not be paid for again. */
  beside: readonly { shape: StripShape; count: number }[];
}

/**
 * The same for the strips beside each group of bands and for those of each sheet, each as a roll of its own that is
 * as long as it is. Null when none got better.
 */
function easeParts(
  problem: PackingProblem,
  result: PackingResult,
  table: CuttingTable,
  clock: Clock,
  solver: Solver,
): PackingResult | null {
  let best = result;
  for (let at = 0; at < partsOf(problem, result).length && !clock.expired(); at++) {
    const part = partsOf(problem, best)[at]!;
    const ease = { problem: part.problem, lengthLimit: part.length, table, beside: part.beside };
    const better = easeOnce(ease, part.result, clock, solver);
    if (better === null) continue;
    const whole = part.putBack(better);
    const less = workOf(problem, whole, table).total < workOf(problem, best, table).total;
    if (less && verify(problem, whole).length === 0) best = whole;
  }
  return best === result ? null : best;
}

function easeOnce(ease: Ease, result: PackingResult, clock: Clock, solver: Solver): PackingResult | null {
  const { problem, lengthLimit } = ease;
  const open = openStrips(problem, result);
  if (open === null) return null;
  const table = tableIn(ease.table, open.step);
  open.fixed.push(...ease.beside.map(({ shape, count }) => ({ shape: inSteps(shape, open.step), count })));
  const { kinds, run, demand, strips } = open;
  const room = Math.floor((lengthLimit - open.elsewhere) / open.step) - lengthOfStrips(open.set);
  const frames = { upright: kinds, transposed: transposeKinds(kinds) };
  const stats: SearchStats = { ...result.stats };
  const judge = judgeOf(open, table, room, rulesOf(problem, open.step).stacks, clock);
  const question: WorkQuestion = { kinds, run, demand, limit: room, table, paid: paidFor(open, table) };
  let best = gather(strips);
  const offer = (candidate: readonly StripCount[]): void => {
    const exact = gather(dropSurplus(frames, demand, candidate));
    if (judge.compare(exact, best) < 0) best = exact;
  };

  const rules = rulesOf(problem, open.step);
  const fillings = candidates(rules, question, strips);
  const keep = new Set(strips.map(({ filling }) => textOf(filling))).size;
  const columns = fillings.map((filling) => toColumn(question, filling));
  const longest = Math.max(room, ...kinds.flatMap(({ lies }) => lies.map(({ height }) => height)));
  const oracle = makeOracle(rules, kinds, run, longest);
  const priced = priceColumns(
    question,
    oracle,
    columns,
    { keep, most: MOST_COLUMNS, rounds: 12 },
    solver,
    stats,
  );
  const rest = judge.workOf([]);
  for (const order of ordersOf(question))
    searchWork(
      question,
      priced,
      MOST_NODES,
      judge.workOf(best) - rest,
      (candidate) => {
        offer(candidate);
        return judge.workOf(best) - rest;
      },
      clock.expired,
      order,
    );
  best = polish(kinds, run, best, judge);
  if (judge.compare(best, gather(strips)) >= 0) return null;
  const eased = { ...closeStrips(problem, result, open, best), stats };
  // Judged once more as a whole plan, where strips of sheets and bands count as well.
  const sound = verify(problem, eased).length === 0 && eased.rollLength <= lengthLimit;
  const before = workOf(problem, result, ease.table).total;
  return sound && workOf(problem, eased, ease.table).total <= before ? eased : null;
}

/** Which item a plan is built around first: the largest, then in another search the one needing most cloth. */
function ordersOf({ kinds, demand }: WorkQuestion): number[][] {
  const largest = [...kinds.keys()];
  const cloth = (k: number): number => kinds[k]!.lies[0]!.width * kinds[k]!.lies[0]!.height * demand[k]!;
  const most = largest.slice().sort((a, b) => cloth(b) - cloth(a) || a - b);
  return [largest, most, most.slice().reverse()];
}

function candidates(rules: CuttingRules, question: WorkQuestion, strips: readonly StripCount[]): Filling[] {
  const { kinds, run, demand, limit } = question;
  const longest = Math.max(limit, ...kinds.flatMap(({ lies }) => lies.map(({ height }) => height)));
  const byText = new Map<string, Filling>();
  const pools = [
    strips.map(({ filling }) => filling),
    plainColumns(kinds, run, demand),
    fewKindColumns(makeOracle(rules, kinds, run, longest), demand, 120),
  ];
  for (const filling of pools.flat()) {
    const text = textOf(filling);
    if (!byText.has(text) && filling.height <= limit) byText.set(text, filling);
  }
  return [...byText.values()];
}

function paidFor({ kinds, run, set, fixed }: OpenStrips, table: CuttingTable): WorkQuestion["paid"] {
  const rest: StripShape[] = [
    ...fixed.map(({ shape }) => shape),
    ...set.map(({ filling }) => shapeOf(kinds, run, filling)),
  ];
  return {
    widths: new Set(rest.map(({ height }) => height)),
    sizes: new Set(rest.flatMap((shape) => cutsOf(shape, table).sizes)),
  };
}

/** Whether stacks lie only where strips may be cut into them. */
function mayBeStacked({ height, segments }: Filling, limit: StackLimit | undefined): boolean {
  return (
    limit === undefined ||
    segments.every(({ stack, width }) => stack.length < 2 || (height <= limit.height && width <= limit.width))
  );
}

/** Work first, then length, then how much of the waste lies in large strip ends; too long is worst. */
function judgeOf(
  open: OpenStrips,
  table: CuttingTable,
  room: number,
  stacks: StackLimit | undefined,
  clock: Clock,
): Judge & { workOf(s: readonly StripCount[]): number } {
  const { kinds, run, fixed, set } = open;
  const shapes = new WeakMap<Filling, StripShape>();
  const shape = (filling: Filling): StripShape => {
    const known = shapes.get(filling) ?? shapeOf(kinds, run, filling);
    shapes.set(filling, known);
    return known;
  };
  const shaped = (strips: readonly StripCount[]) =>
    strips.map(({ filling, count }) => ({ shape: shape(filling), count }));
  const rest = [...fixed, ...shaped(set)];
  const cuts = new WeakMap<StripShape, StripCuts>();
  const cutsIn = (one: StripShape): StripCuts => {
    const known = cuts.get(one) ?? cutsOf(one, table);
    cuts.set(one, known);
    return known;
  };
  const work = (strips: readonly StripCount[]): number =>
    measureStrips([...rest, ...shaped(strips)], table, cutsIn).total;
  // Squares of the ends in thousandths of the run: one long end is worth more than many short ones.
  const useful = (strips: readonly StripCount[]): number =>
    strips.reduce((sum, { filling, count }) => {
      const end = Math.floor(((run - usedIn(filling)) * 1000) / run);
      return sum + count * filling.height * end * end;
    }, 0);
  const grades = new WeakMap<readonly StripCount[], readonly number[]>();
  const grade = (strips: readonly StripCount[]): readonly number[] => {
    const known = grades.get(strips);
    if (known !== undefined) return known;
    const length = lengthOfStrips(strips);
    const allowed = length <= room && strips.every(({ filling }) => mayBeStacked(filling, stacks));
    const made = [allowed ? 0 : 1, work(strips), length, -useful(strips)];
    grades.set(strips, made);
    return made;
  };
  let tried = 0;
  return {
    workOf: work,
    goOn: () => ++tried <= MOST_TRIED && !clock.expired(),
    compare(a, b) {
      const p = grade(a);
      const q = grade(b);
      for (let i = 0; i < p.length; i++) if (p[i] !== q[i]) return p[i]! - q[i]!;
      return 0;
    },
  };
}
