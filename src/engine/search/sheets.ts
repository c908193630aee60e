import { greedySheets } from "../filling/greedy.ts";
import { type FillingLists, fillingLists } from "../filling/vector-fill.ts";
import type { Filling } from "../oracles/oracle.ts";
import { jointOracle, sheetLevels } from "../oracles/oracle-joint.ts";
import { dropSurplus, type Frames, framesOf, type StripCount } from "../problem/assemble.ts";
import { type Clock, share } from "../problem/clock.ts";
import { type Counts, isEmpty, sum } from "../problem/counts.ts";
import { areaOf, type Kind } from "../problem/reduce.ts";
import type { CuttingRules } from "../problem/roll-question.ts";
import { availableOf, type SheetGroup } from "../problem/sheet-groups.ts";
import type { Solver } from "../solver/types.ts";
import { decideVector, EASY, type Effort, HARD } from "./decide-vector.ts";
import { jitteredPrices } from "./jitter.ts";
import {
  addFilling,
  createMaster,
  type HeightCut,
  heightCut,
  type Master,
  refute,
  solveRoot,
} from "./master.ts";
import { pricesByArea } from "./prices.ts";
import { aimOf, leastChoice, type StockChoice } from "./stock-vector.ts";
import { stripsOnSheets } from "./strips-on-sheets.ts";

/** Greedy fillings tried for a choice of sheets before the exact search looks at it. */
const GREEDY_TRIES = 40;

/** Nodes of one look for the cheapest choice. */
const MOST_NODES = 2_000_000;

/** From so many kinds of sheets on, none is tried on its own. */
const MOST_GROUPS = 4;

export interface SheetsQuestion extends CuttingRules {
  kinds: readonly Kind[];
  groups: readonly SheetGroup[];
  solver: Solver;
  clock: Clock;
  target: number | null;
}

export interface SheetsAnswer {
  /** Sheet fillings; their index is that of the group. Null when no plan was found. */
  sheets: StripCount[] | null;
  cost: number;
  lower: number;
  /** Nothing can be cut from this stock: proved. */
  impossible: boolean;
  /** When there is no plan: the fullest attempt, and what it leaves over of every kind. */
  attempt: { strips: StripCount[]; left: number[] };
}

/** Where the search for the cheapest choice of sheets stands. */
interface SheetSearch {
  question: SheetsQuestion;
  frames: Frames;
  demand: Counts;
  master: Master;
  cuts: HeightCut[];
  lists: FillingLists;
  /** Choices of which no plan was found. */
  failed: StockChoice[];
  best: StripCount[] | null;
  cost: number;
  lower: number;
  /** Least cost of a choice that was given up undecided. */
  open: number;
  /** Proved from the length of strips; null before that was asked. */
  floor: number | null;
}

/** No plan yet, and nothing left undecided. */
const NONE = Number.MAX_SAFE_INTEGER;

/**
 * The cheapest choice of fixed sheets that holds everything. Choices are taken in order of cost (cheapest
 * first among those that satisfy every cut known); each is refuted by a new cut or by exhaustion, or it is
 * filled, and is then the optimum.
 */
export function solveSheets(question: SheetsQuestion): SheetsAnswer {
  const { kinds, groups, clock, solver, style } = question;
  const demand = kinds.map((kind) => kind.demand);
  const frames = framesOf(kinds);
  const available = availableOf(groups, kinds);
  const unit = Math.max(1, Math.max(...groups.map((group) => group.cost)) / 10_000);
  const levels = sheetLevels(question, frames, groups, ({ cost }) => cost / unit);
  const oracle = jointOracle(frames, clock, null, levels);
  const byArea = pricesByArea(kinds, areaOf(kinds), demand, 1);
  const master = createMaster(oracle, demand, solver);
  const search: SheetSearch = {
    ...{ question, frames, demand, master, failed: [], best: null, cost: NONE, lower: 0, open: NONE },
    ...{ cuts: [heightCut(oracle, demand, byArea)], floor: null, lists: fillingLists(null) },
  };
  const attempt = greedySheets(oracle, demand, byArea.prices, available);
  if (isEmpty(attempt.left)) offer(search, attempt.strips);
  if (style === "strips-3") {
    // A plan without stacks is a plan with them: the best of those found quickly is where this search starts.
    const quick = share(clock, 0.25, 1500);
    const two = solveSheets({ ...question, style: "strips-2", clock: quick });
    if (two.sheets !== null) offer(search, two.sheets);
  }
  try {
    const none = available.map(() => 0);
    search.cuts.push(solveRoot(master, 1, none, () => clock.expired()).cut);
    const impossible = refute(master, available, () => clock.expired()) !== null;
    if (!impossible) tryGreedy(search, available, 0);
    const answer = impossible ? { lower: 0, impossible } : searchChoices(search, available);
    const { best, cost } = search;
    return { ...answer, sheets: best, cost, attempt };
  } finally {
    master.pool.model.dispose();
  }
}

