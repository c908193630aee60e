import { auditPlan } from "../audit/index.ts";
import { planWith } from "../choices/plan-with.ts";
import { letterAt } from "../cutlist/index.ts";
import type { CutList } from "../cutlist/types.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import {
  workFabricUnknown,
  workOtherPlan,
  workPlannedOtherwise,
  workSaidAgain,
  workWidthTooWide,
} from "../diagnostics/work.ts";
import { EIGHTH_INCH_RULER, QUARTER_CENTIMETRE_RULER } from "../length/index.ts";
import type { Ticks } from "../length/types.ts";
import type { Language } from "../length/writing.ts";
import {
  asJoined,
  assertSound,
  assumedFor,
  type Listed,
  listAll,
  type PlanOptions,
  searchWith,
  settle,
  USUAL_OPTIONS,
} from "../pipeline.ts";
import { type FixedPiece, listTemplates, type Search, type Solve } from "../plan/index.ts";
import type { FabricPlan, Plan } from "../plan/types.ts";
import { restate } from "../quilt/index.ts";
import {
  addEntry,
  onBoltsOf,
  type Planned,
  readSpecFile,
  readWorkFile,
  type SaidOf,
  type Spec,
  USUALLY_PLANNED,
} from "../spec/index.ts";
import { beforeWashing, boughtName, isFatQuarter, usableWidth } from "../stock/index.ts";
import { type Change, changeOf } from "./changes.ts";
import { fingerprint } from "./fingerprint.ts";
import { nextFabric } from "./next-fabric.ts";
import { readWords } from "./read-words.ts";
import { takeStock, type Work } from "./take-stock.ts";

/** A plan that was gone on with. */
export interface GoneOn {
  plan: Plan;
  /** What was changed by what is said now; by all that was said where nothing new is. */
  changes: Change[];
  /** The file of the work, with what is said now. */
  workText: string;
}

/** A plan on the way through what was said. */
interface State {
  spec: Spec;
  listed: Listed;
  plan: Plan;
  notBought: readonly string[];
  /** Cloth ready cut that is for sale besides what the file says, by fabric. */
  offers: ReadonlyMap<string, readonly FixedPiece[]>;
}

/** Seconds for each fabric from which a search was meant to be a thorough one. */
const LONG = 10;

/** The options that a plan was made with. */
function optionsFor({ kits, style, prefer, thorough, width, bolt, budget, cloth }: Planned): PlanOptions {
  const fabrics = [...new Set(cloth.map(({ fabric }) => fabric))];
  const toHand = fabrics.map((fabric) => ({
    fabric,
    pieces: cloth
      .filter((one) => one.fabric === fabric)
      .map(({ name, across, along, count }) => ({
        name,
        across,
        along,
        available: count,
        from: "stash" as const,
      })),
  }));
  // What is left is planned by counted work, so that the same words give the same plan.
  const long = thorough || (budget ?? 0) >= LONG;
  return { ...USUAL_OPTIONS, kits, style, prefer, thorough: long, usable: width, bolt, toHand };
}

/** What there is to go on from, and what is said of it now. */
export interface GoOnRequest {
  /** Text of the quilt's file, and its name. */
  quilt: { text: string; name: string; language?: Language };
  /** Text of the file of the work, and its name. */
  work: { text: string; name: string };
  /** What is said now: `ivory: cut to strip 6`. */
  words: readonly string[];
  /** What was said last is meant once more. */
  again: boolean;
  /** The plan that lies in the folder, where nothing has been said yet, and what the folder is called. */
  made: { plan: Plan; folder: string } | null;
  /**
   * The plan that the cutting began with, where it cannot be made again from the file since the clock ended its search.
   * Default: it is made from the file.
   */
  first?: { plan: Plan; folder: string } | null;
}

/**
 * From the text of a quilt's file and that of its work to the plan of what is left to do: what lies cut is used first,
 * then rests and cloth in hand, then what is left of the bolt, and only then more is bought. Without anything said it is
 * the plan of the file. Pure: the same texts give the same plan.
 */
