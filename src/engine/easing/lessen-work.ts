import type { Filling, StripOracle } from "../oracles/oracle.ts";
import { withSolver } from "../pack.ts";
import { dropSurplus, type StripCount } from "../problem/assemble.ts";
import { type Clock, startClock } from "../problem/clock.ts";
import { addCounts } from "../problem/counts.ts";
import { transposeKinds } from "../problem/reduce.ts";
import { lengthOf, makeOracle, rulesOf } from "../problem/roll-question.ts";
import { verify } from "../problem/verify.ts";
import { highsSolver } from "../solver/highs.ts";
import type { Solver } from "../solver/types.ts";
import {
  type CuttingTable,
  hasPlan,
  type PackingProblem,
  type PackingResult,
  type SearchLimits,
  type StackLimit,
} from "../types.ts";
import { type Place, placesOf, shapeOf } from "./places.ts";
import { fewKindColumns, plainColumns } from "./work-columns.ts";
import {
  ANY_TABLE,
  cutsOf,
  type Measured,
  measureStrips,
  type StripCuts,
  type StripShape,
  workOf,
} from "./work-measure.ts";
import { gather, priceColumns, textOf, toColumn, type WorkQuestion } from "./work-program.ts";
import { searchWork } from "./work-search.ts";

/** Most kinds of strip the search chooses from. */
const MOST_COLUMNS = 90;
/** Fullest strips of few sizes that are looked at. */
const MOST_FEW = 120;
/** Most partial plans seen in one search. */
const MOST_NODES = 1500;
/** The same where a few strips are planned anew, and how many such groups are tried. */
const FEW_COLUMNS = 40;
const FEW_NODES = 60;
const MOST_GROUPS = 80;

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
  const clock = startClock(limits, now);
  const most = Math.min(lengthLimit, problem.roll?.available ?? lengthLimit);
  return withSolver(
    (solver) => {
      let best = result;
      // Repeated until it changes nothing, so that a plan once eased is not eased again.
      for (let changed = true; changed; ) {
        changed = false;
        for (let at = 0; at < placesOf(problem, best, most).length && !clock.expired(); at++) {
          const ease: Ease = { problem, best, table, clock, solver, lengthLimit: most };
          const better = easeOnce(ease, placesOf(problem, best, most)[at]!);
          changed ||= better !== null;
          best = better ?? best;
        }
      }
      // How the easing ended, beside how the search did: the clock's word is the graver.
      const { cutShort } = result.stats;
      const ended = cutShort === "clock" || !clock.wasLate() ? cutShort : "clock";
      return { ...best, stats: { ...best.stats, milliseconds: clock.spent(), cutShort: ended } };
    },
    () => highsSolver(clock),
  );
}

/** What is to be eased, and with what. */
interface Ease {
  problem: PackingProblem;
  best: PackingResult;
  table: CuttingTable;
  clock: Clock;
  solver: Solver;
  lengthLimit: number;
}

/** The plan with the strips of one place rearranged; null when they are as good as they get. */
function easeOnce(ease: Ease, place: Place): PackingResult | null {
  const { problem, best: before } = ease;
  const look = lookingAt(ease, place);
  const strips = gather(place.strips);
  lookAmong(look, [], strips, { fillings: MOST_FEW, nodes: MOST_NODES });
  // What is built anew as a whole seldom fits where no length is to spare: so a few strips at a time as well.
  for (const group of groupsOf(look.best)) {
    if (ease.clock.expired()) break;
    const out = new Set(group.map(({ filling }) => filling));
    const go = look.best.filter(({ filling }) => out.has(filling));
    if (go.length < group.length || go.length === look.best.length) continue;
    const stay = look.best.filter(({ filling }) => !out.has(filling));
    lookAmong(look, stay, go, { fillings: FEW_COLUMNS, nodes: FEW_NODES });
  }
  if (look.judge.compare(look.best, strips) >= 0) return null;
  const eased = place.put(look.best);
  // Judged once more as a whole plan, where strips of sheets and bands count as well.
  const isSound = verify(problem, eased).length === 0 && eased.rollLength <= ease.lengthLimit;
  const least = workOf(problem, before, ease.table).total;
  return isSound && workOf(problem, eased, ease.table).total <= least ? eased : null;
}

/** The strips of one place while they are rearranged. */
interface Looking {
  place: Place;
  table: CuttingTable;
  oracle: StripOracle;
  judge: Judge;
  ease: Ease;
  best: StripCount[];
}

function lookingAt(ease: Ease, place: Place): Looking {
  const { kinds, run, strips, room, step } = place;
  const { across, inside, narrow } = ease.table;
  const table = { across: across / step, inside: inside / step, narrow: narrow / step };
  const rules = rulesOf(ease.problem, step);
  const judge = judgeOf(place, table, rules.stacks);
  const longest = Math.max(room, ...kinds.flatMap(({ lies }) => lies.map(({ height }) => height)));
  const oracle = makeOracle(rules, kinds, run, longest);
  return { place, table, oracle, judge, ease, best: gather(strips) };
}

