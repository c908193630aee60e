import { onRests, overhang } from "../bands/rest-strips.ts";
import { greedyStrips } from "../filling/greedy.ts";
import { poolProgram } from "../filling/pool-program.ts";
import { rebuildStrips, wholePart } from "../filling/rebuild.ts";
import { metered } from "../oracles/metered.ts";
import { firstSheet, type StripOracle } from "../oracles/oracle.ts";
import { jointOracle } from "../oracles/oracle-joint.ts";
import { sheetOracle } from "../oracles/oracle-sheet.ts";
import { oracleForTwo } from "../oracles/oracle-two.ts";
import { dropSurplus, type Frames, type StripCount } from "../problem/assemble.ts";
import { type Clock, share } from "../problem/clock.ts";
import { areaOfOne, fitsRun, type Kind, transposeKinds } from "../problem/reduce.ts";
import {
  asOnRoll,
  lengthOf,
  makeOracle,
  type RollAnswer,
  type RollQuestion,
} from "../problem/roll-question.ts";
import { searchTiers } from "../tiers/tier-tree.ts";
import { type HeightMemory, heightMemory, searchHeights } from "./heights.ts";
import { createMaster, type Master, type RootOutcome } from "./master.ts";
import { wholePrices } from "./prices.ts";
import { sheetsHold } from "./sheets-hold.ts";

/** Where the search for the least length stands. */
interface RollSearch {
  question: RollQuestion;
  frames: Frames;
  demand: readonly number[];
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
  vector: readonly number[];
  /** A length that surely holds everything. */
  longest: number;
}

/** The least length of strips, where nothing is set aside any more. */
export function leastLength(question: RollQuestion): RollAnswer {
  const { kinds, run, given, rests = [] } = question;
  if (kinds.length === 0) return { strips: [], length: 0, lower: 0, boundKind: "area" };
  const demand = kinds.map((kind) => kind.demand);
  const frames: Frames = { upright: kinds, transposed: transposeKinds(kinds) };
  // Where heights stand for something else, the lies of a kind may differ in area.
  const area = kinds.reduce((sum, kind) => sum + areaOfOne(kind) * kind.demand, 0);
  const lent =
    given.reduce((sum, { sheet, count }) => sum + sheet.across * sheet.along * count, 0) +
    rests.reduce((sum, rest) => sum + rest.across * rest.along, 0);
  const lower = Math.max(0, Math.ceil((area - lent) / run));
  const best = firstStrips(question, frames, demand, lower);
  const search: RollSearch = {
    ...{ question, frames, demand, best, lower, boundKind: "area", onlyArea: false },
    length: best === null ? Infinity : lengthTaken(question, best),
  };
  if (!isDone(search)) {
    if (!sheetsHold(question, demand))
      return { strips: [], length: Infinity, lower: Infinity, boundKind: "dual" };
    searchRoll(search);
  }
  return {
    strips: search.best ?? [],
    length: search.length,
    lower: search.lower,
    boundKind: search.boundKind,
  };
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
  search.question.report(search.length, search.lower);
}

function offer({ search, master }: OpenRoll, strips: readonly StripCount[] | null): void {
  if (strips === null) return;
  const { question, frames, demand } = search;
  const exact = dropSurplus(frames, demand, onRests(master.oracle, strips, question.given.length));
  const total = lengthTaken(question, exact);
  if (total >= search.length) return;
  search.best = exact;
  search.length = total;
  question.report(total, search.lower);
}

