import { auditPlan, auditPlanSewing } from "./audit/index.ts";
import { type LettersOfFabric, listCuts, listQuiltCuts, recordUnits } from "./cutlist/index.ts";
import type { CutList } from "./cutlist/types.ts";
import type { Diagnostic, Outcome } from "./diagnostics/index.ts";
import type { SearchLimits } from "./engine/types.ts";
import type { Ticks } from "./length/types.ts";
import type { Language } from "./length/writing.ts";
import { type Making, planMaking } from "./making/index.ts";
import {
  type FixedPiece,
  type PlanSettings,
  planCutLists,
  type SharedEffort,
  type Solve,
  withinWork,
} from "./plan/index.ts";
import type { PlanRequest } from "./plan/request.ts";
import type { Plan } from "./plan/types.ts";
import { layOutQuilt, type QuiltTop } from "./quilt/index.ts";
import { onBoltsOf, readSpecFile } from "./spec/index.ts";
import type { Spec } from "./spec/spec.ts";

/** What may be asked beside the file; null where the file, or the usual, decides. */
export interface PlanOptions {
  style: Plan["style"] | null;
  prefer: Plan["prefer"] | null;
  /** Search until all is proved, or for a good while. */
  thorough: boolean;
  /** Most milliseconds by the clock to search for one fabric; what comes out then depends on the machine. */
  budget: number | null;
  /** Most counted work for one fabric, the same on every machine; of no account beside a `budget`. */
  effort: number | null;
  /** How fabrics share the work of the first search; absent for the usual way, or none beside the limits above. */
  shared?: SharedEffort | null;
  /** How many times everything is cut, all together: kits for a class. */
  kits: number;
  /** Usable width to try on every fabric of a usual width; null: as the file says. */
  usable: Ticks | null;
  /** Where every bolt is taken to end; null or absent: as the file says. */
  bolt?: Ticks | null;
  /** Cloth used before any is bought, by fabric. */
  toHand: readonly ClothFor[];
  /** Fabrics of which nothing may be bought. */
  notBought: readonly string[];
  /** Where neither file nor options name a style: say what the freer one would save. */
  suggestStacks?: boolean;
  /** What lengths are written in; absent where the file decides. */
  language?: Language;
}

/** Cloth there is of one fabric. */
interface ClothFor {
  fabric: string;
  pieces: readonly FixedPiece[];
}

export const USUAL_OPTIONS: PlanOptions = {
  style: null,
  prefer: null,
  thorough: false,
  budget: null,
  effort: null,
  kits: 1,
  usable: null,
  toHand: [],
  notBought: [],
};

/**
 * Counted milliseconds: for a plan in all, for the first search of all its fabrics and each of its rounds, the least and
 * most for one fabric where it is limited by itself.
 */
const SEARCH = {
  ...{ inAll: 3000, together: 2400, rounds: [75, 300, 1200] },
  ...{ least: 300, most: 1200, thorough: 30_000 },
} as const;

/** Milliseconds by the clock after which even counted work ends: only on a machine many times slower than usual. */
const GUARD = { least: 5000, times: 5 } as const;

/**
 * From the text of a file to a plan: the whole way, phase by phase. Without a value the file has errors or
 * cannot be cut, and the diagnostics say where and what would help.
 * @throws Error when the plan does not pass the audit. That is our fault, and such a plan is never given out.
 */
export async function planQuilt(
  text: string,
  fileName: string,
  options: PlanOptions,
  solve: Solve,
): Promise<Outcome<Plan>> {
  const read = readSpecFile(text, fileName, null, options.language);
  if (read.value === null) return { value: null, diagnostics: read.diagnostics };
  const planned = await planSpec(read.value, options, solve);
  const diagnostics = [...read.diagnostics, ...planned.diagnostics];
  if (planned.value === null) return { value: null, diagnostics };
  return { value: { ...planned.value, diagnostics }, diagnostics };
}

/** The same from a spec that is already in hand. */
export async function planSpec(spec: Spec, options: PlanOptions, solve: Solve): Promise<Outcome<Plan>> {
  const asked = onBoltsOf(options, spec);
  const { value, diagnostics } = listAll(asked);
  return value === null ? { value, diagnostics } : planListed(asked, value, diagnostics, options, solve);
}

