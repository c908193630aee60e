import type { PieceUse } from "../cutlist/types.ts";
import type { FabricPlan, Plan } from "../plan/types.ts";
import { countSets, type QuiltWork, type Recipe, type UnitDemand } from "../quilt/index.ts";
import type { StepMinutes } from "../spec/index.ts";
import { handworkOf } from "./handwork.ts";

/** What one way of making takes of one fabric. */
export interface FabricFigures {
  fabric: string;
  /** As the shop says it; empty when nothing is bought. */
  buy: string;
  length: number;
  /** Hundredths; null without a price. */
  cost: number | null;
  /** No smaller purchase can do; false when the search ended before that was settled. */
  proven: boolean;
}

/** Units that can be sewn from the corners cut off. */
export interface BonusUnits {
  kind: string;
  count: number;
  /** Side before it is sewn in, in ticks. */
  unfinished: number;
}

/**
 * What one way of making a quilt takes. Cutting is all of it; seams, trims, edges and corners are those of its
 * units: joining units and blocks is the same whichever way they are made.
 */
export interface Figures {
  fabrics: FabricFigures[];
  /** Hundredths; null when a fabric has no price. */
  cost: number | null;
  /** Square ticks bought, selvages included. */
  bought: number;
  strips: number;
  /** Cuts after the strips and before sewing, and the segments cut from strip sets. */
  subcuts: number;
  /** Cuts after sewing: units cut apart, corners cut off. */
  apart: number;
  /** Lines drawn to sew along. */
  marks: number;
  seams: number;
  /** Ticks. */
  seamLength: number;
  presses: number;
  /** Cut edges off the straight grain that are handled before they lie in a seam. */
  biasEdges: number;
  trims: number;
  /** Square ticks cut off as corners. */
  corners: number;
  bonus: BonusUnits[];
  minutes: number;
  /** Whether prints with an up keep it; `spares`: by making more units than are wanted; `none`: no such print. */
  direction: "none" | "kept" | "spares";
}

const TICKS_PER_METRE = 640_000;

/** The cutting of one fabric. */
export function cuttingOf({ steps, cuts }: Pick<FabricPlan, "steps" | "cuts">): {
  strips: number;
  subcuts: number;
} {
  const strips = steps.reduce((sum, { kind, count }) => sum + (kind === "straighten" ? 0 : count), 0);
  const straightened = steps.filter(({ kind }) => kind === "straighten").length;
  return { strips, subcuts: Math.max(0, cuts.length - strips - straightened) };
}

/** The sewing of units. */
export type Sewing = Omit<Figures, "fabrics" | "cost" | "bought" | "strips" | "minutes" | "direction">;

interface Sets {
  sets: number;
  seams: number;
  length: number;
  segments: number;
}

/** Strips sewn side by side: how many sets, their long seams, and the segments cut from them. */
function stripSets(
  demand: UnitDemand,
  recipe: Recipe,
  units: number,
  usable: (fabric: string) => number,
): Sets | null {
  const found: Sets = { sets: 0, seams: 0, length: 0, segments: 0 };
  for (const set of recipe.stripSets) {
    const width = Math.min(...set.strips.map(({ role }) => usable(demand.fabrics[role] ?? "")));
    const counted = countSets(set, units, width);
    if (counted === null) return null;
    const short = counted.lastSegments > 0 ? 1 : 0;
    const seams = set.strips.length - 1;
    found.sets += counted.fullSets + short;
    found.seams += seams * (counted.fullSets + short);
    found.length += seams * (counted.fullSets * width + short * counted.lastLength);
    found.segments += set.segmentsPerUnit * units;
  }
  return found;
}

/** Units of one demand that are made by one recipe. */
export interface MadeBy {
  recipe: Recipe;
  units: number;
}

const unitsOf = ({ wants }: UnitDemand): number => wants.reduce((sum, { count }) => sum + count, 0);

/**
 * How the units of a demand are made: the wanted way, unless their pieces say that a print or the cloth needed
 * another, for all of them or for those that lie another way.
 */
export function madeBy(demand: UnitDemand, seen: readonly PieceUse[]): MadeBy[] {
  const { recipes, uses } = demand;
  const where = uses.map(({ text }) => text).join(", ");
  const counts = recipes.flatMap((recipe) => {
    const own = seen.filter(({ text }) => text.startsWith(`${where}: ${recipe.kind}, ${recipe.method}, `));
    return own.length === 0 ? [] : [{ recipe, pieces: own.reduce((sum, { count }) => sum + count, 0) }];
  });
  const [first = recipes[0]] = counts.map(({ recipe }) => recipe);
  const units = unitsOf(demand);
  if (first === undefined) return [];
  // Pieces tell how many units they make; strips do not, so they make the rest.
  let left = units;
  const others = counts.slice(1).flatMap(({ recipe, pieces }): MadeBy[] => {
    const perSet = recipe.pieces.reduce((sum, { countPerSet }) => sum + countPerSet, 0);
    const made = Math.min(left, perSet === 0 ? 0 : Math.round((pieces / perSet) * recipe.unitsPerSet));
    left -= made;
    return made === 0 ? [] : [{ recipe, units: made }];
  });
  return left === 0 ? others : [{ recipe: first, units: left }, ...others];
}

