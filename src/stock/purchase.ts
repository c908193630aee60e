import { formatMeasure } from "../length/format.ts";
import { TICKS_PER } from "../length/measures.ts";
import type { Ticks } from "../length/types.ts";
import type { Bought, SoldCloth } from "./types.ts";
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

/** The most that can be cut from a bought length. Negative when it does not even give the straightened end. */
export function lengthLimit(fabric: SoldCloth, purchasedLength: Ticks): Ticks {
  return afterWashing(purchasedLength, fabric.shrinkAlong) - fabric.straighten - fabric.spare;
}

/** Price of a length in hundredths, rounded to the nearest (a half goes up); null without a price. */
function costOf(fabric: Pick<SoldCloth, "price">, length: Ticks): number | null {
  if (fabric.price === null) return null;
  const per = BigInt(TICKS_PER[fabric.price.per]);
  const doubled = 2n * BigInt(length) * BigInt(fabric.price.hundredths);
  return Number((doubled + per) / (2n * per));
}
