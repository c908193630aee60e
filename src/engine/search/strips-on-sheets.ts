import type { Filling } from "../oracles/oracle.ts";
import { type Frames, renumbered, type StripCount } from "../problem/assemble.ts";
import { share } from "../problem/clock.ts";
import type { Kind } from "../problem/reduce.ts";
import { solveRoll } from "./roll.ts";
import type { SheetsQuestion } from "./sheets.ts";

/** Plans for sheets of one kind, and a number of them that every plan on such sheets alone needs. */
export interface StripsOnSheets {
  plans: StripCount[][];
  least: number;
}

/**
 * The least length of strips, then the strips onto as few sheets as may be: a good way in where few sheets hold
 * much. Sheets whose strips all run one way hold no more length of strips than they are long, which bounds their
 * number.
 */
export function stripsOnSheets(question: SheetsQuestion, index: number, frames: Frames): StripsOnSheets {
  const group = question.groups[index]!;
  if (group.firstCut === "none") return { plans: [], least: 0 };
  const ways = [{ kinds: frames.upright, run: group.across, room: group.along, transposed: false }];
  if (group.firstCut === "either")
    ways.push({ kinds: frames.transposed, run: group.along, room: group.across, transposed: true });
  let least = 0;
  const plans = ways.flatMap(({ kinds, run, room, transposed }) => {
    const found = leastStrips(question, kinds, run, room);
    if (found === null) return [];
    if (ways.length === 1)
      least = Math.max(Math.ceil(found.lower / room), leastByHalves(question, kinds, run, room));
    const sheets = found.strips === null ? null : ontoSheets(found.strips, room);
    if (sheets === null || sheets.length > (group.available ?? Infinity)) return [];
    return [sheets.map((list) => ({ filling: sheetOf(list, kinds.length, index, transposed), count: 1 }))];
  });
  return { plans, least };
}

/** Most heights tried as the line between what counts and what does not, and milliseconds for each. */
const LINES = 6;
const LINE_TIME = 500;

/**
 * A number of sheets that is needed because high strips do not share one: strips lower than a line count for
 * nothing, those that leave less than the line beside them for a whole sheet, the others for what they are (a dual
 * feasible function, Fekete and Schepers 2001). The least length of strips so counted bounds the sheets.
 */
function leastByHalves(question: SheetsQuestion, kinds: readonly Kind[], run: number, room: number): number {
  const { style, stacks, solver, clock } = question;
  // A stacked strip is as high as its stack, which no change to single heights can follow.
  if (style !== "strips-2") return 0;
  const heights = new Set(kinds.flatMap((kind) => kind.lies.map(({ height }) => height)));
  const lines = [...heights].filter((height) => 2 * height <= room).sort((a, b) => b - a);
  let least = 0;
  for (const line of lines.slice(0, LINES)) {
    if (clock.expired()) break;
    const counted = kinds.flatMap((kind) => {
      const lies = kind.lies.filter(({ width, height }) => width <= run && height <= room);
      if (lies.some(({ height }) => height < line)) return [];
      return [
        { ...kind, lies: lies.map((lie) => (lie.height > room - line ? { ...lie, height: room } : lie)) },
      ];
    });
    const answer = solveRoll({
      ...{ run, style, stacks, solver, enough: null, ceiling: null, given: [], report: () => {} },
      ...{ kinds: counted, clock: share(clock, 0.5, LINE_TIME) },
    });
    least = Math.max(least, Math.ceil(answer.lower / room));
  }
  return least;
}

/**
 * Strips of lies no higher than the sheet that hold everything, in the least length found (null when there are
 * too many to try), and the length proved to be needed.
 */
function leastStrips(
  question: SheetsQuestion,
  kinds: readonly Kind[],
  run: number,
  room: number,
): { strips: Filling[] | null; lower: number } | null {
  const fits = kinds.map((kind) => kind.lies.map(({ width, height }) => width <= run && height <= room));
  if (fits.some((lies) => !lies.includes(true))) return null;
  const { style, stacks, solver, clock } = question;
  const answer = solveRoll({
    ...{ run, style, stacks, solver, clock, enough: null, ceiling: null, given: [], report: () => {} },
    kinds: kinds.map((kind, k) => ({ ...kind, lies: kind.lies.filter((_, l) => fits[k]![l]) })),
  });
  if (!Number.isFinite(answer.length)) return null;
  /** Lies are numbered as they were before those that do not fit were left out. */
  const lieOf = (kind: number, lie: number): number =>
    fits[kind]!.flatMap((fit, l) => (fit ? [l] : []))[lie]!;
  const strips = answer.strips.flatMap(({ filling, count }) =>
    Array.from({ length: Math.min(count, MOST_STRIPS + 1) }, () =>
      renumbered(filling, [...kinds.keys()], kinds.length, { lieOf }),
    ),
  );
  return { strips: strips.length > MOST_STRIPS ? null : strips, lower: answer.lower };
}

/** More strips than this are no matter of trying. */
const MOST_STRIPS = 400;

/**
 * Sheet after sheet: the highest strip left and those that together leave the least room beside it (minimum
 * bin slack, Gupta and Ho 1999). Null when a strip is higher than the sheet.
 */
function ontoSheets(strips: readonly Filling[], room: number): Filling[][] | null {
  const left = strips.slice().sort((a, b) => b.height - a.height);
  const sheets: Filling[][] = [];
  while (left.length > 0) {
    const first = left.shift()!;
    if (first.height > room) return null;
    const chosen = fullest(
      left.map((strip) => strip.height),
      room - first.height,
    );
    sheets.push([first, ...chosen.map((i) => left[i]!)]);
    for (const i of chosen.slice().reverse()) left.splice(i, 1);
  }
  return sheets;
}

/** Which heights, by index ascending, come closest to the room without passing it (subset sum). */
function fullest(heights: readonly number[], room: number): number[] {
  let sums = new Map<number, number[]>([[0, []]]);
  heights.forEach((height, i) => {
    const grown = new Map(sums);
    for (const [sum, chosen] of sums)
      if (sum + height <= room && !grown.has(sum + height)) grown.set(sum + height, [...chosen, i]);
    sums = grown;
  });
  return sums.get(Math.max(...sums.keys()))!;
}

function sheetOf(strips: readonly Filling[], kinds: number, index: number, transposed: boolean): Filling {
  const counts = new Array<number>(kinds).fill(0);
  for (const strip of strips)
    strip.counts.forEach((copies, k) => {
      counts[k]! += copies;
    });
  return { level: index, height: 1, counts, segments: [], sheet: { index, transposed, strips: [...strips] } };
}
