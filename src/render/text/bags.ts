import type { FabricPlan, Plan } from "../../plan/types.ts";

/** Pieces of a fabric that are cut for a use, by the words the cut list has for it. */
export function bagsForUse(plan: Plan, fabric: string, use: string): FabricPlan["pieces"] {
  if (use === "") return [];
  const own = plan.fabrics.find(({ name }) => name === fabric)?.pieces ?? [];
  // A piece that serves several uses has them in one, parted so.
  return own.filter(({ uses }) => uses.some(({ text }) => text.split("; ").includes(use)));
}
