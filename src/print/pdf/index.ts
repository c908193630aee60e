import type { Comparison } from "../../choices/methods/comparison.ts";
import { bookOf } from "../../content/book/book.ts";
import type { Book } from "../../content/book/content.ts";
import { safeColour } from "../../draw/scene/palette.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { DAY } from "../paper/inks.ts";
import { GAP, high, LEAF, sizeOf, TYPE } from "../paper/measure.ts";
import { type LaidBook, type LaidSection, laidOut } from "../paper/paginate.ts";
import { drawingAt } from "./draw-scene.ts";
import { drawBlock } from "./pdf-blocks.ts";
import {
  aside,
  closeSheet,
  marked,
  newPage,
  openSheet,
  type PdfOptions,
  rule,
  type Sheet,
  square,
  textAt,
  within,
} from "./sheet.ts";

export type { PdfOptions } from "./sheet.ts";

/** Letters of a title that would fill the cover. */
const LONG_TITLE = 60;

function drawHead(sheet: Sheet, { over, title, swatch, head }: LaidSection): void {
  let { y } = sheet;
  const { left } = sheet;
  const inset = swatch === null ? 0 : 22;
  if (over !== "")
    marked(sheet, "P", () => {
      y = textAt(sheet, over, { x: left, y, width: LEAF.width }, TYPE.small, { colour: DAY.quiet });
    });
  if (swatch !== null) aside(sheet, () => square(sheet, left, y + 4, 14, safeColour(swatch)));
  marked(sheet, "H2", () => {
    textAt(sheet, title, { x: left + inset, y, width: LEAF.width - inset }, TYPE.title, { title: true });
  });
  aside(sheet, () => rule(sheet, { x: left, y: sheet.y + head - GAP.head + 1, width: LEAF.width }, true));
  sheet.y += head;
}

function drawSection(sheet: Sheet, section: LaidSection, ticked: boolean): void {
  if (section.fresh) newPage(sheet);
  else sheet.y += section.gap;
  sheet.running.at(-1)?.push(section.title);
  sheet.document.outline.addItem(section.title);
  within(sheet, "Sect", () => {
    drawHead(sheet, section);
    for (const laid of section.blocks) {
      if (laid.fresh) {
        newPage(sheet);
        sheet.running.at(-1)?.push(section.title);
      } else sheet.y += laid.gap;
      drawBlock(sheet, laid, ticked);
      sheet.y += laid.height;
    }
  });
}

function drawCover(sheet: Sheet, book: LaidBook): void {
  const { left } = sheet;
  const wide = { x: left, width: LEAF.width };
  let y = sheet.top;
  const long = book.title.length > LONG_TITLE;
  const type = long ? { size: 15, line: 18 } : { size: 32, line: 38 };
  marked(sheet, "P", () => {
    y = textAt(sheet, book.subtitle.toUpperCase(), { ...wide, y }, TYPE.body, {
      bold: true,
      colour: DAY.accent,
    });
  });
  marked(sheet, "H1", () => {
    y = textAt(sheet, book.title, { ...wide, y: y + 2 }, type, { title: true }) + 6;
  });
  const lines = book.cover.lines ?? [];
  for (const line of lines)
    marked(sheet, "P", () => {
      y = textAt(sheet, line, { ...wide, y }, TYPE.lead);
    });
  const facts = { kind: "facts", facts: book.cover.facts } as const;
  sheet.y = y + 6;
  drawBlock(sheet, { block: facts, fresh: false, gap: 0, close: false, height: 0, scale: 1 }, false);
  const rows = Math.ceil(book.cover.facts.length / 4);
  y = sheet.y + rows * 34;
  aside(sheet, () => rule(sheet, { ...wide, y }, true));
  y += 12;
  const foot = book.cover.foot ?? "";
  const below = foot === "" ? 0 : high(foot, LEAF.width, TYPE.small) + 8;
  const own = sizeOf(book.cover.scene);
  const end = sheet.top + book.coverHigh;
  const room = end - y - below;
  const scale = Math.min(LEAF.width / own.width, room / own.height);
  drawingAt(sheet, book.cover.scene, left + (LEAF.width - own.width * scale) / 2, y, scale);
  if (foot !== "")
    marked(sheet, "P", () =>
      textAt(sheet, foot, { ...wide, y: end - below + 8 }, TYPE.small, {
        colour: DAY.quiet,
      }),
    );
  sheet.y = end;
}

/** A book as a vector PDF with its reading order told, on the paper asked for. Same book and options, same bytes. */
export function printedBook(book: Book, options: PdfOptions, words: Words): Promise<Uint8Array> {
  const sheet = openSheet(book.title, words.book.bench.language, options);
  const laid = laidOut(book);
  drawCover(sheet, laid);
  for (const section of laid.sections) drawSection(sheet, section, book.purpose === "bench");
  return closeSheet(sheet, book.title, words.book.bench.page);
}

/** The bench book of a plan as a PDF. */
export function bookPdf(
  plan: Plan,
  options: PdfOptions,
  words: Words,
  comparison: Comparison | null = null,
): Promise<Uint8Array> {
  return printedBook(bookOf(plan, words, comparison), options, words);
}
