import { onRests, overhang } from "../bands/rests.ts";
import { greedyStrips } from "../filling/greedy.ts";
import { poolProgram } from "../filling/pool-program.ts";
import { rebuildStrips, wholePart } from "../filling/rebuild.ts";
import { firstSheet, type StripOracle } from "../oracles/oracle.ts";
import { jointOracle, sheetLevels } from "../oracles/oracle-joint.ts";
import { oracleForTwo } from "../oracles/oracle-two.ts";
import { dropSurplus, type Frames, framesOf, type StripCount } from "../problem/assemble.ts";
import { type Clock, share } from "../problem/clock.ts";
import { type Counts, sum, type Vector } from "../problem/counts.ts";
import { fitsRun } from "../problem/reduce.ts";
import {
  areaBound,
  asOnRoll,
  lengthOf,
  makeOracle,
  type RollAnswer,
  type RollQuestion,
} from "../problem/roll-question.ts";
import { searchTiers } from "../tiers/tier-tree.ts";
import { type HeightMemory, heightMemory, searchHeights } from "./heights.ts";
import { createMaster, type Master, type RootOutcome, solveRoot } from "./master.ts";
import { pricesByArea } from "./prices.ts";
import { sheetsHold } from "./sheets-hold.ts";

/** Where the search for the least length stands. */
interface RollSearch {
  question: RollQuestion;
  frames: Frames;
  demand: Counts;
  best: StripCount[] | null;
  /** Length reached; Infinity before there is a plan. */
  length: number;
  lower: number;
  boundKind: RollAnswer["boundKind"];
  /** Where not every strip of a rest could be listed, only the area says what it can hold. */
  onlyArea: boolean;
}

/** The same once there is a linear program to go by. */
interface OpenRoll {
  search: RollSearch;
  master: Master;
  root: RootOutcome;
  memory: HeightMemory;
  /** Sheets given, by level. */
  vector: Vector;
  /** A length that surely holds everything. */
  longest: number;
}

/** The least length of strips, where nothing is set aside any more. */
export function leastLength(question: RollQuestion): RollAnswer {
  const { kinds } = question;
  if (kinds.length === 0) return { strips: [], length: 0, lower: 0, boundKind: "area" };
  const demand = kinds.map((kind) => kind.demand);
  const frames = framesOf(kinds);
  const lower = areaBound(question);
  const best = firstStrips(question, frames, demand, lower);
  const length = best === null ? Infinity : lengthTaken(question, best);
  const search: RollSearch = {
    ...{ question, frames, demand, best, length, lower, boundKind: "area", onlyArea: false },
  };
  if (!isDone(search)) {
    if (!sheetsHold(question, demand))
      return { strips: [], length: Infinity, lower: Infinity, boundKind: "dual" };
    searchRoll(search);
  }
  const { boundKind } = search;
  return { strips: search.best ?? [], length: search.length, lower: search.lower, boundKind };
}

function lengthTaken({ rests = [], given }: RollQuestion, strips: readonly StripCount[]): number {
  return lengthOf(strips) + overhang(strips, rests, given.length);
}

function isDone({ question: { enough, ceiling }, length, lower }: RollSearch): boolean {
  return length <= lower || (enough !== null && length <= enough) || (ceiling !== null && lower > ceiling);
}

function raise(search: RollSearch, value: number, kind: RollAnswer["boundKind"]): void {
  if (value <= search.lower || search.onlyArea) return;
  search.lower = Math.min(value, search.length);
  search.boundKind = kind;
}

function offer({ search, master }: OpenRoll, strips: readonly StripCount[] | null): void {
  if (strips === null) return;
  const { question, frames, demand } = search;
  const exact = dropSurplus(frames, demand, onRests(master.oracle, strips, question.given.length));
  const total = lengthTaken(question, exact);
  if (total >= search.length) return;
  search.best = exact;
  search.length = total;
}

/** One oracle over the roll, the sheets given and the rests. */
function oracleOf({ question, frames }: RollSearch, longest: number): StripOracle {
  const { kinds, run, clock, given, rests = [] } = question;
  const onRoll = kinds.map(asOnRoll);
  const sheets = given.map(({ sheet }) => sheet);
  return jointOracle(
    frames,
    clock,
    makeOracle(question, onRoll, run, longest),
    sheetLevels(question, frames, sheets, ({ across, along }) => (across * along) / run),
    rests.map(({ across, along: length, ends }) => ({
      oracle: makeOracle(question, onRoll, across, ends.at(-1) ?? length),
      ...{ length, ends },
    })),
  );
}

