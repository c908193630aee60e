import type { Comparison } from "../../../choices/methods/comparison.ts";
import { comparisonScene } from "../../../draw/quilt/draw-comparison.ts";
import type { Plan } from "../../../plan/types.ts";
import type { Words } from "../../../words/index.ts";
import { type ComparisonPart, comparisonParts } from "../../choosing/compare.ts";
import type { Block, Section, Table } from "../content.ts";
import { typeset } from "../typeset.ts";

function list(items: readonly string[]): Block[] {
  // Marks of a terminal mean nothing on paper.
  const said = items.map((item) => typeset(item.replaceAll("`", "").trim())).filter((item) => item !== "");
  return said.length === 0 ? [] : [{ kind: "list", items: said }];
}

function tableOf({ title, columns, rows }: ComparisonPart): Block[] {
  if (rows.length === 0) return [];
  const table: Table = {
    caption: title,
    captionSeen: true,
    columns: columns.map((column) => ({ ...column })),
    // A row that names a kind of unit has nothing in its other cells.
    rows: rows.map((row) =>
      columns.map((_, i) => ({ text: typeset((row[i] ?? "").trim()), notes: [], swatch: null })),
    ),
    summed: false,
    ticks: [],
  };
  return [{ kind: "table", table }];
}

/** The ways of making side by side: the picture, what each takes, and the best of them together. */
export function comparingSection(comparison: Comparison, plan: Plan, words: Words): Section {
  const { fabric, work, impossible, open, best, minutes } = comparisonParts(comparison, plan.ruler, words);
  const [heading = "", ...lines] = best;
  return {
    id: "comparison",
    over: "",
    title: words.compare.bookTitle,
    swatch: null,
    newSheet: false,
    blocks: [
      { kind: "text", text: words.compare.about.replaceAll("\n", " "), tone: "lead" },
      { kind: "picture", scene: comparisonScene(comparison, plan.ruler.unit === "in", words) },
      ...tableOf(fabric),
      ...list([...fabric.notes, ...(open ? [words.compare.notProven] : [])]),
      ...tableOf(work),
      ...list(work.notes),
      ...(impossible.length === 0 ? [] : [{ kind: "heading" as const, text: words.compare.notThisWay }]),
      ...list(impossible),
      { kind: "heading", text: heading },
      ...list(lines),
      ...list(minutes),
    ],
  };
}
