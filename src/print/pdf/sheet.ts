import PDFDocument from "pdfkit";
import { fitText, startsRightToLeft } from "../../draw/scene/text-fit.ts";
import { DAY } from "../paper/inks.ts";
import { LEAF, linesIn, type Type } from "../paper/measure.ts";
import {
  type Face,
  type FontFiles,
  isEveryday,
  lineWidth,
  openTypesetter,
  setLine,
  setPlainly,
  type Typesetter,
} from "./typesetter.ts";

/** What printing needs from outside: font files, paper, and the time the file says it was made. */
export interface PdfOptions {
  fonts: FontFiles;
  paper: "a4" | "letter";
  made: Date;
}

/** How a line is set, besides its size. */
export interface Look {
  bold?: boolean;
  /** In letters of titles. */
  title?: boolean;
  colour?: string;
  align?: "left" | "right";
}

export interface Sheet {
  /** Left edge and top of the room that both papers share, in points. */
  left: number;
  top: number;
  /** Where the next thing goes. */
  y: number;
  document: PDFKit.PDFDocument;
  setter: Typesetter;
  /** Titles of the sections on each page so far. */
  running: string[][];
  /** The part of the reading order that is being written. */
  within: PDFKit.PDFStructureElement;
}

const TOP = 46;

/** An empty document on its first page. */
export function openSheet(title: string, language: string, { fonts, paper, made }: PdfOptions): Sheet {
  const document = new PDFDocument({
    size: paper === "a4" ? "A4" : "LETTER",
    margins: { left: 0, right: 0, top: 0, bottom: 0 },
    bufferPages: true,
    tagged: true,
    pdfVersion: "1.7",
    lang: language,
    displayTitle: true,
    info: {
      Title: fitText(title),
      Producer: "Crossgrain",
      Creator: "Crossgrain",
      CreationDate: made,
      ModDate: made,
    },
  });
  const setter = openTypesetter(document, fonts);
  const within = document.struct("Document");
  document.addStructure(within);
  const left = (document.page.width - LEAF.width) / 2;
  return { left, top: TOP, y: TOP, document, setter, running: [[]], within };
}

/** Begins a page. */
export function newPage(sheet: Sheet): void {
  sheet.document.addPage();
  sheet.running.push([]);
  sheet.y = sheet.top;
}

/** What `draw` writes as one part of the reading order: a section, a list, a row. */
export function within(sheet: Sheet, kind: string, draw: () => void): void {
  const outer = sheet.within;
  const own = sheet.document.struct(kind);
  outer.add(own);
  sheet.within = own;
  draw();
  own.end();
  sheet.within = outer;
}

/** What is told of a thing on the page besides what it says: `bbox` from its upper left to its lower right corner. */
interface Told {
  alt?: string;
  bbox?: [number, number, number, number];
  scope?: "Column" | "Row";
}

/** What `draw` puts on the page as one thing to be read: a paragraph, a heading, a figure with its words. */
export function marked(sheet: Sheet, kind: string, draw: () => void, options: Told = {}): void {
  const own = sheet.document.struct(kind, options as PDFKit.Mixins.StructureElementOptions);
  sheet.within.add(own);
  own.add(draw);
  own.end();
}

/** What is drawn for the eye alone. */
export function aside(sheet: Sheet, draw: () => void): void {
  sheet.document.markContent("Artifact", { type: "Layout" });
  draw();
  sheet.document.endMarkedContent();
}

function faceOf({ bold, title }: Look): Face {
  if (title === true) return "title";
  return bold === true ? "bodyBold" : "body";
}

/** Share of a line that lies above its baseline. */
const ABOVE = 0.78;

