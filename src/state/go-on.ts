import { planWith } from "../choices/plan-with.ts";
import { bagKey, forKits, letterPieces, waysOfJoining } from "../cutlist/index.ts";
import type { CutList, CutPiece } from "../cutlist/types.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { workFabricUnknown, workMeasureWrong, workOtherPlan } from "../diagnostics/work.ts";
import type { Ticks } from "../length/types.ts";
import {
  asJoined,
  assertSound,
  assumedFor,
  heldToLimit,
  type Listed,
  limitsFor,
  listAll,
  type PlanOptions,
  settle,
  sharedFor,
  USUAL_OPTIONS,
} from "../pipeline.ts";
import { type FixedPiece, listTemplates, type Solve } from "../plan/index.ts";
import type { FabricPlan, Plan } from "../plan/types.ts";
import {
  onBoltsOf,
  type Planned,
  readSpecFile,
  readWorkFile,
  type SaidOf,
  type Spec,
} from "../spec/index.ts";
import { beforeWashing, usableWidth } from "../stock/index.ts";
import { type Change, changeOf } from "./changes.ts";
import { clothInHand, restPiece } from "./cloth-in-hand.ts";
import { fingerprint } from "./fingerprint.ts";
import { keepRest } from "./keep-rest.ts";
import { planRest, type Search } from "./plan-rest.ts";
import { putBack } from "./put-back.ts";
import { type Cut, isRun, type StillWanted, stillWanted } from "./still-wanted.ts";
import { takeStock, type Work } from "./take-stock.ts";

