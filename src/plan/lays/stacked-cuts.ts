import { hasPlan, verify } from "../../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits, StackLimit } from "../../engine/types.ts";
import { nth } from "../../length/nth.ts";
import { lengthLimit, purchaseFor } from "../../stock/index.ts";
import type { Chosen } from "../choose-cut-lists.ts";
import { leastByArea } from "../least-by-area.ts";
import type { Solve } from "../request.ts";
import type { StackedCuts } from "../types.ts";

/** Counted work for one fabric: with a length to come under, most are told in a tenth of it. */
const EFFORT = 150;

/** A step of the shop is less of the purchase than this: nobody turns a thousand strips for it. */
const LEAST_SAVING = 1 / 200;

/**
 * For every fabric, what less would be bought if strips might be cut once more along their length: asked only where area
 * alone allows a smaller purchase, and only for a step of the shop. Null where it would save none, or none was found.
 */
export async function tryStackedCuts(
  planned: readonly { chosen: Chosen; result: PackingResult }[],
  stacks: StackLimit,
  limits: SearchLimits,
  solve: Solve,
): Promise<(StackedCuts | null)[]> {
  const targets = planned.map(({ chosen, result }) => {
    const { problem, cutList } = chosen;
    const plain = problem.items.every(({ run, nest }) => run === undefined && nest === undefined);
    if (!plain || problem.style !== "strips-2" || problem.roll === null || result.rollLength === 0)
      return null;
    const bought = purchaseFor(cutList.fabric, result.rollLength).length;
    const less = bought - cutList.fabric.sold.step;
    if (cutList.fabric.sold.step < LEAST_SAVING * bought) return null;
    const most = lengthLimit(cutList.fabric, less);
    const allowed = purchaseFor(cutList.fabric, Math.max(0, most)).length <= less;
    return allowed && most > 0 && leastByArea(chosen) <= most ? most : null;
  });
  const asked = targets.flatMap((target, i) => (target === null ? [] : [{ target, i }]));
  if (asked.length === 0) return targets.map(() => null);
  const found = await solve(
    asked.map(({ target, i }) => ({
      kind: "pack",
      problem: within(nth(planned, i).chosen.problem, stacks, target),
      limits: { ...limits, effort: Math.min(limits.effort ?? EFFORT, EFFORT) },
    })),
  );
  return targets.map((target, i) => {
    const result = found[asked.findIndex((one) => one.i === i)];
    if (target === null || result === undefined || !hasPlan(result) || result.rollLength > target)
      return null;
    if (verify(within(nth(planned, i).chosen.problem, stacks, target), result).length > 0) return null;
    const strips = stackedStrips(result);
    return strips === 0
      ? null
      : { purchase: purchaseFor(nth(planned, i).chosen.cutList.fabric, result.rollLength), strips };
  });
}

/** The same cut list with stacked subcuts, from no more than so much length. */
function within(problem: PackingProblem, stacks: StackLimit, length: number): PackingProblem {
  return { ...problem, style: "strips-3", stacks, roll: { ...problem.roll!, available: length } };
}

/** Strips in which pieces lie one above another: each is turned once more and cut along its length. */
function stackedStrips({ layouts }: PackingResult): number {
  let strips = 0;
  for (const layout of layouts)
    for (const section of layout.sections)
      for (const strip of section.kind === "strips" ? [section] : section.rest) {
        if (strip.kind !== "strips") continue;
        const stacked = strip.column.segments.some(
          ({ stack }) => stack.reduce((sum, { count }) => sum + count, 0) > 1,
        );
        if (stacked) strips += strip.count * layout.count;
      }
  return strips;
}
