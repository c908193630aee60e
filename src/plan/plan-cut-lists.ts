import { notProven, pieceTooWide, stockShort } from "../diagnostics/planning.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { ruleOfThumb, verify } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits } from "../engine/types.ts";
import { formatLength, formatSize } from "../length/format.ts";
import { lengthLimit, purchaseFor } from "../stock/index.ts";
import { assembleFabric } from "./assemble-fabric.ts";
import { type Chosen, chooseCutLists } from "./choose-cut-lists.ts";
import { findNarrowest, type Trial } from "./find-narrowest.ts";
import type { Bolt, PlanRequest, PlanSettings, Solve } from "./request.ts";
import { type FabricPlan, PLAN_VERSION, type Plan } from "./types.ts";

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
  const fabrics = cutLists.map((cutList, index) => ({
    cutList,
    fixedStock: fixedStock[index] ?? [],
    bolt: boltOf(index),
  }));

  const chosen = await chooseCutLists(fabrics, kits, spec, limits, solve);
  const told: Diagnostic[] = [...(request.diagnostics ?? []), ...chosen.flatMap((one) => one.diagnostics)];
  const short = chosen.filter(({ result }) => result.status === "infeasible");
  if (short.length > 0)
    return { value: null, diagnostics: [...told, ...short.flatMap((one) => tellMissing(one, spec))] };

  const eased = await easeWork(chosen, spec, limits, solve);
  chosen.forEach(({ problem }, i) => {
    assertRight(problem, eased[i]!);
  });
  const plans = chosen.map((one, i) => assembleFabric(one, eased[i]!, ruleOfThumb(one.problem), spec));
  told.push(...plans.flatMap((plan, i) => tellUnproven(plan, chosen[i]!, spec)));
  const narrowest = await tryNarrower(chosen, plans, spec, limits, solve);

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
    top,
    diagnostics: told,
  };
  return { value, diagnostics: told };
}

/**
 * The same purchase with less work. A sparing maker keeps the least length; one who wants it simple may use
 * all that the shop's rounding gives.
 */
function easeWork(
  chosen: readonly Chosen[],
  { prefer }: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
): Promise<PackingResult[]> {
  return solve(
    chosen.map(({ cutList: { fabric }, problem, result }) => {
      const purchase = purchaseFor(fabric, result.rollLength);
      const all = result.rollLength === 0 ? 0 : lengthLimit(fabric, purchase.length);
      return {
        kind: "lessen-work",
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
  { budget = Number.MAX_SAFE_INTEGER }: SearchLimits,
  solve: Solve,
): Promise<(number | null)[]> {
  const trials = plans.map((plan, i): Trial | null => {
    const { cutList } = chosen[i]!;
    const [lay] = plan.lays;
    // Strips used at whatever length the cloth gives say nothing of how long they must be.
    const pinned = cutList.pieces.some((piece) => piece.fullWidth && piece.joined === undefined);
    if (plan.lays.length !== 1 || lay === undefined || plan.purchase === null || pinned) return null;
    const most = lengthLimit(cutList.fabric, plan.purchase.length);
    return { cutList, style, usable: plan.usable, lengthLimit: most, lay };
  });
  const found = await findNarrowest(
    trials.filter((trial) => trial !== null),
    ruler.mark,
    budget,
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
function tellMissing({ cutList, problem, result }: Chosen, { ruler }: PlanSettings): Diagnostic[] {
  const { fabric, pieces } = cutList;
  const missing = result.missing.map(({ item, count }) => ({ piece: pieces[item]!, count }));
  const width = problem.roll?.width ?? null;
  if (width === null) {
    const said = missing.map(
      ({ piece, count }) => `${count} of ${formatSize(piece.across, piece.along, ruler)} [${piece.letter}]`,
    );
    return [stockShort(fabric.name, said)];
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
