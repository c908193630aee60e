import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { Plan } from "../plan/types.ts";

/** The same in every file, so that the same plan gives the same bytes. */
const MADE = new Date(0);

/** Where fabric is sold by the yard, printers mostly hold Letter. */
function usualPaper(plan: Plan): "a4" | "letter" {
  return plan.fabrics.some(({ sold }) => sold.unit === "yd") ? "letter" : "a4";
}

/** The cutting book as a PDF; `paper` null for what suits the plan. */
export async function pdfFile(plan: Plan, paper: "a4" | "letter" | null): Promise<Uint8Array> {
  const place = createRequire(import.meta.url);
  const font = (name: string) => readFile(place.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
  const { loadPdf } = await import("../index.ts");
  const [{ bookPdf }, regular, bold] = await Promise.all([
    loadPdf(),
    font("DejaVuSans"),
    font("DejaVuSans-Bold"),
  ]);
  return bookPdf(plan, { fonts: { regular, bold }, paper: paper ?? usualPaper(plan), made: MADE });
}
