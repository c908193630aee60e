import type { Ticks } from "../length/types.ts";
import { purchaseFor, type SoldCloth } from "../stock/index.ts";
import type { Lay, Mistake, Purchase, Sturdiness } from "./types.ts";

/**
 * What one strip cut wrongly costs. Its width is lost and the strip is cut once more from what is left uncut, the
 * spare the maker asked for included; where that is too short, more must be bought. `worst` is the widest strip or
 * lengthwise section, `usual` the width cut most often (of equals the widest).
 */
export function mistakesIn(
  fabric: SoldCloth,
  lays: readonly Lay[],
  used: Ticks,
  purchase: Purchase,
): Pick<Sturdiness, "mistakes"> {
  const bolt = lays.find(({ source }) => source === "bolt");
  const widths = (bolt?.root.parts ?? []).filter(({ cause }) => cause === null).map(({ along }) => along);
  if (widths.length === 0) return {};
  const counts = new Map<Ticks, number>();
  for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
  const times = (width: Ticks) => counts.get(width) ?? 0;
  const sorted = [...counts.keys()].sort((a, b) => b - a);
  const [worst = 0] = sorted;
  const usual = sorted.reduce((best, width) => (times(width) > times(best) ? width : best), worst);
  const costOf = (width: Ticks): Mistake => {
    const again = purchaseFor({ ...fabric, spare: 0 }, used + width);
    const more = Math.max(0, again.length - purchase.length);
    const cost =
      purchase.cost === null || again.cost === null ? null : Math.max(0, again.cost - purchase.cost);
    return { width, more, cost };
  };
  return { mistakes: { usual: costOf(usual), worst: costOf(worst) } };
}
