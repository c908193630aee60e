import type { Plan } from "../../../plan/types.ts";
import type { Words } from "../../../words/index.ts";
import { type PrintedTable, wasteTables } from "../../cutting/waste.ts";
import type { Block, Section, Table } from "../content.ts";
import { sentence } from "../typeset.ts";

/** Columns that still have room beside one another. */
const MOST_COLUMNS = 11;

/** An empty cell, as the tables of areas print it. */
const NONE = "-";

/** What sewing makes of the pieces beside where all the fabric goes, where a page is wide enough for both. */
function together(
  shares: PrintedTable | undefined,
  sewing: PrintedTable | undefined,
  words: Words,
): PrintedTable[] {
  if (shares === undefined) return [];
  if (sewing === undefined) return [shares];
  // Its first column is the fabric again, its last the sum of 100.
  const own = sewing.headings.slice(1, -1);
  if (shares.headings.length + own.length > MOST_COLUMNS) return [shares, sewing];
  const sewn = new Map(sewing.rows.map(([name = "", ...cells]) => [name, cells.slice(0, -1)]));
  return [
    {
      title: words.book.bench.waste.both(shares.title, sewing.title),
      headings: [...shares.headings, ...own],
      // Of what is sewn into no unit, as a binding, nothing is known.
      rows: shares.rows.map((row) => [...row, ...(sewn.get(row[0] ?? "") ?? own.map(() => NONE))]),
    },
  ];
}

/** Where the cloth goes, by cause. */
export function wasteSection(plan: Plan, words: Words): Section {
  // Shares are what is compared; areas stand in waste.txt.
  const [shares, , sewing] = wasteTables(plan, words);
  const tables = together(shares, sewing, words).map(({ title, headings, rows }): Block => {
    const table: Table = {
      caption: sentence(title),
      captionSeen: true,
      columns: headings.map((heading, i) => ({
        heading: sentence(heading),
        align: i === 0 ? "left" : "right",
      })),
      rows: rows.map((row, r) =>
        row.map((text, i) => ({
          text: text === NONE ? words.book.bench.buy.none : text,
          notes: [],
          swatch: i === 0 ? (plan.fabrics[r]?.colour ?? null) : null,
        })),
      ),
      summed: rows.length > plan.fabrics.length,
      ticks: [],
    };
    return { kind: "table", table };
  });
  return {
    id: "waste",
    over: "",
    title: words.book.bench.waste.title,
    swatch: null,
    newSheet: false,
    blocks: tables,
  };
}
