import type { BandGroup } from "../bands/band-sections.ts";
import { solveBands } from "../bands/bands.ts";
import type { BandAnswer } from "../bands/plain-bands.ts";
import type { Filling } from "../oracles/oracle.ts";
import { dropSurplus, type Frames, type StripCount } from "../problem/assemble.ts";
import type { Clock } from "../problem/clock.ts";
import { fitsRun, type Kind, transposeKinds } from "../problem/reduce.ts";
import { type CuttingRules, canHold, lengthOf, type RollQuestion } from "../problem/roll-question.ts";
import type { SheetGroup } from "../problem/sheet-groups.ts";
import type { Solver } from "../solver/types.ts";
import type { LowerBound, SearchStats } from "../types.ts";
import { solveRoll } from "./roll.ts";
import { solveSheets } from "./sheets.ts";

export interface StockQuestion extends CuttingRules {
  kinds: readonly Kind[];
  groups: readonly SheetGroup[];
  roll: { run: number; available: number | null; costPerLength: number } | null;
  solver: Solver;
  clock: Clock;
  stats: SearchStats;
  target: number | null;
  report(objective: number, bound: number): void;
}

export interface StockAnswer {
  /** Strips of the roll and fillings of sheets. */
  strips: StripCount[];
  lower: number;
  boundKind: LowerBound["kind"];
  /** Sheet group of a sheet filling; at or beyond the number of groups it is the rest beside band group g. */
  groupOf(filling: Filling): number;
  /** Groups of lengthwise bands, each a length of the roll. */
  bands: BandGroup[];
  /** Kinds left over when no plan holds everything; null when all are placed. */
  missing: number[] | null;
  /** That there is no plan is proved. */
  impossible: boolean;
}

/** Most choices of priced sheets beside a roll that are tried one by one, and most sheets of one kind in them. */
const MOST_CHOICES = 4000;
const MOST_ALIKE = 60;

/** Solves for whatever stock there is: a roll, fixed sheets, or both. */
export function solveStock(question: StockQuestion): StockAnswer {
  const { kinds, groups, roll } = question;
  const fitsSheet = (kind: Kind) => groups.some((group) => canHold(group, kind));
  const fitsRoll = (kind: Kind) => roll !== null && fitsRun(kind, roll.run);
  const placeable = kinds.map((kind) => kind.demand === 0 || fitsSheet(kind) || fitsRoll(kind));
  if (placeable.includes(false)) {
    // The rest is still worked out, so that the maker sees how far the cloth goes.
    const rest = solveStock({
      ...question,
      kinds: kinds.map((kind, k) => (placeable[k] ? kind : { ...kind, demand: 0 })),
    });
    return {
      ...rest,
      impossible: true,
      missing: kinds.map((kind, k) => (placeable[k] ? (rest.missing?.[k] ?? 0) : kind.demand)),
    };
  }
  const wanted = kinds.filter((kind) => kind.demand > 0);
  const place = (answer: StockAnswer): StockAnswer =>
    wanted.length === kinds.length ? answer : spreadOut(answer, kinds, wanted);
  if (wanted.length === 0)
    return {
      strips: [],
      lower: 0,
      boundKind: "area",
      groupOf: () => 0,
      bands: [],
      missing: null,
      impossible: false,
    };
  const inner = { ...question, kinds: wanted };
  if (roll === null) return place(sheetsOnly(inner));
  if (groups.length === 0) return place(withGiven(inner, []));
  if (groups.every((group) => group.cost === 0)) return place(withGiven(inner, allOf(inner)));
  return place(pricedMix(inner));
}

function allOf({ kinds, groups }: StockQuestion): number[] {
  const pieces = kinds.reduce((sum, kind) => sum + kind.demand, 0);
  return groups.map((group) => Math.min(group.available ?? pieces, pieces));
}

function sheetsOnly(question: StockQuestion): StockAnswer {
  const answer = solveSheets(question);
  const groupOf = (filling: Filling) => filling.sheet!.index;
  if (answer.sheets === null) {
    return {
      strips: answer.attempt.sheets,
      lower: 0,
      boundKind: "dual",
      groupOf,
      bands: [],
      missing: answer.attempt.left,
      impossible: answer.impossible,
    };
  }
  return {
    strips: answer.sheets,
    lower: answer.lower,
    boundKind: "exhausted",
    groupOf,
    bands: [],
    missing: null,
    impossible: false,
  };
}

