import type { Plan } from "../plan/types.ts";
import { countSets, type QuiltWork, type Recipe, type UnitDemand } from "../quilt/index.ts";

/** Minutes a step takes. Common practice, no source: every maker has her own, so they can be set. */
export interface StepMinutes {
  /** Cutting one strip across the fabric. */
  strip: number;
  /** One cut across a strip. */
  subcut: number;
  /** Marking a line to sew along. */
  mark: number;
  /** Pinning and starting one seam. */
  seam: number;
  /** Sewing a metre. */
  metre: number;
  /** Pressing once. */
  press: number;
  /** Trimming one unit to size. */
  trim: number;
}

export const USUAL_MINUTES: StepMinutes = {
  strip: 1,
  subcut: 0.2,
  mark: 0.25,
  seam: 0.25,
  metre: 0.5,
  press: 0.25,
  trim: 0.75,
};

/** What one way of making a quilt takes. Seams, trims and pressing are those of its units; cutting is all of it. */
export interface Figures {
  fabrics: {
    fabric: string;
    buy: string;
    length: number;
    cost: number | null;
    /** No smaller purchase can do; false when the search ended before that was settled. */
    proven: boolean;
  }[];
  /** Hundredths; null when a fabric has no price. */
  cost: number | null;
  /** Square ticks bought. */
  bought: number;
  strips: number;
  subcuts: number;
  seams: number;
  /** Ticks. */
  seamLength: number;
  /** Seams along a bias edge. */
  biasSeams: number;
  trims: number;
  /** Square ticks cut off as corners. */
  corners: number;
  /** Units that can be sewn from those corners. */
  bonus: number;
  minutes: number;
  /** Whether a print with an up keeps it; `spares` when more units are made than are wanted for it. */
  direction: "kept" | "spares";
}

const TICKS_PER_METRE = 640_000;

/** Long seams of strips sewn side by side: how many, and their length together. */
function stripSeams(
  demand: UnitDemand,
  recipe: Recipe,
  units: number,
  plan: Plan,
): { count: number; length: number } | null {
  const widths = Object.values(demand.fabrics).flatMap((name) =>
    plan.fabrics.filter((fabric) => fabric.name === name).map(({ usable }) => usable),
  );
  const usable = Math.min(...widths);
  let [count, length] = [0, 0];
  for (const set of recipe.stripSets) {
    const counted = countSets(set, units, usable);
    if (counted === null) return null;
    const seams = set.strips.length - 1;
    count += seams * (counted.fullSets + (counted.lastSegments > 0 ? 1 : 0));
    length += seams * (counted.fullSets * usable + (counted.lastSegments > 0 ? counted.lastLength : 0));
  }
  return { count, length };
}

/**
 * The way these units are made: the wanted one, unless the pieces to cut say that a print with an up, or the width
 * of the fabric, needed another.
 */
function madeBy(recipes: readonly Recipe[], uses: readonly string[]): Recipe | undefined {
  const seen = recipes.filter(({ kind, method }) =>
    uses.some((text) => text.includes(`: ${kind}, ${method}, `)),
  );
  return seen.length === 1 ? seen[0] : recipes[0];
}

/** Seams between strips are sewn before segments are cut from them, in far fewer and longer seams. */
const BETWEEN_STRIPS = /for each (segment|unit)/;

/** What a plan and the units sewn for it take. */
export function makingFigures(plan: Plan, work: QuiltWork, minutes: StepMinutes): Figures {
  const fabrics = plan.fabrics.map(({ name, purchase, bound }) => ({
    fabric: name,
    buy: purchase?.text ?? "",
    length: purchase?.length ?? 0,
    cost: purchase === null ? 0 : purchase.cost,
    proven: bound.purchaseProven,
  }));
  const steps = plan.fabrics.flatMap((fabric) => fabric.steps);
  const strips = steps.reduce((sum, { kind, count }) => sum + (kind === "straighten" ? 0 : count), 0);
  const straightened = steps.filter(({ kind }) => kind === "straighten").length;
  const cuts = plan.fabrics.reduce((sum, fabric) => sum + fabric.cuts.length, 0);
  const subcuts = Math.max(0, cuts - strips - straightened);
  const uses = plan.fabrics.flatMap(({ pieces }) =>
    pieces.flatMap((piece) => piece.uses.map(({ text }) => text)),
  );
  const sewn = {
    seams: 0,
    seamLength: 0,
    biasSeams: 0,
    trims: 0,
    corners: 0,
    bonus: 0,
    marks: 0,
    presses: 0,
  };
  for (const demand of work.units) {
    const { recipes, wants } = demand;
    const recipe = madeBy(recipes, uses);
    if (recipe === undefined) continue;
    const units = wants.reduce((sum, { count }) => sum + count, 0);
    const sets = Math.ceil(units / recipe.unitsPerSet);
    const long = recipe.stripSets.length === 0 ? null : stripSeams(demand, recipe, units, plan);
    sewn.seams += long?.count ?? 0;
    sewn.seamLength += long?.length ?? 0;
    for (const { what, length, count, bias } of recipe.seams) {
      if (long !== null && BETWEEN_STRIPS.test(what)) continue;
      sewn.seams += count * sets;
      sewn.seamLength += length * count * sets;
      if (bias) sewn.biasSeams += count * sets;
    }
    if (recipe.trimTo.needed) sewn.trims += units;
    sewn.corners += recipe.areas.corners * sets;
    sewn.bonus += recipe.bonus.reduce((sum, { count }) => sum + count, 0) * sets;
    sewn.marks += recipe.steps.filter(({ kind }) => kind === "draw").length * sets;
    sewn.presses += recipe.steps.filter(({ kind }) => kind === "press").length * sets;
  }
  const { marks, presses, ...counted } = sewn;
  const time =
    strips * minutes.strip +
    subcuts * minutes.subcut +
    marks * minutes.mark +
    sewn.seams * minutes.seam +
    (sewn.seamLength / TICKS_PER_METRE) * minutes.metre +
    presses * minutes.press +
    sewn.trims * minutes.trim;
  const costs = fabrics.map(({ cost }) => cost);
  return {
    fabrics,
    cost: costs.includes(null) ? null : costs.reduce<number>((sum, cost) => sum + (cost ?? 0), 0),
    bought: plan.fabrics.reduce((sum, { width, purchase }) => sum + width * (purchase?.length ?? 0), 0),
    strips,
    subcuts,
    ...counted,
    minutes: Math.round(time),
    direction: plan.diagnostics.some(({ code }) => code === "DIRECTION-SPARES") ? "spares" : "kept",
  };
}
