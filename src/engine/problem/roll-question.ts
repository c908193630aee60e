import type { StripOracle } from "../oracles/oracle.ts";
import { oracleForThree } from "../oracles/oracle-three.ts";
import { oracleForTwo } from "../oracles/oracle-two.ts";
import type { Solver } from "../solver/types.ts";
import type { CuttingStyle, PackingProblem, SheetStock, StackLimit } from "../types.ts";
import type { StripCount } from "./assemble.ts";
import type { Clock } from "./clock.ts";
import { sum } from "./counts.ts";
import { areaOf, fitsRun, type Kind } from "./reduce.ts";

/** How strips may be cut. */
export interface CuttingRules {
  style: CuttingStyle;
  /** In the same steps as the kinds. */
  stacks?: StackLimit | undefined;
}

/** The rules of a problem whose sizes are divided by a step. */
export function rulesOf({ style, stacks }: PackingProblem, step: number): CuttingRules {
  return { style, stacks: stacks === undefined ? undefined : dividedLimit(stacks, step, step) };
}

/** A limit in larger steps: what lies between two of them is beyond it. */
export function dividedLimit({ height, width }: StackLimit, upright: number, across: number): StackLimit {
  return { height: Math.floor(height / upright), width: Math.floor(width / across) };
}

/** The least length of strips of one run that holds every kind, and how far it is proved. */
export interface RollAnswer {
  strips: StripCount[];
  /** Infinity when no plan was found. */
  length: number;
  /** Infinity when there is none: proved. */
  lower: number;
  boundKind: "area" | "dual" | "exhausted";
}

export interface RollQuestion extends CuttingRules {
  kinds: readonly Kind[];
  run: number;
  solver: Solver;
  clock: Clock;
  /** Good enough: the search ends at a plan no longer than this; null to go on to the proof. */
  enough: number | null;
  /** The search ends once the bound is beyond this: such a plan would be of no use. */
  ceiling: number | null;
  /** Part of a larger problem: a quick answer is worth more than a proof. */
  small?: boolean;
  /** Sheets already on the table, to be used before the roll. */
  given: readonly GivenSheet[];
  /** Widths beside something on the roll, each so long: cut into strips at no further cost. Default: none. */
  rests?: readonly Rest[];
}

/** What matters of a sheet to the search. */
export type SheetSize = Pick<SheetStock, "across" | "along" | "firstCut">;

/** Sheets of one kind that may be used at no further cost. */
export interface GivenSheet {
  sheet: SheetSize;
  count: number;
}

/** The width that remains beside bands, and how long it is. */
export interface Rest {
  across: number;
  along: number;
  /** It may be made as long as one of these (ascending, all beyond `along`), which takes as much of the roll. */
  ends: readonly number[];
}

export function makeOracle(
  { style, stacks }: CuttingRules,
  kinds: readonly Kind[],
  run: number,
  longest: number,
): StripOracle {
  return style === "strips-2" ? oracleForTwo(kinds, run) : oracleForThree(kinds, run, longest, stacks);
}

/** Length taken from the roll by strips and by groups of bands; sheets take none. */
export function lengthOf(strips: readonly StripCount[], bands: readonly { along: number }[] = []): number {
  const onRoll = strips.filter(({ filling }) => filling.sheet === undefined);
  return sum(onRoll, ({ filling, count }) => filling.height * count) + sum(bands, ({ along }) => along);
}

/** Least length of a roll so wide, beside sheets and rests, that has the area of the kinds. */
export function areaBound({ kinds, run, given, rests = [] }: RollQuestion): number {
  const lent = sum(given, ({ sheet, count }) => sheet.across * sheet.along * count);
  const beside = sum(rests, ({ across, along }) => across * along);
  return Math.max(0, Math.ceil((areaOf(kinds) - lent - beside) / run));
}

/** Some lie of the kind fits the sheet, or a strip of the run. */
export function canHold(sheet: SheetSize, { lies, run, nested }: Kind): boolean {
  if (run !== undefined) return run.height <= sheet.along && fitsRun({ lies, run }, sheet.across);
  if (lies.some((lie) => mayHold(sheet, lie))) return true;
  // A rectangle is the same whichever way the strips run; a shape has lies of its own in strips that run along.
  if (nested === undefined || sheet.firstCut !== "either") return false;
  const turned = { across: sheet.along, along: sheet.across };
  return nested.otherLies.some((lie) => mayHold(turned, lie));
}

export function mayHold(
  sheet: Pick<SheetSize, "across" | "along">,
  { width, height }: { width: number; height: number },
): boolean {
  return width <= sheet.across && height <= sheet.along;
}

/** What strips of the roll may hold: an item that belongs in bands lies in none. */
export function asOnRoll(kind: Kind): Kind {
  return kind.place === "bands" ? { ...kind, lies: [] } : kind;
}
