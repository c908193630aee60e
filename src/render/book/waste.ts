import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { wasteTables } from "../text/index.ts";
import type { Block, Section, Table } from "./content.ts";
import { sentence } from "./typeset.ts";

/** Where the cloth goes, by cause. */
export function wasteSection(plan: Plan, words: Words): Section {
  // Shares are what is compared; areas stand in waste.txt.
  const [shares, , ...others] = wasteTables(plan, words);
  const tables = [...(shares === undefined ? [] : [shares]), ...others].map(
    ({ title, headings, rows }): Block => {
      const table: Table = {
        caption: sentence(title),
        captionSeen: true,
        columns: headings.map((heading, i) => ({
          heading: sentence(heading),
          align: i === 0 ? "left" : "right",
        })),
        rows: rows.map((row, r) =>
          row.map((text, i) => ({
            text: text === "-" ? words.book.bench.buy.none : text,
            notes: [],
            swatch: i === 0 ? (plan.fabrics[r]?.colour ?? null) : null,
          })),
        ),
        summed: rows.length > plan.fabrics.length,
        ticks: [],
      };
      return { kind: "table", table };
    },
  );
  return {
    id: "waste",
    over: "",
    title: words.book.bench.waste.title,
    swatch: null,
    running: "",
    newSheet: false,
    blocks: tables,
  };
}
