import type { PackingResult, StockLayout } from "../engine/types.ts";
import { nth } from "../length/nth.ts";
import type { Ticks } from "../length/types.ts";
import { afterWashing, leastPurchase, usableWidth } from "../stock/index.ts";
import { usedOf } from "./cheapest-mix.ts";
import type { Chosen } from "./choose-cut-lists.ts";
import { asStock } from "./fixed-pieces.ts";
import { buildLay, type Cloth, cuttingOf, laidItems } from "./lays/build-lay.ts";
import { listSteps } from "./lays/list-steps.ts";
import { orderCuts } from "./lays/order-cuts.ts";
import { listLeftovers, markKept, sumWaste } from "./lays/sum-waste.ts";
import { lengthsOf, type OnBolt, ontoBolts, purchaseOf } from "./packing/onto-bolts.ts";
import { UNSQUARED } from "./pose-problem.ts";
import type { PlanSettings } from "./request.ts";
import { mistakesIn } from "./spoiled-strip.ts";
import type { FabricPlan, FixedStock, Lay, Mix, PlanBound, Purchase } from "./types.ts";

/**
 * Everything about one fabric, from its final packing.
 * @param known.thumb length by the rule of thumb; null when there is none
 * @param known.mix how the purchase was weighed; null when nothing was
 * @param kits how many quilts are cut together
 */
export function assembleFabric(
  chosen: Chosen,
  result: PackingResult,
  { thumb, mix }: { thumb: Ticks | null; mix: Mix | null },
  settings: PlanSettings,
  kits: number,
): FabricPlan {
  const { fabric, pieces } = chosen.cutList;
  const usable = usableWidth(fabric);
  const stock = stockOf(chosen, result);
  const bolts = ontoBolts(fabric, result);
  const purchase = purchaseOf(fabric, bolts);
  const lays = buildLays(chosen, result, bolts, purchase, settings).map((lay) => ({
    ...lay,
    root: markKept(lay.root, settings.keepFrom),
  }));
  const lengths = purchase === null ? [] : lengthsOf(purchase).map(({ length }) => length);
  const bought = purchase === null ? null : { width: fabric.width, lengths, selvage: fabric.selvage };
  const { bolt, ...endless } = fabric;
  const ends = bolt !== undefined && (bolt.told || bolts.length > 1);
  return {
    name: fabric.name,
    colour: fabric.colour,
    note: fabric.note,
    ...(fabric.onPrintedLines === undefined ? {} : { onPrintedLines: fabric.onPrintedLines }),
    print: fabric.print,
    width: fabric.width,
    selvage: fabric.selvage,
    usable,
    shrinkAcross: fabric.shrinkAcross,
    shrinkAlong: fabric.shrinkAlong,
    straighten: fabric.straighten,
    spare: fabric.spare,
    sold: fabric.sold,
    ...(ends ? { bolt: bolt.length } : {}),
    price: fabric.price,
    pieces,
    lays,
    ...(stock.length === 0 ? {} : { stock }),
    ...(mix === null ? {} : { mix: asBought(mix, stock, purchase) }),
    purchase,
    bound: boundOf(chosen, result, purchase, thumb, settings.style),
    steps: listSteps(lays, settings),
    cuts: orderCuts(lays),
    waste: sumWaste(lays, pieces, bought),
    leftovers: listLeftovers(lays, pieces, settings.keepFrom, kits),
    sturdiness: {
      narrowestUsable: null,
      spareLength: uncutLength(lays),
      ...(purchase === null ? {} : mistakesIn(ends ? fabric : endless, lays, bolts, purchase)),
    },
  };
}

/** The choice taken as it is bought in the end: making the work easier may have found a smaller purchase still. */
function asBought(mix: Mix, stock: readonly FixedStock[], purchase: Purchase | null): Mix {
  const [taken, ...others] = mix.choices;
  if (mix.cost === null || taken === undefined) return mix;
  const paid = stock.filter(({ from, used }) => from === "shop" && used > 0);
  const cost = paid.reduce((sum, { price, used }) => sum + (price ?? 0) * used, purchase?.cost ?? 0);
  const bought = paid.map(({ name, used }) => ({ name, count: used }));
  return { ...mix, cost, choices: [{ bought, yardage: purchase?.text ?? null, cost }, ...others] };
}

/** What was offered in fixed sizes, and how much of it is cut into. */
function stockOf({ fixedStock }: Chosen, result: PackingResult): FixedStock[] {
  return usedOf({ result, fixedStock }).map(({ piece, count }) => asStock(piece, count));
}

function buildLays(
  { cutList, problem, fixedStock }: Chosen,
  result: PackingResult,
  bolts: readonly OnBolt[],
  purchase: Purchase | null,
  settings: PlanSettings,
): Lay[] {
  const cutting = cuttingOf(settings);
  const { fabric } = cutList;
  const lays: Lay[] = [];
  const items = laidItems(problem.items, cutList.pieces);
  // Cloth in the order it was given: what is there already before what is bought.
  for (const layout of [...result.layouts].sort((a, b) => a.sheet - b.sheet)) {
    const sheet = layout.stock === "sheet" ? fixedStock[layout.sheet] : undefined;
    if (sheet === undefined) continue;
    const { name, across, along, strip = false, squareUp = UNSQUARED } = sheet;
    const straighten = layout.firstCut === "along" ? squareUp.across : squareUp.along;
    const cloth: Cloth = { source: "fixed", name, across, along, straighten, strip, ...cutting };
    const lay = buildLay(cloth, [layout], items);
    for (let i = 0; i < layout.count; i++) lays.push(lay);
  }
  for (const [i, { length }] of (purchase === null ? [] : lengthsOf(purchase)).entries()) {
    const cloth: Cloth = {
      source: "bolt",
      name: bolts.length === 1 ? "bolt" : `bolt ${i + 1}`,
      across: usableWidth(fabric),
      along: afterWashing(length, fabric.shrinkAlong),
      straighten: fabric.straighten,
      strip: false,
      ...cutting,
    };
    const { sections } = nth(bolts, i);
    const layout: StockLayout = { stock: "roll", sheet: -1, count: 1, firstCut: "across", sections };
    lays.push(buildLay(cloth, [layout], items));
  }
  return lays;
}

/** A purchase is proved when even the least length would be rounded up to as much. */
function boundOf(
  { least, cutList }: Chosen,
  { rollLength: used }: PackingResult,
  purchase: Purchase | null,
  thumb: Ticks | null,
  style: PlanBound["style"],
): PlanBound {
  return {
    used,
    least,
    style,
    lengthProven: used === least,
    purchaseProven: purchase === null || leastPurchase(cutList.fabric, least) === purchase.length,
    ruleOfThumb: thumb ?? used,
  };
}

function uncutLength(lays: readonly Lay[]): Ticks {
  const ends = lays.flatMap(({ source, root: { parts } }) => (source === "bolt" ? parts : []));
  return ends.reduce((sum, { cause, along }) => (cause === "uncut-end" ? sum + along : sum), 0);
}
