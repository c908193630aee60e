import type { FabricPlan } from "../types.ts";

/**
 * Whether the length cut from a fabric is proved to be the least, and with it what is bought: the least length may still
 * be dealt out to bolts so that less is bought.
 */
export function leastLength({ bound, purchase }: Pick<FabricPlan, "bound" | "purchase">): boolean {
  return bound.lengthProven && (bound.purchaseProven || purchase?.lengths === undefined);
}

/** Whether what is bought of a fabric, ready cut or off the bolt, is proved to be the least. */
export function leastBought(fabric: Pick<FabricPlan, "bound" | "purchase" | "mix">): boolean {
  return fabric.mix?.proven ?? (fabric.bound.purchaseProven || leastLength(fabric));
}
