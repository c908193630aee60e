import type { Filling } from "../oracles/oracle.ts";
import { sheetFilling } from "../oracles/oracle-sheet.ts";
import { type Frames, renumbered, type StripCount } from "../problem/assemble.ts";
import { type Clock, share } from "../problem/clock.ts";
import type { Kind } from "../problem/reduce.ts";
import { mayHold, type RollAnswer } from "../problem/roll-question.ts";
import { solveRoll } from "./roll.ts";
import type { SheetsQuestion } from "./sheets.ts";

/** Plans for sheets of one kind, and a number of them that every plan on such sheets alone needs. */
export interface StripsOnSheets {
  plans: StripCount[][];
  least: number;
}

/** A way of cutting the sheet: strips so long, one below another in `room`. */
interface Way {
  kinds: readonly Kind[];
  run: number;
  room: number;
}

/**
 * The least length of strips, then the strips onto as few sheets as may be: a good way in where few sheets hold
 * much. Sheets whose strips all run one way hold no more length of strips than they are long, which bounds their
 * number.
 */
export function stripsOnSheets(question: SheetsQuestion, index: number, frames: Frames): StripsOnSheets {
  const { across, along, firstCut, available } = question.groups[index]!;
  if (firstCut === "none") return { plans: [], least: 0 };
  const ways: Way[] = [{ kinds: frames.upright, run: across, room: along }];
  if (firstCut === "either") ways.push({ kinds: frames.transposed, run: along, room: across });
  let least = 0;
  const plans = ways.flatMap((way, w) => {
    const found = leastStrips(question, way);
    if (found === null) return [];
    if (ways.length === 1) least = Math.max(Math.ceil(found.lower / way.room), leastByHalves(question, way));
    const sheets = found.strips === null ? null : ontoSheets(found.strips, way.room);
    if (sheets === null || sheets.length > (available ?? Infinity)) return [];
    const filled = (strips: Filling[]) =>
      sheetFilling(index, 1, { index, transposed: w > 0, strips }, way.kinds.length);
    return [sheets.map((strips) => ({ filling: filled(strips), count: 1 }))];
  });
  return { plans, least };
}

/** The least length of strips of these kinds, each lying as it may. */
function strips(
  { style, stacks, solver }: SheetsQuestion,
  kinds: readonly Kind[],
  run: number,
  clock: Clock,
) {
  return solveRoll({ style, stacks, solver, kinds, run, clock, enough: null, ceiling: null, given: [] });
}

/** Most heights tried as the line between what counts and what does not, and milliseconds for each. */
const LINES = 6;
const LINE_TIME = 500;

/**
 * A number of sheets that is needed because high strips do not share one: strips lower than a line count for
 * nothing, those that leave less than the line beside them for a whole sheet, the others for what they are (a dual
 * feasible function, Fekete and Schepers 2001). The least length of strips so counted bounds the sheets.
 */
function leastByHalves(question: SheetsQuestion, { kinds, run, room }: Way): number {
  const { style, clock } = question;
  // A stacked strip is as high as its stack, which no change to single heights can follow.
  if (style !== "strips-2") return 0;
  const heights = new Set(kinds.flatMap((kind) => kind.lies.map(({ height }) => height)));
  const lines = [...heights].filter((height) => 2 * height <= room).sort((a, b) => b - a);
  let least = 0;
  for (const line of lines.slice(0, LINES)) {
    if (clock.expired()) break;
    const counted = kinds.flatMap((kind) => {
      const lies = kind.lies.filter((lie) => mayHold({ across: run, along: room }, lie));
      if (lies.some(({ height }) => height < line)) return [];
      const whole = lies.map((lie) => (lie.height > room - line ? { ...lie, height: room } : lie));
      return [{ ...kind, lies: whole }];
    });
    const { lower } = strips(question, counted, run, share(clock, 0.5, LINE_TIME));
    least = Math.max(least, Math.ceil(lower / room));
  }
  return least;
}

/** More strips than this are no matter of trying. */
const MOST_STRIPS = 400;

/**
 * Strips of lies no higher than the sheet that hold everything, in the least length found (null when there are
 * too many to try), and the length proved to be needed.
 */
function leastStrips(
  question: SheetsQuestion,
  { kinds, run, room }: Way,
): { strips: Filling[] | null; lower: RollAnswer["lower"] } | null {
  /** Lies that fit: those left are numbered anew in the search. */
  const fits = kinds.map(({ lies }) =>
    lies.flatMap((lie, l) => (mayHold({ across: run, along: room }, lie) ? [l] : [])),
  );
  if (fits.some((lies) => lies.length === 0)) return null;
  const fitting = kinds.map((kind, k) => ({ ...kind, lies: fits[k]!.map((l) => kind.lies[l]!) }));
  const answer = strips(question, fitting, run, question.clock);
  if (!Number.isFinite(answer.length)) return null;
  const lieOf = (kind: number, lie: number): number => fits[kind]![lie]!;
  const all = answer.strips.flatMap(({ filling, count }) => {
    const named = renumbered(filling, [...kinds.keys()], kinds.length, { lieOf });
    return new Array<Filling>(Math.min(count, MOST_STRIPS + 1)).fill(named);
  });
  return { strips: all.length > MOST_STRIPS ? null : all, lower: answer.lower };
}

/**
 * Sheet after sheet: the highest strip left and those that together leave the least room beside it (minimum
 * bin slack, Gupta and Ho 1999). Null when a strip is higher than the sheet.
 */
function ontoSheets(all: readonly Filling[], room: number): Filling[][] | null {
  const left = all.slice().sort((a, b) => b.height - a.height);
  const sheets: Filling[][] = [];
  while (left.length > 0) {
    const first = left.shift()!;
    if (first.height > room) return null;
    const heights = left.map((strip) => strip.height);
    const chosen = fullest(heights, room - first.height);
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
