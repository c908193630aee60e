import type { Cell, Table } from "../../content/book/content.ts";
import { safeColour } from "../../draw/scene/palette.ts";
import { DAY } from "../paper/inks.ts";
import { captionHigh, cellHigh, columnsOf, GAP, high, rowHigh, TYPE, tableHead } from "../paper/measure.ts";
import { aside, marked, rule, type Sheet, square, textAt, within } from "./sheet.ts";

interface Place {
  x: number;
  y: number;
  width: number;
}

function drawCell(
  sheet: Sheet,
  cell: Cell,
  at: Place,
  look: { bold: boolean; align: "left" | "right" },
): void {
  const swatch = cell.swatch === null ? 0 : 13;
  if (cell.swatch !== null) square(sheet, at.x, at.y + 1.5, 8, safeColour(cell.swatch));
  const room = { x: at.x + swatch, width: at.width - swatch };
  let y = textAt(sheet, cell.text, { ...room, y: at.y }, TYPE.body, look);
  for (const note of cell.notes)
    y = textAt(sheet, note, { ...room, y }, TYPE.small, { colour: DAY.quiet, align: look.align });
}

/** A table at a place; all of it is on the page. */
export function drawTable(sheet: Sheet, table: Table, at: Place): void {
  const ticked = table.ticks.length > 0;
  const widths = columnsOf(table, at.width);
  const start = at.x + (ticked ? GAP.tick : 0);
  const lefts = widths.map((_, c) =>
    widths.slice(0, c).reduce((sum, width) => sum + width + GAP.cell, start),
  );
  let { y } = at;
  if (table.captionSeen) {
    marked(sheet, "P", () => textAt(sheet, table.caption, { ...at, y }, TYPE.heading, { bold: true }));
    y += captionHigh(table, at.width);
  }
  const headings = tableHead({ ...table, captionSeen: false }, widths) - 3;
  within(sheet, "Table", () => {
    within(sheet, "TR", () => {
      for (const [c, { heading, align }] of table.columns.entries()) {
        const width = widths[c] ?? 50;
        const lower = headings - high(heading, width, TYPE.small);
        marked(
          sheet,
          "TH",
          () =>
            textAt(sheet, heading, { x: lefts[c] ?? start, y: y + lower, width }, TYPE.small, {
              colour: DAY.quiet,
              align,
            }),
          { scope: "Column" },
        );
      }
    });
    y += headings + 3;
    for (const [r, row] of table.rows.entries()) {
      const summed = table.summed && r === table.rows.length - 1;
      aside(sheet, () => {
        rule(sheet, { ...at, y }, false, summed ? DAY.ink : DAY.line);
        if (ticked && table.ticks[r] !== undefined) square(sheet, at.x, y + 3, 10, null);
      });
      within(sheet, "TR", () => {
        for (const [c, cell] of row.entries()) {
          const look = { bold: c === 0 || summed, align: table.columns[c]?.align ?? ("left" as const) };
          const place = { x: lefts[c] ?? start, y: y + 2.5, width: widths[c] ?? 50 };
          const kind = c === 0 ? "TH" : "TD";
          // An empty cell keeps its place in the row.
          if (cellHigh(cell, place.width, look.bold) === 0) within(sheet, kind, () => undefined);
          else
            marked(
              sheet,
              kind,
              () => drawCell(sheet, cell, place, look),
              kind === "TH" ? { scope: "Row" } : {},
            );
        }
      });
      y += rowHigh(table, r, widths);
    }
  });
}
