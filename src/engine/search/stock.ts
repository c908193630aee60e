import type { BandGroup } from "../bands/band-sections.ts";
import { solveBands } from "../bands/bands.ts";
import { type BandAnswer, named } from "../bands/plain-bands.ts";
import type { Filling } from "../oracles/oracle.ts";
import { renumbered, type StripCount } from "../problem/assemble.ts";
import type { Clock } from "../problem/clock.ts";
import { addCounts, type Counts } from "../problem/counts.ts";
import { fitsRun, type Kind } from "../problem/reduce.ts";
import { type CuttingRules, canHold, type RollQuestion } from "../problem/roll-question.ts";
import { availableOf, type SheetGroup } from "../problem/sheet-groups.ts";
import type { Solver } from "../solver/types.ts";
import type { LowerBound } from "../types.ts";
import { solveRoll } from "./roll.ts";
import { solveSheets } from "./sheets.ts";

export interface StockQuestion extends CuttingRules {
  kinds: readonly Kind[];
  groups: readonly SheetGroup[];
  roll: { run: number; available: number | null; costPerLength: number } | null;
  solver: Solver;
  clock: Clock;
  target: number | null;
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

/** Nothing is cut, and nothing is missing. */
export const NOTHING_CUT: StockAnswer = {
  ...{
    strips: [],
    lower: 0,
    boundKind: "area",
    groupOf: () => 0,
    bands: [],
    missing: null,
    impossible: false,
  },
};

/** Solves for whatever stock there is: a roll, fixed sheets, or a roll and sheets that cost nothing beside it. */
export function solveStock(question: StockQuestion): StockAnswer {
  const { kinds, groups, roll } = question;
  const fits = (kind: Kind) =>
    groups.some((group) => canHold(group, kind)) || (roll !== null && fitsRun(kind, roll.run));
  const placeable = kinds.map((kind) => kind.demand === 0 || fits(kind));
  if (placeable.includes(false)) {
    // The rest is still worked out, so that the maker sees how far the cloth goes.
    const some = kinds.map((kind, k) => (placeable[k] ? kind : { ...kind, demand: 0 }));
    const rest = solveStock({ ...question, kinds: some });
    const missing = kinds.map((kind, k) => (placeable[k] ? (rest.missing?.[k] ?? 0) : kind.demand));
    return { ...rest, impossible: true, missing };
  }
  const wanted = kinds.filter((kind) => kind.demand > 0);
  if (wanted.length === 0) return NOTHING_CUT;
  const inner = { ...question, kinds: wanted };
  const answer = roll === null ? sheetsOnly(inner) : withGiven(inner, availableOf(groups, wanted));
  return wanted.length === kinds.length ? answer : spreadOut(answer, kinds, wanted);
}

function sheetsOnly(question: StockQuestion): StockAnswer {
  const { sheets, attempt, lower, impossible } = solveSheets(question);
  const answer = { ...NOTHING_CUT, groupOf: (filling: Filling) => filling.sheet!.index };
  if (sheets !== null) return { ...answer, strips: sheets, lower, boundKind: "exhausted" };
  return { ...answer, strips: attempt.strips, boundKind: "dual", missing: attempt.left, impossible };
}

/** Sheets on the table at no further cost, then the roll; `counts` says how many of each group. */
export function rollWith(
  question: StockQuestion,
  counts: readonly number[],
  enough: number | null,
  ceiling: number | null,
): { answer: BandAnswer; groupOf(filling: Filling): number } {
  const { kinds, groups, roll, style, stacks, solver, clock } = question;
  const used = groups.flatMap((_, g) => (counts[g]! > 0 ? [g] : []));
  const given = used.map((g) => ({ sheet: groups[g]!, count: counts[g]! }));
  const inner: RollQuestion = {
    ...{ kinds, run: roll!.run, style, stacks, solver, clock, enough, ceiling, given },
  };
  const banded = kinds.some((kind) => kind.place !== "strips");
  const answer = banded ? solveBands(inner) : { ...solveRoll(inner), groups: [] };
  // The sheets given come first, the rests beside the band groups after them.
  const groupOf = (filling: Filling) => {
    const { index } = filling.sheet!;
    return index < used.length ? used[index]! : groups.length + index - used.length;
  };
  return { answer, groupOf };
}

function withGiven(question: StockQuestion, counts: readonly number[]): StockAnswer {
  const { target } = question;
  const { costPerLength, available } = question.roll!;
  const enough = target === null || costPerLength === 0 ? null : Math.floor(target / costPerLength);
  // A plan longer than the roll is of no use either.
  const most = enough === null || available === null ? (enough ?? available) : Math.min(enough, available);
  const { answer, groupOf } = rollWith(question, counts, enough, most);
  const { strips, boundKind, groups, lower } = answer;
  const impossible = lower === Infinity;
  if (!Number.isFinite(answer.length)) {
    const missing = question.kinds.map((kind) => kind.demand);
    return { ...NOTHING_CUT, boundKind, groupOf, missing, impossible };
  }
  const result: StockAnswer = {
    ...{ strips, lower: lower * costPerLength, boundKind, groupOf, bands: groups, missing: null, impossible },
  };
  return available === null || answer.length <= available ? result : cutShort(question, result, available);
}

/** Keeps the strips that fit the length there is; what the others held is missing. */
function cutShort(question: StockQuestion, answer: StockAnswer, available: number): StockAnswer {
  let room = available;
  const strips: StripCount[] = [];
  const missing = question.kinds.map((kind) => kind.demand);
  for (const { filling, count } of answer.strips) {
    const onRoll = filling.sheet === undefined;
    // Bands are given up whole, with the strips beside them.
    if (!onRoll && answer.groupOf(filling) >= question.groups.length) continue;
    const kept = onRoll ? Math.min(count, Math.floor(room / filling.height)) : count;
    if (kept === 0) continue;
    if (onRoll) room -= kept * filling.height;
    strips.push({ filling, count: kept });
    addCounts(missing, filling.counts, -kept);
  }
  const impossible = answer.lower > available * question.roll!.costPerLength;
  return { ...answer, strips, bands: [], lower: 0, missing, impossible };
}

/** Puts an answer about some of the kinds back into the numbering of all. */
function spreadOut(answer: StockAnswer, kinds: readonly Kind[], wanted: readonly Kind[]): StockAnswer {
  const indexOf = wanted.map((kind) => kinds.indexOf(kind));
  const all = (missing: Counts) => kinds.map((kind) => missing[wanted.indexOf(kind)] ?? 0);
  return {
    ...answer,
    bands: answer.bands.map((group) => named(group, indexOf)),
    strips: answer.strips.map(({ filling, count }) => ({
      filling: renumbered(filling, indexOf, kinds.length),
      count,
    })),
    missing: answer.missing === null ? null : all(answer.missing),
  };
}
