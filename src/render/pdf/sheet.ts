import PDFDocument from "pdfkit";
import svgToPdf from "svg-to-pdfkit";
import { DAY } from "../book/style.ts";
import { fitText, startsRightToLeft } from "../svg/text-fit.ts";
import { withoutTexts } from "./drawing-texts.ts";
import {
  type Face,
  type FontFiles,
  isEveryday,
  linesOf,
  lineWidth,
  openTypesetter,
  setLine,
  type Typesetter,
} from "./typesetter.ts";

/** What printing needs from outside: font files, paper, and the time the file says it was made. */
export interface PdfOptions {
  fonts: FontFiles;
  paper: "a4" | "letter";
  made: Date;
}

export interface TextStyle {
  size: number;
  bold?: boolean;
  /** Set as a title, in letters of their own. */
  title?: boolean;
  colour?: string;
  /** Points left of the text, and how wide it may be; all the room when left out. */
  indent?: number;
  width?: number;
  align?: "left" | "right";
  /** Points below. */
  after?: number;
}

export interface Sheet {
  /** Left edge, right edge and the top of a page's room, in points. */
  left: number;
  width: number;
  top: number;
  bottom: number;
  /** Where the next thing goes. */
  y: number;
  document: PDFKit.PDFDocument;
  setter: Typesetter;
  /** Running header of each page so far. */
  running: string[];
}

const MARGIN = { x: 37, top: 52, bottom: 46 };

