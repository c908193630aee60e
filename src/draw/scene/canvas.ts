import { type Container, SVG, type Element as SvgElement, withWindow } from "@svgdotjs/svg.js";
import { DOMImplementation, XMLSerializer, Node as XmlNode } from "@xmldom/xmldom";
import type { Outline, Paint, Scene, SceneNode } from "./scene.ts";
import { cleanText, startsRightToLeft } from "./text-fit.ts";

/** Decimals kept of every number, page units and millimetres alike. */
const DECIMALS = 3;

/** Begins with the face the text was measured in; the others are narrower. */
const FONTS = "'DejaVu Sans', Verdana, 'Helvetica Neue', Arial, 'Noto Sans', sans-serif";

const SVG_NAMESPACE = "http://www.w3.org/2000/svg";

// A document model that is loaded in a moment. The drawing library keeps one window for the whole process and asks it for
// little more than to make elements: it is handed this one for as long as a drawing is made, and another program that
// draws with the library keeps its own.
const document = new DOMImplementation().createDocument(SVG_NAMESPACE, "svg", null);
const XmlElement = document.documentElement?.constructor;
const WINDOW = { document, Node: XmlNode, Element: XmlElement, SVGElement: XmlElement } as unknown as Window;

function num(value: number): number {
  if (!Number.isFinite(value)) throw new Error(`A drawing cannot hold the number ${value}`);
  const rounded = Number(value.toFixed(DECIMALS));
  return Object.is(rounded, -0) ? 0 : rounded;
}

/** A length of the page in inches, 96 page units each. */
function inches(units: number): string {
  return `${Number((units / 96).toFixed(6))}in`;
}

function paintAttributes(paint: Paint): Record<string, string | number> {
  const attributes: Record<string, string | number> = {};
  if (paint.fill !== undefined) attributes.fill = paint.fill;
  if (paint.stroke !== undefined) attributes.stroke = paint.stroke;
  if (paint.strokeWidth !== undefined) attributes["stroke-width"] = num(paint.strokeWidth);
  if (paint.dash !== undefined) attributes["stroke-dasharray"] = paint.dash;
  return attributes;
}

/** One outline in short steps from corner to corner, each measured from where the last one really ended. */
function inSteps([first, ...rest]: Outline): string {
  if (first === undefined) return "";
  let [x, y] = [num(first[0]), num(first[1])];
  const steps = rest.map((corner) => {
    const [dx, dy] = [num(corner[0] - x), num(corner[1] - y)];
    [x, y] = [x + dx, y + dy];
    return dy === 0 ? `h${dx}` : dx === 0 ? `v${dy}` : `l${dx} ${dy}`;
  });
  return `M${num(first[0])} ${num(first[1])}${steps.join("")}`;
}

const closedOutline = (outline: Outline): string => (outline.length === 0 ? "" : `${inSteps(outline)}z`);

/** Marks around a text that is read from right to left as a whole (Unicode Standard Annex 9, RLE and PDF). */
const TURNED = ["\u202b", "\u202c"] as const;

/** Adds a bare element: the library's own makers would set defaults that are not wanted in the file. */
function add(parent: Container, name: string, attributes: Record<string, string | number>): SvgElement {
  return parent.element(name).attr(attributes);
}

function withText(element: SvgElement, text: string): void {
  // Whatever a caller forgot to clean, the file stays well-formed.
  element.node.textContent = cleanText(text);
}

/** What ids begin with in this drawing, and how many grounds have been clipped so far. */
interface Ids {
  prefix: string;
  clips: number;
}