export async function goOn(request: GoOnRequest, solve: Solve): Promise<Outcome<GoneOn>> {
  const { quilt, work, words, again, made, first = null } = request;
  const read = readSpecFile(quilt.text, quilt.name, null, quilt.language);
  if (read.value === null) return { value: null, diagnostics: read.diagnostics };
  const file = readWorkFile(work.text, work.name, read.value.defaultUnit);
  if (file.value === null) return { value: null, diagnostics: file.diagnostics };
  const { planned, said } = file.value;
  const names = read.value.fabrics.map(({ name }) => name);
  const now = readWords(words, names, read.value.defaultUnit);
  if (now.value === null) return { value: null, diagnostics: now.diagnostics };
  const options = optionsFor(planned);
  const begun = await begin(restated(read.value, planned), options, planned.fatQuarters, first, solve);
  if (begun.value === null) return { value: null, diagnostics: [...read.diagnostics, ...begun.diagnostics] };
  const otherwise = made === null ? null : plannedOtherwise(begun.value.plan, made);
  if (otherwise !== null) return { value: null, diagnostics: [otherwise] };
  const asked = JSON.stringify(planned) === JSON.stringify(USUALLY_PLANNED) ? {} : { asked: planned };
  let state = { ...begun.value, plan: { ...begun.value.plan, ...asked } };
  let text = work.text;
  const changes: Change[] = [];
  const told = [...read.diagnostics, ...begun.diagnostics];
  const spoken = new Set<string>();
  const entries = [...said, ...now.value.map((entry) => ({ ...entry, plan: null }))];
  for (const entry of entries) {
    if (entry.plan === null && !again && saidLast(said, entry)) {
      told.push(workSaidAgain(entry.fabric));
      continue;
    }
    const next = await step(state, entry, !spoken.has(entry.fabric), options, solve);
    if (next.value === null) return { value: null, diagnostics: [...told, ...next.diagnostics] };
    if (entry.plan === null) {
      const { fabric } = entry;
      const own = state.plan.fabrics.find(({ name }) => name === fabric)!;
      text = addEntry(text, { fabric, plan: fingerprint(own), facts: entry.facts.map((fact) => fact.text) });
    }
    told.push(...next.diagnostics);
    state = next.value.state;
    if (entry.plan === null || words.length === 0) changes.push(...next.value.changes);
    spoken.add(entry.fabric);
  }
  if (entries.length > 0) assertSound(state.plan);
  const plan = { ...state.plan, diagnostics: told };
  return { value: { plan, changes, workText: text }, diagnostics: told };
}

/** Whether the very same was said of the fabric last. */
function saidLast(said: readonly SaidOf[], { fabric, facts }: Pick<SaidOf, "fabric" | "facts">): boolean {
  const last = said.findLast((entry) => entry.fabric === fabric);
  const texts = (all: readonly { text: string }[]) => JSON.stringify(all.map(({ text }) => text));
  return last !== undefined && texts(last.facts) === texts(facts);
}

/** What is wrong where the plan that was cut from is not the one that the file and the options make. */
function plannedOtherwise(
  plan: Plan,
  { plan: made, folder }: NonNullable<GoOnRequest["made"]>,
): Diagnostic | null {
  const others = plan.fabrics.filter((fabric) => {
    const own = made.fabrics.find(({ name }) => name === fabric.name);
    return own === undefined || fingerprint(own) !== fingerprint(fabric);
  });
  if (others.length === 0 && made.fabrics.length === plan.fabrics.length) return null;
  return workPlannedOtherwise(
    folder,
    others.map(({ name }) => name),
  );
}

async function begin(
  spec: Spec,
  options: PlanOptions,
  fatQuarters: boolean,
  first: GoOnRequest["first"],
  solve: Solve,
): Promise<Outcome<State>> {
  const asked = onBoltsOf(options, spec);
  const listed = listAll(asked);
  if (first != null) return beginWith(first, asked, listed, fatQuarters);
  const planned = await planWith(spec, options, { stash: null, fatQuarters }, solve);
  if (planned.value === null || listed.value === null)
    return { value: null, diagnostics: planned.diagnostics };
  const { plan, fromFatQuarters } = planned.value;
  const offers = new Map(fromFatQuarters.map((name) => [name, offeredOf(plan, name, asked)]));
  const value = { spec: asked, listed: listed.value, plan, notBought: fromFatQuarters, offers };
  return { value, diagnostics: planned.diagnostics };
}

