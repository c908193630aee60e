import { resolve } from "node:path";
import type { Plan } from "../plan/types.ts";
import type { Io } from "./io.ts";
import { report } from "./report.ts";
import { PDF_NAME } from "./result-files.ts";
import type { Files } from "./write.ts";

/** What is asked for that needs fonts: the book as a PDF, drawings as PNG pictures. */
export interface Printing {
  pdf: boolean;
  paper: "a4" | "letter" | null;
  /** Width of the pictures in pixels; null for none. */
  png: number | null;
  /** A font file of the maker's. */
  font: string | null;
}

/** The PDF and the pictures of a plan whose other files are `results`. Tells of letters that no font has. */
export async function printedFiles(plan: Plan, results: Files, asked: Printing, io: Io): Promise<Files> {
  const { pdf, paper, png, font } = asked;
  if (!pdf && png === null) return {};
  const [{ fontsFor }, { pdfFile }, { pictureFiles }] = await Promise.all([
    import("./fonts.ts"),
    import("./pdf-file.ts"),
    import("./pictures.ts"),
  ]);
  const fonts = await fontsFor(plan, font === null ? [] : [resolve(io.folder, font)]);
  report(fonts.diagnostics, undefined, io);
  const pictures = png === null ? {} : await pictureFiles(results, png, fonts);
  return { ...(pdf ? { [PDF_NAME]: await pdfFile(plan, paper, fonts) } : {}), ...pictures };
}
