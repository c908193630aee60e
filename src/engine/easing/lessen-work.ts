import type { Filling, StripOracle } from "../oracles/oracle.ts";
import { withSolver } from "../pack.ts";
import { dropSurplus, type Frames, framesOf, type StripCount } from "../problem/assemble.ts";
import { type Clock, startClock } from "../problem/clock.ts";
import { addCounts, sum } from "../problem/counts.ts";
import { type CuttingRules, lengthOf, makeOracle, rulesOf } from "../problem/roll-question.ts";
import { verify } from "../problem/verify.ts";
import { highsSolver } from "../solver/highs.ts";
import type { Solver } from "../solver/types.ts";
import {
  type CuttingTable,
  hasPlan,
  type PackingProblem,
  type PackingResult,
  type SearchLimits,
} from "../types.ts";
import { type Place, placeAt, spotsOf } from "./places.ts";
import { fewKindColumns, plainColumns } from "./work-columns.ts";
import { ANY_TABLE, type Measured, measureStrips, workOf } from "./work-measure.ts";
import {
  type Column,
  gather,
  mayServe,
  paidFor,
  priceColumns,
  textOf,
  toColumn,
  type WorkQuestion,
} from "./work-program.ts";
import { searchWork } from "./work-search.ts";

/** Most kinds of strip the search chooses from. */
const MOST_COLUMNS = 90;
/** Fullest strips of few sizes that are looked at, and partial plans seen, where all strips are planned anew. */
const ALL = { few: 120, nodes: 1500 } as const;
/** The same where a few strips are, and how many such groups are tried. */
const SOME = { few: 40, nodes: 60 } as const;
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
      const ease: Ease = { problem, table, clock, solver, lengthLimit: most, best: result, known: new Map() };
      // Repeated until it changes nothing, so that a plan once eased is not eased again.
      while (easeAll(ease));
      // How the easing ended, beside how the search did: the clock's word is the graver.
      const { cutShort } = result.stats;
      const ended = cutShort === "clock" || !clock.wasLate() ? cutShort : "clock";
      return { ...ease.best, stats: { ...ease.best.stats, milliseconds: clock.spent(), cutShort: ended } };
    },
    () => highsSolver(clock),
  );
}

/** What is to be eased, and with what. */
interface Ease {
  problem: PackingProblem;
  table: CuttingTable;
  clock: Clock;
  solver: Solver;
  lengthLimit: number;
  best: PackingResult;
  /** What is known of places of one run whose strips hold the same. */
  known: Map<string, Known>;
}

interface Known {
  columns: Map<string, Column>;
  /** Strips planned anew among others in vain, as texts: plans differ little from one round to the next. */
  settled: Set<string>;
}

/** Rearranges the strips of every place in turn; false when all are as good as they get. */
function easeAll(ease: Ease): boolean {
  const { problem, table, clock, lengthLimit } = ease;
  let changed = false;
  let spots = spotsOf(problem, ease.best, lengthLimit);
  for (let at = 0; at < spots.length; at++) {
    const place = placeAt(problem, spots[at]!, table);
    if (place === null) continue;
    if (clock.expired()) break;
    const better = easeOnce(ease, place);
    if (better === null) continue;
    ease.best = better;
    spots = spotsOf(problem, better, lengthLimit);
    changed = true;
  }
  return changed;
}

/** The plan with the strips of one place rearranged; null when they are as good as they get. */
function easeOnce(ease: Ease, place: Place): PackingResult | null {
  const { problem, best: before, table, clock, lengthLimit } = ease;
  const look = lookingAt(ease, place);
  const strips = look.best;
  lookAmong(look, [], strips, ALL);
  // What is built anew as a whole seldom fits where no length is to spare: so a few strips at a time as well.
  for (const group of groupsOf(look.best)) {
    if (clock.expired()) break;
    const isIn = ({ filling }: StripCount) => group.includes(filling);
    const go = look.best.filter(isIn);
    if (go.length < group.length || go.length === look.best.length) continue;
    const stay = look.best.filter((strip) => !isIn(strip));
    lookAmong(look, stay, go, SOME);
  }
  if (compare(look, look.best, strips) >= 0) return null;
  const eased = place.put(look.best);
  // Judged once more as a whole plan, where strips of sheets and bands count as well.
  const isSound = verify(problem, eased).length === 0 && eased.rollLength <= lengthLimit;
  return isSound && workOf(problem, eased, table).total <= workOf(problem, before, table).total
    ? eased
    : null;
}

/** The strips of one place while they are rearranged. */
interface Looking extends Known {
  ease: Ease;
  place: Place;
  table: CuttingTable;
  rules: CuttingRules;
  frames: Frames;
  oracle: StripOracle;
  /** All that the strips lie beside, as a text. */
  beside: string;
  best: StripCount[];
  /** What plans are worth: see `gradeOf`. */
  grades: WeakMap<readonly StripCount[], readonly number[]>;
}

function lookingAt(ease: Ease, place: Place): Looking {
  const { kinds, run, room, step } = place;
  const { across, inside, narrow } = ease.table;
  const table = { across: across / step, inside: inside / step, narrow: narrow / step };
  const rules = rulesOf(ease.problem, step);
  const longest = Math.max(room, ...kinds.flatMap(({ lies }) => lies.map(({ height }) => height)));
  const key = JSON.stringify([run, kinds]);
  const known = ease.known.get(key) ?? { columns: new Map(), settled: new Set() };
  ease.known.set(key, known);
  return {
    ...{ ...known, ease, place, table, rules, frames: framesOf(kinds), best: gather(place.strips) },
    oracle: makeOracle(rules, kinds, run, longest),
    beside: JSON.stringify([room, place.beside.map(({ strip, count }) => [strip.text, count]).sort()]),
    grades: new WeakMap(),
  };
}