/** Everything that is said of what pieces are for. */
export function usesOf(lists: readonly { pieces: readonly { uses: PieceUse[] }[] }[]): PieceUse[] {
  return lists.flatMap(({ pieces }) => pieces.flatMap(({ uses }) => uses));
}

/** Seams between strips are sewn before segments are cut from them, in far fewer and longer seams. */
const BETWEEN_STRIPS = /for each (segment|unit)/;

/**
 * What sewing these units of a demand takes.
 * @param usable usable width of a fabric, in ticks
 */
export function sewingOf(
  demand: UnitDemand,
  { recipe, units }: MadeBy,
  usable: (fabric: string) => number,
): Sewing {
  const sets = Math.ceil(units / recipe.unitsPerSet);
  const hand = handworkOf(recipe);
  const long = recipe.stripSets.length === 0 ? null : stripSets(demand, recipe, units, usable);
  const single = recipe.seams.filter(({ what }) => long === null || !BETWEEN_STRIPS.test(what));
  const seams =
    long === null ? hand.seams * sets : long.seams + single.reduce((sum, { count }) => sum + count, 0) * sets;
  return {
    subcuts: hand.shaping * sets + (long === null ? 0 : long.segments + long.sets),
    apart: hand.apart * sets,
    marks: hand.marks * sets,
    seams,
    seamLength:
      single.reduce((sum, { length, count }) => sum + length * count, 0) * sets + (long?.length ?? 0),
    presses: long === null ? hand.presses * sets : seams,
    biasEdges: hand.biasEdges * sets,
    trims: hand.trimmed ? units : 0,
    corners: recipe.areas.corners * sets,
    bonus: recipe.bonus.map(({ kind, count, unfinished }) => ({ kind, count: count * sets, unfinished })),
  };
}

const NO_SEWING: Sewing = {
  subcuts: 0,
  apart: 0,
  marks: 0,
  seams: 0,
  seamLength: 0,
  presses: 0,
  biasEdges: 0,
  trims: 0,
  corners: 0,
  bonus: [],
};

/** Like units from corners are counted together, largest first. */
function gathered(all: readonly BonusUnits[]): BonusUnits[] {
  const found = new Map<string, BonusUnits>();
  for (const { kind, count, unfinished } of all) {
    const key = `${kind} ${unfinished}`;
    found.set(key, { kind, unfinished, count: count + (found.get(key)?.count ?? 0) });
  }
  return [...found.values()].sort((a, b) => b.unfinished - a.unfinished || (a.kind < b.kind ? -1 : 1));
}

export function addSewing(all: readonly Sewing[]): Sewing {
  const sum = (of: Exclude<keyof Sewing, "bonus">) => all.reduce((total, each) => total + each[of], 0);
  const added = Object.keys(NO_SEWING).map((name) => {
    return name === "bonus"
      ? [name, gathered(all.flatMap(({ bonus }) => bonus))]
      : [name, sum(name as Exclude<keyof Sewing, "bonus">)];
  });
  return Object.fromEntries(added) as Sewing;
}

/** Minutes for so much cutting and sewing, not rounded. */
export function timeOf(work: Sewing & { strips: number }, minutes: StepMinutes): number {
  return (
    work.strips * minutes.strip +
    (work.subcuts + work.apart) * minutes.subcut +
    work.marks * minutes.mark +
    work.seams * minutes.seam +
    (work.seamLength / TICKS_PER_METRE) * minutes.metre +
    work.presses * minutes.press +
    work.trims * minutes.trim
  );
}

/** What the purchase of one fabric comes to. */
export function fabricFigures({ name, purchase, bound }: FabricPlan): FabricFigures {
  return {
    fabric: name,
    buy: purchase?.text ?? "",
    length: purchase?.length ?? 0,
    cost: purchase === null ? 0 : purchase.cost,
    proven: bound.purchaseProven,
  };
}

/** What a plan and the units sewn for it take. */
export function makingFigures(
  plan: Pick<Plan, "fabrics" | "diagnostics">,
  work: QuiltWork,
  minutes: StepMinutes,
): Figures {
  const fabrics = plan.fabrics.map(fabricFigures);
  const seen = usesOf(plan.fabrics);
  const widths = new Map(plan.fabrics.map(({ name, usable }) => [name, usable]));
  const sewn = addSewing(
    work.units.flatMap((demand) =>
      madeBy(demand, seen).map((made) => sewingOf(demand, made, (name) => widths.get(name) ?? 0)),
    ),
  );
  const cutting = plan.fabrics.map(cuttingOf);
  const strips = cutting.reduce((sum, each) => sum + each.strips, 0);
  const subcuts = cutting.reduce((sum, each) => sum + each.subcuts, 0) + sewn.subcuts;
  const costs = fabrics.map(({ cost }) => cost);
  const spares = plan.diagnostics.some(({ code }) => code === "DIRECTION-SPARES");
  const directional = plan.fabrics.some(({ print }) => print.kind !== "none");
  return {
    fabrics,
    cost: costs.includes(null) ? null : costs.reduce<number>((sum, cost) => sum + (cost ?? 0), 0),
    bought: plan.fabrics.reduce((sum, { width, purchase }) => sum + width * (purchase?.length ?? 0), 0),
    ...sewn,
    strips,
    subcuts,
    minutes: Math.round(timeOf({ ...sewn, subcuts, strips }, minutes)),
    direction: spares ? "spares" : directional ? "kept" : "none",
  };
}
