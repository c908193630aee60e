import { formatLength, formatSize, roomToMark } from "../../length/index.ts";
import { leastBought } from "../../plan/proved/index.ts";
import type { FabricPlan, Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { alignedLines } from "../lines/table.ts";
import { anyBacking, waddingTold } from "../sewing/making-finishing.ts";
import { longLength } from "../sewing/making-lines.ts";
import { boughtWords, costOf, currencyOf, stackedWords, weighedLines } from "./bought.ts";
import { money } from "./money.ts";

export { money } from "./money.ts";

/** What is proved about a fabric's purchase, in a word or two. */
export function proofOf(fabric: FabricPlan, plan: Plan, words: Words): string {
  const { bound, mix } = fabric;
  if (leastBought(fabric)) return words.cutting.proofShort.purchase;
  if (mix !== undefined) return words.cutting.proofShort.open;
  return words.cutting.proofShort.found(
    formatLength(bound.used - roomToMark(bound.least, plan.ruler), plan.ruler),
  );
}

/** What a fabric costs; empty without a price. */
export function priceOf(fabric: FabricPlan, { ruler }: Pick<Plan, "ruler">): string {
  const cost = costOf(fabric);
  return cost === null ? "" : money(cost, currencyOf(fabric), ruler);
}

/** The sum of all prices, when every one is given in one currency; else null. */
export function totalPrice(plan: Plan): string | null {
  const currencies = new Set(
    plan.fabrics.map((fabric) =>
      fabric.price === null && fabric.mix === undefined ? null : currencyOf(fabric),
    ),
  );
  const costs = plan.fabrics.map((fabric) =>
    fabric.purchase === null && fabric.mix === undefined ? 0 : costOf(fabric),
  );
  const [currency] = currencies;
  if (currencies.size !== 1 || currency === null || currency === undefined) return null;
  if (costs.length < 2 || costs.some((cost) => cost === null)) return null;
  return money(
    costs.reduce<number>((sum, cost) => sum + (cost ?? 0), 0),
    currency,
    plan.ruler,
  );
}

/** What the file left open and the plan took for granted, one line each. */
export function assumptionsOf(plan: Plan, words: Words): string[] {
  // One line for each value, however many fabrics it was assumed for.
  const fabricsOf = new Map<string, string[]>();
  for (const assumption of plan.assumptions) {
    const { fabric } = assumption;
    const { subject, value } = words.assumed(assumption, plan.ruler);
    const key = `${subject}: ${value}`;
    fabricsOf.set(key, [...(fabricsOf.get(key) ?? []), ...(fabric === "" ? [] : [fabric])]);
  }
  return [...fabricsOf].map(([text, fabrics]) => {
    const all = fabrics.length === 0 || fabrics.length === plan.fabrics.length;
    return all ? text : words.cutting.assumedFor(text, fabrics);
  });
}

function assumptionLines(plan: Plan, words: Words): string[] {
  if (plan.assumptions.length === 0) return [];
  return ["", `${words.cutting.assumptionsTitle}:`, ...assumptionsOf(plan, words).map((line) => `  ${line}`)];
}

/** What a quilt takes besides the fabrics of the file; empty for a plain cut list. */
export function alsoNeeded(plan: Plan, words: Words): string[] {
  const { making } = plan;
  if (making === undefined) return [];
  const { finishing, thread, quilting } = making;
  const { kits = 1 } = plan;
  const { sleeve } = finishing;
  const isBought = plan.fabrics.some(({ pieces }) =>
    pieces.some(({ uses }) => uses.some(({ purpose }) => purpose.for === "wadding")),
  );
  return [
    ...anyBacking(finishing, plan, words),
    ...(isBought ? [] : waddingTold(finishing, plan, words)),
    ...(finishing.binding === null
      ? [words.cutting.bindingToo(formatLength(finishing.edge, plan.ruler))]
      : []),
    words.cutting.sleeveToo(formatSize(sleeve.across, sleeve.down, plan.ruler)),
    words.cutting.threadToo(longLength(thread.length, plan), longLength(quilting.length, plan)),
    ...(kits > 1 ? [words.cutting.perQuilt] : []),
  ];
}

function alsoLines(plan: Plan, words: Words): string[] {
  const lines = alsoNeeded(plan, words);
  return lines.length === 0 ? [] : ["", `${words.cutting.alsoTitle}:`, ...lines.map((line) => `  ${line}`)];
}

/** The shopping list: what to ask for, fabric by fabric, with what was assumed. */
export function buyList(plan: Plan, words: Words): string {
  const priced = plan.fabrics.some((fabric) => priceOf(fabric, plan) !== "");
  const { columns } = words.cutting;
  const rows = plan.fabrics.map((fabric) => [
    fabric.name,
    boughtWords(fabric, plan.ruler, words),
    formatLength(fabric.bound.used, plan.ruler),
    ...(priced ? [priceOf(fabric, plan)] : []),
    proofOf(fabric, plan, words),
  ]);
  const total = totalPrice(plan);
  if (total !== null) rows.push([words.cutting.total, "", "", total, ""]);
  const lines = alignedLines(
    [
      { heading: columns.fabric, align: "left" },
      { heading: columns.buy, align: "left" },
      { heading: columns.used, align: "right" },
      ...(priced ? [{ heading: columns.price, align: "right" as const }] : []),
      { heading: columns.proof, align: "left" },
    ],
    rows,
  );
  const weighed = weighedLines(plan, words);
  const stacked = plan.fabrics.flatMap((fabric) => {
    const said = stackedWords(fabric, plan, words);
    return said === "" ? [] : [`${fabric.name}: ${said}`];
  });
  return [
    words.cutting.buyTitle(plan.name),
    "",
    ...lines,
    ...(stacked.length === 0 ? [] : ["", ...stacked]),
    ...(weighed.length === 0
      ? []
      : ["", `${words.cutting.weighedTitle}:`, ...weighed.map((line) => `  ${line}`)]),
    ...alsoLines(plan, words),
    ...assumptionLines(plan, words),
    "",
    words.cutting.estimates,
    "",
  ].join("\n");
}