/** What is known of strips filled so; worked out once. */
function columnOf({ columns, place: { kinds, run }, table }: Looking, filling: Filling): Column {
  const text = textOf(filling);
  const known = columns.get(text) ?? toColumn(kinds, run, table, filling);
  columns.set(text, known);
  return known;
}

/** Plans anew what some of the strips hold; the others stay, and pay for the ruler settings that both need. */
function lookAmong(
  look: Looking,
  stay: readonly StripCount[],
  go: readonly StripCount[],
  most: { few: number; nodes: number },
): void {
  const { place, ease, frames } = look;
  const { kinds, run, room } = place;
  const asked = `${look.beside}#${textsOf(stay)}#${textsOf(go)}`;
  if (look.settled.has(asked)) return;
  const demand = kinds.map(() => 0);
  for (const { filling, count } of go) addCounts(demand, filling.counts, count);
  const paid = paidFor([...place.beside, ...measured(look, stay)]);
  const question: WorkQuestion = { kinds, run, demand, limit: room - lengthOf(stay), paid };
  const before = look.best;
  const other = gradeOf(look, stay)[1]!;
  const bar = () => gradeOf(look, look.best)[1]! - other;
  const isStacked = look.rules.style === "strips-3";
  const serves = mayServe(question, isStacked, bar());
  const columns = candidates(look, question, go, most.few).filter((c, at) => at < go.length || serves(c));
  const priced = priceColumns(question, columns, { keep: go.length, most: MOST_COLUMNS }, ease.solver);
  const offered = (candidate: readonly StripCount[]): number => {
    const exact = gather(dropSurplus(frames, place.demand, [...stay, ...candidate]));
    if (compare(look, exact, look.best) < 0) look.best = exact;
    return bar();
  };
  searchWork(question, priced, most.nodes, bar(), offered, ease.clock.expired);
  if (look.best === before && !ease.clock.expired()) look.settled.add(asked);
}

function textsOf(strips: readonly StripCount[]): string {
  return strips.map(({ filling, count }) => `${count}*${textOf(filling)}`).join();
}

/** Kinds of strip by twos and threes, neighbours in size first. */
function groupsOf(strips: readonly StripCount[]): Filling[][] {
  const sorted = strips.map(({ filling }) => filling).sort((a, b) => b.height - a.height);
  const twos = sorted.flatMap((a, i) => sorted.slice(i + 1).map((b) => [a, b]));
  const threes = twos.flatMap(([a, b]) => sorted.slice(sorted.indexOf(b!) + 1).map((c) => [a!, b!, c]));
  return [...twos, ...threes].slice(0, MOST_GROUPS);
}

/** The strips there are, what a cutter would think of, and the fullest of few sizes. */
function candidates(
  look: Looking,
  { kinds, run, demand, limit }: WorkQuestion,
  strips: readonly StripCount[],
  few: number,
): Column[] {
  const fillings = [
    ...strips.map(({ filling }) => filling),
    ...plainColumns(kinds, run, demand),
    ...fewKindColumns(look.oracle, demand, few),
  ];
  const low = fillings.filter(({ height }) => height <= limit);
  return [...new Set(low.map((filling) => columnOf(look, filling)))];
}

function measured(look: Looking, strips: readonly StripCount[]): Measured[] {
  return strips.map(({ filling, count }) => ({ strip: columnOf(look, filling).strip, count }));
}

/** Negative when the first is the better plan. */
function compare(look: Looking, a: readonly StripCount[], b: readonly StripCount[]): number {
  const [p, q] = [gradeOf(look, a), gradeOf(look, b)];
  for (let i = 0; i < p.length; i++) if (p[i] !== q[i]) return p[i]! - q[i]!;
  return 0;
}

/** Whether it may be cut at all; its work, then its length, then how much of the waste lies in large strip ends. */
function gradeOf(look: Looking, strips: readonly StripCount[]): readonly number[] {
  const known = look.grades.get(strips);
  if (known !== undefined) return known;
  const { run, room, beside } = look.place;
  const length = lengthOf(strips);
  const allowed = length <= room && strips.every(({ filling }) => mayBeStacked(filling, look.rules));
  // Squares of the ends in thousandths of the run: one long end is worth more than many short ones.
  const useful = sum(strips, ({ filling: { segments, height }, count }) => {
    const end = Math.floor(((run - sum(segments, ({ width }) => width)) * 1000) / run);
    return count * height * end * end;
  });
  const work = measureStrips([...beside, ...measured(look, strips)]).total;
  const grade = [allowed ? 0 : 1, work, length, -useful];
  look.grades.set(strips, grade);
  return grade;
}

/** Whether stacks lie only where strips may be cut into them. */
function mayBeStacked({ height, segments }: Filling, { stacks }: CuttingRules): boolean {
  return (
    stacks === undefined ||
    segments.every(
      ({ stack, width }) => stack.length < 2 || (height <= stacks.height && width <= stacks.width),
    )
  );
}