function offer(search: SheetSearch, sheets: readonly StripCount[]): void {
  const { question, frames, demand } = search;
  const exact = dropSurplus(frames, demand, sheets);
  const costOf = (filling: Filling) => question.groups[filling.sheet!.index]!.cost;
  const total = sum(exact, ({ filling, count }) => costOf(filling) * count);
  if (total >= search.cost) return;
  search.best = exact;
  search.cost = total;
}

/** Choice after choice, cheapest first, until one is filled or time is up. */
function searchChoices(
  search: SheetSearch,
  available: readonly number[],
): Pick<SheetsAnswer, "lower" | "impossible"> {
  const { question, cuts, failed } = search;
  const { groups, clock, target } = question;
  const basis = { available, aims: [groups.map(({ cost }) => cost)], prices: [0] };
  for (;;) {
    const asked = cuts.map(({ values, total }) => ({ sheets: [...values], portions: [0], total }));
    const below = search.cost;
    const rest = { aim: 0, within: [], cuts: asked, failed, below, mostNodes: MOST_NODES };
    const next = leastChoice({ ...basis, ...rest });
    if (!next.complete) search.open = Math.min(search.open, search.lower);
    if (next.choice === null) {
      if (search.best !== null) return { lower: Math.min(search.cost, search.open), impossible: false };
      return { lower: Math.min(search.open, 0), impossible: next.complete && search.open === NONE };
    }
    const price = aimOf(basis, 0, next.choice);
    search.lower = Math.min(price, search.open);
    const enough = target !== null && (search.cost <= target || search.lower > target);
    if (clock.expired() || enough) return { lower: Math.min(search.lower, search.cost), impossible: false };
    tryChoice(search, next.choice, price);
  }
}

/** Refutes a choice, or finds a plan on it; else it has failed. */
function tryChoice(search: SheetSearch, choice: StockChoice, price: number): void {
  const { question, master, cuts, failed } = search;
  const { solver, clock } = question;
  const cut = refute(master, choice.counts, () => clock.expired());
  if (cut !== null) {
    cuts.push(cut);
    return;
  }
  tryGreedy(search, choice.counts, price);
  if (search.cost > price) search.floor ??= floorByStrips(search, price);
  if (search.cost <= price) return;
  if (price < (search.floor ?? 0)) {
    failed.push(choice);
    return;
  }
  const asked = { master, solver, cuts, clock, lists: search.lists };
  let outcome = decideVector(asked, choice.counts, EASY);
  if (outcome.answer === "unknown" && !clock.expired())
    outcome = decideVector(asked, choice.counts, hard(clock));
  if (outcome.answer === "filled") {
    offer(search, outcome.strips);
    return;
  }
  failed.push(choice);
  if (outcome.answer === "unknown") search.open = Math.min(search.open, price);
}

/** Fills the sheets of a choice greedily, by prices changed a little every time, until one holds everything for `price`. */
function tryGreedy(search: SheetSearch, sheets: readonly number[], price: number): void {
  const { question, master, demand, cuts } = search;
  const byArea = cuts[0]!.prices;
  for (let n = 0; n < GREEDY_TRIES && search.cost > price && !question.clock.expired(); n++) {
    const base = n % 2 === 0 ? byArea : cuts[(n >> 1) % cuts.length]!.prices;
    const prices = n < 2 ? base : jitteredPrices(base, n, 0.15 + 0.05 * (n % 8));
    const { strips, left } = greedySheets(master.oracle, demand, prices, sheets);
    for (const { filling } of strips) addFilling(master, filling);
    if (isEmpty(left)) offer(search, strips);
  }
}

/** Lays the least length of strips onto sheets of each kind; where there is one kind, says what that proves. */
function floorByStrips(search: SheetSearch, price: number): number {
  const { question, frames } = search;
  const { groups } = question;
  const inner = { ...question, clock: share(question.clock, 0.4, 6000) };
  let floor = 0;
  for (let index = 0; index < groups.length && groups.length <= MOST_GROUPS && search.cost > price; index++) {
    const { plans, least } = stripsOnSheets(inner, index, frames);
    for (const plan of plans) offer(search, plan);
    if (groups.length === 1) floor = least * groups[0]!.cost;
  }
  return floor;
}

/** The hard look takes a share of what is left, so that one stubborn choice does not eat the whole budget. */
function hard(clock: Clock): Effort {
  return { ...HARD, solver: Math.min(HARD.solver, Math.max(200, clock.left() / 3)) };
}
