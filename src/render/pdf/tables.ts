import type { Table } from "../book/content.ts";
import { DAY } from "../book/style.ts";
import { safeColour } from "../svg/palette.ts";
import { ensure, heightOf, newPage, rule, type Sheet, square, textAt, widthOf } from "./sheet.ts";

const SIZE = 9;
const NOTE = 7.6;
const GAP = 9;
const TICK = 20;
/** Most of the page that a column of short words may take. */
const MOST = 0.22;
/** Share of a page up to which a table is not broken. */
const KEEP = 0.45;

/** Widths of the columns: short ones as wide as they must be, the first and the wordy share the rest. */
function columnWidths(sheet: Sheet, table: Table, room: number): number[] {
  const natural = table.columns.map(({ heading }, c) => {
    const cells = table.rows.map((row) => widthOf(sheet, row[c]?.text ?? "", { size: SIZE, bold: true }));
    const notes =
      c === 0
        ? []
        : table.rows.flatMap((row) =>
            (row[c]?.notes ?? []).map((note) => widthOf(sheet, note, { size: NOTE })),
          );
    const word = Math.max(...heading.split(" ").map((part) => widthOf(sheet, part, { size: NOTE })));
    return Math.max(word, ...cells, ...notes) + 2;
  });
  const flexible = table.columns.map(({ wordy }, c) =>
    c === 0 ? !table.columns.some((column, i) => i > 0 && column.wordy === true) : wordy === true,
  );
  const fixed = natural.map((width, c) => (flexible[c] === true ? 0 : Math.min(width, room * MOST)));
  const rest = room - fixed.reduce((sum, width) => sum + width, 0) - GAP * (table.columns.length - 1);
  const shares = flexible.filter(Boolean).length || 1;
  return fixed.map((width, c) => (flexible[c] === true ? Math.max(40, rest / shares) : width));
}

/** A table; its head is repeated on every page, and no row is broken that fits a page. */
export function drawTable(sheet: Sheet, table: Table): void {
  const ticked = table.ticks.length > 0;
  const start = sheet.left + (ticked ? TICK : 0);
  const widths = columnWidths(sheet, table, sheet.width - (ticked ? TICK : 0));
  const lefts = widths.map((_, c) => start + widths.slice(0, c).reduce((sum, width) => sum + width + GAP, 0));
  const swatchRoom = (c: number) => (table.rows.some((row) => row[c]?.swatch != null) ? 14 : 0);

  const head = (): void => {
    const heights = table.columns.map(({ heading }, c) =>
      heightOf(sheet, heading, { size: NOTE, width: widths[c] ?? 40 }),
    );
    const high = Math.max(...heights);
    for (const [c, { heading, align }] of table.columns.entries()) {
      const style = { size: NOTE, colour: DAY.quiet, width: widths[c] ?? 40, align };
      textAt(sheet, heading, lefts[c] ?? start, sheet.y + high - (heights[c] ?? 0), style);
    }
    sheet.y += high + 3;
  };

  const measured = table.rows.map((row, r) => {
    const sum = table.summed && r === table.rows.length - 1;
    const drawn = row.map((cell, c) => {
      const indent = swatchRoom(c);
      const width = (widths[c] ?? 40) - indent;
      const style = {
        size: SIZE,
        bold: c === 0 || sum,
        width,
        align: table.columns[c]?.align ?? ("left" as const),
      };
      const high = heightOf(sheet, cell.text, style);
      const notes = cell.notes.map((note) => ({ note, high: heightOf(sheet, note, { size: NOTE, width }) }));
      return {
        cell,
        style,
        width,
        indent,
        high,
        notes,
        all: notes.reduce((total, note) => total + note.high, high),
      };
    });
    return { sum, drawn, high: Math.max(...drawn.map(({ all }) => all)) + 9 };
  });
  // A small table stays in one piece.
  const whole = measured.reduce((total, { high }) => total + high, 40);
  if (whole < (sheet.bottom - sheet.top) * KEEP) ensure(sheet, whole);

  if (table.captionSeen) {
    ensure(sheet, 60);
    textAt(sheet, table.caption, sheet.left, sheet.y, { size: 10, bold: true });
    sheet.y += 17;
  }
  ensure(sheet, 50);
  head();
  for (const [r, { sum, drawn, high }] of measured.entries()) {
    if (sheet.y + high > sheet.bottom) {
      newPage(sheet, sheet.running.at(-1) ?? "");
      head();
    }
    rule(sheet, sheet.y, sum ? DAY.ink : DAY.line, sum ? 1 : 0.6);
    if (ticked && table.ticks[r] !== undefined) square(sheet, sheet.left, sheet.y + 4, 11, null);
    for (const [c, { cell, style, width, indent, high: textHigh, notes }] of drawn.entries()) {
      const x = (lefts[c] ?? start) + indent;
      if (cell.swatch !== null) square(sheet, x - indent, sheet.y + 5, 8, safeColour(cell.swatch));
      textAt(sheet, cell.text, x, sheet.y + 4, style);
      let y = sheet.y + 4 + textHigh;
      for (const { note, high: noteHigh } of notes) {
        textAt(sheet, note, x, y, { size: NOTE, colour: DAY.quiet, width });
        y += noteHigh;
      }
    }
    sheet.y += high;
  }
  sheet.y += 8;
}
