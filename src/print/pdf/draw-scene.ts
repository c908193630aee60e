import type { Outline, Paint, Scene, SceneNode, TextNode } from "../../draw/scene/scene.ts";
import { cleanText, startsRightToLeft } from "../../draw/scene/text-fit.ts";
import { sizeOf } from "../paper/measure.ts";
import { marked, type Sheet } from "./sheet.ts";
import { setLine } from "./typesetter.ts";

/** How shapes are painted, with what they have from the groups around them. SVG's own values where nothing is said. */
type Ink = Required<Omit<Paint, "dash">> & { dash: string | null };

const PLAIN: Ink = { fill: "#000000", stroke: "none", strokeWidth: 1, dash: null };

/** Decimals of a place on the page, in the units of the drawing. */
const tidy = (value: number): number => {
  if (!Number.isFinite(value)) throw new Error(`A drawing cannot hold the number ${value}`);
  return Number(value.toFixed(3));
};

function inkOf(outer: Ink, { fill, stroke, strokeWidth, dash }: Paint): Ink {
  return {
    fill: fill ?? outer.fill,
    stroke: stroke ?? outer.stroke,
    strokeWidth: strokeWidth ?? outer.strokeWidth,
    dash: dash ?? outer.dash,
  };
}

const strokes = ({ stroke, strokeWidth }: Pick<Ink, "stroke" | "strokeWidth">): boolean =>
  stroke !== "none" && strokeWidth > 0;

/** Draws shapes on a page and remembers with what it drew the last: a page of patches names few colours. */
class Brush {
  private last: Partial<Ink> = {};

  constructor(readonly page: PDFKit.PDFDocument) {}

  /** What `draw` does to places and pens ends with it. */
  apart(draw: () => void): void {
    const before = { ...this.last };
    this.page.save();
    draw();
    this.page.restore();
    this.last = before;
  }

  trace(outline: Outline, closed: boolean): void {
    for (const [i, [x, y]] of outline.entries()) {
      if (i === 0) this.page.moveTo(tidy(x), tidy(y));
      else this.page.lineTo(tidy(x), tidy(y));
    }
    if (closed) this.page.closePath();
  }

  /** Fills and strokes what was traced. */
  paint({ fill, stroke, strokeWidth, dash }: Ink): void {
    const { page, last } = this;
    const lined = strokes({ stroke, strokeWidth });
    if (fill !== "none" && last.fill !== fill) page.fillColor(fill);
    if (fill !== "none") last.fill = fill;
    if (lined) {
      if (last.stroke !== stroke) page.strokeColor(stroke);
      if (last.strokeWidth !== strokeWidth) page.lineWidth(strokeWidth);
      if ((last.dash ?? null) !== dash) this.dashed(dash);
      this.last = { ...last, stroke, strokeWidth, dash };
    }
    if (fill !== "none" && lined) page.fillAndStroke();
    else if (lined) page.stroke();
    else page.fill();
  }

  private dashed(dash: string | null): void {
    if (dash === null) this.page.undash();
    else this.page.dash(dash.split(" ").map(Number) as unknown as number, {});
  }
}

function drawText(sheet: Sheet, brush: Brush, node: TextNode): void {
  const text = cleanText(node.text);
  brush.apart(() => {
    const { x, y, size, bold, anchor, fill } = node;
    const at = node.upwards ? { x: 0, y: 0 } : { x, y };
    if (node.upwards) brush.page.translate(x, y).rotate(-90);
    const base = startsRightToLeft(text) ? "rtl" : "ltr";
    const face = bold ? "plainBold" : "plain";
    setLine(sheet.setter, text, { ...at, anchor, base }, { face, size, colour: fill });
  });
}

function drawNode(sheet: Sheet, brush: Brush, node: SceneNode, outer: Ink): void {
  const { page } = brush;
  const ink = node.kind === "text" ? outer : inkOf(outer, node.paint);
  const shape = node.kind !== "group" && node.kind !== "text";
  if (shape && ink.fill === "none" && !strokes(ink)) return;
  switch (node.kind) {
    case "group": {
      const inside = (): void => {
        if (node.move !== null) page.translate(node.move.x, node.move.y).scale(node.move.scale);
        if (node.clip !== null) {
          for (const outline of node.clip) brush.trace(outline, true);
          page.clip();
        }
        for (const child of node.nodes) drawNode(sheet, brush, child, ink);
      };
      if (node.move === null && node.clip === null) inside();
      else brush.apart(inside);
      return;
    }
    case "rect": {
      const [x, y] = [tidy(node.box.x), tidy(node.box.y)];
      const [width, height] = [tidy(node.box.width), tidy(node.box.height)];
      if (node.round > 0) page.roundedRect(x, y, width, height, node.round);
      else page.rect(x, y, width, height);
      break;
    }
    case "line":
      brush.trace(
        [
          [node.x1, node.y1],
          [node.x2, node.y2],
        ],
        false,
      );
      break;
    case "path":
      brush.trace(node.points, node.closed);
      break;
    case "region":
      for (const outline of node.outlines) brush.trace(outline, node.open !== true);
      break;
    case "circle":
      page.circle(tidy(node.x), tidy(node.y), tidy(node.radius));
      break;
    case "text":
      drawText(sheet, brush, node);
      return;
  }
  brush.paint(ink);
}

/** A drawing with its upper left corner at a place, so many points to its own unit. */
export function drawingAt(sheet: Sheet, scene: Scene, x: number, y: number, scale: number): void {
  const { width, height } = sizeOf(scene);
  const alt = [scene.title, scene.description].filter((said) => said !== "").join(". ");
  marked(
    sheet,
    "Figure",
    () => {
      const brush = new Brush(sheet.document);
      brush.apart(() => {
        // Corners as SVG draws them: a sharper one is cut off.
        sheet.document.translate(x, y).scale(scale).miterLimit(4);
        sheet.document.rect(0, 0, width, height).clip();
        for (const node of scene.nodes) drawNode(sheet, brush, node, PLAIN);
      });
    },
    { alt, bbox: [x, y, x + width * scale, y + height * scale] },
  );
}