function drawNode(parent: Container, node: SceneNode, ids: Ids): void {
  const paint = node.kind === "text" ? {} : paintAttributes(node.paint);
  switch (node.kind) {
    case "group":
      drawGroup(parent.group().attr(paint), node, ids);
      return;
    case "rect": {
      const { x, y, width, height } = node.box;
      const box = { x: num(x), y: num(y), width: num(width), height: num(height) };
      add(parent, "rect", { ...box, ...(node.round > 0 ? { rx: num(node.round) } : {}), ...paint });
      return;
    }
    case "line":
      add(parent, "line", {
        x1: num(node.x1),
        y1: num(node.y1),
        x2: num(node.x2),
        y2: num(node.y2),
        ...paint,
      });
      return;
    case "path": {
      const steps = node.points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${num(x)} ${num(y)}`);
      add(parent, "path", { d: steps.join("") + (node.closed ? "Z" : ""), ...paint });
      return;
    }
    case "region":
      add(parent, "path", {
        d: node.outlines.map(node.open === true ? inSteps : closedOutline).join(""),
        ...paint,
      });
      return;
    case "circle":
      add(parent, "circle", { cx: num(node.x), cy: num(node.y), r: num(node.radius), ...paint });
      return;
    case "text":
      drawText(parent, node);
      return;
  }
}

type NodeOf<K extends SceneNode["kind"]> = Extract<SceneNode, { kind: K }>;

function drawGroup(inner: Container, node: NodeOf<"group">, ids: Ids): void {
  if (node.id !== null) inner.attr("id", `${ids.prefix}${node.id}`);
  if (node.move !== null) {
    const { x, y, scale } = node.move;
    const resize = scale === 1 ? "" : ` scale(${Number(scale.toFixed(6))})`;
    inner.attr("transform", `translate(${num(x)} ${num(y)})${resize}`);
  }
  if (node.title !== null) withText(add(inner, "title", {}), node.title);
  if (node.clip !== null) {
    ids.clips += 1;
    const id = `${ids.prefix}clip-${ids.clips}`;
    const clip = add(inner, "clipPath", { id }) as unknown as Container;
    add(clip, "path", { d: node.clip.map(closedOutline).join("") });
    inner.attr("clip-path", `url(#${id})`);
  }
  for (const child of node.nodes) drawNode(inner, child, ids);
}

function drawText(parent: Container, node: NodeOf<"text">): void {
  const [x, y] = [num(node.x), num(node.y)];
  const text = add(parent, "text", {
    x,
    y,
    "font-size": num(node.size),
    ...(node.bold ? { "font-weight": "bold" } : {}),
    ...(node.anchor === "start" ? {} : { "text-anchor": node.anchor }),
    ...(node.upwards ? { transform: `rotate(-90 ${x} ${y})` } : {}),
    fill: node.fill,
  });
  withText(text, node.text);
  // The attribute `direction` would move the text too, and not every reader of SVG heeds it.
  if (startsRightToLeft(node.text))
    text.node.textContent = `${TURNED[0]}${text.node.textContent}${TURNED[1]}`;
}

/** A scene as an SVG document: well-formed XML, ids from content, nothing of the library's own in it. */
export function toSvg(scene: Scene): string {
  return withWindow(WINDOW, () => writeScene(scene));
}

function writeScene(scene: Scene): string {
  const [width, height] = [num(scene.width), num(scene.height)];
  const titleId = `${scene.idPrefix}title`;
  const descriptionId = `${scene.idPrefix}desc`;
  const root = SVG().attr({
    // A scene at full size says so in a measure of paper: a program may take a bare number for any unit.
    width: scene.physical === true ? inches(width) : width,
    height: scene.physical === true ? inches(height) : height,
    viewBox: `0 0 ${width} ${height}`,
    role: "img",
    "aria-labelledby": `${titleId} ${descriptionId}`,
    "font-family": FONTS,
  });
  withText(add(root, "title", { id: titleId }), scene.title);
  withText(add(root, "desc", { id: descriptionId }), scene.description);
  const ids: Ids = { prefix: scene.idPrefix, clips: 0 };
  for (const node of scene.nodes) drawNode(root, node, ids);
  // What the library adds for links and for itself is not used.
  for (const name of ["xmlns:xlink", "xmlns:svgjs", "version"]) root.node.removeAttribute(name);
  const xml = new XMLSerializer().serializeToString(root.node as unknown as XmlNode);
  // Text and attributes never hold a bare "<", so this breaks lines between elements only.
  return `${xml.replaceAll("><", ">\n<")}\n`;
}
