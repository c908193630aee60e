import PDFDocument from "pdfkit";
import svgToPdf from "svg-to-pdfkit";
import { DAY } from "../book/style.ts";
import { fitText } from "../svg/text-fit.ts";

/** What printing needs from outside: font files, paper, and the time the file says it was made. */
export interface PdfOptions {
  /** TrueType files. */
  fonts: { regular: Uint8Array; bold: Uint8Array };
  paper: "a4" | "letter";
  made: Date;
}

export interface TextStyle {
  size: number;
  bold?: boolean;
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
  document.registerFont("regular", Buffer.from(fonts.regular));
  document.registerFont("bold", Buffer.from(fonts.bold));
  const { width, height } = document.page;
  return {
    left: MARGIN.x,
    width: width - 2 * MARGIN.x,
    top: MARGIN.top,
    bottom: height - MARGIN.bottom,
    y: MARGIN.top,
    document,
    running: [""],
  };
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

function use(sheet: Sheet, { size, bold, colour }: TextStyle): void {
  sheet.document
    .font(bold === true ? "bold" : "regular")
    .fontSize(size)
    .fillColor(colour ?? DAY.ink);
}

/** How high a text will stand. */
export function heightOf(sheet: Sheet, text: string, style: TextStyle): number {
  use(sheet, style);
  const width = style.width ?? sheet.width - (style.indent ?? 0);
  return sheet.document.heightOfString(fitText(text) || " ", { width, lineGap: 1.5 });
}

/** How wide a text is on one line. */
export function widthOf(sheet: Sheet, text: string, style: TextStyle): number {
  use(sheet, style);
  return sheet.document.widthOfString(fitText(text));
}

/** Text at a place, not moving on. */
export function textAt(sheet: Sheet, text: string, x: number, y: number, style: TextStyle): void {
  use(sheet, style);
  const width = style.width ?? sheet.width - (x - sheet.left);
  sheet.document.text(fitText(text) || " ", x, y, { width, align: style.align ?? "left", lineGap: 1.5 });
}

/** A paragraph; one longer than the page is high is broken by lines. */
export function paragraph(sheet: Sheet, text: string, style: TextStyle): void {
  const height = heightOf(sheet, text, style);
  const room = sheet.bottom - sheet.top;
  if (height > room) {
    const half = Math.ceil(text.length / 2);
    paragraph(sheet, text.slice(0, half), { ...style, after: 0 });
    paragraph(sheet, text.slice(half), style);
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

/** An SVG as large as it may be; it is not broken over pages. */
export function drawing(sheet: Sheet, svg: string, most: { width: number; height: number }): void {
  const own = sizeOf(svg);
  const scale = Math.min(most.width / own.width, most.height / own.height);
  const [width, height] = [own.width * scale, own.height * scale];
  ensure(sheet, height);
  svgToPdf(sheet.document, svg, sheet.left, sheet.y, {
    width,
    height,
    assumePt: true,
    preserveAspectRatio: "xMinYMin meet",
    fontCallback: (_, bold) => (bold ? "bold" : "regular"),
    warningCallback: () => undefined,
  });
  sheet.y += height + 10;
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
  use(sheet, style);
  const { document } = sheet;
  let said = fitText(text);
  const most = style.width ?? sheet.width;
  if (document.widthOfString(said) > most) {
    while (said !== "" && document.widthOfString(`${said}…`) > most)
      said = said.slice(0, Math.floor(said.length * 0.9));
    said = `${said.trimEnd()}…`;
  }
  document.text(said, x, y, { width: most, align: style.align ?? "left", lineBreak: false });
}
