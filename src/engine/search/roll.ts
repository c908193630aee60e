import { onRests, overhang } from "../bands/rest-strips.ts";
import { programOverAll } from "../filling/all-fillings.ts";
import { greedyStrips } from "../filling/greedy.ts";
import { poolProgram } from "../filling/pool-program.ts";
import { rebuildStrips, wholePart } from "../filling/rebuild.ts";
import { metered } from "../oracles/metered.ts";
import { countKinds, type Filling, firstSheet } from "../oracles/oracle.ts";
import { jointOracle } from "../oracles/oracle-joint.ts";
import { sheetOracle } from "../oracles/oracle-sheet.ts";
import { oracleForTwo } from "../oracles/oracle-two.ts";
import { dropSurplus, type Frames, type StripCount } from "../problem/assemble.ts";
import { type Clock, share } from "../problem/clock.ts";
import { areaOfOne, fitsRun, gcd, type Kind, transposeKinds } from "../problem/reduce.ts";
import {
  asOnRoll,
  lengthOf,
  makeOracle,
  mayHold,
  type RollAnswer,
  type RollQuestion,
} from "../problem/roll-question.ts";
import { searchTiers } from "../tiers/tier-tree.ts";
import { heightMemory, searchHeights } from "./heights.ts";
import { createMaster, type Master } from "./master.ts";
import { wholePrices } from "./prices.ts";
import { sheetsHold } from "./sheets-hold.ts";

/** Solves the roll problem. Every kind must fit the run in some lie (the caller has checked). */
export function solveRoll(question: RollQuestion): RollAnswer {
  const { run, rests = [] } = question;
  // A fixed size as wide as the run can share its strip with nothing: it is set aside and added back.
  const alone = question.given.length === 0 && rests.length === 0;
  const fills = (kind: Kind) =>
    kind.nested === undefined &&
    kind.lies.length === 1 &&
    kind.lies[0]!.width === run &&
    !question.given.some(({ sheet }) => mayHold(sheet, kind.lies[0]!));
  const set = question.kinds.filter(fills);
  const others = question.kinds.filter((kind) => !fills(kind));
  const heights = others.flatMap(({ lies, run: joined }) =>
    joined === undefined ? lies.map(({ height }) => height) : [joined.height],
  );
  const step = alone ? heights.reduce(gcd, 0) || 1 : 1;
  const setLength = set.reduce((sum, kind) => sum + kind.lies[0]!.height * kind.demand, 0);
  const inner = solveScaled({
    ...question,
    kinds: others.map((kind) => ({
      ...kind,
      lies: kind.lies.map((lie) => ({ ...lie, height: lie.height / step })),
      ...(kind.run === undefined ? {} : { run: { ...kind.run, height: kind.run.height / step } }),
    })),
    enough: question.enough === null ? null : Math.floor((question.enough - setLength) / step),
    ceiling: question.ceiling === null ? null : Math.floor((question.ceiling - setLength) / step),
    report: (length, lower) => question.report(length * step + setLength, lower * step + setLength),
  });
  const indexOf = question.kinds.flatMap((kind, k) => (fills(kind) ? [] : [k]));
  const strips = inner.strips.map(({ filling, count }) => ({
    filling: renumber(filling, indexOf, question.kinds.length, step),
    count,
  }));
  question.kinds.forEach((kind, k) => {
    if (fills(kind) && kind.demand > 0)
      strips.push({ filling: fullStrip(kind, k, question.kinds.length), count: kind.demand });
  });
  return {
    strips,
    length: inner.length * step + setLength,
    lower: inner.lower * step + setLength,
    boundKind: inner.boundKind,
  };
}

/** A filling of some of the kinds, in the numbering of all; heights are scaled back, on sheets they never were. */
function renumber(filling: Filling, indexOf: readonly number[], kinds: number, step: number): Filling {
  const segments = filling.segments.map((segment) => ({
    width: segment.width,
    stack: segment.stack.map(({ kind, lie }) => ({ kind: indexOf[kind]!, lie })),
  }));
  const counts = new Array<number>(kinds).fill(0);
  filling.counts.forEach((copies, k) => {
    counts[indexOf[k]!] = copies;
  });
  const end = filling.end === undefined ? {} : { end: { ...filling.end, kind: indexOf[filling.end.kind]! } };
  if (filling.sheet === undefined)
    return { level: -1, height: filling.height * step, counts, segments, ...end };
  const strips = filling.sheet.strips.map((strip) => renumber(strip, indexOf, kinds, 1));
  return { level: -1, height: filling.height, counts, segments, sheet: { ...filling.sheet, strips } };
}

function fullStrip(kind: Kind, index: number, kinds: number): Filling {
  const segments = [{ width: kind.lies[0]!.width, stack: [{ kind: index, lie: 0 }] }];
  return { level: -1, height: kind.lies[0]!.height, counts: countKinds(segments, kinds), segments };
}

