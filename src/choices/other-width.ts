import type { Outcome } from "../diagnostics/types.ts";
import { formatMeasure } from "../length/index.ts";
import type { Ticks } from "../length/types.ts";
import type { PlanOptions } from "../pipeline.ts";
import type { Solve } from "../plan/index.ts";
import type { FabricPlan, Plan } from "../plan/types.ts";
import type { Spec } from "../spec/index.ts";
import { planWith, type Sources } from "./plan-with.ts";
import { quickSolve, withoutEasing } from "./quick-solve.ts";

/** One fabric as the file has it and on the width tried. */
export interface WidthTried {
  fabric: string;
  filed: FabricPlan;
  tried: FabricPlan;
  /** Length more to buy on the width tried; less than 0 when it is less. */
  more: Ticks;
  /** The same as the shop says it, without its sign; empty when nothing changes. */
  text: string;
  /** In hundredths; null where a price is missing. */
  cost: number | null;
}

/** What another width changes: the plan on it beside the plan of the file as it is. */
export async function compareWidths(
  spec: Spec,
  tried: Plan,
  options: PlanOptions,
  sources: Sources,
  solve: Solve,
): Promise<Outcome<WidthTried[]>> {
  const asFiled = { ...options, usable: null };
  const { value, diagnostics } = await planWith(spec, asFiled, sources, withoutEasing(quickSolve(solve)));
  if (value === null) return { value: null, diagnostics };
  const rows = tried.fabrics.flatMap((fabric): WidthTried[] => {
    const filed = value.plan.fabrics.find(({ name }) => name === fabric.name);
    if (filed === undefined) return [];
    const more = (fabric.purchase?.length ?? 0) - (filed.purchase?.length ?? 0);
    const [now, before] = [costOf(fabric), costOf(filed)];
    const text = more === 0 ? "" : formatMeasure(Math.abs(more), fabric.sold.unit);
    return [
      {
        fabric: fabric.name,
        filed,
        tried: fabric,
        more,
        text,
        cost: now === null || before === null ? null : now - before,
      },
    ];
  });
  return { value: rows, diagnostics: [] };
}

function costOf({ mix, purchase, price }: FabricPlan): number | null {
  if (mix !== undefined) return mix.cost;
  return purchase === null && price !== null ? 0 : (purchase?.cost ?? null);
}
