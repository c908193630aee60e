import type { CutList } from "../cutlist/types.ts";
import { searchCutShort } from "../diagnostics/planning.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { hasPlan, ruleOfThumb, verify } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits, StackLimit } from "../engine/types.ts";
import { nth } from "../length/nth.ts";
import type { FabricSpec } from "../spec/types.ts";
import { usableWidth } from "../stock/index.ts";
import { assembleFabric } from "./assemble-fabric.ts";
import { cheapestMix, mixOfPieces } from "./cheapest-mix.ts";
import type { Chosen, Fabric } from "./choose-cut-lists.ts";
import { countMissing } from "./count-missing.ts";
import { findNarrowest, type Trial } from "./find-narrowest.ts";
import { fixedStockOf, gatherFixed, squareUpOf } from "./fixed-pieces.ts";
import { stackLimit } from "./lays/flag-steps.ts";
import { listTemplates } from "./lays/list-templates.ts";
import { tryStackedCuts } from "./lays/stacked-cuts.ts";
import { leastByArea } from "./least-by-area.ts";
import { chooseFromHand, type LengthInHand, ontoLength } from "./length-in-hand.ts";
import { fromOneGrain, type Packed, splitPairs } from "./one-grain.ts";
import { easeJoins, easeWork } from "./packing/ease-work.ts";
import { tooLongForBolt } from "./packing/onto-bolts.ts";
import { lessToBuy, withinBolts } from "./packing/within-bolts.ts";
import { type FixedPiece, posePackingProblem } from "./pose-problem.ts";
import type { Bolt, PlanRequest, PlanSettings, Search, Solve } from "./request.ts";
import { settleRuns } from "./settle-runs.ts";
import { kitShares, splitKits } from "./split-kits.ts";
import { boltsAssumed, ofAccount, tellMissing, tellTooLong, tellUnproven } from "./telling/tell-fabrics.ts";
import { type FabricPlan, type Mix, PLAN_VERSION, type Plan } from "./types.ts";
import { useInOrder } from "./use-in-order.ts";

/** More cloths of one kind than are ever cut into for one fabric. */
const MOST_CLOTHS = 9999;

/**
 * Plans the cutting of every fabric: the least to buy, then within that purchase the least work, then the
 * cuts in order with all that is known of them. No value when a fabric cannot be cut from the cloth there
 * is; each such fabric is told of.
 * @throws Error when the engine's answer is not an answer to what it was asked: our fault.
 */
export async function planCutLists(request: PlanRequest): Promise<Outcome<Plan>> {
  const { spec, cutLists, kits = 1, limits = {}, effort = null, solve, inHand = [] } = request;
  const search: Search = { settings: spec, limits, effort, solve };
  const fabrics = offeredFor(request);
  const begun = await weighFromHand(fabrics, inHand, kits, search);
  const told = [...(request.diagnostics ?? []), ...begun.chosen.flatMap((one) => one.diagnostics)];
  const short = begun.chosen.filter(({ result }) => !hasPlan(result));
  if (short.length > 0) return { value: null, diagnostics: [...told, ...(await missingIn(short, search))] };

  const free = await packToTheEnd(begun, search);
  const beyond = free.filter(({ chosen, eased }) => tooLongForBolt(chosen.cutList.fabric, eased));
  if (beyond.length > 0) {
    const tooLong = beyond.map(({ chosen }) => tellTooLong(chosen, spec));
    return { value: null, diagnostics: [...told, ...tooLong] };
  }
  const lists = request.sorts === undefined ? cutLists : free.map(({ chosen }) => chosen.cutList);
  const settled = request.sorts === undefined ? {} : { sorts: [] };
  const packed = await fromOneGrain(free, lists, async (asked) => {
    const own = asked.map(({ fabric, cutList }) => ({ ...nth(fabrics, fabric), cutList, ...settled }));
    const there = asked.map(({ fabric }) => inHand[fabric] ?? null);
    return packToTheEnd(await weighFromHand(own, there, kits, search), search);
  });
  const plans = await assembleAll(packed, kits, search);
  told.push(...plans.flatMap((plan, i) => tellUnproven(plan, nth(packed, i).chosen, spec)));
  const hasty = plans
    .filter((_, i) => nth(packed, i).eased.stats.cutShort === "clock")
    .map(({ name }) => name);
  if (hasty.length > 0) told.push(searchCutShort(hasty));
  const narrowest = await tryNarrower(packed, plans, search);
  const suggest =
    request.suggestStacks === true && begun.mixes.every((mix) => mix === null) && inHand.length === 0;
  const stacked = suggest && kits === 1 ? await stacksSuggested(packed, plans, search) : [];
  const completed = plans.map((plan, i) => ({
    ...plan,
    sturdiness: { ...plan.sturdiness, narrowestUsable: narrowest[i] ?? null },
    ...(stacked[i] == null ? {} : { stacked: stacked[i] }),
  }));
  return { value: planOf(request, completed, packed, told), diagnostics: told };
}

