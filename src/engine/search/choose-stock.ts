import type { StripOracle } from "../oracles/oracle.ts";
import { jointOracle, sheetLevels } from "../oracles/oracle-joint.ts";
import { dropSurplus, framesOf } from "../problem/assemble.ts";
import { share } from "../problem/clock.ts";
import { sum } from "../problem/counts.ts";
import { areaOf, areaOfOne, fitsRun } from "../problem/reduce.ts";
import { lengthOf, makeOracle } from "../problem/roll-question.ts";
import { availableOf } from "../problem/sheet-groups.ts";
import { createMaster, type HeightCut, solveRoot } from "./master.ts";
import { pricesByArea } from "./prices.ts";
import { NOTHING_CUT, rollWith, type StockAnswer, type StockQuestion } from "./stock.ts";
import { aimOf, type ChoiceQuestion, leastChoice, type StockChoice, type StockCut } from "./stock-vector.ts";

/** A length of roll that can be bought: what can be cut from it, and its price. */
export interface Portion {
  length: number;
  price: number;
}

export interface ChoosingQuestion extends StockQuestion {
  /** Ascending; the first is nothing at no price. */
  portions: readonly Portion[];
  /** Aims in order: what one sheet of every group counts in each. Of the first, portions count their price too. */
  aims: readonly (readonly number[])[];
}

/** The plan found, what it comes to in every aim, and the least proved of each. */
export interface ChosenStock {
  answer: StockAnswer | null;
  values: number[];
  bounds: number[];
}

interface Found {
  answer: StockAnswer;
  choice: StockChoice;
}

/** Nodes of one look for a choice, and milliseconds that a cut takes at one of them, about. */
const MOST_NODES = 60_000;
const NODE = 2e-4;
/** Most choices packed for one aim. */
const MOST_PACKED = 60;
/** Most that one choice may take: a part of what is left, and so many milliseconds. */
const EACH = { part: 0.3, most: 600 } as const;

/**
 * The stock that comes to least in the first aim, among such in the second, and so on. Choices are taken in order of
 * what they come to; each is refuted by prices, which then speak against many others, or packed.
 */
export function chooseStock(question: ChoosingQuestion): ChosenStock {
  const { kinds, groups, portions, aims, clock } = question;
  const available = availableOf(groups, kinds);
  const prices = portions.map(({ price }) => price);
  const basis = { available, aims, prices };
  const memory = createMemory(question);
  const failed: StockChoice[] = [];
  const within: number[] = [];
  const bounds: number[] = [];
  let best: Found | null = null;
  const reached = (aim: number) => (best === null ? Infinity : aimOf(basis, aim, best.choice));
  const offer = (found: Found) => {
    const values = aims.map((_, aim) => aimOf(basis, aim, found.choice));
    const before = aims.map((_, aim) => reached(aim));
    const at = values.findIndex((value, aim) => value !== before[aim]);
    if (at >= 0 && values[at]! < before[at]!) best = found;
  };
  try {
    // With all the sheets there are the roll is shortest: what is proved of it holds for every choice.
    const all = { portion: portions.length - 1, counts: available };
    const first = packChoice(question, all, true);
    if (first.found !== null) offer(first.found);
    if (first.failedTo >= 0) failed.push({ ...all, portion: first.failedTo });
    aims.forEach((_, aim) => {
      let open = Infinity;
      const skipped: StockChoice[] = [];
      for (let packed = 0; ; ) {
        const ask: ChoiceQuestion = {
          ...basis,
          aim,
          within,
          cuts: memory.cuts,
          failed: [...failed, ...skipped],
          below: reached(aim),
          mostNodes: MOST_NODES,
        };
        const found = leastChoice(ask);
        clock.charge(0.01 + found.nodes * (ask.cuts.length + ask.failed.length) * NODE);
        if (!found.complete) open = Math.min(open, aim === 0 ? (packed === 0 ? 0 : open) : 0);
        if (found.choice === null) break;
        const value = aimOf(basis, aim, found.choice);
        if (clock.expired() || packed >= MOST_PACKED) {
          open = Math.min(open, value);
          break;
        }
        if (memory.refutes(found.choice)) continue;
        packed++;
        const tried = packChoice(question, found.choice);
        if (tried.found !== null) offer(tried.found);
        if (tried.found !== null && reached(aim) <= value) continue;
        if (tried.failedTo >= found.choice.portion) failed.push({ ...found.choice, portion: tried.failedTo });
        else {
          skipped.push(found.choice);
          open = Math.min(open, value);
        }
      }
      within.push(reached(aim));
      bounds.push(Math.min(open, reached(aim)));
    });
  } finally {
    memory.dispose();
  }
  return {
    answer: best === null ? null : (best as Found).answer,
    values: aims.map((_, a) => reached(a)),
    bounds,
  };
}