function solveScaled(question: RollQuestion): RollAnswer {
  const { kinds, run, clock, solver, stats, enough, ceiling, given, rests = [] } = question;
  const demand = kinds.map((kind) => kind.demand);
  if (kinds.length === 0) return { strips: [], length: 0, lower: 0, boundKind: "area" };
  const frames: Frames = { upright: kinds, transposed: transposeKinds(kinds) };
  // Where heights stand for something else, the lies of a kind may differ in area.
  const area = kinds.reduce((sum, kind) => sum + areaOfOne(kind) * kind.demand, 0);
  const lent =
    given.reduce((sum, { sheet, count }) => sum + sheet.across * sheet.along * count, 0) +
    rests.reduce((sum, rest) => sum + rest.across * rest.along, 0);
  const onRoll = kinds.map(asOnRoll);
  const areaBound = Math.max(0, Math.ceil((area - lent) / run));
  let best = firstStrips(question, frames, demand, areaBound);
  const taken = (strips: readonly StripCount[]) => lengthOf(strips) + overhang(strips, rests, given.length);
  let length = best === null ? Infinity : taken(best);
  let lower = areaBound;
  let boundKind: RollAnswer["boundKind"] = "area";
  const raise = (value: number, kind: RollAnswer["boundKind"]) => {
    if (value <= lower || unlisted) return;
    lower = Math.min(value, length);
    boundKind = kind;
    question.report(length, lower);
  };
  const answer = (): RollAnswer => ({ strips: best ?? [], length, lower, boundKind });
  const done = () =>
    length <= lower || (enough !== null && length <= enough) || (ceiling !== null && lower > ceiling);
  if (done()) return answer();
  const longest = Number.isFinite(length) ? length : safeLength(question, demand);
  if (!sheetsHold(question, demand))
    return { strips: [], length: Infinity, lower: Infinity, boundKind: "dual" };
  const joint = jointOracle(
    kinds,
    makeOracle(question.style, onRoll, run, longest),
    given.map(({ sheet }, index) => ({
      oracle: sheetOracle(question.style, frames, sheet, index),
      height: Math.max(1, Math.round((sheet.across * sheet.along) / run)),
    })),
    rests.map(({ across, along, ends }) => ({
      oracle: makeOracle(question.style, onRoll, across, ends.at(-1) ?? along),
      length: along,
      ends,
    })),
  );
  const oracle = metered(joint, clock);
  // Where not every strip of a rest could be listed, only the area says what it can hold.
  const unlisted =
    joint.rests?.some(({ listedTo, length, ends }) => listedTo < (ends.at(-1) ?? length)) === true;
  const sheetsFrom = firstSheet(oracle);
  const vector = oracle.heights.map((_, level) => given[level - sheetsFrom]?.count ?? 0);
  const master = createMaster(oracle, demand, solver);
  const offer = (strips: StripCount[] | null) => {
    if (strips === null) return;
    const exact = dropSurplus(frames, demand, onRests(oracle, strips, given.length));
    const total = taken(exact);
    if (total >= length) return;
    best = exact;
    length = total;
    question.report(length, lower);
  };
  const isPart = given.length > 0 || rests.length > 0;
  const small = (budget: number) => (wanted: readonly number[]) =>
    solvePart(question, wanted, Math.min(budget, clock.left()));
  try {
    const root = master.solveRoot(longest, vector, () => clock.expired());
    raise(root.bound, "dual");
    if (done()) return answer();
    offer(greedyStrips(oracle, demand, root.cut.prices, vector));
    if (done()) return answer();
    const memory = heightMemory(master, root.cut);
    const upper = () => (Number.isFinite(length) ? length : longest);
    const search = (until: Clock): boolean => {
      const found = searchHeights(master, solver, memory, vector, lower, upper(), until, stats);
      if (found.strips !== null) offer(found.strips);
      raise(found.lower, "exhausted");
      return done() || !found.open;
    };
    if (isPart || !Number.isFinite(length))
      offer(poolProgram(master, vector, solver, Math.min(300, clock.left())));
    /** Decides everything below the present plan at once, as long as few enough fillings can matter. */
    const program = (until: Clock): boolean => {
      while (!isPart && Number.isFinite(length) && !done() && !until.expired()) {
        const found = programOverAll(master, root.cut, length, solver, until, stats);
        if (found.answer === "unknown") return false;
        if (found.answer === "none") raise(length, "exhausted");
        else {
          offer(found.strips);
          if (found.optimal) raise(length, "exhausted");
          else return done();
        }
      }
      return done();
    };
    const vast = stripsIn(master, root.values) >= VAST.strips;
    const nearEnough = () => vast && length - lower <= lower / VAST.near;
    /** Whole parts of the linear plan stay as they are; the few strips' worth left over are planned afresh. */
    const roundDown = (budget: number) => {
      for (const leave of [0, 1, 2]) {
        if (done() || nearEnough() || clock.expired()) return;
        const part = wholePart(master.pool, root.values, demand, leave);
        if (part.strips.length === 0) return;
        const rest = small(budget)(part.left);
        if (rest !== null) offer([...part.strips, ...rest]);
      }
    };
    const rebuild = (until: Clock, each = 150) => {
      if (best === null || done()) return;
      offer(rebuildStrips(best, kinds.length, small(each), lower, REBUILD_ROUNDS, () => until.expired()));
    };
    // Where sizes are fine, lengths are many: those the first plan leaves open had better be few.
    if (!isPart && question.small !== true && length - lower > MANY_LENGTHS) {
      offer(poolProgram(master, vector, solver, Math.min(300, clock.left() / 8)));
      roundDown(300);
      if (done()) return answer();
      if (search(share(clock, 0.6, 4000)) || clock.expired()) return answer();
      if (program(share(clock, 0.6, 6000)) || clock.expired()) return answer();
    }
    const isSmall = question.small === true || isPart;
    if (!isSmall && stripsIn(master, root.values) >= MANY_STRIPS) {
      // With many copies the rounding loses next to nothing, and lengths are too many to decide one by one.
      roundDown(vast ? 200 : 1000);
      if (nearEnough()) {
        search(share(clock, 0.1, 25));
        return answer();
      }
      if (!done()) search(share(clock, 0.15, 300));
      if (!done()) offer(poolProgram(master, vector, solver, Math.min(400, clock.left() / 4)));
      rebuild(share(clock, 0.6, 3000));
      return answer();
    }
    /** Branch and price over how many strips are at least so high: for demands of many sizes. */
    const plain = kinds.every((kind) => kind.run === undefined && kind.nested === undefined);
    const tiers = (until: Clock): boolean => {
      // Tiers know nothing of joined runs, to which what is left of a strip matters, nor of shapes that nest.
      if (!plain || !Number.isFinite(length) || length - 1 > oracle.listedTo) return false;
      const took = (strips: StripCount[]) => {
        offer(strips);
        return length;
      };
      const { pool } = master;
      const proved = (value: number) => raise(value, "exhausted");
      searchTiers({
        ...{ oracle, demand, pool, lower, upper: length, solver, clock: until, stats },
        ...{ offer: took, raise: proved },
      });
      return done();
    };
    if (!isSmall && question.style === "strips-2") {
      if (search(share(clock, 0.1, 150)) || clock.expired()) return answer();
      // Where sizes come several times over, planning a few strips afresh finds what dives do not.
      const several = demand.reduce((sum, count) => sum + count, 0) > 1.5 * kinds.length;
      if (several) {
        roundDown(300);
        rebuild(share(clock, 0.2, 2000));
        if (done() || clock.expired()) return answer();
      }
      if (tiers(share(clock, several ? 0.6 : 0.95, 60_000)) || clock.expired()) return answer();
    }
    // A search that is cut short is taken up again once a better plan has lowered the roof.
    if (!isSmall && question.style === "strips-3") {
      if (search(share(clock, 0.4, 1500)) || clock.expired()) return answer();
      offer(poolProgram(master, vector, solver, Math.min(500, clock.left() / 8)));
    }
    if (search(share(clock, isSmall ? 0.5 : 0.85, 5000)) || clock.expired()) return answer();
    if (program(share(clock, 0.4, 8000)) || clock.expired()) return answer();
    offer(poolProgram(master, vector, solver, Math.min(question.small ? 50 : 800, clock.left() / 3)));
    if (isSmall) {
      search(clock);
      return answer();
    }
    roundDown(400);
    rebuild(share(clock, 0.4, 4000));
    if (!done() && search(share(clock, 0.75, 120_000))) return answer();
    rebuild(share(clock, 0.9, 30_000), 700);
    if (!done()) program(clock);
    return answer();
  } finally {
    stats.columns += master.counts.columns;
    stats.lpSolves += master.counts.lpSolves;
    master.dispose();
  }
}

/** So many steps of length between the first plan and the bound are many. */
const MANY_LENGTHS = 400;
/** From so many strips on, a plan is rounded from the linear program before anything else is tried. */
const MANY_STRIPS = 120;
/** With so many strips a plan is good enough when what may be saved yet is less than one part in so many. */
const VAST = { strips: 400, near: 2000 };
/** Attempts without a gain before taking strips out again is given up. */
const REBUILD_ROUNDS = 60;

/** About how many strips the linear plan has. */
function stripsIn(master: Master, values: Float64Array): number {
  return master.pool.reduce((sum, _, p) => sum + (values[p] ?? 0), 0);
}

/** Plans a part of the demand on its own, quickly. Null when nothing is wanted or nothing was found. */
function solvePart(question: RollQuestion, wanted: readonly number[], budget: number): StripCount[] | null {
  const clock = share(question.clock, 1, budget);
  const answer = solveScaled({
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
    const two = solveScaled({
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
