import { type Lengths, lengthsOf, longestWithin, stretchesOf } from "../bands/rest-lengths.ts";
import { type FillingLists, fillingLists, listLevel, tightestCuts } from "../filling/vector-fill.ts";
import { firstSheet } from "../oracles/oracle.ts";
import { splitFinder } from "../oracles/split-fillings.ts";
import type { StripCount } from "../problem/assemble.ts";
import type { Clock } from "../problem/clock.ts";
import type { Vector } from "../problem/counts.ts";
import type { Solver } from "../solver/types.ts";
import { decideVector, EASY, type Effort, HARD } from "./decide-vector.ts";
import { type CutTables, cutTables, levelFloors, type Stretch } from "./height-tables.ts";
import { type HeightCut, levelsUsed, type Master, refute, wantedBesideSheets } from "./master.ts";
import { type TableCache, tableCache } from "./table-cache.ts";

/** What the search over strip heights came to. */
export interface HeightSearch {
  /** No plan is shorter than this. */
  lower: number;
  /** A plan of exactly `lower`, when one was found. */
  strips: StripCount[] | null;
  /** The search ran out of time or room before it could decide. */
  open: boolean;
}

/** What is known of the problem from one search to the next. */
export interface HeightMemory {
  cuts: HeightCut[];
  lists: FillingLists;
  /** What is known of the vectors met: no plan has them, or an easy try left them open. */
  vectors: Map<string, "dead" | "hard">;
  /** Branches visited. */
  nodes: number;
  tables: TableCache;
}

export function heightMemory(master: Master, root: HeightCut): HeightMemory {
  const stacked = master.oracle.stacks !== undefined;
  const lists = fillingLists(stacked ? splitFinder(master.oracle) : null);
  return { cuts: [root], lists, vectors: new Map(), nodes: 0, tables: tableCache() };
}

/** So many cuts at most, the newest. */
function newestCuts({ cuts }: HeightMemory, most: number): HeightCut[] {
  return cuts.slice(Math.max(0, cuts.length - Math.floor(most)));
}

function keyOf(vector: Vector): string {
  return levelsUsed(vector)
    .map((level) => `${level}*${vector[level]}`)
    .join();
}

/** Vectors remembered at most. */
const MOST_VECTORS = 100_000;

/** Upper limit on table cells per length tried, so that memory stays small. */
const MOST_CELLS = 12_000_000;

/** So many levels found useful, and no more are asked about: needless ones are low. */
const LEVELS_USEFUL = 12;

/** Fillings listed to see whether a level is of any use, and milliseconds for it, about. */
const LEVEL_LISTED = 100;
const LISTING = 0.5;

/** Milliseconds a table cell takes, about; told to the clock. */
const CELL = 4e-6;

/** What lengths are decided with. */
export interface HeightQuestion {
  master: Master;
  solver: Solver;
  memory: HeightMemory;
  /** Sheets given, by level. */
  given: Vector;
  clock: Clock;
}

type Verdict = { answer: "filled"; strips: StripCount[] } | { answer: "dead" | "unknown" | "stopped" };

/**
 * Decides lengths one by one, from `lower` up. For each it looks for a vector of strip heights of exactly
 * that length that satisfies every cut known so far (depth-first, bounded by a table per cut). A vector
 * found is put to the linear program: either it yields a new cut that kills it and its like, or its strips
 * are filled by a whole-number program over all fillings that can matter. A length whose vectors are all
 * dead is proved too short.
 *
 *     length V:  n1*H1 + n2*H2 + ... = V
 *     cut:       n1*G(H1) + n2*G(H2) + ... >= total     for every set of prices
 *
 * Strips of rests stand in the vector as well, together no longer than their rest; only vectors to which no further
 * strip of a rest can be added are looked at, since a strip more never does harm.
 */
export function searchHeights(question: HeightQuestion, lower: number, upper: number): HeightSearch {
  // A length left undecided holds the bound down, but longer plans may still be found.
  let firstOpen: number | null = null;
  for (let length = lower; length < upper; length++) {
    const verdict = decideEach(question, length);
    if (verdict.answer === "filled")
      return { lower: firstOpen ?? length, strips: verdict.strips, open: firstOpen !== null };
    if (verdict.answer === "unknown") firstOpen ??= length;
    if (verdict.answer === "stopped") return { lower: firstOpen ?? length, strips: null, open: true };
  }
  return { lower: firstOpen ?? upper, strips: null, open: firstOpen !== null };
}