/** One oracle over the roll, the sheets given and the rests. */
function oracleOf({ question, frames }: RollSearch, longest: number): StripOracle {
  const { kinds, run, clock, given, rests = [] } = question;
  const onRoll = kinds.map(asOnRoll);
  const joint = jointOracle(
    kinds,
    makeOracle(question, onRoll, run, longest),
    given.map(({ sheet }, index) => ({
      oracle: sheetOracle(question, frames, sheet, index),
      height: Math.max(1, Math.round((sheet.across * sheet.along) / run)),
    })),
    rests.map(({ across, along, ends }) => ({
      oracle: makeOracle(question, onRoll, across, ends.at(-1) ?? along),
      length: along,
      ends,
    })),
  );
  return metered(joint, clock);
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
    const root = master.solveRoot(longest, vector, () => clock.expired());
    raise(search, root.bound, "dual");
    if (isDone(search)) return;
    const memory = heightMemory(master, root.cut);
    const open: OpenRoll = { search, master, root, memory, vector, longest };
    offer(open, greedyStrips(oracle, demand, root.cut.prices, vector));
    if (!isDone(search)) runStages(open);
  } finally {
    master.dispose();
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
  if (isPart || !Number.isFinite(search.length)) fromPool(open, 300, 1);
  // Where sizes are fine, lengths are many: those the first plan leaves open had better be few.
  if (!isSmall && search.length - search.lower > MANY_LENGTHS) {
    fromPool(open, 300, 1 / 8);
    roundDown(open, 300);
    if (isDone(search) || decideLengths(open, share(clock, 0.4, 4000)) || clock.expired()) return;
    rebuild(open, share(clock, 0.5, 1500), 150);
    if (isDone(search) || decideLengths(open, share(clock, 0.4, 4000)) || clock.expired()) return;
  }
  if (!isSmall && style === "strips-2") {
    if (decideLengths(open, share(clock, 0.1, 150)) || clock.expired()) return;
    // Where sizes come several times over, planning a few strips afresh finds what dives do not.
    const several = demand.reduce((sum, count) => sum + count, 0) > 1.5 * kinds.length;
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
    if (decideLengths(open, share(clock, 0.4, 1500)) || clock.expired()) return;
    fromPool(open, 500, 1 / 8);
  }
  if (decideLengths(open, share(clock, isSmall ? 0.5 : 0.85, 5000)) || clock.expired()) return;
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
  offer(open, poolProgram(open.master, open.vector, solver, Math.min(most, clock.left() * part)));
}

/** Whole parts of the linear plan stay as they are; the few strips' worth left over are planned afresh. */
function roundDown(open: OpenRoll, budget: number): void {
  const { search, master, root } = open;
  const { question, demand } = search;
  for (const leave of [0, 1, 2]) {
    if (isDone(search) || question.clock.expired()) return;
    const part = wholePart(master.pool, root.values, demand, leave);
    if (part.strips.length === 0) return;
    const rest = solvePart(question, part.left, budget);
    if (rest !== null) offer(open, [...part.strips, ...rest]);
  }
}

/** A few strips are taken out and planned afresh, again and again. */
function rebuild(open: OpenRoll, until: Clock, budget: number): void {
  const { search } = open;
  const { best, lower, question } = search;
  if (best === null || isDone(search)) return;
  const solve = (wanted: readonly number[]) => solvePart(question, wanted, budget);
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
  const { solver } = question;
  searchTiers({
    ...{ oracle, demand, pool, lower, upper, solver, clock },
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
function solvePart(question: RollQuestion, wanted: readonly number[], budget: number): StripCount[] | null {
  const clock = share(question.clock, 1, budget);
  const answer = leastLength({
    ...question,
    kinds: question.kinds.map((kind, k) => ({ ...kind, demand: wanted[k]! })),
    clock,
    given: [],
    rests: [],
    enough: null,
    ceiling: null,
    small: true,
    report: () => {},
  });
  return Number.isFinite(answer.length) ? answer.strips : null;
}

/**
 * A plan to start from: by price of area in strips-2; for strips-3 the best strips-2 plan found quickly.
 * Null when some kind fits only a sheet.
 */
function firstStrips(
  question: RollQuestion,
  frames: Frames,
  demand: readonly number[],
  areaBound: number,
): StripCount[] | null {
  const { kinds, run, clock } = question;
  if (question.style === "strips-3") {
    const two = leastLength({
      ...question,
      style: "strips-2",
      clock: share(clock, 0.25, 1500),
      report: () => {},
    });
    return Number.isFinite(two.length) ? two.strips : null;
  }
  const strips = greedyStrips(
    oracleForTwo(kinds.map(asOnRoll), run),
    demand,
    areaPrices(kinds, demand, run, areaBound),
    [],
  );
  return strips === null ? null : dropSurplus(frames, demand, strips);
}

function areaPrices(
  kinds: readonly Kind[],
  demand: readonly number[],
  run: number,
  length: number,
): Float64Array {
  const areas = kinds.map((kind) => areaOfOne(kind) / run);
  return wholePrices(areas, demand, length).prices;
}

/** A length that surely holds every kind the roll can take, when some fit only a sheet. */
function safeLength({ kinds, run }: RollQuestion, demand: readonly number[]): number {
  const fitting = kinds.map((kind) => fitsRun(asOnRoll(kind), run));
  const wanted = demand.map((count, k) => (fitting[k] ? count : 0));
  const strips = greedyStrips(
    oracleForTwo(kinds.map(asOnRoll), run),
    wanted,
    areaPrices(kinds, demand, run, 1),
    [],
  );
  return 1 + lengthOf(strips ?? []);
}
