import { formatLength, formatMeasure, formatSize } from "../../length/index.ts";
import type { Ruler } from "../../length/types.ts";
import type { FabricPlan, FixedStock, Lay, Plan, Purchase } from "../../plan/types.ts";
import { LENGTH_IN_HAND } from "../../stock/index.ts";
import type { Words } from "../../words/index.ts";
import { money } from "./money.ts";

/** Pieces bought ready cut: `2 fat quarters`. */
function readyCut(bought: readonly { name: string; count: number }[], words: Words): string[] {
  return bought
    .filter(({ count }) => count > 0)
    .map(({ name, count }) => words.cutting.readyCut(count, name));
}

/** Yardage and pieces ready cut as they are asked for; `none` where nothing is. */
export function askedFor(
  purchase: { text: string } | null,
  bought: readonly { name: string; count: number }[],
  none: string,
  words: Words,
): string {
  const all = [...(purchase === null ? [] : [purchase.text]), ...readyCut(bought, words)];
  return all.length === 0 ? none : words.cutting.together(all);
}

/** What is to be bought of a fabric: `3/8 yd and 2 fat quarters`. */
export function boughtWords(
  { purchase, sold, stock = [], done }: FabricPlan,
  ruler: Pick<Ruler, "decimal" | "language">,
  words: Words,
): string {
  const shop = stock.filter(({ from }) => from === "shop").map(({ name, used }) => ({ name, count: used }));
  const all = [
    ...(purchase === null ? [] : [yardageWords(purchase, sold.unit, ruler, words)]),
    ...readyCut(shop, words),
  ];
  if (all.length > 0)
    return done === undefined ? words.cutting.together(all) : words.cutting.more(words.cutting.together(all));
  return done === undefined ? words.cutting.noPurchase : words.cutting.nothingMore;
}

/** A length as the shop says it; where one bolt is too short, with what comes from each: equal ones told together. */
function yardageWords(
  { length, lengths = [] }: Purchase,
  unit: FabricPlan["sold"]["unit"],
  ruler: Pick<Ruler, "decimal" | "language">,
  words: Words,
): string {
  const said = (ticks: number) => formatMeasure(ticks, unit, ruler);
  if (lengths.length === 0) return said(length);
  const runs: { first: number; last: number; length: string }[] = [];
  for (const [i, one] of lengths.entries()) {
    const before = runs.at(-1);
    if (before?.length === said(one.length)) before.last = i + 1;
    else runs.push({ first: i + 1, last: i + 1, length: said(one.length) });
  }
  return words.cutting.fromBolts(said(length), runs);
}

/** What a fabric costs in hundredths; null without a price. */
export function costOf({ mix, purchase }: FabricPlan): number | null {
  return mix === undefined ? (purchase?.cost ?? null) : mix.cost;
}

export function currencyOf({ mix, price }: FabricPlan): string {
  return mix?.currency || price?.currency || "";
}

/** Where cloth is sold ready cut: what was taken and what else was weighed, a line for each such fabric. */
export function weighedLines(plan: Plan, words: Words): string[] {
  return plan.fabrics.flatMap(({ name, mix }) => {
    if (mix === undefined || mix.choices.length < 2) return [];
    const told = mix.choices.map(({ bought, yardage, cost }) => {
      const length = plan.ruler.decimal === "comma" ? yardage?.replace(".", ",") : yardage;
      const parts = [...(length == null ? [] : [length]), ...readyCut(bought, words)];
      return `${words.cutting.together(parts)} ${money(cost, mix.currency, plan.ruler)}`;
    });
    return [`${name}: ${words.cutting.instead(told)}`];
  });
}

/** The kind of cloth a lay is; null for the bolt. */
export function stockOfLay({ stock = [] }: FabricPlan, lay: Lay): FixedStock | null {
  return lay.source === "bolt" ? null : (stock.find(({ name }) => name === lay.name) ?? null);
}

/** `On fat quarters (2, each cut the same):`, `On the bolt:`. */
export function layTitle(fabric: FabricPlan, lay: Lay, alike: number, plan: Plan, words: Words): string {
  if (lay.source === "bolt") {
    const at = fabric.lays.filter(({ source }) => source === "bolt").indexOf(lay);
    const { length } = fabric.purchase?.lengths?.[at] ?? {};
    if (length === undefined) return words.cutting.onBolt;
    return words.cutting.onBoltOf(at + 1, formatLength(length, { ...plan.ruler, unit: fabric.sold.unit }));
  }
  if (lay.name === LENGTH_IN_HAND) return words.cutting.onLength;
  const kind = stockOfLay(fabric, lay);
  const size = formatSize(lay.across, lay.along, plan.ruler);
  const trimmed =
    kind === null || kind.trim === 0
      ? ""
      : words.cutting.trimmedFirst(formatLength(kind.trim, plan.ruler), size);
  const at = fabric.lays.indexOf(lay);
  const another = fabric.lays.some(({ name }, i) => i < at && name === lay.name);
  return words.cutting.onPieces(lay.name, alike, kind?.strip === true, trimmed, another);
}

/** For every lay how often one just like it is cut, at the first of them; 0 at the others, which need no words. */
export function alikeLays(lays: readonly Lay[]): number[] {
  const first = new Map<string, number>();
  if (lays.length === 1) return [1];
  const counts = lays.map(() => 0);
  lays.forEach((lay, i) => {
    const key = JSON.stringify(lay);
    const at = first.get(key) ?? i;
    first.set(key, at);
    counts[at] = (counts[at] ?? 0) + 1;
  });
  return counts;
}

/** What less would be bought if strips were cut once more, in a sentence; empty where nothing. */
export function stackedWords(
  { stacked, purchase, price, sold }: FabricPlan,
  { ruler }: Pick<Plan, "ruler">,
  words: Words,
): string {
  if (stacked === undefined || purchase === null) return "";
  const length = (ticks: number) => formatLength(ticks, { ...ruler, unit: sold.unit });
  const { cost } = stacked.purchase;
  const saved =
    cost === null || purchase.cost === null
      ? length(purchase.length - stacked.purchase.length)
      : money(purchase.cost - cost, price?.currency ?? "", ruler);
  return words.cutting.stacked(length(stacked.purchase.length), saved, stacked.strips);
}

/** What a spoiled strip costs, in a sentence; empty where no strip comes off a bolt. */
export function mistakeWords({ sturdiness, price, sold }: FabricPlan, plan: Plan, words: Words): string {
  const { mistakes } = sturdiness;
  if (mistakes === undefined) return "";
  const said = ({ width, more, cost }: typeof mistakes.usual) => ({
    width: formatLength(width, plan.ruler),
    more: more === 0 ? "" : formatLength(more, { ...plan.ruler, unit: sold.unit }),
    cost: more === 0 || cost === null ? "" : money(cost, price?.currency ?? "", plan.ruler),
  });
  return words.cutting.mistake(said(mistakes.usual), said(mistakes.worst));
}
