import type { Listed } from "../../cutlist/index.ts";
import type { Ticks } from "../../length/types.ts";
import { leastBought } from "../../plan/proved/index.ts";
import type { FabricPlan, Plan } from "../../plan/types.ts";
import type { StepMinutes } from "../../spec/index.ts";
import { handworkOf } from "./handwork.ts";

/** What one way of making takes of one fabric. */
export interface FabricFigures {
  fabric: string;
  /** As the shop says it; empty when nothing is bought. */
  buy: string;
  length: Ticks;
  /** Hundredths; null without a price. */
  cost: number | null;
  /** No smaller purchase can do; false when the search ended before that was settled. */
  proven: boolean;
}

/** Units that can be sewn from the corners cut off. */
interface BonusUnits {
  kind: string;
  count: number;
  /** Side before it is sewn in. */
  unfinished: Ticks;
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
  seamLength: Ticks;
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
function stripSets({ recipe, cover, wants }: Listed): Sets | null {
  const batches = cover.batches.filter((batch) => batch.kind === "strips");
  if (batches.length === 0) return null;
  const found: Sets = { sets: 0, seams: 0, length: 0, segments: 0 };
  for (const { set: index, want, counted } of batches) {
    const set = recipe.stripSets[index];
    if (set === undefined) continue;
    const short = counted.lastSegments > 0 ? 1 : 0;
    const seams = set.strips.length - 1;
    found.sets += counted.fullSets + short;
    found.seams += seams * (counted.fullSets + short);
    found.length += seams * (counted.fullSets * counted.fullLength + short * counted.lastLength);
    found.segments += set.segmentsPerUnit * (wants[want]?.count ?? 0);
  }
  return found;
}

/** What sewing the units of a demand takes that are made one way. */
export function sewingOf(listed: Listed): Sewing {
  const { recipe, wants, cover } = listed;
  const units = wants.reduce((sum, { count }) => sum + count, 0);
  const laid = cover.batches.reduce((sum, batch) => sum + (batch.kind === "sets" ? batch.sets : 0), 0);
  const sets = laid > 0 ? laid : Math.ceil(units / recipe.unitsPerSet);
  const hand = handworkOf(recipe);
  const long = stripSets(listed);
  // Seams between strips are sewn before segments are cut from them, in far fewer and longer seams.
  const single = recipe.seams.filter(({ strips }) => long === null || strips !== true);
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
function fabricFigures(fabric: FabricPlan): FabricFigures {
  const { name, purchase } = fabric;
  return {
    fabric: name,
    buy: purchase?.text ?? "",
    length: purchase?.length ?? 0,
    cost: purchase === null ? 0 : purchase.cost,
    proven: leastBought(fabric),
  };
}

/** What a plan and the units sewn for it take. */
export function makingFigures(
  plan: Pick<Plan, "fabrics" | "diagnostics">,
  made: readonly Listed[],
  minutes: StepMinutes,
): Figures {
  const fabrics = plan.fabrics.map(fabricFigures);
  const sewn = addSewing(made.map(sewingOf));
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