/** The same from a plan that was kept: it must be a right one, of this file. */
function beginWith(
  { plan, folder }: NonNullable<GoOnRequest["first"]>,
  spec: Spec,
  listed: Outcome<Listed>,
  fatQuarters: boolean,
): Outcome<State> {
  if (listed.value === null) return { value: null, diagnostics: listed.diagnostics };
  const others = listed.value.cutLists.filter(({ fabric, pieces }) => {
    const own = plan.fabrics.find(({ name }) => name === fabric.name);
    return pieces.some((piece) => {
      const cut = own?.pieces.find(({ letter }) => letter === piece.letter);
      // Of a pair that lies one way for the print's sake a piece is listed turned.
      const sides = ({ across, along }: Pick<typeof piece, "across" | "along">) =>
        `${Math.min(across, along)} ${Math.max(across, along)}`;
      const same = cut !== undefined && sides(cut) === sides(piece);
      // What is joined from strips has other letters once its strips are settled.
      return piece.joined === undefined && piece.join === "no" && !same;
    });
  });
  if (others.length > 0 || auditPlan(plan).length > 0)
    return {
      value: null,
      diagnostics: [
        workPlannedOtherwise(
          folder,
          others.map(({ fabric }) => fabric.name),
        ),
      ],
    };
  const bought = plan.fabrics.filter(({ stock = [] }) =>
    stock.some(({ from, name }) => from === "shop" && isFatQuarter(name)),
  );
  const notBought = fatQuarters ? bought.map(({ name }) => name) : [];
  const offers = new Map(notBought.map((name) => [name, offeredOf(plan, name, spec)]));
  return { value: { spec, listed: listed.value, plan, notBought, offers }, diagnostics: [] };
}

/** The quilt for the ruler that it was planned for. */
function restated(spec: Spec, { ruler }: Planned): Spec {
  if (ruler === null || spec.kind !== "quilt") return spec;
  const { decimal } = spec.ruler;
  const marks = ruler === "in" ? EIGHTH_INCH_RULER : QUARTER_CENTIMETRE_RULER;
  return restate(spec, decimal === undefined ? marks : { ...marks, decimal }).spec;
}

/** What a plan may buy ready cut of a fabric though its file names no such cloth. */
function offeredOf({ fabrics }: Plan, name: string, spec: Spec): FixedPiece[] {
  const said = spec.fabrics.find((fabric) => fabric.name === name)?.readyCut ?? [];
  const { stock = [] } = fabrics.find((fabric) => fabric.name === name) ?? {};
  return stock
    .filter((kind) => kind.from === "shop" && !said.some((cut) => kind.name === boughtName(cut.name)))
    .map(({ name: called, across, along, available, price }) => {
      return { name: called, across, along, available, from: "shop", price };
    });
}

