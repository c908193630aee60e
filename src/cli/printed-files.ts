import { resolve } from "node:path";
import type { Comparison } from "../choices/comparison.ts";
import type { PatternSource } from "../index.ts";
import type { Plan } from "../plan/types.ts";
import type { Words } from "../words/index.ts";
import type { Io } from "./io.ts";
import { report } from "./report.ts";
import type { Book } from "./result-files.ts";
import { CLASS_PDF_NAME, PATTERN_PDF_NAME, PDF_NAME } from "./result-files.ts";
import type { Files } from "./write.ts";

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

/** The comparison as files of its own, and in the book. */
async function comparedFiles(plan: Plan, comparison: Comparison, words: Words): Promise<Files> {
  const { comparisonTable, loadBook, loadComparisonDrawing } = await import("../index.ts");
  const [{ bookOf, pageOf }, { drawComparison }] = await Promise.all([loadBook(), loadComparisonDrawing()]);
  return {
    "book.html": pageOf(bookOf(plan, words, comparison), words),
    "compare.txt": comparisonTable(comparison, plan.ruler, words),
    "compare.svg": drawComparison(comparison, plan.ruler.unit === "in", words),
  };
}

async function handoutFiles(plan: Plan, comparison: Comparison | null, words: Words): Promise<Files> {
  const { loadBook } = await import("../index.ts");
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
  comparison: Comparison | null,
  pattern: PatternSource | null,
  io: Io,
  teachers: Book | null = null,
): Promise<Files> {
  const { pdf, paper, png, font, markdown } = asked;
  const files = {
    ...(comparison === null ? {} : await comparedFiles(plan, comparison, io.words)),
    ...(markdown ? await handoutFiles(plan, comparison, io.words) : {}),
  };
  if (!pdf && png === null) return files;
  const [{ fontsFor }, { bookFile, patternFile, pdfFile }, { pictureFiles }] = await Promise.all([
    import("./fonts.ts"),
    import("./pdf-file.ts"),
    import("./pictures.ts"),
  ]);
  const fonts = await fontsFor(
    [plan, pattern?.told ?? null, teachers],
    font === null ? [] : [resolve(io.folder, font)],
  );
  report(fonts.diagnostics, undefined, io);
  const pictures = png === null ? null : await pictureFiles({ ...results, ...files }, png, fonts, "warning");
  report(pictures?.diagnostics ?? [], undefined, io);
  const printed = pdf
    ? {
        [PDF_NAME]: await pdfFile(plan, paper, fonts, io.words, comparison),
        ...(teachers === null
          ? {}
          : { [CLASS_PDF_NAME]: await bookFile(teachers, plan, paper, fonts, io.words) }),
        ...(pattern === null
          ? {}
          : { [PATTERN_PDF_NAME]: await patternFile(plan, pattern, paper, fonts, io.words) }),
      }
    : {};
  return { ...files, ...printed, ...pictures?.files };
}
