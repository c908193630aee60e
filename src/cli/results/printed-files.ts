import { resolve } from "node:path";
import type { Comparison } from "../../choices/methods/comparison.ts";
import type { PatternSource } from "../../index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import type { Files } from "../files/write.ts";
import type { Io } from "../io.ts";
import { report } from "../report.ts";
import type { Fonts } from "./fonts.ts";
import type { Book } from "./result-files.ts";
import { PATTERN_PDF_NAME, PDF_NAME } from "./result-files.ts";

/** What is asked for besides the usual files. */
export interface Printing {
  pdf: boolean;
  paper: "a4" | "letter" | null;
  /** Width of the pictures in pixels; null for none. */
  png: number | null;
  /** A font file of the maker's. */
  font: string | null;
  /** The book without its drawings, for a newsletter. */
  markdown: boolean;
}

/** What was made besides the plan, to be printed with it. */
export interface PrintedToo {
  comparison?: Comparison | null;
  pattern?: PatternSource | null;
  books?: Readonly<Record<string, Book>>;
}

/** Further books as PDF, each under its name. */
async function printedBooks(
  books: Readonly<Record<string, Book>>,
  plan: Plan,
  paper: Printing["paper"],
  fonts: Fonts,
  words: Words,
): Promise<Files> {
  const { bookFile } = await import("./pdf-file.ts");
  const files: Record<string, Uint8Array> = {};
  for (const [name, book] of Object.entries(books))
    files[`${name}.pdf`] = await bookFile(book, plan, paper, fonts, words);
  return files;
}

/** The comparison as files of its own, and in the book. */
async function comparedFiles(plan: Plan, comparison: Comparison, words: Words): Promise<Files> {
  const { comparisonTable, loadBook, loadComparisonDrawing } = await import("../../index.ts");
  const [{ bookOf, pageOf }, { drawComparison }] = await Promise.all([loadBook(), loadComparisonDrawing()]);
  return {
    "book.html": pageOf(bookOf(plan, words, comparison), words),
    "compare.txt": comparisonTable(comparison, plan.ruler, words),
    "compare.svg": drawComparison(comparison, plan.ruler.unit === "in", words),
  };
}

async function handoutFiles(plan: Plan, comparison: Comparison | null, words: Words): Promise<Files> {
  const { loadBook } = await import("../../index.ts");
  const { bookOf, handoutMarkdown, handoutText } = await loadBook();
  const book = bookOf(plan, words, comparison);
  return { "handout.md": handoutMarkdown(book), "handout.txt": handoutText(book, words) };
}

/**
 * What is asked for besides the usual files of a plan, which are `results`: the book with the comparison in it, as a
 * PDF and as a handout; drawings as pictures. Tells of letters that no font has.
 */
export async function printedFiles(
  plan: Plan,
  results: Files,
  asked: Printing,
  { comparison = null, pattern = null, books = {} }: PrintedToo,
  io: Io,
): Promise<Files> {
  const { pdf, paper, png, font, markdown } = asked;
  const files = {
    ...(comparison === null ? {} : await comparedFiles(plan, comparison, io.words)),
    ...(markdown ? await handoutFiles(plan, comparison, io.words) : {}),
  };
  if (!pdf && png === null) return files;
  const [{ fontsFor }, { patternFile, pdfFile }, { pictureFiles }] = await Promise.all([
    import("./fonts.ts"),
    import("./pdf-file.ts"),
    import("./pictures.ts"),
  ]);
  const fonts = await fontsFor(
    [plan, pattern?.told ?? null, books],
    font === null ? [] : [resolve(io.folder, font)],
  );
  report(fonts.diagnostics, undefined, io);
  const pictures = png === null ? null : await pictureFiles({ ...results, ...files }, png, fonts, "warning");
  report(pictures?.diagnostics ?? [], undefined, io);
  const printed = pdf
    ? {
        [PDF_NAME]: await pdfFile(plan, paper, fonts, io.words, comparison),
        ...(await printedBooks(books, plan, paper, fonts, io.words)),
        ...(pattern === null
          ? {}
          : { [PATTERN_PDF_NAME]: await patternFile(plan, pattern, paper, fonts, io.words) }),
      }
    : {};
  return { ...files, ...printed, ...pictures?.files };
}
