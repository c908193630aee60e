import { letterAt } from "../cutlist/index.ts";
import type { CutList } from "../cutlist/types.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import { type PlanOptions, planListed } from "../pipeline.ts";
import type { Solve } from "../plan/index.ts";
import type { FabricPlan } from "../plan/types.ts";
import type { Spec } from "../spec/index.ts";

/** The plan of each fabric, or why there is none. */
type FabricsPlanned = { fabrics: FabricPlan[] } | { fabrics: null; diagnostics: Diagnostic[] };

export type PlanFabrics = (lists: readonly CutList[]) => Promise<FabricsPlanned>;

/** Letters go on from fabric to fabric; here they begin anew, so that other fabrics' bags change no plan. */
function lettered({ fabric, pieces }: CutList): CutList {
  return { fabric, pieces: pieces.map((piece, i) => ({ ...piece, letter: letterAt(i) })) };
}

/**
 * Plans fabrics as they would be planned together, and each cut list once: choices that leave a fabric alone
 * share its plan.
 * @param options with an effort, which does not depend on how many fabrics are planned at a time
 */
export function fabricPlanner(
  spec: Spec,
  options: PlanOptions & { effort: number },
  solve: Solve,
): PlanFabrics {
  const known = new Map<string, FabricPlan>();
  const keyOf = ({ fabric, pieces }: CutList) => JSON.stringify([fabric.name, pieces]);
  return async (given) => {
    const lists = given.map(lettered);
    const open = lists.filter((list) => !known.has(keyOf(list)));
    if (open.length > 0) {
      const listed = { cutLists: open, top: null, making: null };
      const { value, diagnostics } = await planListed(spec, listed, [], options, solve);
      if (value === null) return { fabrics: null, diagnostics };
      open.forEach((list, i) => {
        const plan = value.fabrics[i];
        if (plan !== undefined) known.set(keyOf(list), plan);
      });
    }
    return {
      fabrics: lists.map((list) => {
        const plan = known.get(keyOf(list));
        if (plan === undefined) throw new Error(`no plan of ${list.fabric.name}`);
        return plan;
      }),
    };
  };
}