/** Sheets on the table at no further cost, then the roll. */
export function rollWith(
  question: StockQuestion,
  counts: readonly number[],
  enough: number | null,
  ceiling: number | null,
): { answer: BandAnswer; groupOf(filling: Filling): number } {
  const used = question.groups.flatMap((_, g) => (counts[g]! > 0 ? [g] : []));
  const inner: RollQuestion = {
    kinds: question.kinds,
    run: question.roll!.run,
    ...{ style: question.style, stacks: question.stacks },
    solver: question.solver,
    clock: question.clock,
    stats: question.stats,
    enough,
    ceiling,
    given: used.map((g) => ({ sheet: question.groups[g]!, count: counts[g]! })),
    report: (length, lower) =>
      question.report(length * question.roll!.costPerLength, lower * question.roll!.costPerLength),
  };
  const banded = question.kinds.some((kind) => kind.place !== "strips");
  const answer = banded ? solveBands(inner) : { ...solveRoll(inner), groups: [] };
  // The sheets given come first, the rests beside the band groups after them.
  const groupOf = (filling: Filling) => {
    const { index } = filling.sheet!;
    return index < used.length ? used[index]! : question.groups.length + index - used.length;
  };
  return { answer, groupOf };
}

function withGiven(question: StockQuestion, counts: readonly number[]): StockAnswer {
  const { costPerLength, available } = question.roll!;
  const target =
    question.target === null || costPerLength === 0 ? null : Math.floor(question.target / costPerLength);
  // A plan longer than the roll is of no use either.
  const most = target === null || available === null ? (target ?? available) : Math.min(target, available);
  const { answer, groupOf } = rollWith(question, counts, target, most);
  const result: StockAnswer = {
    strips: answer.strips,
    lower: answer.lower * costPerLength,
    boundKind: answer.boundKind,
    groupOf,
    bands: answer.groups,
    missing: null,
    impossible: answer.lower === Infinity,
  };
  if (!Number.isFinite(answer.length))
    return { ...result, strips: [], bands: [], lower: 0, missing: question.kinds.map((kind) => kind.demand) };
  return available === null || answer.length <= available ? result : cutShort(question, result, available);
}

/** Keeps the strips that fit the length there is; what the others held is missing. */
function cutShort(question: StockQuestion, answer: StockAnswer, available: number): StockAnswer {
  let room = available;
  const strips: StripCount[] = [];
  const left = question.kinds.map((kind) => kind.demand);
  // Bands are given up whole, with the strips beside them.
  const onRest = ({ filling }: StripCount) =>
    filling.sheet !== undefined && answer.groupOf(filling) >= question.groups.length;
  for (const strip of answer.strips.filter((s) => !onRest(s))) {
    const { filling } = strip;
    const count =
      filling.sheet !== undefined ? strip.count : Math.min(strip.count, Math.floor(room / filling.height));
    if (count === 0) continue;
    if (filling.sheet === undefined) room -= count * filling.height;
    strips.push({ filling, count });
    filling.counts.forEach((copies, k) => {
      left[k]! -= copies * count;
    });
  }
  const impossible = answer.lower > available * question.roll!.costPerLength;
  return { ...answer, strips, bands: [], lower: 0, missing: left, impossible };
}

