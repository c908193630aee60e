import { formatMeasure } from "../length/format.ts";
import { TICKS_PER } from "../length/measures.ts";
import type { Ticks } from "../length/types.ts";
import type { BoltLength, Bought, SoldCloth } from "./types.ts";
import { afterWashing, beforeWashing } from "./usable-width.ts";

/**
 * What to buy so that `used` can be cut: the straightened end and the spare are added, then what washing takes, then
 * the sum is rounded up to what the shop sells.
 */
export function purchaseFor(fabric: SoldCloth, used: Ticks): Bought {
  const needed = beforeWashing(used + fabric.straighten + fabric.spare, fabric.shrinkAlong);
  const { step, least, unit } = fabric.sold;
  const length = Math.ceil(Math.max(needed, least) / step) * step;
  return { length, text: formatMeasure(length, unit), needed, cost: costOf(fabric, length) };
}

/** The longest that is sold of one bolt, in whole steps; null where bolts do not end. */
function longestSold({ bolt, sold: { step } }: SoldCloth): Ticks | null {
  return bolt === undefined ? null : Math.floor(bolt.length / step) * step;
}

/** The most that can be cut from one bolt with no spare in it; null where bolts do not end. */
export function mostOfBolt(fabric: SoldCloth): Ticks | null {
  const longest = longestSold(fabric);
  return longest === null ? null : lengthLimit({ ...fabric, spare: 0 }, longest);
}

/** Whether a purchase is more than one bolt has. */
export function passesBolt(fabric: SoldCloth, length: Ticks): boolean {
  const longest = longestSold(fabric);
  return longest !== null && length > longest;
}

/** What to buy so that each of `used` can be cut from a bolt of its own. The spare is bought with the last of them. */
export function purchaseOfLengths(fabric: SoldCloth, used: readonly Ticks[]): Bought {
  const [only = 0, another] = used;
  if (another === undefined) return purchaseFor(fabric, only);
  const last = used.length - 1;
  const lengths = used.map((length, i): BoltLength => {
    const { cost: _, ...bought } = purchaseFor(i === last ? fabric : { ...fabric, spare: 0 }, length);
    return bought;
  });
  const length = lengths.reduce((sum, one) => sum + one.length, 0);
  const needed = lengths.reduce((sum, one) => sum + one.needed, 0);
  return {
    length,
    text: formatMeasure(length, fabric.sold.unit),
    needed,
    cost: costOf(fabric, length),
    lengths,
  };
}

/**
 * No less can be bought for so much to be cut, however it is dealt out to bolts: each gives at most a bolt less its
 * straightened end, and every length is a whole number of the shop's steps.
 */
export function leastPurchase(fabric: SoldCloth, used: Ticks): Ticks {
  const one = purchaseFor(fabric, used).length;
  const most = mostOfBolt(fabric);
  if (!passesBolt(fabric, one) || most === null || most <= 0) return one;
  const bolts = Math.ceil((used + fabric.spare) / most);
  const { step, least } = fabric.sold;
  const needed = beforeWashing(used + bolts * fabric.straighten + fabric.spare, fabric.shrinkAlong);
  return Math.max(Math.ceil(needed / step) * step, bolts * Math.ceil(least / step) * step);
}

/** The most that can be cut from a bought length. Negative when it does not even give the straightened end. */
export function lengthLimit(fabric: SoldCloth, purchasedLength: Ticks): Ticks {
  return afterWashing(purchasedLength, fabric.shrinkAlong) - fabric.straighten - fabric.spare;
}

/** Price of a length in hundredths, rounded to the nearest (a half goes up); null without a price. */
export function costOf(fabric: Pick<SoldCloth, "price">, length: Ticks): number | null {
  if (fabric.price === null) return null;
  const per = BigInt(TICKS_PER[fabric.price.per]);
  const doubled = 2n * BigInt(length) * BigInt(fabric.price.hundredths);
  return Number((doubled + per) / (2n * per));
}
