import type { CutList } from "../cutlist/types.ts";
import { searchCutShort } from "../diagnostics/planning.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { hasPlan, ruleOfThumb, verify } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits, StackLimit } from "../engine/types.ts";
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
import type { SharedEffort } from "./pack-shared.ts";
import { easeJoins, easeWork } from "./packing/ease-work.ts";
import { tooLongForBolt } from "./packing/onto-bolts.ts";
import { lessToBuy, withinBolts } from "./packing/within-bolts.ts";
import { type FixedPiece, posePackingProblem } from "./pose-problem.ts";
import type { Bolt, PlanRequest, PlanSettings, Solve } from "./request.ts";
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
  const { spec, cutLists, fixedStock = [], bolt = "as-needed", kits = 1 } = request;
  const { top = null, limits = {}, solve } = request;
  const boltOf = (index: number): Bolt => (typeof bolt === "string" ? bolt : (bolt[index] ?? "as-needed"));
  const fabrics = cutLists.map((cutList, index) => {
    const sorts = request.sorts?.[index];
    const offered = withFixedStock(cutList, boltOf(index), fixedStock[index] ?? [], kits);
    return sorts === undefined ? offered : { ...offered, sorts };
  });

  const { inHand = [], effort = null } = request;
  const begun = await weighFromHand(fabrics, inHand, kits, spec, limits, solve, effort);
  const { chosen: weighed, mixes, lengths } = begun;
  const told: Diagnostic[] = [...(request.diagnostics ?? []), ...weighed.flatMap((one) => one.diagnostics)];
  const short = weighed.filter(({ result }) => !hasPlan(result));
  if (short.length > 0) {
    const wanting = await countMissing(short, limits, solve);
    const stacked = await tryStacked(short, stackLimit(spec), limits, solve);
    const missing = short.flatMap((one, i) =>
      tellMissing(one, wanting[i] ?? null, stacked[i] ?? false, spec),
    );
    return { value: null, diagnostics: [...told, ...missing] };
  }

  const free = await packToTheEnd(weighed, mixes, lengths, spec, limits, solve);
  const beyond = free.filter(({ chosen, eased }) => tooLongForBolt(chosen.cutList.fabric, eased));
  if (beyond.length > 0) {
    const tooLong = beyond.map(({ chosen }) => tellTooLong(chosen, spec));
    return { value: null, diagnostics: [...told, ...tooLong] };
  }
  const lists = request.sorts === undefined ? cutLists : free.map(({ chosen }) => chosen.cutList);
  const settled = request.sorts === undefined ? {} : { sorts: [] };
  const packed = await fromOneGrain(free, lists, async (asked) => {
    const own = asked.map(({ fabric, cutList }) => ({ ...fabrics[fabric]!, cutList, ...settled }));
    const there = asked.map(({ fabric }) => inHand[fabric] ?? null);
    const begun = await weighFromHand(own, there, kits, spec, limits, solve, effort);
    return packToTheEnd(begun.chosen, begun.mixes, begun.lengths, spec, limits, solve);
  });
  const [chosen, eased] = [packed.map((one) => one.chosen), packed.map((one) => one.eased)];
  const splits = kits === 1 ? [] : await splitKits(packed, kits, spec, limits, solve);
  const plans = chosen.map((one, i) => {
    const shared = splits[i] ?? null;
    const dearer = shared !== null && lessToBuy(one, shared.result, eased[i]!) !== shared.result;
    const unfit = shared === null || dearer || splitPairs(one.cutList, shared.result).length > 0;
    const split = unfit ? null : shared;
    if (split !== null) assertRight(one.problem, split.result);
    const result = split?.result ?? eased[i]!;
    const made = assembleFabric(one, result, ruleOfThumb(one.problem), packed[i]?.mix ?? null, spec, kits);
    return split === null ? made : { ...made, kitShares: kitShares(made.lays, split, one, spec) };
  });
  told.push(...plans.flatMap((plan, i) => tellUnproven(plan, chosen[i]!, spec)));
  const hasty = plans.filter((_, i) => eased[i]!.stats.cutShort === "clock").map(({ name }) => name);
  if (hasty.length > 0) told.push(searchCutShort(hasty));
  const narrowest = await tryNarrower(chosen, plans, spec, limits, solve);

  const asked = packed.map((one) => ({ chosen: one.chosen, result: one.eased }));
  // What less would be bought is not told where it comes from several bolts.
  const onOne = plans.map(({ purchase }) => purchase?.lengths === undefined);
  const stacked =
    request.suggestStacks === true && kits === 1 && mixes.every((mix) => mix === null) && inHand.length === 0
      ? await tryStackedCuts(asked, stackLimit(spec), limits, solve)
      : [];

  const templates = listTemplates(plans);
  const value: Plan = {
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
    assumptions: [...ofAccount(spec.assumptions, plans), ...boltsAssumed(plans, chosen)],
    fabrics: plans.map((plan, i) => ({
      ...plan,
      sturdiness: { ...plan.sturdiness, narrowestUsable: narrowest[i] ?? null },
      ...(stacked[i] == null || !onOne[i] ? {} : { stacked: stacked[i] }),
    })),
    ...(kits === 1 ? {} : { kits }),
    top,
    ...(templates.length === 0 ? {} : { templates }),
    diagnostics: told,
  };
  return { value, diagnostics: told };
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