/** Goes on from one entry of the work. */
async function step(
  state: State,
  entry: Omit<SaidOf, "plan"> & { plan: string | null },
  first: boolean,
  options: PlanOptions,
  solve: Solve,
): Promise<Outcome<{ state: State; changes: Change[] }>> {
  const at = { path: entry.facts[0]?.path ?? "", at: entry.facts[0]?.at ?? null };
  const names = state.plan.fabrics.map(({ name }) => name);
  const own = state.plan.fabrics.find(({ name }) => name === entry.fabric);
  if (own === undefined) return { value: null, diagnostics: [workFabricUnknown(at, entry.fabric, names)] };
  if (entry.plan !== null && fingerprint(own) !== entry.plan)
    return { value: null, diagnostics: [workOtherPlan(at, entry.fabric, first)] };
  const stock = takeStock(own, entry);
  if (stock.value === null) return { value: null, diagnostics: stock.diagnostics };
  const work = withinReach(own, stock.value);
  if (work.width > own.width)
    return {
      value: null,
      diagnostics: [workWidthTooWide(at)],
    };
  const relisted = work.width === own.usable ? null : listAgain(state, own.name, work.width);
  if (relisted !== null && relisted.value === null) return { value: null, diagnostics: relisted.diagnostics };
  const { spec, listed } = relisted?.value ?? state;
  const search = searchFor(spec, listed, options, solve);
  const fabrics = [...state.plan.fabrics];
  const changes: Change[] = [];
  const told: Diagnostic[] = [];
  for (const [index, fabric] of fabrics.entries()) {
    const list = listed.cutLists.find((one) => one.fabric.name === fabric.name);
    const before = state.listed.cutLists.find((one) => one.fabric.name === fabric.name);
    const spoken = fabric === own;
    // A narrower fabric may ask more of another, as where strips of both are sewn together.
    if (list === undefined || (!spoken && sameList(list, before))) continue;
    const done = spoken ? work : takeStock(fabric, { facts: [] }).value!;
    const bolt = state.notBought.includes(fabric.name) || !list.fabric.yardage ? "none" : "as-needed";
    const next = await nextFabric({
      ...{ fabric, list, work: done, bolt, options, search, taken: lettersTaken(state.plan) },
      offers: state.offers.get(fabric.name) ?? [],
    });
    told.push(...next.diagnostics);
    if (next.value === null) return { value: null, diagnostics: told };
    fabrics[index] = next.value.fabric;
    changes.push(changeOf(fabric, next.value.fabric, done, next.value.served));
  }
  const templates = listTemplates(fabrics);
  const { templates: _, ...rest } = state.plan;
  const facts = entry.facts.map(({ text }) => text);
  const { making: sewn, top } = listed;
  const plan: Plan = {
    ...rest,
    fabrics,
    assumptions: settle({ ...spec, assumptions: assumedFor(spec, sewn) }, options).assumptions,
    ...(templates.length === 0 ? {} : { templates }),
    top,
    said: [...(state.plan.said ?? []), { fabric: entry.fabric, facts }],
  };
  const value = sewn === null ? plan : { ...plan, making: asJoined(sewn, plan) };
  return { value: { state: { ...state, spec, listed, plan: value }, changes }, diagnostics: told };
}

/**
 * Strips that are as long as the fabric is wide lie cut already: on wider cloth the rest is cut as wide as they are, so
 * that all of a bag are of one length.
 */
function withinReach({ pieces, usable, done }: FabricPlan, work: Work): Work {
  const lying = pieces.some(({ fullWidth }, i) => fullWidth && (done?.cut[i] ?? 0) > 0);
  return lying && work.width > usable ? { ...work, width: usable, wider: work.width } : work;
}

/** How many letters the bags of a plan have taken, run of strips and all. */
function lettersTaken({ fabrics }: Plan): number {
  const used = new Set(
    fabrics.flatMap(({ pieces }) => pieces.map(({ letter }) => letter.replace(/\d+$/, ""))),
  );
  let taken = 0;
  for (let index = 0, left = used.size; left > 0; index++) {
    if (!used.has(letterAt(index))) continue;
    taken = index + 1;
    left -= 1;
  }
  return taken;
}

/** The file on a fabric of another width, with the lists made again; bags keep their letters. */
function listAgain(
  { spec, listed, plan }: State,
  name: string,
  width: Ticks,
): Outcome<{ spec: Spec; listed: Listed }> {
  const fabrics = spec.fabrics.map((fabric) =>
    fabric.name !== name ? fabric : { ...fabric, width: widthFor(fabric, width) },
  );
  const next = lettersTaken(plan);
  const known = new Map(
    spec.fabrics.map((fabric) => {
      const list = listed.cutLists.find((one) => one.fabric.name === fabric.name);
      return [fabric.name, { bags: list?.pieces ?? [], next }];
    }),
  );
  const changed = { ...spec, fabrics };
  const again = listAll(changed, known);
  if (again.value === null) return { value: null, diagnostics: again.diagnostics };
  return { value: { spec: changed, listed: again.value }, diagnostics: [] };
}

/** The width of a fabric that is so wide at the mat. */
function widthFor(fabric: Spec["fabrics"][number], usable: Ticks): Ticks {
  const width = beforeWashing(usable, fabric.shrinkAcross) + 2 * fabric.selvage;
  const over = usableWidth({ ...fabric, width }) - usable;
  return over > 0 ? width - over : width;
}

function sameList(a: CutList, b: CutList | undefined): boolean {
  return JSON.stringify(a.pieces) === JSON.stringify(b?.pieces);
}

function searchFor(spec: Spec, { cutLists }: Listed, options: PlanOptions, solve: Solve): Search {
  return {
    settings: { ...settle(spec, options), assumptions: [] },
    ...searchWith(cutLists, options, solve),
  };
}
