import type { CutList } from "../cutlist/types.ts";
import { hasPlan, type StockAims } from "../engine/index.ts";
import type { PackingProblem } from "../engine/types.ts";
import { INCH } from "../length/measures.ts";
import { nth } from "../length/nth.ts";
import type { Ticks } from "../length/types.ts";
import { lengthLimit, purchaseFor, TRADE_SIZES, usableWidth } from "../stock/index.ts";
import type { Chosen } from "./choose-cut-lists.ts";
import type { FixedPiece } from "./pose-problem.ts";

/**
 * Cloth to hand in the order a maker uses it up: what is cut already, scraps, what is sold as a quarter, lengths of the
 * bolt. Common practice, no source.
 */
export const CLASSES = { cut: 0, scrap: 1, quarter: 2, length: 3 } as const;

/** A piece with a side so long is a length rather than a scrap: 1 yd. Common practice, no source. */
const LENGTH_FROM = 36 * INCH;

/** Most portions of a bolt looked at, and how many times its area a fabric without a plan may take. */
const MOST_PORTIONS = 2000;
const TIMES_AREA = 2;

/** How precious a piece is; what is cut already is used up first. */
export function classOf(
  { name, across, along, strip = false, begun = false }: FixedPiece,
  usable: Ticks,
): number {
  if (strip || begun || / square$/.test(name)) return CLASSES.cut;
  if (TRADE_SIZES.some((size) => name === size.name || name.endsWith(` ${size.name}`)))
    return CLASSES.quarter;
  return across >= usable || Math.max(across, along) >= LENGTH_FROM ? CLASSES.length : CLASSES.scrap;
}

/**
 * What is to be least, in order: the price of all that is bought, then the area cut into of own lengths, quarters, scraps
 * and of what is cut already, a piece counted whole. Of the bolt nothing dearer is looked at than the plan there is.
 */
export function stockAims(chosen: Chosen, fixedStock: readonly FixedPiece[]): StockAims {
  const { cutList, problem } = chosen;
  const usable = usableWidth(cutList.fabric);
  const price = fixedStock.map((piece) => (piece.from === "shop" ? (piece.price ?? 0) : 0));
  const areas = [CLASSES.length, CLASSES.quarter, CLASSES.scrap, CLASSES.cut].map((own) =>
    fixedStock.map((piece) =>
      piece.from !== "shop" && classOf(piece, usable) === own ? piece.across * piece.along : 0,
    ),
  );
  const aims = [price, ...areas.filter((costs) => costs.some((cost) => cost > 0))].map(inSmallNumbers);
  return { aims, portions: problem.roll === null ? [{ length: 0, price: 0 }] : portionsOf(cutList, chosen) };
}

/** Areas in ticks are too large to be added up safely: their common part is left out. */
function inSmallNumbers(costs: readonly number[], aim: number): number[] {
  if (aim === 0) return [...costs];
  const common = costs.reduce(gcd, 0) || 1;
  return costs.map((cost) => cost / common);
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

function portionsOf(cutList: CutList, { problem, result }: Chosen): StockAims["portions"] {
  const { fabric } = cutList;
  const area = problem.items.reduce((sum, { across, along, demand }) => sum + across * along * demand, 0);
  const longest = Math.max(...problem.items.map(({ across, along }) => Math.max(across, along)));
  const most = hasPlan(result)
    ? result.rollLength
    : TIMES_AREA * Math.ceil(area / Math.max(1, problem.roll?.width ?? 1)) + longest;
  const portions = [{ length: 0, price: 0 }];
  for (let used = 1; used <= most && portions.length < MOST_PORTIONS; ) {
    const { length, cost } = purchaseFor(fabric, used);
    const reach = Math.max(lengthLimit(fabric, length), used);
    // Without a price the steps themselves are counted.
    portions.push({ length: reach, price: cost ?? portions.length });
    used = reach + 1;
  }
  return portions;
}

/** The problem with only as much of every kind of cloth as is cut into; what `stays` lies there as before. */
export function onlyUsed(
  problem: PackingProblem,
  used: readonly { count: number }[],
  stays: (sheet: number) => boolean = () => false,
): PackingProblem {
  const left = (sheet: number) => !stays(sheet);
  return {
    ...problem,
    sheets: problem.sheets.map((one, i) => (left(i) ? { ...one, available: nth(used, i).count } : one)),
  };
}
