import type { Options } from "csv-parse";
import { parse } from "csv-parse/sync";
import * as say from "../diagnostics/stash.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { floor, type ParsedLength, parseLength } from "../length/index.ts";
import type { LengthFault } from "../length/problem.ts";
import type { LengthUnit, Ticks } from "../length/types.ts";
import { tradeSize } from "../stock/index.ts";
import type { Stash, StashCloth, StashColumns, StashRow } from "./types.ts";

/** Headings a maker may give each column, in small letters, without a measure in brackets. */
const HEADINGS: Readonly<Record<keyof StashColumns, readonly string[]>> = {
  fabric: ["fabric", "name", "cloth", "colour", "color", "material"],
  width: ["width", "across", "wide"],
  length: ["length", "along", "long"],
  count: ["how many", "count", "number", "quantity", "qty", "pieces"],
  note: ["note", "notes", "remark", "remarks", "comment"],
};

/** A record as the CSV library gives it. */
interface Read {
  record: string[];
  info: { bytes: number };
}

/** `sep=;` alone in the first line. */
const SIGN_HINT = /^\ufeff?"?sep=([,;\t])"?[ \t]*(?:\r\n|\n|\r|$)/i;

/** Most of one kind of cloth a drawer may be said to hold. */
const MOST = 9999;

/**
 * Reads a table of cloth to hand: CSV with headings `fabric, width, length, how many, note`, in any order and
 * beside any others, separated by commas, semicolons or tabs. Rows that cannot be read are named in a warning and
 * kept as they are. No value when the table as a whole cannot be read.
 * @param bare measure of numbers written without one where the heading names none
 */
export function readStash(text: string, file: string, bare: LengthUnit): Outcome<Stash> {
  const delimiter = delimiterOf(text);
  const records = split(text, delimiter);
  if ("line" in records) return fail(say.stashUnclosed(file, records.line));
  const [hint, ...rows] = records.rows;
  // Some spreadsheets write the sign they part cells with above the headings.
  const hinted = hint !== undefined && SIGN_HINT.test(hint.raw);
  const [first, ...rest] = hinted ? rows : records.rows;
  const headings = first?.cells ?? [];
  const columns = columnsOf(headings);
  if (first === undefined || columns === null) return fail(say.stashNoHeadings(file, headings));
  const measures = {
    width: measureIn(headings[columns.width] ?? ""),
    length: measureIn(headings[columns.length] ?? ""),
  };
  const diagnostics: Diagnostic[] = [];
  let guessed = false;
  const read = rest.map(({ raw, cells, line }): StashRow => {
    const row = { raw, cells, line };
    if (cells.every((cell) => cell.trim() === "")) return { ...row, cloth: null };
    const found = readRow(cells, columns, measures, bare);
    if ("problem" in found) {
      diagnostics.push(say.stashRowUnreadable({ file, line, column: 1 }, found.problem));
      return { ...row, cloth: null };
    }
    guessed ||= found.guessed;
    return { ...row, cloth: found.cloth };
  });
  if (guessed) diagnostics.push(say.stashMeasureTaken(file, bare));
  const lineEnd = /\r\n|\n|\r/.exec(text)?.[0] as Stash["lineEnd"] | undefined;
  return {
    value: {
      head: hinted ? hint.raw + first.raw : first.raw,
      headings,
      columns,
      measures,
      delimiter,
      ...(decimalOf(read, columns) === "," ? { decimal: "comma" as const } : {}),
      lineEnd: lineEnd ?? "\n",
      rows: read,
    },
    diagnostics,
  };
}

/** The mark before tenths in the table's sizes, as it is met more often. */
function decimalOf(rows: readonly StashRow[], { width, length }: StashColumns): string {
  const cells = rows.flatMap((row) => [row.cells[width] ?? "", row.cells[length] ?? ""]);
  const marks = cells.flatMap((cell) => /\d([.,])\d/.exec(cell)?.[1] ?? []);
  return marks.filter((mark) => mark === ",").length * 2 > marks.length ? "," : ".";
}

function fail(diagnostic: Diagnostic): Outcome<Stash> {
  return { value: null, diagnostics: [diagnostic] };
}

/** The sign that stands most often in the first line. Spreadsheets set to a decimal comma write semicolons. */
function delimiterOf(text: string): Stash["delimiter"] {
  const [, named] = SIGN_HINT.exec(text) ?? [];
  if (named !== undefined) return named as Stash["delimiter"];
  const line = text.split(/[\r\n]/, 1)[0] ?? "";
  const times = (sign: string) => line.split(sign).length;
  if (times("\t") > Math.max(times(","), times(";"))) return "\t";
  return times(";") > times(",") ? ";" : ",";
}

interface Row {
  raw: string;
  cells: string[];
  line: number;
}

