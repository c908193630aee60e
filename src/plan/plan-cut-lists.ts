import type { CutList } from "../cutlist/types.ts";
import {
  notProven,
  pieceTooWide,
  searchCutShort,
  stockShort,
  type Wanting,
} from "../diagnostics/planning.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { ruleOfThumb, verify } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits } from "../engine/types.ts";
import { formatLength, formatSize } from "../length/format.ts";
import { lengthLimit, purchaseFor } from "../stock/index.ts";
import { assembleFabric } from "./assemble-fabric.ts";
import { cheapestMix, mixOfPieces } from "./cheapest-mix.ts";
import { type Chosen, chooseCutLists, type Fabric } from "./choose-cut-lists.ts";
import { countMissing } from "./count-missing.ts";
import { findNarrowest, type Trial } from "./find-narrowest.ts";
import { fixedStockOf, gatherFixed } from "./fixed-pieces.ts";
import { tableOf } from "./flag-steps.ts";
import { listTemplates } from "./list-templates.ts";
import type { FixedPiece } from "./pose-problem.ts";
import type { Bolt, PlanRequest, PlanSettings, Solve } from "./request.ts";
import { kitShares, splitKits } from "./split-kits.ts";
import { type FabricPlan, type Mix, PLAN_VERSION, type Plan } from "./types.ts";

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
  const fabrics = cutLists.map((cutList, index) =>
    withFixedStock(cutList, boltOf(index), fixedStock[index] ?? [], kits),
  );

  const first = await chooseCutLists(fabrics, kits, spec, limits, solve);
  const { chosen, mixes } = await weigh(first, fabrics, spec, limits, solve);
  const told: Diagnostic[] = [...(request.diagnostics ?? []), ...chosen.flatMap((one) => one.diagnostics)];
  const short = chosen.filter(({ result }) => result.status === "infeasible");
  if (short.length > 0) {
    const wanting = await countMissing(short, limits, solve);
    const missing = short.flatMap((one, i) => tellMissing(one, wanting[i] ?? null, spec));
    return { value: null, diagnostics: [...told, ...missing] };
  }

  const eased = await easeWork(chosen, spec, limits, solve);
  chosen.forEach(({ problem }, i) => {
    assertRight(problem, eased[i]!);
  });
  const batches = chosen.map((one, i) => ({ chosen: one, eased: eased[i]! }));
  const splits = kits === 1 ? [] : await splitKits(batches, kits, spec, limits, solve);
  const plans = chosen.map((one, i) => {
    const split = splits[i] ?? null;
    if (split !== null) assertRight(one.problem, split.result);
    const result = split?.result ?? eased[i]!;
    const made = assembleFabric(one, result, ruleOfThumb(one.problem), mixes[i] ?? null, spec);
    const [lay] = made.lays;
    return split === null || lay === undefined ? made : { ...made, kitShares: kitShares(lay, split, one) };
  });
  told.push(...plans.flatMap((plan, i) => tellUnproven(plan, chosen[i]!, spec)));
  const hasty = plans.filter((_, i) => eased[i]!.stats.cutShort === true).map(({ name }) => name);
  if (hasty.length > 0) told.push(searchCutShort(hasty));
  const narrowest = await tryNarrower(chosen, plans, spec, limits, solve);

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
    folded: spec.folded,
    keepFrom: spec.keepFrom,
    assumptions: spec.assumptions,
    fabrics: plans.map((plan, i) => ({
      ...plan,
      sturdiness: { ...plan.sturdiness, narrowestUsable: narrowest[i] ?? null },
    })),
    ...(kits === 1 ? {} : { kits }),
    top,
    ...(templates.length === 0 ? {} : { templates }),
    diagnostics: told,
  };
  return { value, diagnostics: told };
}

type Offered = Fabric & { offers: FixedPiece[] };

