import type { Outcome } from "../../diagnostics/types.ts";
import { formatMeasure } from "../../length/index.ts";
import { type PlanOptions, planSpec } from "../../pipeline.ts";
import type { Solve } from "../../plan/index.ts";
import type { KitSort } from "../../plan/kit-types.ts";
import type { FabricPlan, Plan, Purchase } from "../../plan/types.ts";
import type { Spec } from "../../spec/index.ts";
import { quickSolve, withoutEasing } from "../quick-solve.ts";
import { type ClassPlanned, planKits } from "./plan-class.ts";

/** One fabric of a class: bought and cut for all kits at once, against each kit bought for itself. */
interface KitFabric {
  fabric: string;
  /** Null when all comes from cloth to hand. */
  together: Purchase | null;
  /** Hundredths, pieces sold ready cut among it; null without a price. */
  cost: number | null;
  /** What all kits need that are bought one by one. */
  separately: { length: number; text: string; cost: number | null } | null;
  currency: string;
  /** For each sort of kit: what one alone would buy, and what of the price is its own, in hundredths. */
  each: { alone: Purchase | null; aloneCost: number | null; share: number | null }[];
}

/** Kits of a class that are alike. */
export interface KitsAlike {
  kits: number;
  /** Null where all kits of the class are alike. */
  sort: KitSort | null;
  /** The plan of one kit by itself. */
  single: Plan;
  /** How one kit is sewn from what lies in it. */
  dealt: Plan;
}

/** Kits for a class. */
export interface Kits {
  kits: number;
  /** The plan of everything cut together. */
  batch: Plan;
  /** One where all kits are alike. */
  sorts: KitsAlike[];
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
  return { value: kitsOf(batch, [{ kits, sort: null, single, dealt: single }]), diagnostics: [] };
}

/** The same for kits of several sorts. */
export async function compareSorts(
  planned: ClassPlanned,
  options: PlanOptions,
  solve: Solve,
): Promise<Outcome<Kits>> {
  const { value, diagnostics } = await planKits(planned, options, solve);
  if (value === null) return { value, diagnostics };
  const sorts = value.map(({ sort, alone, dealt }) => ({ kits: sort.kits, sort, single: alone, dealt }));
  return { value: kitsOf(planned.batch, sorts), diagnostics: [] };
}

/** What a fabric costs, pieces sold ready cut among it. */
function costOf({ mix, purchase }: FabricPlan): number | null {
  return mix === undefined ? (purchase?.cost ?? null) : mix.cost;
}

function kitsOf(batch: Plan, sorts: KitsAlike[]): Kits {
  const fabrics = batch.fabrics.map((fabric): KitFabric => {
    const own = sorts.map(({ single }) => single.fabrics.find(({ name }) => name === fabric.name));
    const alone = own.map((each) => each?.purchase ?? null);
    const costs = own.map((each) => (each === undefined ? 0 : costOf(each)));
    const sum = (of: (i: number) => number) => sorts.reduce((all, { kits }, i) => all + kits * of(i), 0);
    const length = sum((i) => alone[i]?.length ?? 0);
    const cost = costOf(fabric);
    const shares = sharesOf(fabric, sorts);
    return {
      fabric: fabric.name,
      together: fabric.purchase,
      cost,
      separately:
        length === 0
          ? null
          : {
              length,
              text: formatMeasure(length, fabric.sold.unit),
              cost: costs.includes(null) ? null : sum((i) => costs[i] ?? 0),
            },
      currency: fabric.mix?.currency || fabric.price?.currency || "",
      each: sorts.map((_, i) => ({
        alone: alone[i] ?? null,
        aloneCost: costs[i] ?? null,
        share: cost === null ? null : cost * (shares[i] ?? 0),
      })),
    };
  });
  return { kits: sorts.reduce((all, { kits }) => all + kits, 0), batch, sorts, fabrics };
}

/** The part of a fabric's price that is one kit's: as its pieces are of all that is cut, by area. */
function sharesOf({ pieces }: FabricPlan, sorts: readonly KitsAlike[]): number[] {
  const [only] = sorts;
  if (sorts.length === 1 && only !== undefined) return [1 / only.kits];
  const area = (counted: (piece: FabricPlan["pieces"][number]) => number) =>
    pieces.reduce((sum, piece) => sum + counted(piece) * piece.across * piece.along, 0);
  const all = area(({ count }) => count);
  return sorts.map((_, i) => area(({ inKits }) => inKits?.[i]?.each ?? 0) / all);
}