/** Cuts the text into rows, so that the rows put together again are the text. */
function split(text: string, delimiter: string): { rows: Row[] } | { line: number } {
  const options: Options = {
    bom: true,
    delimiter,
    info: true,
    record_delimiter: ["\r\n", "\n", "\r"],
    relax_column_count: true,
    // An inch mark stands in the middle of a cell.
    relax_quotes: true,
    skip_empty_lines: false,
  };
  const bytes = new TextEncoder().encode(text);
  const letters = new TextDecoder("utf-8", { ignoreBOM: true });
  let records: Read[];
  try {
    records = parse(text, options) as unknown as Read[];
  } catch (error) {
    return { line: (error as { lines?: number }).lines ?? 1 };
  }
  let [start, line] = [0, 1];
  const rows = records.map(({ record, info }, index): Row => {
    const end = index === records.length - 1 ? bytes.length : info.bytes;
    const raw = letters.decode(bytes.subarray(start, end));
    const row = { raw, cells: record, line };
    line += raw.match(/\r\n|\n|\r/g)?.length ?? 0;
    start = end;
    return row;
  });
  return { rows };
}

/** A heading without its measure: `Width (in)` is `width`. */
function plainHeading(heading: string): string {
  return heading
    .replace(/^\ufeff/, "")
    .toLowerCase()
    .replace(/[([,].*$/, "")
    .replace(/\s+(in|inches|cm|mm|yd|m)\s*$/, "")
    .replace(/[\s_-]+/g, " ")
    .trim();
}

function columnsOf(headings: readonly string[]): StashColumns | null {
  const plain = headings.map(plainHeading);
  const find = (column: keyof StashColumns): number | null => {
    const places = HEADINGS[column].map((name) => plain.indexOf(name)).filter((place) => place >= 0);
    return places[0] ?? null;
  };
  const [fabric, width, length] = [find("fabric"), find("width"), find("length")];
  if (fabric === null || width === null || length === null) return null;
  return { fabric, width, length, count: find("count"), note: find("note") };
}

/** The measure a heading names: `width (in)`, `Length cm`. */
function measureIn(heading: string): LengthUnit | null {
  const [, word = ""] = /[\s([,](in|inches|inch|cm|mm|yd|m)\W*$/i.exec(heading) ?? [];
  const short = word.toLowerCase().replace(/^inch(es)?$/, "in");
  return short === "" ? null : (short as LengthUnit);
}

type ReadRow = { cloth: StashCloth; guessed: boolean } | { problem: say.StashFault };

function readRow(
  cells: readonly string[],
  columns: StashColumns,
  measures: Stash["measures"],
  bare: LengthUnit,
): ReadRow {
  const cell = (place: number | null) => (place === null ? "" : (cells[place] ?? "").trim());
  const fabric = unguarded(cell(columns.fabric));
  if (fabric === "") return { problem: { is: "no-fabric" } };
  const size = readSize(cell(columns.width), cell(columns.length), measures, bare);
  if ("problem" in size) return size;
  const written = cell(columns.count).replace(/[.,]0+$/, "");
  const count = written === "" ? 1 : Number(written);
  if (!/^\d*$/.test(written) || count > MOST) {
    return { problem: { is: "count", found: `"${cell(columns.count)}"`, least: 0, most: MOST } };
  }
  const { across, along, guessed } = size;
  return { cloth: { fabric, across, along, count, note: unguarded(cell(columns.note)) }, guessed };
}

/** Without the apostrophe that keeps a spreadsheet from running it. */
const unguarded = (text: string) => text.replace(/^'(?=[=+\-@])/, "");

type ReadSize = { across: Ticks; along: Ticks; guessed: boolean } | { problem: say.StashFault };

function readSize(width: string, length: string, measures: Stash["measures"], bare: LengthUnit): ReadSize {
  if (length === "") {
    const trade = tradeSize(width);
    if (trade !== null && trade.across !== null) {
      return { across: trade.across, along: trade.along, guessed: false };
    }
    // How wide the fabric was that it was cut from is not known here.
    if (trade !== null) return { problem: { is: "strips-no-length", example: false, size: width } };
  }
  if (width === "" || length === "") {
    return { problem: { is: width === "" ? "no-width" : "no-length-given" } };
  }
  const first = parseLength(width, measures.width ?? bare);
  const second = parseLength(length, measures.length ?? bare);
  const beside = {
    width: measures.width ?? besideOf(unitOf(second) ?? measures.length),
    length: measures.length ?? besideOf(unitOf(first) ?? measures.width),
  };
  const across = inTicks(parseLength(width, beside.width ?? bare));
  const along = inTicks(parseLength(length, beside.length ?? bare));
  for (const [written, read] of [
    [width, across],
    [length, along],
  ] as const) {
    if (typeof read !== "number") return { problem: { is: "length", text: written, fault: read } };
    if (read <= 0) return { problem: { is: "no-cloth", text: written } };
  }
  const guessed =
    (unitOf(first) === null && beside.width === null) || (unitOf(second) === null && beside.length === null);
  return { across: Number(across), along: Number(along), guessed };
}

function unitOf(read: ParsedLength): LengthUnit | null {
  return read.ok ? read.unit : null;
}

/** A bare number takes the measure beside it in its row or heading: beside metres centimetres, beside yards inches. */
function besideOf(unit: LengthUnit | null): LengthUnit | null {
  return unit === "m" ? "cm" : unit === "yd" ? "in" : unit;
}

/** There is no more cloth than is said: to the tick below. Or what is wrong. */
function inTicks(read: ParsedLength): Ticks | LengthFault {
  return read.ok ? Number(floor(read.value)) : read.problem.fault;
}
