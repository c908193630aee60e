import type { Suited } from "../../choices/suits.ts";
import { formatSize } from "../../length/index.ts";
import type { FixedStock, Plan } from "../../plan/types.ts";
import { isFatQuarter } from "../../stock/index.ts";
import type { Words } from "../../words/index.ts";
import { alignedLines } from "../lines/table.ts";
import { askedFor } from "./bought.ts";

const COLUMNS = [
  { heading: "", align: "left" },
  { heading: "", align: "right" },
  { heading: "", align: "left" },
] as const;

/** Pieces of one name that are cut into, each fabric and size a line. */
function laysOf(plan: Plan, words: Words, wanted: (fabric: string, kind: FixedStock) => boolean): string[][] {
  return plan.fabrics.flatMap(({ name, lays, stock = [] }) => {
    const kinds = new Map(stock.map((kind) => [kind.name, kind]));
    const found = new Map<string, number>();
    for (const lay of lays) {
      const kind = kinds.get(lay.name);
      if (lay.source !== "fixed" || kind === undefined || !wanted(name, kind)) continue;
      const size = formatSize(lay.across, lay.along, plan.ruler);
      found.set(size, (found.get(size) ?? 0) + 1);
    }
    return [...found].map(([size, count]) => [`  ${name}`, words.choices.sources.of(count), size]);
  });
}

/** What of the stash is cut into, and what is to be done with the table afterwards. Empty when nothing is. */
export function stashUse(plan: Plan, stash: string, words: Words): string {
  const rows = laysOf(plan, words, (_, { from }) => from === "stash");
  const { stash: title, take } = words.choices.sources;
  if (rows.length === 0) return `${title}: ${words.choices.kits.none}\n`;
  return [`${title}:`, ...alignedLines(COLUMNS, rows), take(stash), ""].join("\n");
}

/** How many fat quarters of each colour to buy. */
export function fatQuarterList(plan: Plan, fabrics: readonly string[], words: Words): string {
  const rows = laysOf(
    plan,
    words,
    (fabric, { from, name }) => fabrics.includes(fabric) && from === "shop" && isFatQuarter(name),
  );
  const total = rows.reduce((sum, [, count = ""]) => sum + Number.parseInt(count, 10), 0);
  const { fatQuarters, total: together, pieces } = words.choices.sources;
  if (rows.length === 0) return `${fatQuarters}: ${words.choices.kits.none}\n`;
  return [`${fatQuarters}: ${pieces(total)} ${together}`, ...alignedLines(COLUMNS, rows), ""].join("\n");
}

function suitedColumns(words: Words) {
  return words.choices.suits.columns.map((heading, i) => ({
    heading,
    align: i < 2 ? ("left" as const) : ("right" as const),
  }));
}

/** How far the drawer goes for each fabric of a quilt. */
export function suitsList(name: string, fabrics: readonly Suited[], words: Words): string {
  const { title, covers } = words.choices.suits;
  const { none } = words.choices.kits;
  const rows = fabrics.map((one) => [
    one.fabric,
    covers[one.covers],
    String(one.used),
    askedFor(one.buy, one.readyCut, none, words),
    askedFor(one.without, one.withoutReadyCut, none, words),
  ]);
  return [title(name), "", ...alignedLines(suitedColumns(words), rows), ""].join("\n");
}
