import type { Outcome } from "../diagnostics/types.ts";
import { type PlanOptions, planSpec } from "../pipeline.ts";
import type { Solve } from "../plan/index.ts";
import type { Plan, Purchase } from "../plan/types.ts";
import type { Spec } from "../spec/index.ts";
import type { Stash } from "../stash/index.ts";
import { planWith } from "./plan-with.ts";

/** How far the drawer goes for one fabric of a quilt. */
export interface Suited {
  fabric: string;
  /** `partly`: some of it is used, or the purchase is smaller for it. */
  covers: "all" | "partly" | "nothing";
  /** Pieces of cloth that are cut into. */
  used: number;
  /** Still to buy; null when nothing is. */
  buy: Purchase | null;
  /** To buy without the drawer. */
  without: Purchase | null;
}

/** Which fabrics of a quilt the drawer covers: planned with it and without it. */
export async function suitsOf(
  spec: Spec,
  stash: Stash,
  options: PlanOptions,
  solve: Solve,
): Promise<Outcome<{ plan: Plan; fabrics: Suited[] }>> {
  const first = await planWith(spec, options, { stash, fatQuarters: false }, solve);
  if (first.value === null) return { value: null, diagnostics: first.diagnostics };
  const { value: without } = await planSpec(spec, options, solve);
  const { plan } = first.value;
  const fabrics = plan.fabrics.map(({ name, lays, purchase }): Suited => {
    const used = lays.filter(({ source }) => source === "fixed").length;
    const covers = used === 0 ? "nothing" : purchase === null ? "all" : "partly";
    const bought = without?.fabrics.find((fabric) => fabric.name === name)?.purchase ?? null;
    return { fabric: name, covers, used, buy: purchase, without: bought };
  });
  return { value: { plan, fabrics }, diagnostics: first.diagnostics };
}
