import type { Kits } from "../../choices/kits.ts";
import { formatLength, formatSize } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { money } from "./buy.ts";

import { ranges } from "./instructions.ts";
import { alignedLines } from "./table.ts";

type Column = { heading: string; align: "left" | "right" };

/** What to buy for a class, cut together and kit by kit, and what goes into each bag. */
export function kitsList({ kits, batch, single, fabrics }: Kits, words: Words): string {
  const priced = fabrics.some(({ together }) => together !== null && together.cost !== null);
  const { columns, title, separate, saved, bag, none } = words.choices.kits;
  const costOf = (purchase: { cost: number | null } | null, currency: string) =>
    purchase === null || purchase.cost === null ? "" : money(purchase.cost, currency);
  const headings: Column[] = [
    { heading: columns.fabric, align: "left" },
    { heading: columns.together, align: "right" },
    { heading: columns.one, align: "right" },
    { heading: separate(kits), align: "right" },
    ...(priced
      ? ([
          { heading: columns.costTogether, align: "right" },
          { heading: columns.costSeparate, align: "right" },
        ] as const)
      : []),
  ];
  const rows = fabrics.map(({ fabric, together, one, separately, currency }) => [
    fabric,
    together?.text ?? none,
    one?.text ?? none,
    separately?.text ?? none,
    ...(priced ? [costOf(together, currency), costOf(separately, currency)] : []),
  ]);
  const currencies = new Set(fabrics.map(({ currency }) => currency));
  const [currency = ""] = currencies;
  const sum = (of: (fabric: Kits["fabrics"][number]) => number | null | undefined) =>
    fabrics.reduce((total, fabric) => total + (of(fabric) ?? 0), 0);
  const less = sum(({ separately }) => separately?.cost) - sum(({ together }) => together?.cost);
  const bags = bagLines(single.fabrics, batch.ruler, words);
  return [
    title(single.name, kits),
    "",
    ...alignedLines(headings, rows),
    ...(priced && currencies.size === 1 && less > 0 ? ["", saved(money(less, currency))] : []),
    "",
    bag(kits),
    "",
    ...bags,
    "",
    ...shareLines(batch, words),
  ].join("\n");
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
  return kits === 1 ? [] : [words.choices.kits.inYours, "", ...bagLines(fabrics, ruler, words, kits), ""];
}

/** Which strips fill which kits, where that could be had for nothing; the rest is dealt out by count. */
function shareLines(batch: Plan, words: Words): string[] {
  const { shares, filled, dealt } = words.choices.kits;
  const whole = batch.fabrics.filter(({ kitShares }) => kitShares !== undefined);
  const rest = batch.fabrics.filter(({ kitShares }) => kitShares === undefined).map(({ name }) => name);
  const lines = whole.flatMap(({ name, kitShares = [] }) => [
    `  ${name}`,
    ...kitShares.map(
      ({ first, last, strips }) => `    ${filled(first, last, ranges(strips, words), strips.length)}`,
    ),
  ]);
  return [
    ...(lines.length === 0 ? [] : [shares, "", ...lines, ""]),
    ...(rest.length === 0 ? [] : [dealt(rest), ""]),
  ];
}
