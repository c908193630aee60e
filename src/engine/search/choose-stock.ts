import { metered } from "../oracles/metered.ts";
import { jointOracle } from "../oracles/oracle-joint.ts";
import { sheetOracle } from "../oracles/oracle-sheet.ts";
import type { StripCount } from "../problem/assemble.ts";
import { dropSurplus } from "../problem/assemble.ts";
import { share } from "../problem/clock.ts";
import { areaOfOne, fitsRun, type Kind, transposeKinds } from "../problem/reduce.ts";
import { asOnRoll, lengthOf, makeOracle } from "../problem/roll-question.ts";
import { createMaster, type HeightCut, type Master } from "./master.ts";
import { wholePrices } from "./prices.ts";
import { rollWith, type StockAnswer, type StockQuestion } from "./stock.ts";
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
  strips: StripCount[];
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
  const pieces = kinds.reduce((sum, { demand }) => sum + demand, 0);
  const available = groups.map((group) => Math.min(group.available ?? pieces, pieces));
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
  const { answer, groupOf } = rollWith(
    { ...question, clock, report: () => {} },
    choice.counts,
    toTheEnd ? null : length,
    toTheEnd ? null : length,
  );
  const failedTo = portions.findLastIndex((one) => one.length < answer.lower);
  const whole = stockAnswer(answer, groupOf);
  if (!Number.isFinite(answer.length)) return { found: null, failedTo };
  const frames = { upright: kinds, transposed: transposeKinds(kinds) };
  const strips = dropSurplus(
    frames,
    kinds.map(({ demand }) => demand),
    answer.strips,
  );
  const used = lengthOf(strips, answer.groups);
  const portion = portions.findIndex((one) => one.length >= used);
  if (portion < 0) return { found: null, failedTo };
  const counts = groups.map(() => 0);
  for (const { filling, count } of strips) {
    const group = filling.sheet === undefined ? -1 : groupOf(filling);
    if (group >= 0 && group < counts.length) counts[group]! += count;
  }
  return { found: { strips, choice: { portion, counts }, answer: { ...whole, strips } }, failedTo };
}

function stockAnswer(
  { strips, groups, lower, boundKind }: ReturnType<typeof rollWith>["answer"],
  groupOf: StockAnswer["groupOf"],
): StockAnswer {
  return { strips, lower, boundKind, groupOf, bands: groups, missing: null, impossible: false };
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
  const banded = kinds.some(({ place }) => place !== "strips");
  const frames = { upright: kinds, transposed: transposeKinds(kinds) };
  const sheets = groups.map((group, index) => sheetOracle(question, frames, group, index));
  const demand = kinds.map((kind) => kind.demand);
  const cuts: StockCut[] = [];
  const area = wholePrices(
    kinds.map(areaOfOne).map((one) => one / areaIn(kinds)),
    demand,
    1,
  );
  const perStep = Math.max(
    1,
    ...kinds.map((kind, k) => Math.ceil((area.prices[k]! * run) / areaOfOne(kind))),
  );
  cuts.push({
    sheets: sheets.map((one) => one.value(area.prices, demand)),
    portions: portions.map(({ length }) => Math.min(area.total, length * perStep)),
    total: area.total,
  });
  const stripKinds = kinds.map((kind) => ({ ...kind, demand: kind.place === "strips" ? kind.demand : 0 }));
  const fits = stripKinds.some((kind) => kind.demand > 0 && fitsRun(asOnRoll(kind), run));
  if (!fits) return { cuts, refutes: () => false, dispose: () => {} };
  const longest = portions.at(-1)!.length;
  const onRoll = kinds.map((kind) => (kind.place === "strips" ? kind : { ...kind, lies: [] }));
  const joint = jointOracle(
    kinds,
    makeOracle(question, onRoll, run, longest),
    groups.map(({ across, along }, index) => ({
      oracle: sheets[index]!,
      height: Math.max(1, Math.round((across * along) / run)),
    })),
  );
  const oracle = metered(joint, clock);
  const wanted = banded ? stripKinds.map((kind) => kind.demand) : demand;
  const master: Master = createMaster(oracle, wanted, solver);
  const levels = oracle.stripLevels;
  const toCut = (cut: HeightCut): StockCut => ({
    sheets: [...cut.values.subarray(levels)],
    portions: portions.map(({ length }) => holds(oracle.heights, cut, levels, length, oracle.listedTo)),
    total: cut.total,
  });
  return {
    cuts,
    refutes(choice) {
      const vector = [...oracle.heights.slice(0, levels).map(() => 0), ...choice.counts];
      const root = master.solveRoot(longest, vector, () => clock.expired());
      const cut = toCut(root.cut);
      const held = choice.counts.reduce(
        (sum, n, g) => sum + n * cut.sheets[g]!,
        cut.portions[choice.portion]!,
      );
      if (held >= cut.total) return false;
      cuts.push(cut);
      return true;
    },
    dispose() {
      master.dispose();
    },
  };
}

/** The most that strips can hold in a length, if they could be had in fractions; rounded up. */
function holds(
  heights: readonly number[],
  { values, tall, total }: HeightCut,
  levels: number,
  length: number,
  listedTo: number,
): number {
  let most = 0;
  for (let level = 0; level < levels; level++)
    if (heights[level]! <= length)
      most = Math.max(most, Math.floor((values[level]! * length) / heights[level]!) + 1);
  if (tall !== null && length > listedTo)
    most = Math.max(most, Math.floor((tall.numerator * length) / tall.denominator) + 1);
  return length === 0 ? 0 : Math.min(most, total);
}

function areaIn(kinds: readonly Kind[]): number {
  return Math.max(
    1,
    kinds.reduce((sum, kind) => sum + areaOfOne(kind) * kind.demand, 0),
  );
}