/** Packs a choice: the plan found, whether or not it keeps within the portion, and the portions proved too short. */
function packChoice(
  question: ChoosingQuestion,
  choice: StockChoice,
  toTheEnd = false,
): { found: Found | null; failedTo: number } {
  const { portions, kinds, groups } = question;
  const length = portions[choice.portion]!.length;
  const clock = share(question.clock, EACH.part, EACH.most);
  const within = toTheEnd ? null : length;
  const { answer, groupOf } = rollWith({ ...question, clock }, choice.counts, within, within);
  const failedTo = portions.findLastIndex((one) => one.length < answer.lower);
  if (!Number.isFinite(answer.length)) return { found: null, failedTo };
  const demand = kinds.map((kind) => kind.demand);
  const strips = dropSurplus(framesOf(kinds), demand, answer.strips);
  const used = lengthOf(strips, answer.groups);
  const portion = portions.findIndex((one) => one.length >= used);
  if (portion < 0) return { found: null, failedTo };
  const counts = groups.map(() => 0);
  for (const { filling, count } of strips) {
    const group = filling.sheet === undefined ? -1 : groupOf(filling);
    if (group >= 0 && group < counts.length) counts[group]! += count;
  }
  const { lower, boundKind, groups: bands } = answer;
  const whole = { ...NOTHING_CUT, strips, lower, boundKind, groupOf, bands };
  return { found: { choice: { portion, counts }, answer: whole }, failedTo };
}

/** What is known against choices: prices, worked out once for all stock. */
interface Memory {
  cuts: StockCut[];
  /** Looks for prices that speak against a choice; true when there are such, which are kept. */
  refutes(choice: StockChoice): boolean;
  dispose(): void;
}

/**
 * Cuts come from the linear program of strips on the roll beside the sheets of a choice. Where items may lie in bands
 * two relaxations stand for it, which hold whatever the bands: all cloth by area, and the other items alone, as if bands
 * took no room.
 */
function createMemory(question: ChoosingQuestion): Memory {
  const { kinds, groups, roll, portions, solver, clock } = question;
  const run = roll?.run ?? 0;
  const frames = framesOf(kinds);
  const sheets = sheetLevels(question, frames, groups, ({ across, along }) => (across * along) / run);
  const demand = kinds.map((kind) => kind.demand);
  const area = pricesByArea(kinds, Math.max(1, areaOf(kinds)), demand, 1);
  const worths = kinds.map((kind, k) => Math.ceil((area.prices[k]! * run) / areaOfOne(kind)));
  const perStep = Math.max(1, ...worths);
  const byArea = {
    sheets: sheets.map(({ oracle }) => oracle.value(area.prices, demand)),
    portions: portions.map(({ length }) => Math.min(area.total, length * perStep)),
    total: area.total,
  };
  const cuts: StockCut[] = [byArea];
  const isStrip = kinds.map(({ place }) => place === "strips");
  const fits = kinds.some((kind, k) => isStrip[k] && kind.demand > 0 && fitsRun(kind, run));
  if (!fits) return { cuts, refutes: () => false, dispose: () => {} };
  const longest = portions.at(-1)!.length;
  const onRoll = kinds.map((kind, k) => (isStrip[k] ? kind : { ...kind, lies: [] }));
  const oracle = jointOracle(frames, clock, makeOracle(question, onRoll, run, longest), sheets);
  const wanted = demand.map((count, k) => (isStrip[k] ? count : 0));
  const master = createMaster(oracle, wanted, solver);
  const strips = oracle.heights.slice(0, oracle.stripLevels);
  const toCut = (cut: HeightCut): StockCut => ({
    sheets: [...cut.values.subarray(strips.length)],
    portions: portions.map(({ length }) => holds(oracle, cut, length)),
    total: cut.total,
  });
  return {
    cuts,
    refutes({ counts, portion }) {
      const vector = [...strips.map(() => 0), ...counts];
      const cut = toCut(solveRoot(master, longest, vector, () => clock.expired()).cut);
      if (cut.portions[portion]! + sum(counts, (n, g) => n * cut.sheets[g]!) >= cut.total) return false;
      cuts.push(cut);
      return true;
    },
    dispose: () => master.pool.model.dispose(),
  };
}

/** The most that strips can hold in a length, if they could be had in fractions; rounded up. */
function holds(oracle: StripOracle, { values, tall, total }: HeightCut, length: number): number {
  if (length === 0) return 0;
  let most = 0;
  for (let level = 0; level < oracle.stripLevels; level++) {
    const height = oracle.heights[level]!;
    if (height <= length) most = Math.max(most, Math.floor((values[level]! * length) / height) + 1);
  }
  if (tall !== null && length > oracle.listedTo)
    most = Math.max(most, Math.floor((tall.numerator * length) / tall.denominator) + 1);
  return Math.min(most, total);
}