/**
 * The same from cut lists in hand. Each fabric is planned for itself: lists of some of them are planned just as
 * among all, when `options.effort` says how hard to search.
 */
export async function planListed(
  asked: Spec,
  listed: Listed,
  diagnostics: readonly Diagnostic[],
  options: PlanOptions,
  solve: Solve,
): Promise<Outcome<Plan>> {
  const planned = await planCutting(asked, listed, diagnostics, options, solve);
  if (planned.value === null) return planned;
  const { making } = listed;
  const value =
    making === null ? planned.value : { ...planned.value, making: asJoined(making, planned.value) };
  assertSound(value);
  return { ...planned, value };
}

/**
 * The cutting alone, for amounts that are wanted at once: nothing is said of the sewing, and no audit has passed it, so
 * that nothing may be cut by it. `planListed` makes the same cutting and audits it.
 */
export async function planCutting(
  asked: Spec,
  { cutLists, top, making }: Listed,
  diagnostics: readonly Diagnostic[],
  options: PlanOptions,
  solve: Solve,
): Promise<Outcome<Plan>> {
  return planCutLists({
    spec: { ...settle(asked, options), assumptions: assumedFor(asked, making) },
    cutLists,
    ...clothFor(cutLists, options),
    kits: options.kits,
    top,
    ...searchWith(cutLists, options, solve),
    diagnostics,
    suggestStacks: options.suggestStacks === true && options.style === null && asked.styleOpen === true,
  });
}

/** The cloth that cut lists may be cut from: what is to hand, and whether more may be bought. */
export function clothFor(
  cutLists: readonly CutList[],
  { toHand, notBought }: PlanOptions,
): Pick<PlanRequest, "fixedStock" | "bolt"> {
  return {
    fixedStock: cutLists.map(({ fabric }) => toHand.find((one) => one.fabric === fabric.name)?.pieces ?? []),
    bolt: cutLists.map(({ fabric }) => (notBought.includes(fabric.name) ? "none" : "as-needed")),
  };
}

/** How hard cut lists are searched, how they share the work, and the solver held to both. */
export function searchWith(cutLists: readonly CutList[], options: PlanOptions, solve: Solve) {
  return {
    limits: limitsFor(cutLists, options),
    effort: options.shared === undefined ? sharedFor(options) : options.shared,
    solve: heldToLimit(solve, options),
  };
}

/** What is wrong with a file, without planning it. */
export function checkQuilt(
  text: string,
  fileName: string,
  language: Language | null = null,
): Outcome<CutList[]> {
  const read = readSpecFile(text, fileName, null, language);
  if (read.value === null) return { value: null, diagnostics: read.diagnostics };
  const listed = listAll(read.value);
  return { value: listed.value?.cutLists ?? null, diagnostics: [...read.diagnostics, ...listed.diagnostics] };
}

export interface Listed {
  cutLists: CutList[];
  /** Null when there is no design, only a cut list. */
  top: QuiltTop | null;
  /** How the pieces are sewn together; null likewise. */
  making: Making | null;
}

/** What is to be cut, with the sewing still to be worked out: amounts need none of it. */
export interface Cutting extends Listed {
  making: null;
  sewn(): Listed;
}

/**
 * What `listCutting` finds, and how the pieces are sewn together.
 * @param known letters that bags have already, by fabric
 */
export function listAll(
  spec: Spec,
  known: ReadonlyMap<string, LettersOfFabric> | null = null,
): Outcome<Listed> {
  const { value, diagnostics } = listCutting(spec, known);
  return { value: value === null ? null : value.sewn(), diagnostics };
}

/**
 * The cut lists of either kind of file.
 * @param known letters that bags have already, by fabric
 */
export function listCutting(
  spec: Spec,
  known: ReadonlyMap<string, LettersOfFabric> | null = null,
): Outcome<Cutting> {
  if (spec.kind === "cut-list") {
    const { value, diagnostics } = listCuts(spec, known);
    if (value === null) return { value, diagnostics };
    const listed = { cutLists: value, top: null, making: null };
    return { value: { ...listed, sewn: () => listed }, diagnostics };
  }
  const { value: laid, diagnostics: found } = layOutQuilt(spec);
  if (laid === null) return { value: null, diagnostics: found };
  const { top, work } = laid;
  const { value, diagnostics } = listQuiltCuts(spec, work, known);
  const all = [...found, ...diagnostics];
  if (value === null) return { value, diagnostics: all };
  const { cutLists } = value;
  const sewn = () => ({ cutLists, top, making: planMaking(laid, recordUnits(value, spec), spec) });
  return { value: { cutLists, top, making: null, sewn }, diagnostics: all };
}