/** A plan that was gone on with. */
export interface GoneOn {
  plan: Plan;
  /** What each entry of the work changed, in order. */
  changes: Change[];
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

/** The options that a plan was made with. */
export function optionsFor({ kits, style, prefer, thorough, width, cloth }: Planned): PlanOptions {
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
  return { ...USUAL_OPTIONS, kits, style, prefer, thorough, usable: width, toHand };
}

/**
 * From the text of a quilt's file and that of its work to the plan of what is left to do: what lies cut is used first,
 * then rests and cloth in hand, then what is left of the bolt, and only then more is bought. Without anything said it is
 * the plan of the file. Pure: the same texts give the same plan.
 * @param work text of the file of the work, and its name
 */
export async function goOn(
  text: string,
  fileName: string,
  work: { text: string; name: string },
  solve: Solve,
): Promise<Outcome<GoneOn>> {
  const read = readSpecFile(text, fileName);
  if (read.value === null) return { value: null, diagnostics: read.diagnostics };
  const file = readWorkFile(work.text, work.name, read.value.defaultUnit);
  if (file.value === null) return { value: null, diagnostics: file.diagnostics };
  const { planned, said } = file.value;
  const options = optionsFor(planned);
  const begun = await begin(read.value, options, planned.fatQuarters, solve);
  if (begun.value === null) return { value: null, diagnostics: [...read.diagnostics, ...begun.diagnostics] };
  let state = begun.value;
  const changes: Change[] = [];
  const told = [...read.diagnostics, ...begun.diagnostics];
  const spoken = new Set<string>();
  for (const entry of said) {
    const next = await step(state, entry, !spoken.has(entry.fabric), options, solve);
    told.push(...next.diagnostics);
    if (next.value === null) return { value: null, diagnostics: told };
    state = next.value.state;
    changes.push(...next.value.changes);
    spoken.add(entry.fabric);
  }
  if (said.length > 0) assertSound(state.plan);
  return { value: { plan: { ...state.plan, diagnostics: told }, changes }, diagnostics: told };
}

async function begin(
  spec: Spec,
  options: PlanOptions,
  fatQuarters: boolean,
  solve: Solve,
): Promise<Outcome<State>> {
  const planned = await planWith(spec, options, { stash: null, fatQuarters }, solve);
  const asked = options.usable === null ? spec : onBoltsOf(options.usable, spec);
  const listed = listAll(asked);
  if (planned.value === null || listed.value === null)
    return { value: null, diagnostics: planned.diagnostics };
  const { plan, fromFatQuarters } = planned.value;
  const offers = new Map(fromFatQuarters.map((name) => [name, offeredOf(plan, name, asked)]));
  const value = { spec: asked, listed: listed.value, plan, notBought: fromFatQuarters, offers };
  return { value, diagnostics: planned.diagnostics };
}

/** What a plan may buy ready cut of a fabric though its file names no such cloth. */
function offeredOf({ fabrics }: Plan, name: string, spec: Spec): FixedPiece[] {
  const said = spec.fabrics.find((fabric) => fabric.name === name)?.readyCut ?? [];
  const { stock = [] } = fabrics.find((fabric) => fabric.name === name) ?? {};
  return stock
    .filter((kind) => kind.from === "shop" && !said.some((cut) => kind.name === `bought ${cut.name}`))
    .map(({ name: called, across, along, available, price }) => {
      return { name: called, across, along, available, from: "shop", price };
    });
}

/** Goes on from one entry of the work. */
async function step(
  state: State,
  entry: SaidOf,
  first: boolean,
  options: PlanOptions,
  solve: Solve,
): Promise<Outcome<{ state: State; changes: Change[] }>> {
  const at = { path: entry.facts[0]?.path ?? "", at: entry.facts[0]?.at ?? null };
  const names = state.plan.fabrics.map(({ name }) => name);
  const own = state.plan.fabrics.find(({ name }) => name === entry.fabric);
  if (own === undefined) return { value: null, diagnostics: [workFabricUnknown(at, entry.fabric, names)] };
  if (fingerprint(own) !== entry.plan)
    return { value: null, diagnostics: [workOtherPlan(at, entry.fabric, first)] };
  const stock = takeStock(own, entry);
  if (stock.value === null) return { value: null, diagnostics: stock.diagnostics };
  const work = stock.value;
  if (work.width > own.width)
    return {
      value: null,
      diagnostics: [
        workMeasureWrong(
          at,
          "The usable width cannot be more than the width of the fabric with its selvages",
        ),
      ],
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
    const done = spoken ? work : takeStock(fabric, { ...entry, facts: [] }).value!;
    const bolt = state.notBought.includes(fabric.name) || !list.fabric.yardage ? "none" : "as-needed";
    const next = await nextFabric({
      ...{ fabric, list, work: done, bolt, options, search },
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

interface Next {
  fabric: FabricPlan;
  list: CutList;
  work: Work;
  bolt: "none" | "as-needed";
  /** Cloth ready cut that there is to buy besides what the file says. */
  offers: readonly FixedPiece[];
  options: PlanOptions;
  search: Search;
}

/** The plan of one fabric from what is there of it. */
async function nextFabric({
  fabric,
  list,
  work,
  bolt,
  offers,
  options,
  search,
}: Next): Promise<Outcome<{ fabric: FabricPlan; served: StillWanted["served"] }>> {
  const { ruler, keepFrom } = search.settings;
  const bought = [
    ...(fabric.done?.bought ?? []),
    ...(fabric.purchase === null ? [] : [fabric.purchase.text]),
  ];
  const standing = keepRest(fabric, work, bought, search.settings, options.kits);
  if (standing !== null) return { value: { fabric: standing, served: [] }, diagnostics: [] };
  const there = clothInHand(fabric, work, ruler);
  const pieces = settledWay(list, fabric, work.width, options.kits, search);
  const cut = fabric.pieces.flatMap((piece, i): Cut[] => {
    const count = work.bags[i] ?? 0;
    // A strip is as long as the fabric is wide, whatever was thought of that.
    return count === 0 ? [] : [{ piece: piece.fullWidth ? { ...piece, across: work.width } : piece, count }];
  });
  const { wanted, served, over } = stillWanted(pieces, cut);
  const still = wanted.flatMap((each) => (each.still === null ? [] : [asOneWay(each.still)]));
  const cloth = [
    ...over.map(({ rectangle, count }) => restPiece(rectangle, count, ruler)),
    ...there.cloth,
    ...offers,
  ];
  const planned = await planRest(list.fabric, still, { ...there, cloth }, bolt, work.width, search);
  if (planned.value === null) return { value: null, diagnostics: planned.diagnostics };
  const { rest, kept } = planned.value;
  const made = putBack({ rest, wanted, bought, kept, keepFrom, kits: options.kits });
  return { value: { fabric: made, served }, diagnostics: planned.diagnostics };
}

/** A long piece that is kept whole is not to be joined after all. */
function asOneWay(piece: CutPiece): CutPiece {
  return piece.cut === "either" && piece.joined === undefined && piece.join !== "no"
    ? { ...piece, join: "no" }
    : piece;
}

/** The list of a fabric with its long pieces made as they were, in the bags that there are. */
function settledWay(
  list: CutList,
  fabric: FabricPlan,
  usable: Ticks,
  kits: number,
  { settings }: Search,
): CutPiece[] {
  const ways = waysOfJoining(list, usable, settings.ruler).map(
    ({ cutList }) => forKits(cutList, kits).pieces,
  );
  const [only = [], another] = ways;
  if (another === undefined) return only;
  const keys = new Set(fabric.pieces.map(bagKey));
  const alike = (pieces: readonly CutPiece[]) => pieces.filter((piece) => keys.has(bagKey(piece))).length;
  const runs = (pieces: readonly CutPiece[]) => pieces.filter(isRun).length;
  const wanted = new Set(fabric.pieces.filter(isRun).map(({ joined }) => joined?.run)).size;
  const [best = only] = [...ways].sort(
    (a, b) => Math.abs(runs(a) - wanted) - Math.abs(runs(b) - wanted) || alike(b) - alike(a),
  );
  return letterPieces(best, 0, { bags: fabric.pieces, next: fabric.pieces.length + list.pieces.length });
}

/** The file on a fabric of another width, with the lists made again; bags keep their letters. */
function listAgain(
  { spec, listed }: State,
  name: string,
  width: Ticks,
): Outcome<{ spec: Spec; listed: Listed }> {
  const fabrics = spec.fabrics.map((fabric) =>
    fabric.name !== name ? fabric : { ...fabric, width: widthFor(fabric, width) },
  );
  const next = listed.cutLists.reduce((sum, { pieces }) => sum + pieces.length, 0);
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
    limits: limitsFor(cutLists, options),
    effort: sharedFor(options),
    solve: heldToLimit(solve, options),
  };
}
