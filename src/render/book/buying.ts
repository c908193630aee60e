import { formatLength, formatMeasure, roomToMark } from "../../length/index.ts";
import type { FabricPlan, Plan } from "../../plan/types.ts";
import { english } from "../../words/index.ts";
import {
  alsoNeeded,
  boughtWords,
  pieceFacts,
  priceOf,
  proofOf,
  totalPrice,
  weighedLines,
} from "../text/index.ts";
import type { Cell, Section, Table } from "./content.ts";
import { sentence, typeset } from "./typeset.ts";
import { bookWords } from "./words.ts";

/** Uses told of one fabric; the rest are counted. */
const MOST_USES = 6;
/** Letters of a price that may be broken over lines. */
const LONG_PRICE = 14;

/** What a fabric is for, each use once. */
function usesOf(fabric: FabricPlan, plan: Plan): string[] {
  const all = [...new Set(pieceFacts(fabric, plan, english).flatMap(({ uses }) => uses))];
  const told = all.slice(0, MOST_USES).map(typeset);
  const rest = all.length - told.length;
  return rest === 0 ? told : [...told, bookWords.buy.andMore(rest)];
}

function cell(text: string, notes: string[] = [], swatch: string | null = null): Cell {
  return { text: text === "" ? bookWords.buy.none : text, notes, swatch };
}

function isBought({ purchase, mix }: FabricPlan): boolean {
  return purchase !== null || mix !== undefined;
}

/** What one widest strip cut wrongly takes, beside the length left over. */
function spoiled({ sturdiness, sold }: FabricPlan, plan: Plan, length: (size: number) => string): string[] {
  const worst = sturdiness.mistakes?.worst;
  if (worst === undefined) return [];
  const { spoiledTaken, spoiledMore } = bookWords.buy;
  const width = length(worst.width);
  if (worst.more === 0) return [spoiledTaken(width)];
  return [spoiledMore(width, typeset(formatMeasure(worst.more, sold.unit, { decimal: plan.ruler.decimal })))];
}

function buyTable(plan: Plan): Table {
  const { columns } = english.cutting;
  const { spare, narrowest, have } = bookWords.buy;
  const priced = plan.fabrics.some((fabric) => priceOf(fabric, plan) !== "");
  // The maker's own word for a currency may be of any length.
  const longPrice = plan.fabrics.some((fabric) => priceOf(fabric, plan).length > LONG_PRICE);
  const sturdy = plan.fabrics.some(({ sturdiness }) => sturdiness.narrowestUsable !== null);
  const length = (size: number) => typeset(formatLength(size, plan.ruler));
  const rows = plan.fabrics.map((fabric): Cell[] => {
    const { narrowestUsable, spareLength } = fabric.sturdiness;
    const uses = usesOf(fabric, plan);
    return [
      cell(
        fabric.name,
        [
          ...(fabric.note === "" ? [] : [fabric.note]),
          [
            ...(uses.length === 0 ? [] : [bookWords.buy.forWhat(uses)]),
            ...(fabric.purchase === null ? [] : spoiled(fabric, plan, length).map(sentence)),
          ].join(". "),
        ].filter((note) => note !== ""),
        fabric.colour,
      ),
      cell(typeset(isBought(fabric) ? boughtWords(fabric, plan.ruler, english) : have)),
      cell(fabric.purchase === null ? "" : length(fabric.bound.used)),
      cell(fabric.purchase === null ? "" : length(roomToMark(spareLength, plan.ruler))),
      ...(sturdy ? [cell(narrowestUsable === null ? "" : length(narrowestUsable))] : []),
      ...(priced ? [cell(priceOf(fabric, plan))] : []),
      cell(typeset(proofOf(fabric, plan, english))),
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
      ? cell(english.cutting.total)
      : { text: heading === columns.price ? (total ?? "") : "", notes: [], swatch: null },
  );
  return {
    caption: bookWords.buy.title,
    captionSeen: false,
    columns: headings.map((column) => ({ ...column, heading: sentence(column.heading) })),
    rows: total === null ? rows : [...rows, sum],
    summed: total !== null,
    ticks: plan.fabrics.map(({ name }) => bookWords.bought(name)),
  };
}

/** What else was weighed where cloth is sold ready cut. */
function weighed(plan: Plan): Section["blocks"] {
  const lines = weighedLines(plan, english).map(typeset);
  if (lines.length === 0) return [];
  return [
    { kind: "heading", text: english.cutting.weighedTitle },
    { kind: "list", items: lines },
  ];
}

/** What a quilt takes besides its fabrics. */
function besides(plan: Plan): Section["blocks"] {
  const lines = alsoNeeded(plan, english).map(typeset);
  if (lines.length === 0) return [];
  return [
    { kind: "heading", text: english.cutting.alsoTitle },
    { kind: "list", items: lines },
  ];
}

/** The shopping list: what each fabric is for, how much to ask for, and how much room the plan leaves. */
export function buyingSection(plan: Plan): Section {
  const sturdy = plan.fabrics.some(({ sturdiness }) => sturdiness.narrowestUsable !== null);
  return {
    id: "buy",
    over: "",
    title: bookWords.buy.title,
    swatch: null,
    running: "",
    newSheet: false,
    blocks: [
      { kind: "text", text: english.cutting.estimates, tone: "lead" },
      { kind: "table", table: buyTable(plan) },
      ...weighed(plan),
      ...besides(plan),
      ...(sturdy
        ? [{ kind: "text" as const, text: bookWords.buy.narrowestNote, tone: "quiet" as const }]
        : []),
    ],
  };
}