function searchRoll(search: RollSearch): void {
  const { question, demand } = search;
  const { clock, given, solver } = question;
  const longest = Number.isFinite(search.length) ? search.length : safeLength(question, demand);
  const oracle = oracleOf(search, longest);
  search.onlyArea =
    oracle.rests?.some(({ listedTo, length, ends }) => listedTo < (ends.at(-1) ?? length)) === true;
  const sheetsFrom = firstSheet(oracle);
  const vector = oracle.heights.map((_, level) => given[level - sheetsFrom]?.count ?? 0);
  const master = createMaster(oracle, demand, solver);
  try {
    const root = solveRoot(master, longest, vector, () => clock.expired());
    raise(search, root.bound, "dual");
    if (isDone(search)) return;
    const memory = heightMemory(master, root.cut);
    const open: OpenRoll = { search, master, root, memory, vector, longest };
    offer(open, greedyStrips(oracle, demand, root.cut.prices, vector));
    if (!isDone(search)) runStages(open);
  } finally {
    master.pool.model.dispose();
  }
}

/** Bounds and plans in turn, each with its share of what is left, until they meet. */
function runStages(open: OpenRoll): void {
  const { search } = open;
  const { question, demand } = search;
  const { kinds, clock, style, given, rests = [] } = question;
  const isPart = given.length > 0 || rests.length > 0;
  const isSmall = question.small === true || isPart;
  const ended = () => isDone(search) || clock.expired();
  const isDecided = (until: Clock) => decideLengths(open, until) || clock.expired();
  if (isPart || !Number.isFinite(search.length)) fromPool(open, 300, 1);
  // Where sizes are fine, lengths are many: those the first plan leaves open had better be few.
  if (!isSmall && search.length - search.lower > MANY_LENGTHS) {
    fromPool(open, 300, 1 / 8);
    roundDown(open, 300);
    if (isDone(search) || isDecided(share(clock, 0.4, 4000))) return;
    rebuild(open, share(clock, 0.5, 1500), 150);
    if (isDone(search) || isDecided(share(clock, 0.4, 4000))) return;
  }
  if (!isSmall && style === "strips-2") {
    if (isDecided(share(clock, 0.1, 150))) return;
    // Where sizes come several times over, planning a few strips afresh finds what dives do not.
    const several = sum(demand, (count) => count) > 1.5 * kinds.length;
    if (several) {
      roundDown(open, 300);
      rebuild(open, share(clock, 0.2, 2000), 150);
      if (ended()) return;
    }
    branchTiers(open, share(clock, several ? 0.6 : 0.95, 60_000));
    if (ended()) return;
  }
  // A search that is cut short is taken up again once a better plan has lowered the roof.
  if (!isSmall && style === "strips-3") {
    if (isDecided(share(clock, 0.4, 1500))) return;
    fromPool(open, 500, 1 / 8);
  }
  if (isDecided(share(clock, isSmall ? 0.5 : 0.85, 5000))) return;
  fromPool(open, question.small ? 50 : 800, 1 / 3);
  if (isSmall) {
    decideLengths(open, clock);
    return;
  }
  roundDown(open, 400);
  rebuild(open, share(clock, 0.4, 4000), 150);
  if (isDone(search) || decideLengths(open, share(clock, 0.75, 120_000))) return;
  rebuild(open, share(clock, 0.9, 30_000), 700);
  if (!isDone(search)) decideLengths(open, clock);
}

/** Decides lengths from the bound up; true when there is nothing left to decide. */
function decideLengths(open: OpenRoll, clock: Clock): boolean {
  const { search, master, memory, vector, longest } = open;
  const { solver } = search.question;
  const upper = Number.isFinite(search.length) ? search.length : longest;
  const asked = { master, solver, memory, given: vector, clock };
  const found = searchHeights(asked, search.lower, upper);
  offer(open, found.strips);
  raise(search, found.lower, "exhausted");
  return isDone(search) || !found.open;
}

