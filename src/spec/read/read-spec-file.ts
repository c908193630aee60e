import { fileNotText, fileTooLarge } from "../../diagnostics/files.ts";
import { fileNotMapping, moreProblems } from "../../diagnostics/reading.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import type { DecimalMark, Ruler } from "../../length/types.ts";
import { type Language, languageWritten, writingOf } from "../../length/writing.ts";
import { STANDARD_INPUT } from "../key-words.ts";
import type { Spec } from "../spec.ts";
import { readDocument } from "./document.ts";
import { isQuilt, readQuilt } from "./quilt-read.ts";
import { readCutList } from "./read-cut-list.ts";

/** A cut list is a few kilobytes. */
export const MOST_CHARACTERS = 1_000_000;
const MOST_TOLD = 50;

/** Control characters that no text file has. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: finding control characters is the purpose
const NOT_TEXT = /[\u0000-\u0008\u000b\u000e-\u001f\ufffd]/;

/** `6,5 cm` and `6,5 x 11` against `6.5 cm` and `6.5 x 11`. */
const TENTHS = /(?<![\w.,])\d+([.,])\d+ *(?:cm|mm|m|x|×)(?![a-z])/g;

/** The mark a maker writes before tenths of a measure: the one met more often, else a point. */
export function decimalOf(text: string): DecimalMark | undefined {
  const marks = [...text.matchAll(TENTHS)].map(([, mark]) => mark);
  return marks.filter((mark) => mark === ",").length * 2 > marks.length ? "comma" : undefined;
}

/** How what is printed of a file is written: as asked, else as the language has it, else as the file itself. */
function writtenAs(
  text: string,
  decimal: DecimalMark | "point" | null,
  language: Language | null,
): Pick<Ruler, "decimal" | "language"> {
  const spoken = language ?? languageWritten(text) ?? "en";
  const usual = writingOf(spoken).decimal ?? decimalOf(text);
  const mark = decimal === null ? usual : decimal === "point" ? undefined : decimal;
  return {
    ...(mark === undefined ? {} : { decimal: mark }),
    ...(spoken === "en" ? {} : { language: spoken }),
  };
}

/**
 * Reads a maker's file, YAML or JSON. Which kind it is follows from its keys. Every problem is told in one run, in file
 * order; there is a value unless one of them is an error. Never throws on any text.
 * @param decimal mark before tenths in everything printed; by default that of the language, else the one the file is written with
 * @param language what lengths are written in; by default the language that the file asks for
 */
export function readSpecFile(
  text: string,
  fileName: string,
  decimal: DecimalMark | "point" | null = null,
  language: Language | null = null,
): Outcome<Spec> {
  const start = { file: fileName, line: 1, column: 1 };
  if (text.length > MOST_CHARACTERS) return fail({ ...fileTooLarge(fileName, MOST_CHARACTERS), at: start });
  if (NOT_TEXT.test(text)) return fail({ ...fileNotText(fileName), at: start });
  const document = readDocument(text.replace(/^\ufeff/, ""), fileName);
  if (document.value === null)
    return { value: null, diagnostics: inFileOrder(document.diagnostics, fileName) };
  const { value } = document.value;
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return fail(fileNotMapping({ path: "", at: start }, Array.isArray(value) ? "list" : "value"));
  }
  const name = nameFromFile(fileName);
  const written = writtenAs(text, decimal, language);
  const read = isQuilt(value)
    ? readQuilt(document.value, name, written)
    : readCutList(document.value, name, written);
  return { value: read.value, diagnostics: inFileOrder(read.diagnostics, fileName) };
}

function fail(diagnostic: Diagnostic): Outcome<Spec> {
  return { value: null, diagnostics: [diagnostic] };
}

/** `quilts/harbour-lights.yaml` is called `harbour lights` when the file gives no name. */
function nameFromFile(fileName: string): string {
  const base = fileName.split(/[\\/]/).at(-1) ?? "";
  const name = base
    .replace(/\.(ya?ml|json)$/i, "")
    .replace(/[-_\s]+/g, " ")
    .trim();
  return name === "" || base === STANDARD_INPUT ? "quilt" : name.slice(0, 80);
}

/** Sorted by place, then code; the tail of a very long list is counted only. */
export function inFileOrder(diagnostics: readonly Diagnostic[], fileName: string): Diagnostic[] {
  const order = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  const sorted = [...diagnostics].sort(
    (a, b) =>
      (a.at?.line ?? 0) - (b.at?.line ?? 0) ||
      (a.at?.column ?? 0) - (b.at?.column ?? 0) ||
      order(a.code, b.code) ||
      order(a.path, b.path),
  );
  if (sorted.length <= MOST_TOLD) return sorted;
  const errors = sorted.filter(({ severity }) => severity === "error");
  if (errors.length === 0) return sorted;
  if (errors.length <= MOST_TOLD) return errors;
  return [...errors.slice(0, MOST_TOLD), moreProblems(fileName, errors.length - MOST_TOLD)];
}
