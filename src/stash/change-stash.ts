import { stringify } from "csv-stringify/sync";
import { formatMeasure } from "../length/index.ts";
import type { LengthUnit, Ticks } from "../length/types.ts";
import { fabricKey } from "../stock/index.ts";
import type { Stash, StashCloth, StashRow } from "./types.ts";

const BLANK_HEAD = "fabric,width,length,how many,note\n";

/** A table with headings and no cloth. */
export function emptyStash(): Stash {
  return {
    head: BLANK_HEAD,
    headings: BLANK_HEAD.trim().split(","),
    columns: { fabric: 0, width: 1, length: 2, count: 3, note: 4 },
    measures: { width: null, length: null },
    delimiter: ",",
    lineEnd: "\n",
    rows: [],
  };
}

/** The table as text. Rows that were not changed come out letter by letter as they were read. */
export function printStash(stash: Stash): string {
  return stash.head + stash.rows.map(({ raw }) => raw).join("");
}

function same(a: StashCloth, b: StashCloth): boolean {
  return fabricKey(a.fabric) === fabricKey(b.fabric) && a.across === b.across && a.along === b.along;
}

function asRaw(cells: readonly string[], stash: Stash, end: string): string {
  const text = stringify([[...cells]], { delimiter: stash.delimiter, record_delimiter: "\n" });
  return text.replace(/\n$/, end);
}

function endOf(raw: string): string {
  return /(\r\n|\n|\r)$/.exec(raw)?.[0] ?? "";
}

/** A length as its column is written: in the heading's measure without naming it, else with its measure. */
function lengthCell(ticks: Ticks, measure: LengthUnit | null, spoken: LengthUnit, stash: Stash): string {
  const { decimal } = stash;
  if (measure === null) return formatMeasure(ticks, spoken, { decimal });
  return formatMeasure(ticks, measure, { unit: false, decimal });
}

/** A cell that a spreadsheet would run as a formula gets an apostrophe before it, which reading takes off again. */
function guarded(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

function newRow(cloth: StashCloth, stash: Stash, spoken: LengthUnit): StashRow {
  const { columns, measures } = stash;
  const cells = stash.headings.map(() => "");
  const put = (place: number | null, text: string) => {
    if (place !== null) cells[place] = text;
  };
  put(columns.fabric, guarded(cloth.fabric));
  put(columns.width, lengthCell(cloth.across, measures.width, spoken, stash));
  put(columns.length, lengthCell(cloth.along, measures.length, spoken, stash));
  put(columns.count, String(cloth.count));
  put(columns.note, guarded(cloth.note));
  return { raw: asRaw(cells, stash, stash.lineEnd), cells, line: 0, cloth };
}

/** The row with another count, its other cells as they were. */
function withCount(row: StashRow, count: number, stash: Stash): StashRow {
  const { cloth } = row;
  if (cloth === null) return row;
  const cells = [...row.cells];
  while (cells.length <= (stash.columns.count ?? 0)) cells.push("");
  if (stash.columns.count !== null) cells[stash.columns.count] = String(count);
  return { ...row, raw: asRaw(cells, stash, endOf(row.raw)), cells, cloth: { ...cloth, count } };
}

/** The last row, or the headings, may lack their line end. */
function closed(stash: Stash): Stash {
  const { head, rows, lineEnd } = stash;
  const last = rows.at(-1);
  if (last === undefined) return endOf(head) === "" ? { ...stash, head: head + lineEnd } : stash;
  if (endOf(last.raw) !== "") return stash;
  return { ...stash, rows: [...rows.slice(0, -1), { ...last, raw: last.raw + lineEnd }] };
}

/**
 * The table with a cloth more. Cloth of the same fabric, size and note is counted with the row that has it;
 * other cloth becomes a row at the end.
 * @param spoken measure lengths are written in where the headings name none
 */
export function addCloth(stash: Stash, cloth: StashCloth, spoken: LengthUnit): Stash {
  const at = stash.rows.findIndex(
    (row) => row.cloth !== null && same(row.cloth, cloth) && row.cloth.note === cloth.note,
  );
  const found = stash.rows[at];
  if (stash.columns.count !== null && found?.cloth != null) {
    const more = withCount(found, found.cloth.count + cloth.count, stash);
    return { ...stash, rows: stash.rows.with(at, more) };
  }
  const open = closed(stash);
  // A table that does not count has a row for each piece of cloth.
  const each = stash.columns.count === null ? { ...cloth, count: 1 } : cloth;
  const rows = Array.from({ length: cloth.count / each.count }, () => newRow(each, open, spoken));
  return { ...open, rows: [...open.rows, ...rows] };
}

/**
 * The table with so many pieces of one cloth fewer, from its rows in order; rows that come to nothing are
 * dropped. Null when it does not hold as many.
 */
export function removeCloth(stash: Stash, cloth: StashCloth): Stash | null {
  let left = cloth.count;
  const rows = stash.rows.flatMap((row): StashRow[] => {
    if (row.cloth === null || left === 0 || row.cloth.count === 0 || !same(row.cloth, cloth)) return [row];
    const taken = Math.min(left, row.cloth.count);
    left -= taken;
    return taken === row.cloth.count ? [] : [withCount(row, row.cloth.count - taken, stash)];
  });
  return left > 0 ? null : { ...stash, rows };
}
