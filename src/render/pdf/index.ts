import type { Comparison } from "../../choices/comparison.ts";
import type { Plan } from "../../plan/types.ts";
import { bookOf } from "../book/book.ts";
import type { Section } from "../book/content.ts";
import { DAY } from "../book/style.ts";
import { bookWords } from "../book/words.ts";
import { safeColour } from "../svg/palette.ts";
import { drawBench } from "./pdf-bench.ts";
import { drawBlock } from "./pdf-blocks.ts";
import {
  closeSheet,
  drawing,
  ensure,
  heightOfDrawing,
  heightOn,
  newPage,
  openSheet,
  type PdfOptions,
  paragraph,
  type Sheet,
  scratchSheet,
  square,
  stitch,
} from "./sheet.ts";

export type { PdfOptions } from "./sheet.ts";

/** A section up to this share of a page is kept on one. */
const KEPT = 0.85;
const BEFORE = 14;

function drawSection(sheet: Sheet, scratch: Sheet, section: Section): void {
  if (section.newSheet) newPage(sheet, section.running);
  else {
    const high = heightOn(scratch, (on) => drawInside(on, scratch, section)) + BEFORE;
    ensure(sheet, high <= (sheet.bottom - sheet.top) * KEPT ? high : 150);
    if (sheet.y > sheet.top) sheet.y += BEFORE;
  }
  sheet.document.outline.addItem(section.title);
  drawInside(sheet, scratch, section);
}

function drawInside(sheet: Sheet, scratch: Sheet, section: Section): void {
  const { title, over, swatch, blocks, titledByDrawing } = section;
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
    if (block.kind === "bench") {
      drawBench(sheet, scratch, block, told.slice(i + 1));
      return;
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
  sheet.y += 10;
  stitch(sheet);
  sheet.y += 10;
  drawing(sheet, book.cover.svg, { width: sheet.width, height: sheet.bottom - sheet.y }, { centred: true });
  const scratch = scratchSheet(options);
  for (const section of book.sections) drawSection(sheet, scratch, section);
  return closeSheet(sheet, book.title, bookWords.page);
}
