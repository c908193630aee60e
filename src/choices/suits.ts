import type { Outcome } from "../diagnostics/types.ts";
import { type PlanOptions, planSpec } from "../pipeline.ts";
import type { Solve } from "../plan/index.ts";
import type { FabricPlan, Plan, Purchase } from "../plan/types.ts";
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
  /** Pieces still to buy ready cut. */
  readyCut: { name: string; count: number }[];
  /** To buy without the drawer. */
  without: Purchase | null;
  withoutReadyCut: { name: string; count: number }[];
}

function readyCutOf(fabric: FabricPlan | undefined): Suited["readyCut"] {
  const shop = (fabric?.stock ?? []).filter(({ from, used }) => from === "shop" && used > 0);
  return shop.map(({ name, used }) => ({ name, count: used }));
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
  const fabrics = plan.fabrics.map((fabric): Suited => {
    const { name, lays, purchase, mix, stock = [] } = fabric;
    const fromStash = new Set(stock.filter(({ from }) => from === "stash").map((kind) => kind.name));
    const used = lays.filter((lay) => lay.source === "fixed" && fromStash.has(lay.name)).length;
    const isBought = purchase !== null || mix !== undefined;
    const covers = used === 0 ? "nothing" : isBought ? "partly" : "all";
    const before = without?.fabrics.find((other) => other.name === name);
    return {
      fabric: name,
      covers,
      used,
      buy: purchase,
      readyCut: readyCutOf(fabric),
      without: before?.purchase ?? null,
      withoutReadyCut: readyCutOf(before),
    };
  });
  return { value: { plan, fabrics }, diagnostics: first.diagnostics };
}
