import type { BandGroup } from "../bands/band-sections.ts";
import { solveBands } from "../bands/bands.ts";
import { type BandAnswer, named } from "../bands/plain-bands.ts";
import type { Filling } from "../oracles/oracle.ts";
import { renumbered, type StripCount } from "../problem/assemble.ts";
import type { Clock } from "../problem/clock.ts";
import { fitsRun, type Kind } from "../problem/reduce.ts";
import { type CuttingRules, canHold, type RollQuestion } from "../problem/roll-question.ts";
import type { SheetGroup } from "../problem/sheet-groups.ts";
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

/** Solves for whatever stock there is: a roll, fixed sheets, or a roll and sheets that cost nothing beside it. */
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
  return place(withGiven(inner, allOf(inner)));
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

/** Puts an answer about some of the kinds back into the numbering of all. */
function spreadOut(answer: StockAnswer, kinds: readonly Kind[], wanted: readonly Kind[]): StockAnswer {
  const indexOf = wanted.map((kind) => kinds.indexOf(kind));
  const missing =
    answer.missing === null
      ? null
      : kinds.map((kind) => {
          const at = wanted.indexOf(kind);
          return at < 0 ? 0 : answer.missing![at]!;
        });
  const bands = answer.bands.map((group) => named(group, indexOf));
  return {
    ...answer,
    bands,
    strips: answer.strips.map(({ filling, count }) => ({
      filling: renumbered(filling, indexOf, kinds.length),
      count,
    })),
    missing,
  };
}