/** Plans anew what some of the strips hold; the others stay, and pay for the ruler settings that both need. */
function lookAmong(
  look: Looking,
  stay: readonly StripCount[],
  go: readonly StripCount[],
  most: { fillings: number; nodes: number },
): void {
  const { place, table, judge, ease } = look;
  const { kinds, run, room } = place;
  const question: WorkQuestion = {
    ...{ kinds, run, table },
    demand: heldBy(go, kinds.length),
    limit: room - lengthOf(stay),
    paid: paidFor([...place.beside, ...judge.measured(stay)], table),
  };
  const found = candidates(look.oracle, question, go, most.fillings);
  const columns = found.map((filling) => toColumn(question, filling));
  const priced = priceColumns(question, columns, { keep: go.length, most: MOST_COLUMNS }, ease.solver);
  const frames = { upright: kinds, transposed: transposeKinds(kinds) };
  const other = judge.workOf(stay);
  const bar = () => judge.workOf(look.best) - other;
  const offered = (candidate: readonly StripCount[]): number => {
    const exact = gather(dropSurplus(frames, place.demand, [...stay, ...candidate]));
    if (judge.compare(exact, look.best) < 0) look.best = exact;
    return bar();
  };
  for (const order of ordersOf(question))
    searchWork(question, priced, most.nodes, bar(), offered, ease.clock.expired, order);
}

/** Which item a plan is built around first: the largest, then in another search the one needing most cloth. */
function ordersOf({ kinds, demand }: WorkQuestion): number[][] {
  const largest = [...kinds.keys()];
  const cloth = (k: number): number => kinds[k]!.lies[0]!.width * kinds[k]!.lies[0]!.height * demand[k]!;
  const most = largest.slice().sort((a, b) => cloth(b) - cloth(a) || a - b);
  return [largest, most, most.slice().reverse()];
}

/** Kinds of strip by twos and threes, neighbours in size first. */
function groupsOf(strips: readonly StripCount[]): StripCount[][] {
  const sorted = strips.slice().sort((a, b) => b.filling.height - a.filling.height);
  const groups: StripCount[][] = [];
  sorted.forEach((a, i) => {
    sorted.slice(i + 1).forEach((b, j) => {
      groups.push([a, b]);
      for (const c of sorted.slice(i + j + 2)) groups.push([a, b, c]);
    });
  });
  return groups.sort((a, b) => a.length - b.length).slice(0, MOST_GROUPS);
}

function heldBy(strips: readonly StripCount[], kinds: number): number[] {
  const held = new Array<number>(kinds).fill(0);
  for (const { filling, count } of strips) addCounts(held, filling.counts, count);
  return held;
}

function candidates(
  oracle: StripOracle,
  question: WorkQuestion,
  strips: readonly StripCount[],
  few: number,
): Filling[] {
  const { kinds, run, demand, limit } = question;
  const byText = new Map<string, Filling>();
  const pools = [
    strips.map(({ filling }) => filling),
    plainColumns(kinds, run, demand),
    fewKindColumns(oracle, demand, few),
  ];
  for (const filling of pools.flat()) {
    const text = textOf(filling);
    if (!byText.has(text) && filling.height <= limit) byText.set(text, filling);
  }
  return [...byText.values()];
}

function paidFor(beside: readonly Measured[], table: CuttingTable): WorkQuestion["paid"] {
  return {
    widths: new Set(beside.map(({ shape }) => shape.height)),
    sizes: new Set(beside.flatMap(({ shape }) => cutsOf(shape, table).sizes)),
  };
}

/** Whether stacks lie only where strips may be cut into them. */
function mayBeStacked({ height, segments }: Filling, limit: StackLimit | undefined): boolean {
  return (
    limit === undefined ||
    segments.every(({ stack, width }) => stack.length < 2 || (height <= limit.height && width <= limit.width))
  );
}

/** Says what a plan is worth. */
interface Judge {
  /** Negative when the first is the better plan. */
  compare(a: readonly StripCount[], b: readonly StripCount[]): number;
  workOf(strips: readonly StripCount[]): number;
  measured(strips: readonly StripCount[]): Measured[];
}

/** Work first, then length, then how much of the waste lies in large strip ends; too long is worst. */
function judgeOf(
  { kinds, run, room, beside }: Place,
  table: CuttingTable,
  stacks: StackLimit | undefined,
): Judge {
  const shapes = new WeakMap<Filling, StripShape>();
  const shape = (filling: Filling): StripShape => {
    const known = shapes.get(filling) ?? shapeOf(kinds, run, filling);
    shapes.set(filling, known);
    return known;
  };
  const shaped = (strips: readonly StripCount[]) =>
    strips.map(({ filling, count }) => ({ shape: shape(filling), count }));
  const cuts = new WeakMap<StripShape, StripCuts>();
  const cutsIn = (one: StripShape): StripCuts => {
    const known = cuts.get(one) ?? cutsOf(one, table);
    cuts.set(one, known);
    return known;
  };
  const work = (strips: readonly StripCount[]): number =>
    measureStrips([...beside, ...shaped(strips)], table, cutsIn).total;
  // Squares of the ends in thousandths of the run: one long end is worth more than many short ones.
  const useful = (strips: readonly StripCount[]): number =>
    strips.reduce((sum, { filling, count }) => {
      const used = filling.segments.reduce((taken, { width }) => taken + width, 0);
      const end = Math.floor(((run - used) * 1000) / run);
      return sum + count * filling.height * end * end;
    }, 0);
  const grades = new WeakMap<readonly StripCount[], readonly number[]>();
  const grade = (strips: readonly StripCount[]): readonly number[] => {
    const known = grades.get(strips);
    if (known !== undefined) return known;
    const length = lengthOf(strips);
    const allowed = length <= room && strips.every(({ filling }) => mayBeStacked(filling, stacks));
    const made = [allowed ? 0 : 1, work(strips), length, -useful(strips)];
    grades.set(strips, made);
    return made;
  };
  return {
    workOf: (strips) => grade(strips)[1] ?? 0,
    measured: shaped,
    compare(a, b) {
      const p = grade(a);
      const q = grade(b);
      for (let i = 0; i < p.length; i++) if (p[i] !== q[i]) return p[i]! - q[i]!;
      return 0;
    },
  };
}
