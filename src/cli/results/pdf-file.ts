import type { Comparison } from "../../choices/methods/comparison.ts";
import type { PatternSource } from "../../index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import type { Fonts } from "./fonts.ts";
import type { Book } from "./result-files.ts";

/** The same in every file, so that the same plan gives the same bytes. */
const MADE = new Date(0);

/** Where fabric is sold by the yard, printers mostly hold Letter. */
function usualPaper(plan: Plan): "a4" | "letter" {
  return plan.fabrics.some(({ sold }) => sold.unit === "yd") ? "letter" : "a4";
}

type Paper = "a4" | "letter";

/** What printing needs; letters that no font can draw have stand-ins in what comes back. */
async function printing<T>(plan: Plan, told: T, paper: Paper | null, fonts: Fonts) {
  const { loadFonts, loadPdf } = await import("../../index.ts");
  const [pdf, { withStandIns }] = await Promise.all([loadPdf(), loadFonts()]);
  const drawable: T =
    fonts.undrawn.length === 0 ? told : JSON.parse(withStandIns(JSON.stringify(told), fonts.undrawn));
  const { plain, plainBold, title } = fonts.ours;
  const options = {
    fonts: {
      plain: plain.bytes,
      plainBold: plainBold.bytes,
      title: title.bytes,
      others: fonts.others.map(({ bytes }) => bytes),
    },
    paper: paper ?? usualPaper(plan),
    made: MADE,
  };
  return { pdf, drawable, options };
}

/** The bench book as a PDF; `paper` null for what suits the plan. */
export async function pdfFile(
  plan: Plan,
  paper: Paper | null,
  fonts: Fonts,
  words: Words,
  comparison: Comparison | null = null,
): Promise<Uint8Array> {
  const told = { ...plan, diagnostics: [...plan.diagnostics, ...fonts.diagnostics] };
  const { pdf, drawable, options } = await printing(
    plan,
    fonts.undrawn.length === 0 ? plan : told,
    paper,
    fonts,
  );
  return pdf.bookPdf(drawable, options, words, comparison);
}

/** A book that is made already as a PDF. */
export async function bookFile(
  book: Book,
  plan: Plan,
  paper: Paper | null,
  fonts: Fonts,
  words: Words,
): Promise<Uint8Array> {
  const { pdf, drawable, options } = await printing(plan, book, paper, fonts);
  return pdf.printedBook(drawable, options, words);
}

/** The pattern as a PDF. */
export async function patternFile(
  plan: Plan,
  pattern: PatternSource,
  paper: Paper | null,
  fonts: Fonts,
  words: Words,
): Promise<Uint8Array> {
  const { loadBook } = await import("../../index.ts");
  const { patternOf } = await loadBook();
  const { pdf, drawable, options } = await printing(plan, { plan, pattern }, paper, fonts);
  return pdf.printedBook(
    patternOf(drawable.plan, drawable.pattern.told, words, drawable.pattern.sizes),
    options,
    words,
  );
}