/** The best whole-number use of the fillings known. */
function fromPool(open: OpenRoll, most: number, part: number): void {
  const { clock, solver } = open.search.question;
  const limit = Math.min(most, clock.left() * part);
  offer(
    open,
    poolProgram(open.master, open.vector, (program) => solver.integer(program, limit)),
  );
}

/** Whole parts of the linear plan stay as they are; the few strips' worth left over are planned afresh. */
function roundDown(open: OpenRoll, budget: number): void {
  const { search, master, root } = open;
  const { question, demand } = search;
  for (const leave of [0, 1, 2]) {
    if (isDone(search) || question.clock.expired()) return;
    const part = wholePart(master.pool.fillings, root.values, demand, leave);
    if (part.strips.length === 0) return;
    const rest = solvePart(question, part.left, budget);
    if (rest !== null) offer(open, [...part.strips, ...rest]);
  }
}

/** A few strips are taken out and planned afresh, again and again. */
function rebuild(open: OpenRoll, until: Clock, budget: number): void {
  const { best, lower, question } = open.search;
  if (best === null || isDone(open.search)) return;
  const solve = (wanted: Counts) => solvePart(question, wanted, budget);
  const { length } = question.kinds;
  offer(
    open,
    rebuildStrips(best, length, solve, lower, REBUILD_ROUNDS, () => until.expired()),
  );
}

/** Branch and price over how many strips are at least so high: for demands of many sizes. */
function branchTiers(open: OpenRoll, clock: Clock): void {
  const { search, master } = open;
  const { question, demand, lower, length: upper } = search;
  const { oracle, pool } = master;
  // Tiers know nothing of joined runs, to which what is left of a strip matters, nor of shapes that nest.
  const plain = question.kinds.every((kind) => kind.run === undefined && kind.nested === undefined);
  if (!plain || !Number.isFinite(upper) || upper - 1 > oracle.listedTo) return;
  searchTiers({
    ...{ oracle, demand, pool: pool.fillings, lower, upper, solver: question.solver, clock },
    offer(strips) {
      offer(open, strips);
      return search.length;
    },
    raise: (value) => raise(search, value, "exhausted"),
  });
}

/** So many steps of length between the first plan and the bound are many. */
const MANY_LENGTHS = 400;
/** Attempts without a gain before taking strips out again is given up. */
const REBUILD_ROUNDS = 60;

/** Plans a part of the demand on its own, quickly. Null when nothing is wanted or nothing was found. */
function solvePart(question: RollQuestion, wanted: Counts, budget: number): StripCount[] | null {
  const clock = share(question.clock, 1, budget);
  const kinds = question.kinds.map((kind, k) => ({ ...kind, demand: wanted[k]! }));
  const { strips, length } = leastLength({
    ...{ ...question, kinds, clock, given: [], rests: [], enough: null, ceiling: null, small: true },
  });
  return Number.isFinite(length) ? strips : null;
}

/**
 * A plan to start from: by price of area in strips-2; for strips-3 the best strips-2 plan found quickly.
 * Null when some kind fits only a sheet.
 */
function firstStrips(
  question: RollQuestion,
  frames: Frames,
  demand: Counts,
  area: number,
): StripCount[] | null {
  if (question.style === "strips-3") {
    const two = leastLength({ ...question, style: "strips-2", clock: share(question.clock, 0.25, 1500) });
    return Number.isFinite(two.length) ? two.strips : null;
  }
  const strips = stripsByArea(question, demand, area);
  return strips === null ? null : dropSurplus(frames, demand, strips);
}

/** Strips filled greedily by prices of area; `length` is about what they take. */
function stripsByArea({ kinds, run }: RollQuestion, wanted: Counts, length: number): StripCount[] | null {
  const demand = kinds.map((kind) => kind.demand);
  const { prices } = pricesByArea(kinds, run, demand, length);
  return greedyStrips(oracleForTwo(kinds.map(asOnRoll), run), wanted, prices, []);
}

/** A length that surely holds every kind the roll can take, when some fit only a sheet. */
function safeLength(question: RollQuestion, demand: Counts): number {
  const { kinds, run } = question;
  const wanted = demand.map((count, k) => (fitsRun(asOnRoll(kinds[k]!), run) ? count : 0));
  return 1 + lengthOf(stripsByArea(question, wanted, 1) ?? []);
}