/** Decides one length: as it is dealt out to the roll and to longer rests in every way that may serve. */
function decideEach(question: HeightQuestion, length: number): Verdict {
  const { master, memory, given, clock } = question;
  const { oracle } = master;
  const { rests = [] } = oracle;
  const cellsEach = rests.reduce(
    (sum, rest) =>
      sum + rest.ends.length * length + (rest.end - rest.first + 1) * longestWithin(rest, length),
    (oracle.stripLevels + 1) * length,
  );
  const cuts = newestCuts(memory, MOST_CELLS / Math.max(1, cellsEach));
  if (oracle.rests !== undefined) clock.charge(cellsEach * cuts.length * CELL);
  // Where no dealing out holds, nothing below would ask.
  if (clock.expired()) return { answer: "stopped" };
  let steps = 0;
  const tired = () => (++steps & 255) === 0 && clock.expired();
  const ways = lengthsOf(oracle, cuts, given, length, tired);
  if (ways === null) return { answer: "stopped" };
  let undecided = false;
  for (const lengths of ways) {
    const look = lookAt(question, lengths);
    const verdict = "answer" in look ? look : decideLength(look);
    if (verdict.answer === "filled" || verdict.answer === "stopped") return verdict;
    undecided ||= verdict.answer === "unknown";
  }
  return { answer: undecided ? "unknown" : "dead" };
}

/** One length looked at: its strips, what is known of them, and the vector that is being made. */
interface Look {
  question: HeightQuestion;
  heights: readonly number[];
  stretches: readonly Stretch[];
  /** The levels of all stretches in turn, and for each stretch where the next begins. */
  levels: readonly number[];
  ends: readonly number[];
  /** Lowest strip of each stretch. */
  lowest: readonly number[];
  floors: ReturnType<typeof levelFloors>;
  cells: number;
  tables: CutTables;
  /** Strips chosen, by depth. */
  counts: number[];
  /** Vectors that an easy try left open. */
  pending: number[][];
  /** From this level on there are too many fillings to look at all of them; so many were of use, and which. */
  use: { tooMany: number; useful: number; needless: Map<number, boolean> };
  steps: number;
}

/** Tables found again cost nothing. */
function charged<T>({ memory, clock }: HeightQuestion, alone: boolean, cells: number, make: () => T): T {
  const before = memory.tables.cells;
  const made = make();
  clock.charge((alone ? memory.tables.cells - before : cells) * CELL);
  return made;
}

/** Prepares a length, or says at once what comes of it. */
function lookAt(question: HeightQuestion, lengths: Lengths): Look | Verdict {
  const { master, memory, given, clock } = question;
  const heights = master.oracle.heights.slice(0, firstSheet(master.oracle));
  const all = stretchesOf(master.oracle, lengths);
  // A plan of this length might use a strip too high to be listed.
  if (lengths.roll > master.oracle.listedTo) return { answer: "stopped" };
  const looked = newestCuts(memory, (4 * MOST_CELLS) / Math.max(1, cellsOf(all)));
  if (looked.length === 0 || clock.expired()) return { answer: "stopped" };
  const wantedOf = (cut: HeightCut) => wantedBesideSheets(cut, given);
  const alone = all.length === 1;
  const floors = charged(question, alone, cellsOf(all) * looked.length, () =>
    levelFloors(heights, all, looked, looked.map(wantedOf), memory.tables),
  );
  const stretches = all.map((one) => ({ ...one, levels: one.levels.filter((level) => floors[level]) }));
  const levels = stretches.flatMap((stretch) => stretch.levels);
  const bare = lengths.roll > 0 && stretches[0]!.levels.length === 0;
  if (bare || (levels.length === 0 && looked.some((cut) => wantedOf(cut) > 0))) return { answer: "dead" };
  const cells = cellsOf(stretches);
  const cuts = newestCuts(memory, (0.75 * MOST_CELLS) / Math.max(1, cells));
  if (cuts.length === 0) return { answer: "stopped" };
  const tables = charged(question, alone, cells * cuts.length, () =>
    cutTables(heights, stretches, cuts, cuts.map(wantedOf), memory.tables),
  );
  const ends: number[] = [];
  for (const stretch of stretches) ends.push((ends.at(-1) ?? 0) + stretch.levels.length);
  return {
    ...{ question, heights, stretches, levels, ends, floors, cells, tables, pending: [], steps: 0 },
    lowest: stretches.map((stretch) => heights[stretch.levels.at(-1)!] ?? Infinity),
    counts: new Array<number>(levels.length).fill(0),
    use: { tooMany: heights.length, useful: 0, needless: new Map() },
  };
}

/** Table cells that one cut takes. */
function cellsOf(stretches: readonly Stretch[]): number {
  return stretches.reduce((sum, { levels, length }) => sum + levels.length * length, 0);
}