/** Everything a fabric may be cut from: what its file says and what is asked beside it. */
function withFixedStock(cutList: CutList, asked: Bolt, beside: readonly FixedPiece[], kits: number): Offered {
  const { fabric, pieces } = cutList;
  const most = Math.min(MOST_CLOTHS, kits * pieces.reduce((sum, { count }) => sum + count, 0));
  const { toHand, offers } = fixedStockOf(fabric, most);
  const given = [...toHand, ...beside];
  const bolt = fabric.yardage ? asked : "none";
  // Where nothing comes off the bolt there is nothing to weigh: the least money in pieces is one search.
  if (bolt === "none") return { cutList, bolt, fixedStock: gatherFixed([...given, ...offers]), offers: [] };
  return { cutList, bolt, fixedStock: gatherFixed(given), offers: gatherFixed(offers) };
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
 * The same purchase with less work. A sparing maker keeps the least length; one who wants it simple may use
 * all that the shop's rounding gives.
 */
function easeWork(
  chosen: readonly Chosen[],
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
): Promise<PackingResult[]> {
  const { prefer } = settings;
  const table = tableOf(settings);
  return solve(
    chosen.map(({ cutList: { fabric }, problem, result }) => {
      const purchase = purchaseFor(fabric, result.rollLength);
      const all = result.rollLength === 0 ? 0 : lengthLimit(fabric, purchase.length);
      return {
        kind: "lessen-work",
        table,
        problem,
        result,
        lengthLimit: prefer === "sparing" ? result.rollLength : Math.max(all, result.rollLength),
        limits,
      };
    }),
  );
}

/** Narrowest widths for the fabrics cut from the bolt alone; others have no one width to speak of. */
async function tryNarrower(
  chosen: readonly Chosen[],
  plans: readonly FabricPlan[],
  { style, ruler }: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
): Promise<(number | null)[]> {
  const trials = plans.map((plan, i): Trial | null => {
    const { cutList } = chosen[i]!;
    const [lay] = plan.lays;
    // Strips used at whatever length the cloth gives say nothing of how long they must be.
    const pinned = cutList.pieces.some(
      (piece) => piece.fullWidth && (piece.joined === undefined || piece.joined.perKit),
    );
    if (plan.lays.length !== 1 || lay === undefined || plan.purchase === null || pinned) return null;
    const most = lengthLimit(cutList.fabric, plan.purchase.length);
    return { cutList, style, usable: plan.usable, lengthLimit: most, lay };
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

/** With a bolt of any length only width can be what is missing; without one, cloth is. */
function tellMissing(
  { cutList, problem, result }: Chosen,
  wanting: Wanting | null,
  { ruler }: PlanSettings,
): Diagnostic[] {
  const { fabric, pieces } = cutList;
  const missing = result.missing.map(({ item, count }) => ({ piece: pieces[item]!, count }));
  const width = problem.roll?.width ?? null;
  if (width === null) {
    const said = missing.map(
      ({ piece, count }) => `${count} of ${formatSize(piece.across, piece.along, ruler)} [${piece.letter}]`,
    );
    return [stockShort(fabric.name, said, wanting, fabric.at)];
  }
  return missing.map(({ piece }) => {
    const least = piece.turnable ? Math.min(piece.across, piece.along) : piece.across;
    return pieceTooWide(
      {
        piece: piece.label === "" ? piece.letter : piece.label,
        fabric: fabric.name,
        path: "",
        at: fabric.at,
      },
      {
        size: formatSize(piece.across, piece.along, ruler),
        usable: formatLength(width, ruler),
        over: formatLength(Math.max(0, least - width), ruler),
        turnHelps: !piece.turnable && !piece.fullWidth && piece.along <= width,
        lengthwiseHelps: false,
      },
    );
  });
}

function tellUnproven(plan: FabricPlan, { result, least }: Chosen, { ruler }: PlanSettings): Diagnostic[] {
  if (result.rollLength === least || plan.bound.lengthProven) return [];
  return [notProven(plan.name, formatLength(plan.bound.used, ruler), formatLength(least, ruler))];
}
