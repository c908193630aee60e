import type { Purpose } from "../../diagnostics/purposes.ts";
import type { FabricPlan, Plan } from "../../plan/types.ts";

/** Every purpose that a piece serves: one run may be for several, or a shorter strip of it. */
function each(purpose: Purpose): Purpose[] {
  if (purpose.for === "several") return purpose.all.flatMap(each);
  return purpose.for === "shorter-strip" ? each(purpose.of) : [purpose];
}

/** Pieces of a fabric that are cut for a purpose. */
export function bagsFor(
  plan: Plan,
  fabric: string,
  serves: (purpose: Purpose) => boolean,
): FabricPlan["pieces"] {
  const own = plan.fabrics.find(({ name }) => name === fabric)?.pieces ?? [];
  return own.filter(({ uses }) => uses.some(({ purpose }) => each(purpose).some(serves)));
}

/** Pieces of a fabric that are cut for just this. */
export function bagsForUse(plan: Plan, fabric: string, use: Purpose | null): FabricPlan["pieces"] {
  if (use === null) return [];
  const own = plan.fabrics.find(({ name }) => name === fabric)?.pieces ?? [];
  const key = JSON.stringify(use);
  const found = bagsFor(plan, fabric, (purpose) => JSON.stringify(purpose) === key);
  // Strips of other lengths that are sewn into the same run are found by the run.
  const runs = found.flatMap(({ joined }) => (joined?.run === undefined ? [] : [joined.run]));
  return own.filter(
    (piece) => found.includes(piece) || (piece.joined?.run !== undefined && runs.includes(piece.joined.run)),
  );
}
