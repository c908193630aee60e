import type { FabricPlan, Plan } from "../../plan/types.ts";

/** Pieces of a fabric that are cut for a use, by the words the cut list has for it. */
export function bagsForUse(plan: Plan, fabric: string, use: string): FabricPlan["pieces"] {
  if (use === "") return [];
  const own = plan.fabrics.find(({ name }) => name === fabric)?.pieces ?? [];
  // A piece that serves several uses has them in one, parted so.
  // A run of shorter strips alone says so behind its use.
  const named = [use, `${use} (a shorter strip)`];
  const found = own.filter(({ uses }) =>
    uses.some(({ text }) => text.split("; ").some((each) => named.includes(each))),
  );
  // Strips of other lengths that are sewn into the same run are found by the run.
  const runs = found.flatMap(({ joined }) => (joined?.run === undefined ? [] : [joined.run]));
  return own.filter(
    (piece) => found.includes(piece) || (piece.joined?.run !== undefined && runs.includes(piece.joined.run)),
  );
}
