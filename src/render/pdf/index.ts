import type { Comparison } from "../../choices/comparison.ts";
import type { Plan } from "../../plan/types.ts";
import { bookOf } from "../book/book.ts";
import type { Section } from "../book/content.ts";
import { DAY } from "../book/style.ts";
import { bookWords } from "../book/words.ts";
import { safeColour } from "../svg/palette.ts";
import { drawBlock } from "./pdf-blocks.ts";
import {
  closeSheet,
  drawing,
  ensure,
  heightOfDrawing,
  newPage,
  openSheet,
  type PdfOptions,
  paragraph,
  type Sheet,
  square,
  stitch,
} from "./sheet.ts";

export type { PdfOptions } from "./sheet.ts";

function drawSection(sheet: Sheet, section: Section): void {
  const { title, over, swatch, blocks, titledByDrawing } = section;
  if (section.newSheet) newPage(sheet, section.running);
  else {
    ensure(sheet, 150);
    sheet.y += 14;
  }
  sheet.document.outline.addItem(title);
  // The first drawing has the title and its facts already.
  const told = titledByDrawing ? blocks.filter(({ kind }) => kind !== "facts" && kind !== "text") : blocks;
  if (!titledByDrawing) {
    if (over !== "") paragraph(sheet, over, { size: 8, colour: DAY.quiet, after: 1 });
    if (swatch !== null) square(sheet, sheet.left, sheet.y + 2, 14, safeColour(swatch));
    paragraph(sheet, title, { size: 19, title: true, indent: swatch === null ? 0 : 22, after: 6 });
    stitch(sheet);
  }
  for (const [i, block] of told.entries()) {
    const next = told[i + 1];
    // A heading goes with the drawing under it.
    if (block.kind === "heading" && next?.kind === "picture") {
      ensure(sheet, Math.min(heightOfDrawing(sheet, next.svg) + 40, sheet.bottom - sheet.top));
    }
    drawBlock(sheet, block);
  }
}

/**
 * The cutting book as a vector PDF, at full size on the paper asked for. Same plan and options, same bytes.
 */
export function bookPdf(
  plan: Plan,
  options: PdfOptions,
  comparison: Comparison | null = null,
): Promise<Uint8Array> {
  const book = bookOf(plan, undefined, comparison);
  const sheet = openSheet(book.title, options);
  paragraph(sheet, book.subtitle.toUpperCase(), { size: 9, bold: true, colour: DAY.accent, after: 2 });
  paragraph(sheet, book.title, { size: book.title.length > 60 ? 15 : 36, title: true, after: 12 });
  drawBlock(sheet, { kind: "facts", facts: book.cover.facts });
  sheet.y += 18;
  drawing(sheet, book.cover.svg, { width: sheet.width * 0.9, height: 420 });
  for (const section of book.sections) drawSection(sheet, section);
  return closeSheet(sheet, book.title, bookWords.page);
}
