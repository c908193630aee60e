import { readFileSync } from "node:fs";
import * as fontkit from "fontkit";
import { type Box, type Scene, type SceneNode, type TextNode, textsOf } from "../../src/draw/scene/scene.ts";
import { boxOfText } from "../../src/draw/scene/text.ts";
import { ownFont } from "./fonts.ts";

const SLACK = 0.01;

function inside(inner: Box, outer: Box): boolean {
  return (
    inner.x >= outer.x - SLACK &&
    inner.y >= outer.y - SLACK &&
    inner.x + inner.width <= outer.x + outer.width + SLACK &&
    inner.y + inner.height <= outer.y + outer.height + SLACK
  );
}

function meet(a: Box, b: Box): boolean {
  return (
    a.x + SLACK < b.x + b.width &&
    b.x + SLACK < a.x + a.width &&
    a.y + SLACK < b.y + b.height &&
    b.y + SLACK < a.y + a.height
  );
}

type Font = Extract<ReturnType<typeof fontkit.create>, { hasGlyphForCodePoint: unknown }>;
const fonts = [ownFont("plain"), ownFont("plain-bold")].map(
  (path) => fontkit.create(readFileSync(path)) as Font,
);
const advances = new Map<string, number>();

/** Width of a line by the font's own advances, letter by letter; a letter the font lacks is taken as a square. */
function realWidth({ text, size, bold }: TextNode): number {
  const font = fonts[bold ? 1 : 0];
  let em = 0;
  for (const letter of text) {
    const key = `${bold} ${letter}`;
    let advance = advances.get(key);
    if (advance === undefined) {
      const code = letter.codePointAt(0) ?? 0;
      const has = font?.hasGlyphForCodePoint(code) === true;
      const unseen = /[\p{M}\p{Cf}]/u.test(letter);
      advance = unseen
        ? 0
        : has
          ? (font?.glyphForCodePoint(code).advanceWidth ?? 0) / (font?.unitsPerEm ?? 1)
          : 1;
      advances.set(key, advance);
    }
    em += advance;
  }
  return em * size;
}

/** Straight strokes on the page itself, cloth and quilts left out: leaders, arrows, marks of rulers. */
function strokesOf(
  nodes: readonly SceneNode[],
): { from: readonly [number, number]; to: readonly [number, number] }[] {
  return nodes.flatMap((node) => {
    if (node.kind === "group") return node.move === null ? strokesOf(node.nodes) : [];
    if (node.kind === "line") return [{ from: [node.x1, node.y1] as const, to: [node.x2, node.y2] as const }];
    if (node.kind !== "path") return [];
    return node.points.slice(1).map((to, i) => ({ from: node.points[i] ?? to, to }));
  });
}

/** Whether a stroke runs through a box drawn in by `air` on every side. */
function crosses({ from, to }: ReturnType<typeof strokesOf>[number], box: Box, air: number): boolean {
  const [x1, y1, x2, y2] = [box.x + air, box.y + air, box.x + box.width - air, box.y + box.height - air];
  if (x1 >= x2 || y1 >= y2) return false;
  // Liang and Barsky's clipping of a line against a rectangle, 1984.
  let [t0, t1] = [0, 1];
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  for (const [p, q] of [
    [-dx, from[0] - x1],
    [dx, x2 - from[0]],
    [-dy, from[1] - y1],
    [dy, y2 - from[1]],
  ] as const) {
    if (p === 0 && q < 0) return false;
    if (p === 0) continue;
    const t = q / p;
    if (p < 0) t0 = Math.max(t0, t);
    else t1 = Math.min(t1, t);
  }
  return t0 < t1;
}

function isSame(a: Box, b: Box): boolean {
  return inside(a, b) && inside(b, a);
}

/** Lozenges and squares that hold a number: a text lies in the middle of each. */
function badgesOf(nodes: readonly SceneNode[], texts: readonly TextNode[]): Box[] {
  return nodes.flatMap((node): Box[] => {
    if (node.kind === "group") return node.move === null ? badgesOf(node.nodes, texts) : [];
    if (node.kind !== "rect" || node.box.height > 14 || node.box.width > 60) return [];
    return texts.some(({ frame }) => isSame(frame, node.box)) ? [node.box] : [];
  });
}

/**
 * Textures whose lines run on beyond the outlines that they are seen in by more than half their width: those are not
 * where the cloth is. Dashes that slant begin where a tile does, so only how far they reach across is looked at.
 */
function texturesOff(nodes: readonly SceneNode[]): number {
  let off = 0;
  for (const node of nodes) {
    if (node.kind !== "group") continue;
    off += texturesOff(node.nodes);
    if (node.clip === null) continue;
    const seen = node.clip.flat();
    const [right, bottom] = ([0, 1] as const).map((axis) => Math.max(...seen.map((point) => point[axis])));
    const beside = node.nodes.some((each) => {
      if (each.kind !== "region") return false;
      const over = (each.paint.strokeWidth ?? 1) / 2 + 0.05;
      return each.outlines.some(([from = [0, 0], to = from]) => {
        const slants = from[0] !== to[0] && from[1] !== to[1];
        const low = slants && each.paint.dash !== undefined ? -Infinity : Math.max(from[1], to[1]);
        return Math.max(from[0], to[0]) > (right ?? 0) + over || low > (bottom ?? 0) + over;
      });
    });
    if (beside) off += 1;
  }
  return off;
}

/**
 * What is wrong with the words of a drawing: a line that leaves its frame or the page, two that overlap, one that a
 * stroke runs through, a badge that something touches; and textures that lie beside their cloth. Boxes are those the
 * drawing is laid out by; that they hold the text is checked against the widths in the font file.
 */
export function faultsOf(scene: Scene): string[] {
  const texts = textsOf(scene.nodes);
  const page = { x: 0, y: 0, width: scene.width, height: scene.height };
  const boxes = texts.map((node) => ({ node, box: boxOfText(node) }));
  const strokes = strokesOf(scene.nodes);
  const faults: string[] = [];
  const off = texturesOff(scene.nodes);
  if (off > 0) faults.push(`${off} textures lie beside their cloth`);
  for (const [i, { node, box }] of boxes.entries()) {
    const { text } = node;
    if (!inside(box, page)) faults.push(`"${text}" leaves the page`);
    if (!inside(box, node.frame)) faults.push(`"${text}" leaves its frame`);
    const run = node.upwards ? box.height : box.width;
    if (realWidth(node) > run + SLACK) faults.push(`"${text}" is wider than its box`);
    for (const other of boxes.slice(i + 1)) {
      if (meet(box, other.box)) faults.push(`"${text}" and "${other.node.text}" overlap`);
    }
    if (strokes.some((stroke) => crosses(stroke, box, 1))) faults.push(`"${text}" has a line through it`);
  }
  const badges = badgesOf(scene.nodes, texts);
  for (const [i, badge] of badges.entries()) {
    if (badges.slice(i + 1).some((other) => meet(badge, other))) faults.push("two badges overlap");
    if (strokes.some((stroke) => crosses(stroke, badge, 0.5))) faults.push("a badge has a line through it");
    for (const { node, box } of boxes) {
      if (!isSame(node.frame, badge) && meet(box, badge)) faults.push(`"${node.text}" and a badge overlap`);
    }
  }
  return faults;
}
