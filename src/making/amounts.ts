import type { Ticks } from "../length/types.ts";
import type { QuiltTop, QuiltWork } from "../quilt/index.ts";
import { exactToNumber } from "../quilt/index.ts";
import type { JoinStep, SeamTotals, ThreadEstimate, UnitBatch } from "./types.ts";

/** Units by recipe, with the sets to make and what is sewn in each. */
export function unitBatches(work: QuiltWork): UnitBatch[] {
  return work.units.flatMap(({ text, recipes, wants }): UnitBatch[] => {
    const [recipe] = recipes;
    if (recipe === undefined || (recipe.seams.length === 0 && recipe.steps.length === 0)) return [];
    const units = wants.reduce((sum, { count }) => sum + count, 0);
    const sets = Math.ceil(units / recipe.unitsPerSet);
    return [
      {
        text,
        method: recipe.method,
        units,
        perSet: recipe.unitsPerSet,
        sets,
        steps: recipe.steps.map((step) => step.text),
        trimTo: { ...recipe.trimTo },
        seams: recipe.seams.map(({ what, length, count, bias }) => ({
          what,
          length,
          count: count * sets,
          bias,
        })),
      },
    ];
  });
}

/** Length of all piecing seams, from cut edge to cut edge, by where they are sewn. */
export function seamTotals(
  units: readonly UnitBatch[],
  joins: readonly JoinStep[],
  top: QuiltTop,
): SeamTotals {
  let [seams, inUnits] = [0, 0];
  for (const { seams: own } of units) {
    for (const { length, count } of own) {
      seams += count;
      inUnits += length * count;
    }
  }
  const at = { unit: inUnits, block: 0, top: 0, border: 0 };
  for (const join of joins) {
    seams += join.seams * join.count;
    at[join.stage] += join.seamLength * join.seams * join.count;
  }
  // A mitred border: four strips along what it goes round, and four slanting seams.
  for (const { kind, across, down, side } of top.borders) {
    if (kind !== "mitred") continue;
    const [wide, high, width] = [across, down, side].map(exactToNumber);
    const round = 2 * ((wide ?? 0) + (high ?? 0)) - 8 * (width ?? 0);
    at.border += Math.ceil(round + 4 * Math.SQRT2 * (width ?? 0));
    seams += 8;
  }
  const { unit, block, border } = at;
  return {
    units: unit,
    blocks: block,
    top: at.top,
    borders: border,
    total: unit + block + at.top + border,
    seams,
  };
}

/**
 * Lockstitch thread, needle and bobbin together: 2 + 2 T S to the length of seam, with two layers of quilting
 * cotton T = 0.02 in thick and S = 12.7 stitches to the inch (2 mm): 2.508. Formula: How to calculate the amount
 * of sewing thread consumption. Fifteen in a hundred more for ends and breaks: Thread Consumption Methods.
 */
const PER_SEAM = 2508;
const WASTE_PERCENT = 15;

export function threadFor(seams: Ticks): ThreadEstimate {
  const length = Math.ceil((seams * PER_SEAM * (100 + WASTE_PERCENT)) / 100_000);
  return { length, perSeam: PER_SEAM, wastePercent: WASTE_PERCENT };
}