/** The fabrics with what each may be cut from, in the order of the cut lists. */
function offeredFor({
  cutLists,
  sorts,
  fixedStock = [],
  bolt = "as-needed",
  kits = 1,
}: PlanRequest): Offered[] {
  const boltOf = (index: number): Bolt => (typeof bolt === "string" ? bolt : (bolt[index] ?? "as-needed"));
  return cutLists.map((cutList, index) => {
    const own = sorts?.[index];
    const offered = withFixedStock(cutList, boltOf(index), fixedStock[index] ?? [], kits);
    return own === undefined ? offered : { ...offered, sorts: own };
  });
}

/** What is said of fabrics that cannot be cut from the cloth there is. */
async function missingIn(
  short: readonly Chosen[],
  { settings, limits, solve }: Search,
): Promise<Diagnostic[]> {
  const wanting = await countMissing(short, limits, solve);
  const stacked = await tryStacked(short, stackLimit(settings), limits, solve);
  return short.flatMap((one, i) => tellMissing(one, wanting[i] ?? null, stacked[i] ?? false, settings));
}

/** Each fabric as it is cut; for a class by kits, where that buys no more. */
async function assembleAll(packed: readonly Packed[], kits: number, search: Search): Promise<FabricPlan[]> {
  const { settings, limits, solve } = search;
  const splits = kits === 1 ? [] : await splitKits(packed, kits, settings, limits, solve);
  return packed.map(({ chosen, eased, mix }, i) => {
    const shared = splits[i] ?? null;
    const dearer = shared !== null && lessToBuy(chosen, shared.result, eased) !== shared.result;
    const unfit = shared === null || dearer || splitPairs(chosen.cutList, shared.result).length > 0;
    const split = unfit ? null : shared;
    if (split !== null) assertRight(chosen.problem, split.result);
    const known = { thumb: ruleOfThumb(chosen.problem), mix };
    const made = assembleFabric(chosen, split?.result ?? eased, known, settings, kits);
    return split === null ? made : { ...made, kitShares: kitShares(made.lays, split, chosen, settings) };
  });
}

/** What strips cut once more along their length would save, by fabric; not told of what comes from several bolts. */
async function stacksSuggested(
  packed: readonly Packed[],
  plans: readonly FabricPlan[],
  { settings, limits, solve }: Search,
): Promise<(FabricPlan["stacked"] | null)[]> {
  const asked = packed.map(({ chosen, eased }) => ({ chosen, result: eased }));
  const found = await tryStackedCuts(asked, stackLimit(settings), limits, solve);
  return plans.map(({ purchase }, i) => (purchase?.lengths === undefined ? found[i] : null));
}

/** The plan that is handed out: the maker's settings, the fabrics, and what there was to say. */
function planOf(
  { spec, kits = 1, top = null }: PlanRequest,
  fabrics: FabricPlan[],
  packed: readonly Packed[],
  diagnostics: Diagnostic[],
): Plan {
  const chosen = packed.map((one) => one.chosen);
  const templates = listTemplates(fabrics);
  return {
    format: "crossgrain plan",
    version: PLAN_VERSION,
    ticksPerMillimetre: 640,
    name: spec.name,
    ruler: spec.ruler,
    style: spec.style,
    prefer: spec.prefer,
    rulerLength: spec.rulerLength,
    ...(spec.style === "strips-2" || spec.matLength === undefined ? {} : { matLength: spec.matLength }),
    folded: spec.folded,
    keepFrom: spec.keepFrom,
    assumptions: [...ofAccount(spec.assumptions, fabrics), ...boltsAssumed(fabrics, chosen)],
    fabrics,
    ...(kits === 1 ? {} : { kits }),
    top,
    ...(templates.length === 0 ? {} : { templates }),
    diagnostics,
  };
}

function asInHand(piece: FixedPiece, fabric: FabricSpec): FixedPiece {
  const lost = fabric.squareUp ?? 0;
  // The drawer's table holds usable sizes.
  if (lost === 0 || piece.strip === true || piece.from === "stash" || piece.squareUp !== undefined)
    return piece;
  return { ...piece, squareUp: squareUpOf(piece.across >= usableWidth(fabric), lost) };
}

