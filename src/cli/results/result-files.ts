import type { PatternSource } from "../../index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import type { Files } from "../files/write.ts";

type Books = Awaited<ReturnType<typeof import("../../index.ts").loadBook>>;

/** A book before anybody decides how it looks. */
export type Book = ReturnType<Books["classSheet"]>;

/** The books for the printer, written when they are asked for. */
export const PDF_NAME = "book.pdf";
export const PATTERN_PDF_NAME = "pattern.pdf";

/** Every file of a plan: the plan itself, which may be too long for one text, and all that is made of it. */
export async function resultFiles(
  plan: Plan,
  words: Words,
  pattern: PatternSource | null = null,
): Promise<Files> {
  const { loadFiles, planPortions } = await import("../../index.ts");
  const { planFiles } = await loadFiles();
  return { "plan.json": { portions: () => planPortions(plan, words) }, ...planFiles(plan, words, pattern) };
}