/** An empty document on its first page. */
export function openSheet(title: string, { fonts, paper, made }: PdfOptions): Sheet {
  const document = new PDFDocument({
    size: paper === "a4" ? "A4" : "LETTER",
    margins: { left: MARGIN.x, right: MARGIN.x, top: MARGIN.top, bottom: 0 },
    bufferPages: true,
    lang: "en",
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
  const { width, height } = document.page;
  return {
    left: MARGIN.x,
    width: width - 2 * MARGIN.x,
    top: MARGIN.top,
    bottom: height - MARGIN.bottom,
    y: MARGIN.top,
    document,
    setter,
    running: [""],
  };
}

/** A sheet without end and never printed, to see how high things stand. */
export function scratchSheet(options: PdfOptions): Sheet {
  return { ...openSheet("", options), bottom: Number.POSITIVE_INFINITY };
}

/** How high it stands what `draw` sets on a sheet. */
export function heightOn(scratch: Sheet, draw: (sheet: Sheet) => void): number {
  scratch.y = scratch.top;
  draw(scratch);
  return scratch.y - scratch.top;
}

/** Begins a page with this running header, unless the page at hand is empty. */
export function newPage(sheet: Sheet, running: string): void {
  if (sheet.y > sheet.top) {
    sheet.document.addPage();
    sheet.running.push(running);
  }
  sheet.running[sheet.running.length - 1] = running;
  sheet.y = sheet.top;
}

/** Makes sure that `height` points fit on the page; something higher than a page begins a page. */
export function ensure(sheet: Sheet, height: number): void {
  if (sheet.y + height > sheet.bottom) newPage(sheet, sheet.running.at(-1) ?? "");
}

const LINE_GAP = 1.5;

function faceOf({ bold, title }: TextStyle): Face {
  if (title === true) return "title";
  return bold === true ? "bodyBold" : "body";
}

function use(sheet: Sheet, style: TextStyle): void {
  sheet.document
    .font(faceOf(style))
    .fontSize(style.size)
    .fillColor(style.colour ?? DAY.ink);
}

/** Height of one line, the room below it included. */
function leading(sheet: Sheet, style: TextStyle): number {
  use(sheet, style);
  return sheet.document.currentLineHeight(true) + LINE_GAP;
}

/** How high a text will stand. */
export function heightOf(sheet: Sheet, text: string, style: TextStyle): number {
  const said = fitText(text) || " ";
  const width = style.width ?? sheet.width - (style.indent ?? 0);
  const high = leading(sheet, style);
  if (isEveryday(said)) return sheet.document.heightOfString(said, { width, lineGap: LINE_GAP });
  return linesOf(sheet.setter, said, faceOf(style), style.size, width).length * high;
}

/** How wide a text is on one line. */
export function widthOf(sheet: Sheet, text: string, style: TextStyle): number {
  return lineWidth(sheet.setter, fitText(text), faceOf(style), style.size);
}

/** Text at a place, not moving on. */
export function textAt(sheet: Sheet, text: string, x: number, y: number, style: TextStyle): void {
  const said = fitText(text) || " ";
  const width = style.width ?? sheet.width - (x - sheet.left);
  const align = style.align ?? "left";
  const high = leading(sheet, style);
  if (isEveryday(said)) {
    sheet.document.text(said, x, y, { width, align, lineGap: LINE_GAP });
    return;
  }
  const face = faceOf(style);
  const colour = style.colour ?? DAY.ink;
  // As far below the top of the line as the everyday way of setting has it.
  const drop = high - LINE_GAP - style.size * 0.24;
  const at = {
    x: align === "left" ? x : x + width,
    anchor: align === "left" ? "start" : "end",
    base: startsRightToLeft(said) ? "rtl" : "ltr",
  } as const;
  for (const [i, line] of linesOf(sheet.setter, said, face, style.size, width).entries()) {
    setLine(sheet.setter, line, { ...at, y: y + i * high + drop }, { face, size: style.size, colour });
  }
}

/** A paragraph; one longer than the page is high is broken by lines. */
export function paragraph(sheet: Sheet, text: string, style: TextStyle): void {
  const height = heightOf(sheet, text, style);
  const room = sheet.bottom - sheet.top;
  if (height > room) {
    const letters = Array.from(text);
    const half = Math.ceil(letters.length / 2);
    paragraph(sheet, letters.slice(0, half).join(""), { ...style, after: 0 });
    paragraph(sheet, letters.slice(half).join(""), style);
    return;
  }
  ensure(sheet, height);
  textAt(sheet, text, sheet.left + (style.indent ?? 0), sheet.y, style);
  sheet.y += height + (style.after ?? 4);
}

/** A line across the page; dashed as a running stitch. */
export function stitch(sheet: Sheet): void {
  const { document, left, width, y } = sheet;
  document.save().lineWidth(1.2).dash(5, { space: 3 }).strokeColor(DAY.line);
  document
    .moveTo(left, y)
    .lineTo(left + width, y)
    .stroke()
    .restore();
  sheet.y += 9;
}

/** A thin line at a height. */
export function rule(sheet: Sheet, y: number, colour: string = DAY.line, weight = 0.6): void {
  const { document, left, width } = sheet;
  document.save().lineWidth(weight).strokeColor(colour);
  document
    .moveTo(left, y)
    .lineTo(left + width, y)
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

/** Size of an SVG in its own units. */
function sizeOf(svg: string): { width: number; height: number } {
  const [, width = "0", height = "0"] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  return { width: Number(width), height: Number(height) };
}

/** How high a drawing stands that is as wide as the page. */
export function heightOfDrawing(sheet: Sheet, svg: string): number {
  const { width, height } = sizeOf(svg);
  return height * Math.min(1, sheet.width / width);
}

/** Share of its size that a drawing may be set smaller, to stay on the page it begins on. */
const SNUG = 0.8;

/** An SVG as large as it may be; it is not broken over pages. */
export function drawing(
  sheet: Sheet,
  svg: string,
  most: { width: number; height: number },
  place: { centred?: boolean; snug?: boolean } = {},
): void {
  const own = sizeOf(svg);
  const full = Math.min(most.width / own.width, most.height / own.height);
  const room = (sheet.bottom - sheet.y) / (own.height * full);
  const scale = place.snug === true && room < 1 && room >= SNUG ? full * room : full;
  const [width, height] = [own.width * scale, own.height * scale];
  ensure(sheet, height - 0.01);
  const { shapes, texts } = withoutTexts(svg);
  const left = sheet.left + (place.centred === true ? (sheet.width - width) / 2 : 0);
  svgToPdf(sheet.document, shapes, left, sheet.y, {
    width,
    height,
    assumePt: true,
    preserveAspectRatio: "xMinYMin meet",
    fontCallback: () => "plain",
    warningCallback: () => undefined,
  });
  for (const { text, x, y, size, bold, anchor, upwards, colour, base } of texts) {
    const at = upwards ? { x: 0, y: 0 } : { x: x * scale, y: y * scale };
    sheet.document.save().translate(left, sheet.y);
    if (upwards) sheet.document.translate(x * scale, y * scale).rotate(-90);
    const face = bold ? "plainBold" : "plain";
    setLine(sheet.setter, text, { ...at, anchor, base }, { face, size: size * scale, colour });
    sheet.document.restore();
  }
  sheet.y += height + 10;
}

/** A drawing made in page units of 1/96 in, at exactly its own size on a page by itself: a point is 1/72 in. */
export function fullSizePage(sheet: Sheet, svg: string): void {
  const { width, height } = sizeOf(svg);
  newPage(sheet, sheet.running.at(-1) ?? "");
  drawing(sheet, svg, { width: width * 0.75, height: height * 0.75 });
}

/** Writes headers and page numbers, and gives the file's bytes. */
export function closeSheet(sheet: Sheet, title: string, pageWord: string): Promise<Uint8Array> {
  const { document, left, width } = sheet;
  const count = sheet.running.length;
  const style: TextStyle = { size: 8, colour: DAY.quiet };
  for (const [index, running] of sheet.running.entries()) {
    document.switchToPage(index);
    const half = { ...style, width: width / 2 - 10 };
    if (index > 0) oneLine(sheet, title, left, 28, half);
    if (running !== "") oneLine(sheet, running, left + width / 2 + 10, 28, { ...half, align: "right" });
    const number = `${pageWord} ${index + 1} / ${count}`;
    oneLine(sheet, number, left, sheet.bottom + 14, { ...style, width, align: "right" });
  }
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    document.on("end", () => resolve(Buffer.concat(chunks)));
    document.on("error", reject);
    document.end();
  });
}

function oneLine(sheet: Sheet, text: string, x: number, y: number, style: TextStyle): void {
  let said = fitText(text);
  const most = style.width ?? sheet.width;
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
  setLine(sheet.setter, said, at, { face: faceOf(style), size: style.size, colour: style.colour ?? DAY.ink });
}
