import type { Plan } from "../../plan/types.ts";
import { english } from "../../words/index.ts";
import { isolated } from "../svg/text-fit.ts";
import { leftoverSizes, wasteTables } from "../text/index.ts";
import type { Block, Section, Table } from "./content.ts";
import { sentence, typeset } from "./typeset.ts";
import { bookWords } from "./words.ts";

/** Where the cloth goes, by cause, and the offcuts worth keeping. */
export function wasteSection(plan: Plan): Section {
  const tables = wasteTables(plan, english).map(({ title, headings, rows }): Block => {
    const table: Table = {
      caption: sentence(title),
      captionSeen: true,
      columns: headings.map((heading, i) => ({
        heading: sentence(heading),
        align: i === 0 ? "left" : "right",
      })),
      rows: rows.map((row, r) =>
        row.map((text, i) => ({
          text: text === "-" ? bookWords.buy.none : text,
          notes: [],
          swatch: i === 0 ? (plan.fabrics[r]?.colour ?? null) : null,
        })),
      ),
      summed: rows.length > plan.fabrics.length,
      ticks: [],
    };
    return { kind: "table", table };
  });
  const kept = plan.fabrics.flatMap((fabric) => {
    const sizes = leftoverSizes(fabric, plan, english);
    return sizes.length === 0 ? [] : [`${isolated(fabric.name)}: ${sizes.map(typeset).join("; ")}`];
  });
  return {
    id: "waste",
    over: "",
    title: bookWords.waste.title,
    swatch: null,
    running: "",
    newSheet: true,
    titledByDrawing: false,
    blocks: [
      ...tables,
      ...(kept.length === 0
        ? []
        : [
            { kind: "heading" as const, text: bookWords.waste.leftovers },
            { kind: "list" as const, items: kept },
          ]),
    ],
  };
}
