import type { FabricPlan, Plan } from "../plan/types.ts";
import { checkAmounts } from "./check-amounts.ts";
import { checkCuts } from "./check-cuts.ts";
import { checkDone } from "./check-done.ts";
import { checkFoundation } from "./check-foundation.ts";
import { checkKits } from "./check-kits.ts";
import { checkLaid } from "./check-laid.ts";
import { checkNested } from "./check-nested.ts";
import { checkOrder } from "./check-order.ts";
import { checkPieces } from "./check-pieces.ts";
import { checkRuns } from "./check-runs.ts";
import { checkStages } from "./check-stages.ts";
import { checkSteps } from "./check-steps.ts";
import { checkStock } from "./check-stock.ts";
import { checkTemplates } from "./check-templates.ts";
import { checkTree } from "./check-tree.ts";
import { checkWaste } from "./check-waste.ts";
import { auditPlanSewing } from "./sew/index.ts";

/**
 * Works a plan out again from its parts alone and compares: nothing here comes from the engine or from the
 * code that builds plans. Returns what is wrong in plain words, each with its fabric; empty when all holds.
 *
 * In the order checked: parts tile their parents without gap or overlap and every cut runs edge to edge, in
 * no more stages than the style has and within reach of ruler and mat;
 * what is done already is of pieces and cloth that there are; every piece has its size, shapes that stand alternately do not overlap and have
 * their allowance, every piece lies only in turns it is allowed and is cut exactly as often as is still wanted; what is
 * joined end to end makes the length it is for; strips
 * are numbered in cutting order; cuts and steps say what the parts say; every square tick bought is in a
 * piece or in the waste; cloth in fixed sizes is what it was said to be and is paid for; what is bought is
 * enough; outlines lie in their pieces; a gridded foundation is cut on its lines, a piece for every part made on it, and
 * patches laid on it as told cover their places; sewn from its pieces as told, the quilt comes out as designed;
 * nothing is called proved that is not.
 */
export function auditPlan(plan: Plan): string[] {
  const faults: string[] = [];
  if (plan.format !== "crossgrain plan" || plan.version !== 1 || plan.ticksPerMillimetre !== 640)
    faults.push("the plan's format, version or measure is not what this program writes");
  for (const fabric of plan.fabrics) {
    for (const fault of auditFabric(fabric, plan)) faults.push(`${fabric.name}: ${fault}`);
  }
  faults.push(
    ...checkTemplates(plan),
    ...checkFoundation(plan),
    ...checkLaid(plan),
    ...auditPlanSewing(plan),
  );
  const names = plan.fabrics.map(({ name }) => name);
  if (new Set(names).size < names.length) faults.push("two fabrics have the same name");
  return faults;
}

function auditFabric(fabric: FabricPlan, plan: Plan): string[] {
  const broken = fabric.lays.flatMap((lay) => [
    ...checkTree(lay, fabric, plan.style),
    ...(plan.style === "strips-3" ? checkStages(lay, fabric, plan) : []),
  ]);
  // What follows reads the parts; it would only repeat in other words that they are broken.
  if (broken.length > 0) return broken;
  return [
    ...checkDone(fabric, plan),
    ...checkPieces(fabric),
    ...checkNested(fabric, plan),
    ...checkRuns(fabric),
    ...fabric.lays.flatMap((lay) => checkOrder(lay)),
    ...checkCuts(fabric),
    ...checkSteps(fabric, plan),
    ...checkStock(fabric),
    ...checkKits(fabric, plan),
    ...checkWaste(fabric, plan),
    ...checkAmounts(fabric, plan),
  ];
}
