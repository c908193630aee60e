import type { CutList } from "../cutlist/types.ts";
import { atMost, hasPlan, type StockAims } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits } from "../engine/types.ts";
import { nth } from "../length/nth.ts";
import { purchaseFor, usableWidth } from "../stock/index.ts";
import type { Chosen } from "./choose-cut-lists.ts";
import { stackLimit } from "./lays/flag-steps.ts";
import { type FixedPiece, posePackingProblem } from "./pose-problem.ts";
import type { PlanSettings, Solve } from "./request.ts";
import { onlyUsed, stockAims } from "./stock-aims.ts";
import type { Mix, MixChoice } from "./types.ts";

/** A fabric whose yardage is to be weighed against cloth sold ready cut. */
export interface Weighed {
  /** The plan from the bolt alone, cloth to hand used first. */
  chosen: Chosen;
  /** All of them priced. */
  offers: readonly FixedPiece[];
}

/** A fabric as it is bought for least money. */
export interface Mixed {
  chosen: Chosen;
  mix: Mix;
}

/** Most counted milliseconds for the mixes of a fabric, and as many times what a plan gets: one choice decides on money. */
const TOGETHER = 2800;
const TIMES = 3;

/**
 * The cheapest mix of pieces ready cut and yardage at the prices given, the shop's rounding included; of equal mixes the
 * one that leaves precious cloth whole. One search over all stock: what speaks against one choice mostly speaks against
 * many.
 */
export async function cheapestMix(
  fabrics: readonly Weighed[],
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
): Promise<Mixed[]> {
  const posed = fabrics.map((one) => pose(one, settings));
  const results = await solve(
    posed.map(({ problem, choice }) => {
      return { kind: "choose", problem, choice, limits: atMost(limits, TOGETHER, TIMES) };
    }),
  );
  return fabrics.map((one, i) => conclude(one, nth(posed, i), nth(results, i)));
}

interface Posed {
  problem: PackingProblem;
  fixedStock: FixedPiece[];
  choice: StockAims;
}

/** The cloth to hand and everything offered, with what each piece costs. */
function pose({ chosen, offers }: Weighed, settings: PlanSettings): Posed {
  const { cutList } = chosen;
  const fixedStock = [...chosen.fixedStock, ...offers];
  const sources = { usable: usableWidth(cutList.fabric), fixedStock };
  const problem = posePackingProblem(cutList, sources, settings.style, stackLimit(settings));
  return { problem, fixedStock, choice: stockAims(chosen, fixedStock) };
}

function conclude({ chosen, offers }: Weighed, { problem, fixedStock }: Posed, found: PackingResult): Mixed {
  const { cutList, result: alone } = chosen;
  const before = hasPlan(alone) ? boltCost(cutList, alone.rollLength) : Infinity;
  const [price] = found.aims ?? [];
  const currency = currencyOf(offers);
  if (price === undefined || price.value > before) {
    const mix: Mix = {
      ...{ cost: before, currency },
      proven: false,
      choices: [told(chosen, [], alone, before)],
    };
    return { chosen, mix };
  }
  const used = usedOf({ result: found, fixedStock });
  const bought = used.flatMap(({ piece, count }) =>
    piece.from === "shop" && count > 0 ? [{ name: piece.name, count }] : [],
  );
  const choices = [told(chosen, bought, found, price.value)];
  // The yardage alone is told beside what is cheaper.
  if (bought.length > 0 && Number.isFinite(before)) choices.push(told(chosen, [], alone, before));
  const mix: Mix = {
    ...{ cost: price.value, currency, choices },
    proven: chosen.onlyWay && price.value === price.bound,
  };
  // Only as many are on the table as are cut into, so that making the work easier takes no more.
  const settled = {
    ...{ ...chosen, result: found, least: Math.min(found.bound.value, found.rollLength), ordered: true },
    problem: onlyUsed(problem, used),
    fixedStock: fixedStock.map((piece, i) =>
      piece.from === "shop" ? { ...piece, available: nth(used, i).count } : piece,
    ),
  };
  return { chosen: settled, mix };
}

function told(
  { cutList }: Chosen,
  bought: MixChoice["bought"],
  { rollLength }: PackingResult,
  cost: number,
): MixChoice {
  const yardage = rollLength === 0 ? null : purchaseFor(cutList.fabric, rollLength).text;
  return { bought, yardage, cost };
}

function boltCost({ fabric }: CutList, used: number): number {
  return used === 0 ? 0 : (purchaseFor(fabric, used).cost ?? 0);
}

/** How many of each kind of cloth a packing cuts into. */
export function usedOf({ result, fixedStock }: { result: PackingResult; fixedStock: readonly FixedPiece[] }) {
  return fixedStock.map((piece, sheet) => {
    const own = result.layouts.filter((layout) => layout.stock === "sheet" && layout.sheet === sheet);
    return { piece, count: own.reduce((sum, { count }) => sum + count, 0) };
  });
}

function currencyOf(pieces: readonly FixedPiece[]): string {
  return pieces.find(({ currency = "" }) => currency !== "")?.currency ?? "";
}

/** The purchase of a fabric that is cut from pieces alone; null when none of them is bought. */
export function mixOfPieces({ problem, result, fixedStock, onlyWay }: Chosen): Mix | null {
  if (problem.roll !== null || fixedStock.every(({ from }) => from !== "shop")) return null;
  const bought = usedOf({ result, fixedStock }).filter(
    ({ piece, count }) => piece.from === "shop" && count > 0,
  );
  const prices = bought.map(({ piece }) => piece.price ?? null);
  const cost = bought.reduce((sum, { piece, count }) => sum + (piece.price ?? 0) * count, 0);
  const priced = !prices.includes(null);
  const told = bought.map(({ piece, count }) => ({ name: piece.name, count }));
  return {
    cost: priced ? cost : null,
    currency: currencyOf(bought.map(({ piece }) => piece)),
    proven: onlyWay && result.status === "proven",
    choices: priced ? [{ bought: told, yardage: null, cost }] : [],
  };
}