/** Every choice of priced sheets, cheapest first, each with the least roll beside it. */
function pricedMix(question: StockQuestion): StockAnswer {
  const { groups, clock } = question;
  const { costPerLength, available } = question.roll!;
  const most = allOf(question);
  const alike = most.map((count) => Math.min(count, MOST_ALIKE));
  const choices = choicesByCost(groups, alike, MOST_CHOICES + 1);
  let best: StockAnswer | null = null;
  let cost = Infinity;
  // Choices with more of one kind than are tried cost at least that many and one.
  let lower = Math.min(
    Infinity,
    ...groups.filter((_, g) => most[g]! > MOST_ALIKE).map((group) => group.cost * (MOST_ALIKE + 1)),
  );
  for (const choice of choices.slice(0, MOST_CHOICES)) {
    if (choice.cost >= cost || clock.expired()) {
      lower = Math.min(lower, choice.cost);
      break;
    }
    const ceiling =
      Number.isFinite(cost) && costPerLength > 0
        ? Math.floor((cost - 1 - choice.cost) / costPerLength)
        : null;
    const { answer, groupOf } = rollWith(question, choice.counts, null, ceiling);
    // The bound of a choice counts only what was proved for it.
    lower = Math.min(lower, choice.cost + answer.lower * costPerLength);
    const total = choice.cost + answer.length * costPerLength;
    if (total >= cost || (available !== null && answer.length > available)) continue;
    cost = total;
    best = {
      strips: answer.strips,
      lower: 0,
      boundKind: "exhausted",
      groupOf,
      bands: answer.groups,
      missing: null,
      impossible: false,
    };
    question.report(cost, Math.min(lower, cost));
  }
  if (choices.length > MOST_CHOICES) lower = Math.min(lower, choices[MOST_CHOICES]!.cost);
  if (best === null) {
    // With all there is on the table at no cost there is no plan either, or none was found.
    const all = withGiven(question, most);
    const missing = question.kinds.map((kind) => kind.demand);
    return { ...all, missing, strips: [], bands: [], lower: 0 };
  }
  const frames: Frames = { upright: question.kinds, transposed: transposeKinds(question.kinds) };
  const demand = question.kinds.map((kind) => kind.demand);
  const strips = dropSurplus(frames, demand, best.strips);
  const paid = strips.reduce(
    (sum, { filling, count }) =>
      sum + (filling.sheet === undefined ? 0 : (groups[best.groupOf(filling)]?.cost ?? 0) * count),
    lengthOf(strips, best.bands) * costPerLength,
  );
  return { ...best, strips, lower: Math.min(lower, paid) };
}

/** Choices of how many of each sheet, by total cost, at most `most` of them. */
function choicesByCost(
  groups: readonly SheetGroup[],
  available: readonly number[],
  most: number,
): { counts: number[]; cost: number }[] {
  let choices: { counts: number[]; cost: number }[] = [{ counts: groups.map(() => 0), cost: 0 }];
  groups.forEach((group, g) => {
    const grown = choices.flatMap(({ counts, cost }) =>
      Array.from({ length: available[g]! + 1 }, (_, n) => ({
        counts: counts.map((count, i) => (i === g ? n : count)),
        cost: cost + n * group.cost,
      })),
    );
    // The cheapest `most` of a longer list are among the cheapest `most` of every shorter one.
    choices = grown.sort((p, q) => p.cost - q.cost).slice(0, most);
  });
  return choices;
}

/** Puts an answer about some of the kinds back into the numbering of all. */
function spreadOut(answer: StockAnswer, kinds: readonly Kind[], wanted: readonly Kind[]): StockAnswer {
  const indexOf = wanted.map((kind) => kinds.indexOf(kind));
  const map = (filling: Filling): Filling => {
    const counts = kinds.map(() => 0);
    filling.counts.forEach((copies, k) => {
      counts[indexOf[k]!] = copies;
    });
    return {
      ...filling,
      counts,
      ...(filling.end === undefined ? {} : { end: { ...filling.end, kind: indexOf[filling.end.kind]! } }),
      segments: filling.segments.map((segment) => ({
        width: segment.width,
        stack: segment.stack.map(({ kind, lie }) => ({ kind: indexOf[kind]!, lie })),
      })),
      ...(filling.sheet === undefined
        ? {}
        : { sheet: { ...filling.sheet, strips: filling.sheet.strips.map(map) } }),
    };
  };
  const missing =
    answer.missing === null
      ? null
      : kinds.map((kind) => {
          const at = wanted.indexOf(kind);
          return at < 0 ? 0 : answer.missing![at]!;
        });
  const bands = answer.bands.map((group) => ({
    ...group,
    bands: group.bands.map((band) => ({
      ...band,
      items: band.items.map(({ kind, lie }) => ({ kind: indexOf[kind]!, lie })),
    })),
  }));
  return {
    ...answer,
    bands,
    strips: answer.strips.map(({ filling, count }) => ({ filling: map(filling), count })),
    missing,
  };
}
