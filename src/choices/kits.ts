import type { CutPiece } from "../cutlist/types.ts";
import type { Outcome } from "../diagnostics/types.ts";
import { formatMeasure } from "../length/index.ts";
import { type PlanOptions, planSpec } from "../pipeline.ts";
import type { Solve } from "../plan/index.ts";
import type { Plan, Purchase } from "../plan/types.ts";
import type { Spec } from "../spec/index.ts";
import { quickSolve, withoutEasing } from "./quick-solve.ts";

/** One fabric of a class: bought and cut for all kits at once, against each kit bought for itself. */
interface KitFabric {
  fabric: string;
  /** Null when all comes from cloth to hand. */
  together: Purchase | null;
  one: Purchase | null;
  /** As many times what one kit needs. */
  separately: { length: number; text: string; cost: number | null } | null;
  currency: string;
  /** What goes into the bag of one kit. */
  bag: CutPiece[];
}

/** Kits for a class. */
export interface Kits {
  kits: number;
  /** The plan of everything cut together. */
  batch: Plan;
  /** The plan of one kit by itself. */
  single: Plan;
  fabrics: KitFabric[];
}

/** The file without what is to hand, wherever the fabric can be bought. */
function withoutTeachersCloth(spec: Spec): Spec {
  const fabrics = spec.fabrics.map((fabric) =>
    fabric.yardage || fabric.readyCut.length > 0 ? { ...fabric, have: [] } : fabric,
  );
  return { ...spec, fabrics };
}

/**
 * What cutting kits together saves, and what goes into each bag.
 * @param batch the plan of `options.kits` kits cut together
 */
export async function compareKits(
  spec: Spec,
  batch: Plan,
  options: PlanOptions,
  solve: Solve,
): Promise<Outcome<Kits>> {
  // Each maker for herself would have to buy: the cloth to hand is the teacher's.
  const alone = { ...options, kits: 1, toHand: [], notBought: [] };
  const { value: single, diagnostics } = await planSpec(
    withoutTeachersCloth(spec),
    alone,
    withoutEasing(quickSolve(solve)),
  );
  if (single === null) return { value: null, diagnostics };
  const { kits } = options;
  const fabrics = batch.fabrics.map((fabric): KitFabric => {
    const own = single.fabrics.find(({ name }) => name === fabric.name);
    const one = own?.purchase ?? null;
    const times = (purchase: Purchase) => {
      const length = purchase.length * kits;
      const cost = purchase.cost === null ? null : purchase.cost * kits;
      return { length, text: formatMeasure(length, fabric.sold.unit), cost };
    };
    return {
      fabric: fabric.name,
      together: fabric.purchase,
      one,
      separately: one === null ? null : times(one),
      currency: fabric.price?.currency ?? "",
      bag: own?.pieces ?? [],
    };
  });
  return { value: { kits, batch, single, fabrics }, diagnostics: [] };
}
