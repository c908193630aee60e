import { nth } from "../length/nth.ts";
import type { Ticks } from "../length/types.ts";
import { costOf, passesBolt, purchaseFor, type SoldCloth } from "../stock/index.ts";
import { lengthsOf, type OnBolt } from "./packing/onto-bolts.ts";
import type { Lay, Mistake, Purchase, Sturdiness } from "./types.ts";

/**
 * What one strip cut wrongly costs. Its width is lost and the strip is cut once more from what is left uncut, the
 * spare the maker asked for included; where that is too short, more must be bought: of the bolt that then takes least
 * more, or of one more bolt; an end that nobody told of ends no bolt that is long enough. `worst` is the widest strip or lengthwise section, `usual` the width cut most often (of
 * equals the widest).
 */
export function mistakesIn(
  fabric: SoldCloth,
  lays: readonly Lay[],
  bolts: readonly OnBolt[],
  purchase: Purchase,
): Pick<Sturdiness, "mistakes"> {
  const cut = lays.flatMap(({ source, root }) => (source === "bolt" ? root.parts : []));
  const widths = cut.filter(({ cause }) => cause === null).map(({ along }) => along);
  if (widths.length === 0) return {};
  const counts = new Map<Ticks, number>();
  for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
  const times = (width: Ticks) => counts.get(width) ?? 0;
  const sorted = [...counts.keys()].sort((a, b) => b - a);
  const [worst = 0] = sorted;
  const usual = sorted.reduce((best, width) => (times(width) > times(best) ? width : best), worst);
  const bare = { ...fabric, spare: 0 };
  const bought = lengthsOf(purchase);
  const mistake = (width: Ticks): Mistake => {
    const longer = bolts.flatMap(({ used }, i) => {
      const { length } = purchaseFor(bare, used + width);
      return passesBolt(fabric, length) ? [] : [Math.max(0, length - nth(bought, i).length)];
    });
    const more = Math.min(...longer, purchaseFor(bare, width).length);
    const dearer = costOf(fabric, purchase.length + more);
    const cost = purchase.cost === null || dearer === null ? null : dearer - purchase.cost;
    return { width, more, cost };
  };
  return { mistakes: { usual: mistake(usual), worst: mistake(worst) } };
}
