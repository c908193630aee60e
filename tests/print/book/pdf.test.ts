import { expect, test } from "vitest";
import type { Plan } from "../../../src/plan/types.ts";
import { bookOf } from "../../../src/print/index.ts";
import { bookPdf } from "../../../src/print/pdf/index.ts";
import { english } from "../../../src/words/index.ts";
import { PDF_FONTS } from "../../support/fonts.ts";
import { drawingsIn, pagesOf, printFaults } from "../../support/pdf-text.ts";
import { firstOf } from "../../support/sweep.ts";
import { hostilePlan, listPlan, quiltPlan, smallestPlan } from "./book-plans.ts";

async function printed(plan: Plan, paper: "a4" | "letter"): Promise<string> {
  const bytes = await bookPdf(plan, { fonts: PDF_FONTS, paper, made: new Date(0) }, english);
  return Buffer.from(bytes).toString("latin1");
}

const pageCount = (file: string) => [...file.matchAll(/\/Type \/Page\b(?!s)/g)].length;

const WHOLE = [
  ["one piece", smallestPlan, 2, 4],
  ["hostile names", hostilePlan, 6, 16],
  ["a cut list", listPlan, 3, 5],
  ["a quilt", quiltPlan, 6, 9],
] as const;

test.each(firstOf(WHOLE, 2))(
  "the PDF of %s is whole, vector and the same every time",
  async (_, make, least, most) => {
    const plan = await make();
    const file = await printed(plan, "a4");
    expect(await printed(plan, "a4")).toBe(file);
    expect(file.startsWith("%PDF-")).toBe(true);
    expect(file.trimEnd().endsWith("%%EOF")).toBe(true);
    expect(file).not.toContain("/Subtype /Image");
    expect(pageCount(file)).toBeGreaterThanOrEqual(least);
    expect(pageCount(file)).toBeLessThanOrEqual(most);
  },
);

test.each([
  ["a quilt on A4", quiltPlan, "a4"],
  ["a cut list on Letter", listPlan, "letter"],
] as const)("%s: pages are numbered and headed, no step or diagram is broken", async (_, make, paper) => {
  const plan = await make();
  const bytes = await bookPdf(plan, { fonts: PDF_FONTS, paper, made: new Date(0) }, english);
  const pages = await pagesOf(bytes);
  const book = bookOf(plan, english);
  expect(printFaults(pages, book)).toEqual([]);
  // Every drawing stands once, with words for those who do not see it.
  const figures = Buffer.from(bytes).toString("latin1").split("/S /Figure").length - 1;
  expect(figures).toBe(drawingsIn(book));
  expect(pages.length).toBe(pageCount(Buffer.from(bytes).toString("latin1")));
});

test("every page is of the paper asked for", async () => {
  const plan = await smallestPlan();
  // ISO 216: A4 is 210 x 297 mm. ANSI/ASME Y14.1: letter is 8 1/2 x 11 in. A point is 1/72 in (ISO 32000).
  for (const [paper, box] of [
    ["a4", [(210 * 72) / 25.4, (297 * 72) / 25.4]],
    ["letter", [8.5 * 72, 11 * 72]],
  ] as const) {
    const file = await printed(plan, paper);
    const boxes = [...file.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
    expect(boxes.length).toBe(pageCount(file));
    for (const [, across = "", down = ""] of boxes) {
      expect(Number(across)).toBeCloseTo(box[0], 1);
      expect(Number(down)).toBeCloseTo(box[1], 1);
    }
  }
});
