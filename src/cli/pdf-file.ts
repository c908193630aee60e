import type { Comparison } from "../choices/comparison.ts";
import type { Plan } from "../plan/types.ts";
import type { Fonts } from "./fonts.ts";

/** The same in every file, so that the same plan gives the same bytes. */
const MADE = new Date(0);

/** Where fabric is sold by the yard, printers mostly hold Letter. */
function usualPaper(plan: Plan): "a4" | "letter" {
  return plan.fabrics.some(({ sold }) => sold.unit === "yd") ? "letter" : "a4";
}

/** The cutting book as a PDF; `paper` null for what suits the plan. */
export async function pdfFile(
  plan: Plan,
  paper: "a4" | "letter" | null,
  fonts: Fonts,
  comparison: Comparison | null = null,
): Promise<Uint8Array> {
  const { loadFonts, loadPdf } = await import("../index.ts");
  const [{ bookPdf }, { withStandIns }] = await Promise.all([loadPdf(), loadFonts()]);
  const told = { ...plan, diagnostics: [...plan.diagnostics, ...fonts.diagnostics] };
  const drawable: Plan =
    fonts.undrawn.length === 0 ? plan : JSON.parse(withStandIns(JSON.stringify(told), fonts.undrawn));
  const { plain, plainBold, body, bodyBold, title } = fonts.ours;
  const asked = {
    fonts: {
      plain: plain.bytes,
      plainBold: plainBold.bytes,
      body: body.bytes,
      bodyBold: bodyBold.bytes,
      title: title.bytes,
      others: fonts.others.map(({ bytes }) => bytes),
    },
    paper: paper ?? usualPaper(plan),
    made: MADE,
  };
  return bookPdf(drawable, asked, comparison);
}