/** The first packing of each fabric from what is in hand of its bolt, weighed against what is sold ready cut. */
async function weighFromHand(
  fabrics: readonly Offered[],
  inHand: readonly (LengthInHand | null)[],
  kits: number,
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
  effort: SharedEffort | null,
): Promise<{ chosen: Chosen[]; mixes: (Mix | null)[]; lengths: (LengthInHand | null)[] }> {
  const first = await chooseFromHand(fabrics, inHand, kits, settings, limits, solve, effort);
  const lengths = first.map(({ length }) => length);
  const chosen = first.map((one) => one.chosen);
  // Where the length in hand is enough nothing need be weighed.
  const offered = fabrics.map((one, i) => (lengths[i] == null ? one : { ...one, offers: [] }));
  return { ...(await weigh(chosen, offered, settings, limits, solve)), lengths };
}

/** From the cut lists settled on to the packing that is cut. Those with no plan at all stay as they are. */
async function packToTheEnd(
  weighed: readonly Chosen[],
  mixes: readonly (Mix | null)[],
  lengths: readonly (LengthInHand | null)[],
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
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
    const result = length === null ? lessToBuy(one, easy[i]!, one.result) : easy[i]!;
    return length === null ? { chosen: one, result } : ontoLength(one, result, length);
  });
  const chosen = done.map((one) => one.chosen);
  const eased = done.map(({ result }) => result);
  chosen.forEach(({ problem }, i) => {
    assertRight(problem, eased[i]!);
  });
  return weighed.map((one, i) => {
    const at = able.indexOf(one);
    // What was weighed without stacked subcuts says nothing of them.
    const weighedSo = one.problem.style === settings.style;
    const known = mixes[i] ?? null;
    const mix = known === null || weighedSo ? known : { ...known, proven: false };
    return at < 0 ? { chosen: one, eased: one.result, mix } : { chosen: chosen[at]!, eased: eased[at]!, mix };
  });
}

/** The cheapest mix for the fabrics that are sold ready cut as well, the others as they are. */
async function weigh(
  first: readonly Chosen[],
  fabrics: readonly Offered[],
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
): Promise<{ chosen: Chosen[]; mixes: (Mix | null)[] }> {
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
  const stacked = settled.filter((one, i) => one.problem.style !== weighed[i]!.problem.style);
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
  chosen: readonly Chosen[],
  plans: readonly FabricPlan[],
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
): Promise<(number | null)[]> {
  const { style, ruler } = settings;
  const stacks = stackLimit(settings);
  const trials = plans.map((plan, i): Trial | null => {
    const { cutList } = chosen[i]!;
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
  return short.map((one) => open.includes(one) && hasPlan(results[open.indexOf(one)]!));
}