type Offered = Fabric & { offers: FixedPiece[] };

/** Everything a fabric may be cut from: what its file says and what is asked beside it. */
function withFixedStock(cutList: CutList, asked: Bolt, beside: readonly FixedPiece[], kits: number): Offered {
  const { fabric, pieces } = cutList;
  const most = Math.min(MOST_CLOTHS, kits * pieces.reduce((sum, { count }) => sum + count, 0));
  const { toHand, offers } = fixedStockOf(fabric, most);
  // What comes from elsewhere is squared like all pieces in hand.
  const given = [...toHand, ...beside.map((piece) => asInHand(piece, fabric))];
  const bolt = fabric.yardage ? asked : "none";
  // Where nothing comes off the bolt there is nothing to weigh: the least money in pieces is one search.
  if (bolt === "none") return { cutList, bolt, fixedStock: gatherFixed([...given, ...offers]), offers: [] };
  return { cutList, bolt, fixedStock: gatherFixed(given), offers: gatherFixed(offers) };
}

/** The first packing of all fabrics, each in its place. */
interface Weighed {
  chosen: Chosen[];
  /** How the purchase was weighed; null where nothing was. */
  mixes: (Mix | null)[];
  /** The length in hand that all of a fabric comes from; null where there is none. */
  lengths: (LengthInHand | null)[];
}

/** The first packing of each fabric from what is in hand of its bolt, weighed against what is sold ready cut. */
async function weighFromHand(
  fabrics: readonly Offered[],
  inHand: readonly (LengthInHand | null)[],
  kits: number,
  search: Search,
): Promise<Weighed> {
  const first = await chooseFromHand(fabrics, inHand, kits, search);
  const lengths = first.map(({ length }) => length);
  const chosen = first.map((one) => one.chosen);
  // Where the length in hand is enough nothing need be weighed.
  const offered = fabrics.map((one, i) => (lengths[i] == null ? one : { ...one, offers: [] }));
  return { ...(await weigh(chosen, offered, search)), lengths };
}

/** From the cut lists settled on to the packing that is cut. Those with no plan at all stay as they are. */
async function packToTheEnd(
  { chosen: weighed, mixes, lengths }: Weighed,
  { settings, limits, solve }: Search,
): Promise<Packed[]> {
  const able = weighed.filter(({ result }) => hasPlan(result));
  const there = able.map((one) => lengths[weighed.indexOf(one)] ?? null);
  const ordered = await useInOrder(able, limits, solve);
  const fewer = await easeJoins(ordered, there, settings, limits, solve);
  const whole = await settleAll(fewer, settings, limits, solve);
  const parted = await withinBolts(
    whole.filter((_, i) => there[i] == null),
    limits,
    solve,
  );
  const settled = whole.map((one, i) => (there[i] == null ? (parted.shift() ?? one) : one));
  const easy = await easeWork(settled, there, settings, limits, solve);
  const done = settled.map((one, i) => {
    const length = there[i] ?? null;
    const result = length === null ? lessToBuy(one, nth(easy, i), one.result) : nth(easy, i);
    return length === null ? { chosen: one, result } : ontoLength(one, result, length);
  });
  const chosen = done.map((one) => one.chosen);
  const eased = done.map(({ result }) => result);
  chosen.forEach(({ problem }, i) => {
    assertRight(problem, nth(eased, i));
  });
  return weighed.map((one, i) => {
    const at = able.indexOf(one);
    // What was weighed without stacked subcuts says nothing of them.
    const weighedSo = one.problem.style === settings.style;
    const known = mixes[i] ?? null;
    const mix = known === null || weighedSo ? known : { ...known, proven: false };
    return at < 0
      ? { chosen: one, eased: one.result, mix }
      : { chosen: nth(chosen, at), eased: nth(eased, at), mix };
  });
}

/** The cheapest mix for the fabrics that are sold ready cut as well, the others as they are. */
async function weigh(
  first: readonly Chosen[],
  fabrics: readonly Offered[],
  { settings, limits, solve }: Search,
): Promise<Pick<Weighed, "chosen" | "mixes">> {
  const weighed = first.flatMap((chosen, i) => {
    const { offers = [] } = fabrics[i] ?? {};
    return offers.length === 0 ? [] : [{ chosen, offers, index: i }];
  });
  const mixed = await cheapestMix(weighed, settings, limits, solve);
  const mixOf = (index: number) => mixed[weighed.findIndex((one) => one.index === index)];
  return {
    chosen: first.map((one, i) => mixOf(i)?.chosen ?? one),
    mixes: first.map((one, i) => mixOf(i)?.mix ?? mixOfPieces(one)),
  };
}