/** Lines of a text from `y` down, broken as they were measured; where the next would go. */
export function textAt(
  sheet: Sheet,
  text: string,
  at: { x: number; y: number; width: number },
  type: Type,
  look: Look = {},
): number {
  const { setter } = sheet;
  const said = fitText(text);
  const face = faceOf(look);
  const colour = look.colour ?? DAY.ink;
  const right = look.align === "right" || startsRightToLeft(said);
  const lines = linesIn(
    said,
    look.title === true ? at.width * 0.9 : at.width,
    type,
    look.bold === true || look.title === true,
  );
  for (const [i, line] of lines.entries()) {
    const y = at.y + i * type.line + type.line * ABOVE;
    if (isEveryday(line) && !right) {
      setPlainly(setter, line, { x: at.x, y }, { face, size: type.size, colour });
      continue;
    }
    const place = { x: right ? at.x + at.width : at.x, y, anchor: right ? "end" : "start" } as const;
    setLine(
      setter,
      line,
      { ...place, base: startsRightToLeft(said) ? "rtl" : "ltr" },
      { face, size: type.size, colour },
    );
  }
  return at.y + Math.max(1, lines.length) * type.line;
}

/** A line from edge to edge; dashed as a running stitch. */
export function rule(
  sheet: Sheet,
  at: { x: number; y: number; width: number },
  stitched = false,
  colour: string = DAY.line,
): void {
  const { document } = sheet;
  document
    .save()
    .lineWidth(stitched ? 1.1 : 0.6)
    .strokeColor(colour);
  if (stitched) document.dash(5, { space: 3 });
  document
    .moveTo(at.x, at.y)
    .lineTo(at.x + at.width, at.y)
    .stroke()
    .restore();
}

/** A filled square with an edge: a fabric's swatch, or with no colour a box to tick. */
export function square(sheet: Sheet, x: number, y: number, size: number, colour: string | null): void {
  sheet.document
    .save()
    .lineWidth(colour === null ? 1.1 : 0.6)
    .strokeColor(DAY.ink);
  const shape = sheet.document.roundedRect(x, y, size, size, size / 6);
  if (colour === null) shape.stroke();
  else shape.fillAndStroke(colour, DAY.ink);
  sheet.document.restore();
}

/** Writes headers and page numbers, and gives the file's bytes. */
export function closeSheet(sheet: Sheet, title: string, pageWord: string): Promise<Uint8Array> {
  const { document, left } = sheet;
  const { width } = LEAF;
  const count = sheet.running.length;
  const style: LineStyle = { size: 8, colour: DAY.quiet, width };
  sheet.within.end();
  for (const [index, running] of sheet.running.entries()) {
    document.switchToPage(index);
    document.markContent("Artifact", { type: "Pagination" });
    const header = { ...style, width: (width * 2) / 3 };
    if (index > 0) oneLine(sheet, title, left, 28, { ...style, width: width / 3 - 10 });
    const named = [...new Set(running)].join(" · ");
    if (index > 0 && named !== "") oneLine(sheet, named, left + width / 3, 28, { ...header, align: "right" });
    const number = `${pageWord} ${index + 1} / ${count}`;
    oneLine(sheet, number, left, document.page.height - 32, { ...style, align: "right" });
    document.endMarkedContent();
  }
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    document.on("end", () => resolve(Buffer.concat(chunks)));
    document.on("error", reject);
    document.end();
  });
}

interface LineStyle {
  size: number;
  width: number;
  colour: string;
  align?: "right";
}

/** How wide a text is on one line. */
function widthOf(sheet: Sheet, text: string, style: LineStyle): number {
  return lineWidth(sheet.setter, fitText(text), "body", style.size);
}

function oneLine(sheet: Sheet, text: string, x: number, y: number, style: LineStyle): void {
  let said = fitText(text);
  const most = style.width;
  if (widthOf(sheet, said, style) > most) {
    const letters = Array.from(said);
    while (letters.length > 0 && widthOf(sheet, `${letters.join("")}…`, style) > most)
      letters.splice(Math.floor(letters.length * 0.9));
    said = `${letters.join("").trimEnd()}…`;
  }
  const right = style.align === "right";
  const at = {
    x: right ? x + most : x,
    y: y + style.size,
    anchor: right ? "end" : "start",
    base: startsRightToLeft(said) ? "rtl" : "ltr",
  } as const;
  setLine(sheet.setter, said, at, { face: "body", size: style.size, colour: style.colour });
}