/** The binding is told with the strips that the plan joins it from: ends of strips may serve as well. */
export function asJoined(making: Making, { fabrics, kits = 1 }: Plan): Making {
  const { binding } = making.finishing;
  if (binding === null || kits > 1) return making;
  const pieces = fabrics.find(({ name }) => name === binding.fabric)?.pieces ?? [];
  const own = pieces.filter(({ joined }) => joined !== undefined && joined.whole !== null);
  if (own.length === 0) return making;
  const count = own.reduce((sum, piece) => sum + piece.count, 0);
  return { ...making, finishing: { ...making.finishing, binding: { ...binding, count } } };
}

/** What a plan needs to know of the file, as the options decide it. */
export function settle(spec: Spec, { style, prefer, kits }: PlanOptions): PlanSettings {
  const name = kits === 1 ? spec.name : `${kits} × ${spec.name}`;
  const { ruler, rulerLength, matLength, folded, keepFrom, joinFrom, assumptions } = spec;
  const chosen = { style: style ?? spec.style, prefer: prefer ?? spec.prefer };
  const mat = matLength === undefined ? {} : { matLength };
  return { name, ruler, ...chosen, rulerLength, ...mat, folded, keepFrom, joinFrom, assumptions };
}

/** What was assumed, the room to square strip sets among it where there are any. */
export function assumedFor(spec: Spec, making: Making | null): Spec["assumptions"] {
  const squared = making?.units.some(({ stripSets }) => stripSets.some(({ straighten }) => straighten > 0));
  if (spec.kind === "cut-list" || spec.straightenSets.told || squared !== true) return spec.assumptions;
  return [...spec.assumptions, { fabric: "", of: { is: "set-squaring", off: spec.straightenSets.off } }];
}

/**
 * Work is counted, so that a plan does not depend on the machine; the clock only ends what goes on far too long,
 * unless a time is asked for.
 */
function limitsFor(cutLists: readonly CutList[], options: PlanOptions): SearchLimits {
  if (options.budget !== null) return { budget: options.budget };
  const effort = effortFor(cutLists, options);
  const guarded = shares(options) || options.shared ? SEARCH.most : effort;
  return { effort, budget: GUARD.least + GUARD.times * guarded };
}

type Limiting = Pick<PlanOptions, "budget" | "effort" | "thorough">;

/** The usual search: what easy fabrics do not need goes to the others. */
function shares({ budget, effort, thorough }: Limiting): boolean {
  return budget === null && effort === null && !thorough;
}

/** How fabrics share the work; null where limits are given that hold for each. */
export function sharedFor(options: Limiting): SharedEffort | null {
  const { rounds, together } = SEARCH;
  return shares(options) ? { rounds, together } : null;
}

/** The solver, held to the work that a command may do in all unless something else is asked for. */
export function heldToLimit(solve: Solve, options: Limiting): Solve {
  return shares(options) ? withinWork(solve, SEARCH.inAll) : solve;
}

/** Many fabrics share the work, so that a whole quilt is planned while the maker waits. */
export function effortFor(cutLists: readonly CutList[], { thorough, effort }: PlanOptions): number {
  if (effort !== null) return effort;
  if (thorough) return SEARCH.thorough;
  return Math.min(SEARCH.most, Math.max(SEARCH.least, Math.floor(SEARCH.together / cutLists.length)));
}

/**
 * The sewing alone of a plan whose pieces are cut as part of another.
 * @throws Error when the quilt does not come out as designed: our fault.
 */
export function assertSewn(plan: Plan): void {
  const faults = auditPlanSewing(plan);
  if (faults.length > 0) throw new Error(`the plan does not pass its audit: ${faults.join("; ")}`);
}

/** @throws Error when the plan does not pass the audit: our fault. */
export function assertSound(plan: Plan): void {
  const faults = auditPlan(plan);
  if (faults.length > 0) throw new Error(`the plan does not pass its audit: ${faults.join("; ")}`);
}