/**
 * Settles which strips and ends make each run. Where stacked subcuts are allowed the pieces are then packed once more
 * with them: what is proved without them says nothing there, so only the area bounds such a fabric.
 */
async function settleAll(
  weighed: readonly Chosen[],
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
): Promise<Chosen[]> {
  const { style, ruler } = settings;
  const settled = weighed.map((one): Chosen => {
    const found = settleRuns(one.cutList, usableWidth(one.cutList.fabric), one.result, ruler.mark);
    if (found === null) return one.problem.style === style ? one : boundedByArea(one, style);
    assertRight(one.problem, one.result);
    const sources = { usable: one.problem.roll?.width ?? null, fixedStock: one.fixedStock };
    const posed = posePackingProblem(found.cutList, sources, style, stackLimit(settings));
    const problem = { ...posed, sheets: one.problem.sheets };
    const result = { ...one.result, layouts: found.layouts };
    const bounded =
      style === one.problem.style ? {} : { least: Math.min(one.least, leastByArea(one)), onlyWay: false };
    const bound = { ...result.bound, style, ...(style === one.problem.style ? {} : { value: 0 }) };
    const status = style === one.problem.style ? result.status : "best-found";
    return { ...one, cutList: found.cutList, problem, result: { ...result, status, bound }, ...bounded };
  });
  const stacked = settled.filter((one, i) => one.problem.style !== nth(weighed, i).problem.style);
  if (stacked.length === 0) return settled;
  const again = await solve(stacked.map(({ problem }) => ({ kind: "pack", problem, limits })));
  return settled.map((one) => {
    const at = stacked.indexOf(one);
    const better = at < 0 ? undefined : again[at];
    if (better === undefined || !hasPlan(better) || better.objective >= one.result.objective) return one;
    return { ...one, result: { ...better, bound: one.result.bound, status: "best-found" } };
  });
}

/** Shapes stand in strips without stacked subcuts: where those are allowed, that says nothing of the least. */
function boundedByArea(one: Chosen, style: PlanSettings["style"]): Chosen {
  const bound = { ...one.result.bound, style, value: 0 };
  const least = Math.min(one.least, leastByArea(one));
  return { ...one, result: { ...one.result, status: "best-found", bound }, least, onlyWay: false };
}

/** Narrowest widths for the fabrics cut from the bolt alone; others have no one width to speak of. */
async function tryNarrower(
  packed: readonly Packed[],
  plans: readonly FabricPlan[],
  { settings, limits, solve }: Search,
): Promise<(number | null)[]> {
  const { style, ruler } = settings;
  const stacks = stackLimit(settings);
  const trials = plans.map((plan, i): Trial | null => {
    const { cutList } = nth(packed, i).chosen;
    const { lays, purchase, usable } = plan;
    // Strips used at whatever length the cloth gives say nothing of how long they must be.
    const pinned = cutList.pieces.some(
      (piece) => piece.fullWidth && (piece.joined === undefined || piece.joined.perKit),
    );
    if (purchase === null || pinned || lays.some(({ source }) => source !== "bolt")) return null;
    return { cutList, style, stacks, usable, purchase, lays };
  });
  const found = await findNarrowest(
    trials.filter((trial) => trial !== null),
    ruler.mark,
    limits,
    solve,
  );
  let next = 0;
  return trials.map((trial) => (trial === null ? null : (found[next++] ?? null)));
}

/** Nothing that comes from the search is believed before it has been checked. */
function assertRight(problem: PackingProblem, result: PackingResult): void {
  const faults = verify(problem, result);
  if (faults.length > 0) throw new Error(`the engine's answer is wrong: ${faults.join("; ")}`);
}

/** Whether fabrics that are short without stacked subcuts would do with them. */
async function tryStacked(
  short: readonly Chosen[],
  stacks: StackLimit,
  limits: SearchLimits,
  solve: Solve,
): Promise<boolean[]> {
  const open = short.filter(({ problem }) => {
    const joins = problem.items.some(({ run, nest }) => run !== undefined || nest !== undefined);
    return problem.roll === null && problem.style === "strips-2" && !joins;
  });
  if (open.length === 0) return [];
  const results = await solve(
    open.map(({ problem }) => ({ kind: "pack", problem: { ...problem, style: "strips-3", stacks }, limits })),
  );
  return short.map((one) => open.includes(one) && hasPlan(nth(results, open.indexOf(one))));
}
