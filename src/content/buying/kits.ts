import type { Kits, KitsAlike } from "../../choices/kits/kits.ts";
import { formatLength, formatSize } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { ranges } from "../cutting/instructions.ts";
import { alignedLines } from "../lines/table.ts";
import { money } from "./buy.ts";

type Column = { heading: string; align: "left" | "right" };

/** What a sort of kit is called: its number, and its size and colourway. */
export function sortName({ sort }: Pick<KitsAlike, "sort">, index: number, words: Words): string {
  return sort === null ? "" : words.choices.kits.sort(index + 1, sort);
}

/** What a kit of each sort costs of what is bought together, and would cost alone, in hundredths; null without prices. */
export function kitPrices({ fabrics, sorts }: Kits): { share: number | null; alone: number | null }[] {
  const one = new Set(fabrics.map(({ currency }) => currency)).size === 1;
  return sorts.map((_, i) => {
    const sum = (
      of: (each: Kits["fabrics"][number]["each"][number] | undefined) => number | null | undefined,
    ) => {
      let total = 0;
      for (const { each } of fabrics) {
        const own = of(each[i]);
        if (own === null || own === undefined) return null;
        total += own;
      }
      return one && total > 0 ? total : null;
    };
    return { share: sum((each) => each?.share), alone: sum((each) => each?.aloneCost) };
  });
}

/** What to buy for a class, cut together and kit by kit, and what goes into each bag. */
export function kitsList(all: Kits, words: Words): string {
  const { kits, batch, sorts, fabrics } = all;
  const priced = fabrics.some(({ together, cost }) => together !== null && cost !== null);
  const { columns, title, separate, saved, bag, none } = words.choices.kits;
  const said = (cost: number | null | undefined, currency: string) =>
    cost === null || cost === undefined ? "" : money(cost, currency, batch.ruler);
  const several = sorts.length > 1;
  const headings: Column[] = [
    { heading: columns.fabric, align: "left" },
    { heading: columns.together, align: "right" },
    ...sorts.map(
      (_, i): Column => ({
        heading: several ? words.choices.kits.oneOf(i + 1) : columns.one,
        align: "right",
      }),
    ),
    { heading: separate(kits), align: "right" },
    ...(priced
      ? ([
          { heading: columns.costTogether, align: "right" },
          { heading: columns.costSeparate, align: "right" },
        ] as const)
      : []),
  ];
  const rows = fabrics.map(({ fabric, together, cost, each, separately, currency }) => [
    fabric,
    together?.text ?? none,
    ...each.map(({ alone }) => alone?.text ?? none),
    separately?.text ?? none,
    ...(priced ? [together === null ? "" : said(cost, currency), said(separately?.cost, currency)] : []),
  ]);
  const currencies = new Set(fabrics.map(({ currency }) => currency));
  const [currency = ""] = currencies;
  const sum = (of: (fabric: Kits["fabrics"][number]) => number | null | undefined) =>
    fabrics.reduce((total, fabric) => total + (of(fabric) ?? 0), 0);
  const less = sum(({ separately }) => separately?.cost) - sum(({ cost }) => cost);
  return [
    title(sorts[0]?.single.name ?? batch.name, kits),
    "",
    ...(several ? [...sortLines(all, words), ""] : []),
    ...alignedLines(headings, rows),
    ...(priced && currencies.size === 1 && less > 0 ? ["", saved(money(less, currency, batch.ruler))] : []),
    ...sorts.flatMap((one, i) => [
      "",
      several ? words.choices.kits.bagOf(sortName(one, i, words), one.kits) : bag(one.kits),
      "",
      ...bagLines(several ? one.dealt.fabrics : one.single.fabrics, batch.ruler, words),
    ]),
    "",
    ...(several ? [] : shareLines(batch, words)),
  ].join("\n");
}

/** The sorts of kits with what one of each costs. */
function sortLines(all: Kits, words: Words): string[] {
  const { sorts, fabrics, batch } = all;
  const prices = kitPrices(all);
  const priced = prices.every(({ share }) => share !== null);
  const { sortColumns, shareRule } = words.choices.kits;
  const [{ currency } = { currency: "" }] = fabrics;
  const said = (cost: number | null | undefined) => money(cost ?? 0, currency, batch.ruler);
  return [
    ...alignedLines(
      [
        { heading: sortColumns.kit, align: "left" },
        { heading: sortColumns.count, align: "right" },
        ...(priced
          ? ([
              { heading: sortColumns.share, align: "right" },
              { heading: sortColumns.alone, align: "right" },
            ] as const)
          : []),
      ],
      sorts.map((one, i) => [
        sortName(one, i, words),
        String(one.kits),
        ...(priced ? [said(prices[i]?.share), said(prices[i]?.alone)] : []),
      ]),
    ),
    ...(priced ? ["", shareRule] : []),
  ];
}

/** What lies in the bags of one kit, fabric by fabric. */
function bagLines(fabrics: Plan["fabrics"], ruler: Plan["ruler"], words: Words, kits = 1): string[] {
  return fabrics.flatMap(({ name, pieces }) => [
    `  ${name}`,
    ...pieces.map((piece) => {
      const size = piece.fullWidth
        ? `${formatLength(piece.along, ruler)} x ${words.choices.fullWidth}`
        : formatSize(piece.across, piece.along, ruler);
      const count = Math.ceil(piece.count / kits);
      return `    ${words.choices.kits.inBag(piece.letter, count, size, piece.label)}`;
    }),
  ]);
}

/** For the paper of one pupil: what its kit holds; empty where one quilt is planned. */
export function ownKitLines({ fabrics, ruler, kits = 1 }: Plan, words: Words): string[] {
  return kits === 1 ? [] : kitLines(fabrics, ruler, words, kits);
}

/** What a kit holds, to be counted first. */
export function kitLines(fabrics: Plan["fabrics"], ruler: Plan["ruler"], words: Words, kits = 1): string[] {
  return [words.choices.kits.inYours, "", ...bagLines(fabrics, ruler, words, kits), ""];
}

/** Which strips fill which kits, where that could be had for nothing; the rest is dealt out by count. */
function shareLines(batch: Plan, words: Words): string[] {
  const { shares, filled, filledFrom, dealt } = words.choices.kits;
  const whole = batch.fabrics.filter(({ kitShares }) => kitShares !== undefined);
  const rest = batch.fabrics.filter(({ kitShares }) => kitShares === undefined).map(({ name }) => name);
  const lines = whole.flatMap(({ name, kitShares = [] }) => [
    `  ${name}`,
    ...kitShares.map((share) => {
      const { first, last, strips, bolts } = share;
      if (bolts === undefined) return `    ${filled(first, last, ranges(strips, words), strips.length)}`;
      const from = [...new Set(bolts)].map((bolt) => {
        const own = strips.filter((_, i) => bolts[i] === bolt);
        return { bolt: bolt + 1, ranges: ranges(own, words), strips: own.length };
      });
      return `    ${filledFrom(first, last, from)}`;
    }),
  ]);
  return [
    ...(lines.length === 0 ? [] : [shares, "", ...lines, ""]),
    ...(rest.length === 0 ? [] : [dealt(rest), ""]),
  ];
}
