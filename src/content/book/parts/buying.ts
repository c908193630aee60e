import { formatLength, roomToMark } from "../../../length/index.ts";
import type { FabricPlan, Plan } from "../../../plan/types.ts";
import type { Words } from "../../../words/index.ts";
import { fabricNotes } from "../../cutting/steps.ts";
import { alsoNeeded, boughtWords, priceOf, proofOf, totalPrice, weighedLines } from "../../index.ts";
import type { Cell, Section, Table } from "../content.ts";
import { sentence, typeset } from "../typeset.ts";

/** Letters of a price that may be broken over lines. */
const LONG_PRICE = 14;

function cell(text: string, words: Words, notes: string[] = [], swatch: string | null = null): Cell {
  return { text: text === "" ? words.book.bench.buy.none : text, notes, swatch };
}

function isBought({ purchase, mix }: FabricPlan): boolean {
  return purchase !== null || mix !== undefined;
}

/** What one widest strip cut wrongly takes, beside the length left over. */
function spoiled(
  { sturdiness, sold }: FabricPlan,
  plan: Plan,
  length: (size: number) => string,
  words: Words,
): string[] {
  const worst = sturdiness.mistakes?.worst;
  if (worst === undefined) return [];
  const { spoiledTaken, spoiledMore } = words.book.bench.buy;
  const width = length(worst.width);
  if (worst.more === 0) return [spoiledTaken(width)];
  return [spoiledMore(width, typeset(formatLength(worst.more, { ...plan.ruler, unit: sold.unit })))];
}

function buyTable(plan: Plan, words: Words): Table {
  const { columns } = words.cutting;
  const { spare, narrowest, have } = words.book.bench.buy;
  const priced = plan.fabrics.some((fabric) => priceOf(fabric, plan) !== "");
  // The maker's own word for a currency may be of any length.
  const longPrice = plan.fabrics.some((fabric) => priceOf(fabric, plan).length > LONG_PRICE);
  const sturdy = plan.fabrics.some(({ sturdiness }) => sturdiness.narrowestUsable !== null);
  const length = (size: number) => typeset(formatLength(size, plan.ruler));
  const rows = plan.fabrics.map((fabric): Cell[] => {
    const { narrowestUsable, spareLength } = fabric.sturdiness;
    return [
      cell(
        fabric.name,
        words,
        [
          ...fabricNotes(fabric, words),
          ...(fabric.purchase === null ? [] : spoiled(fabric, plan, length, words).map(sentence)),
        ].filter((note) => note !== ""),
        fabric.colour,
      ),
      cell(typeset(isBought(fabric) ? boughtWords(fabric, plan.ruler, words) : have), words),
      cell(fabric.purchase === null ? "" : length(fabric.bound.used), words),
      cell(fabric.purchase === null ? "" : length(roomToMark(spareLength, plan.ruler)), words),
      ...(sturdy ? [cell(narrowestUsable === null ? "" : length(narrowestUsable), words)] : []),
      ...(priced ? [cell(priceOf(fabric, plan), words)] : []),
      cell(typeset(proofOf(fabric, plan, words)), words),
    ];
  });
  const total = totalPrice(plan);
  const headings = [
    { heading: columns.fabric, align: "left" as const },
    { heading: columns.buy, align: "left" as const },
    { heading: columns.used, align: "right" as const },
    { heading: spare, align: "right" as const },
    ...(sturdy ? [{ heading: narrowest, align: "right" as const }] : []),
    ...(priced ? [{ heading: columns.price, align: "right" as const, wordy: longPrice }] : []),
    { heading: columns.proof, align: "left" as const },
  ];
  const sum = headings.map(({ heading }, i) =>
    i === 0
      ? cell(words.cutting.total, words)
      : { text: heading === columns.price ? (total ?? "") : "", notes: [], swatch: null },
  );
  return {
    caption: words.book.bench.buy.title,
    captionSeen: false,
    columns: headings.map((column) => ({ ...column, heading: sentence(column.heading) })),
    rows: total === null ? rows : [...rows, sum],
    summed: total !== null,
    ticks: plan.fabrics.map(({ name }) => words.book.bench.bought(name)),
  };
}

/** What else was weighed where cloth is sold ready cut. */
function weighed(plan: Plan, words: Words): Section["blocks"] {
  const lines = weighedLines(plan, words).map(typeset);
  if (lines.length === 0) return [];
  return [
    { kind: "heading", text: words.cutting.weighedTitle },
    { kind: "list", items: lines },
  ];
}

/** What a quilt takes besides its fabrics. */
function besides(plan: Plan, words: Words): Section["blocks"] {
  const lines = alsoNeeded(plan, words).map(typeset);
  if (lines.length === 0) return [];
  return [
    { kind: "heading", text: words.cutting.alsoTitle },
    { kind: "list", items: lines },
  ];
}

/** The shopping list: what each fabric is for, how much to ask for, and how much room the plan leaves. */
export function buyingSection(plan: Plan, words: Words): Section {
  const sturdy = plan.fabrics.some(({ sturdiness }) => sturdiness.narrowestUsable !== null);
  return {
    id: "buy",
    over: "",
    title: words.book.bench.buy.title,
    swatch: null,
    newSheet: false,
    blocks: [
      { kind: "text", text: words.cutting.estimates, tone: "lead" },
      { kind: "table", table: buyTable(plan, words) },
      ...weighed(plan, words),
      ...besides(plan, words),
      ...(sturdy
        ? [{ kind: "text" as const, text: words.book.bench.buy.narrowestNote, tone: "quiet" as const }]
        : []),
    ],
  };
}