function decideLength(look: Look): Verdict {
  const { memory, clock } = look.question;
  const found = visit(look, 0, 0, look.stretches[0]!.length);
  if (found === "stop") return { answer: "stopped" };
  if (found !== null) return { answer: "filled", strips: found };
  // The hard ones last: one that can be filled elsewhere would have made them needless. Those with most to spare
  // come first, since they are likeliest to be filled.
  let undecided = false;
  const spare = (vector: number[]) => tightestCuts(vector, memory.cuts, 1)[0]!.part;
  const ordered = look.pending.map((vector) => ({ vector, part: spare(vector) }));
  for (const { vector } of ordered.sort((a, b) => b.part - a.part)) {
    if (clock.expired()) return { answer: "stopped" };
    const outcome = decided(look.question, vector, HARD);
    if (outcome.answer === "filled") return outcome;
    if (outcome.answer === "unknown") undecided = true;
    else remember(memory, vector, "dead");
  }
  return { answer: undecided ? "unknown" : "dead" };
}

/** Depth first over the levels of every stretch in turn: `room` of the present one is left. */
function visit(look: Look, s: number, depth: number, room: number): StripCount[] | "stop" | null {
  const { question, stretches, levels, counts, tables } = look;
  const { clock, given } = question;
  if ((++question.memory.nodes & 15) === 0 && clock.expired()) return "stop";
  if (depth === look.ends[s]) {
    if (stretches[s]!.exact ? room !== 0 : room >= look.lowest[s]!) return null;
    const next = stretches[s + 1];
    if (next !== undefined) return visit(look, s + 1, depth, next.length);
    if (clock.expired()) return "stop";
    const vector = given.slice();
    levels.forEach((level, d) => {
      vector[level] = counts[d]!;
    });
    return visitVector(look, vector);
  }
  const level = levels[depth]!;
  const height = look.heights[level]!;
  for (let count = Math.floor(room / height); count >= 0; count--) {
    if ((++look.steps & 255) === 0 && clock.expired()) return "stop";
    const left = room - count * height;
    counts[depth] = count;
    if (tables.isDeadEnd(depth, count, left) || (count > 0 && isNeedless(look, level))) continue;
    tables.choose(depth, count);
    const found = visit(look, s, depth + 1, left);
    if (found !== null) return found;
  }
  counts[depth] = 0;
  return null;
}

/** Some plan of this length, if there is any, has no strip of this level: whatever it held is needless. */
function isNeedless({ question, floors, use }: Look, level: number): boolean {
  const { master, memory, clock } = question;
  if (memory.lists.needless === null || level >= use.tooMany) return false;
  let needless = use.needless.get(level);
  if (needless === undefined) {
    const limit = { most: LEVEL_LISTED, stop: () => clock.expired() };
    clock.charge(LISTING);
    const found = listLevel(master, level, floors[level]!, memory.lists, limit);
    if (found === null) use.tooMany = level;
    else if (found.length > 0 && ++use.useful === LEVELS_USEFUL) use.tooMany = level + 1;
    needless = found !== null && found.length === 0;
    use.needless.set(level, needless);
  }
  return needless;
}

function remember({ vectors }: HeightMemory, vector: Vector, known: "dead" | "hard"): void {
  if (vectors.size < MOST_VECTORS) vectors.set(keyOf(vector), known);
}

function decided({ memory, ...question }: HeightQuestion, vector: Vector, effort: Effort) {
  return decideVector({ ...question, cuts: memory.cuts, lists: memory.lists }, vector, effort);
}

/** A vector that satisfies every cut: refuted by a new one, filled, found impossible, or put off. */
function visitVector(look: Look, vector: number[]): StripCount[] | null | "stop" {
  const { question, pending, cells, tables, counts } = look;
  const { master, memory, given, clock } = question;
  const known = memory.vectors.get(keyOf(vector));
  if (known === "dead") return null;
  if (known === "hard") {
    pending.push(vector);
    return null;
  }
  const cut = refute(master, vector, () => clock.expired());
  if (cut !== null) {
    memory.cuts.push(cut);
    const wanted = wantedBesideSheets(cut, given);
    charged(question, look.stretches.length === 1, cells, () => tables.add(cut, wanted, counts));
    return cells * tables.size() > MOST_CELLS ? "stop" : null;
  }
  const outcome = decided(question, vector, EASY);
  if (outcome.answer === "filled") return outcome.strips;
  // What the end of the time left undecided is as open as before.
  if (outcome.answer === "impossible") remember(memory, vector, "dead");
  else if (!clock.expired()) remember(memory, vector, "hard");
  if (outcome.answer === "unknown") pending.push(vector);
  return null;
}
