import { nth } from "../../length/nth.ts";
import type { Ticks } from "../../length/types.ts";
import type { Part } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import type { Frame } from "../scene/frame.ts";
import { TICKS_PER_MM } from "../scene/frame.ts";
import { arrow, numberMark } from "../scene/marks.ts";
import { textWidth } from "../scene/metrics.ts";
import { WASTE_GROUND } from "../scene/palette.ts";
import { type Box, rect, type SceneNode, type TextNode } from "../scene/scene.ts";
import { boxOfText, lineHeight, textIn } from "../scene/text.ts";
import { allParts } from "./cloth.ts";
import { fitPieceLabel, fitWords } from "./labels.ts";
import { boxWithin, runOutlines } from "./run-outlines.ts";
import { sizeWords, spokenSize } from "./words.ts";

/** Pieces with no room for their letter, to be named in the margin. */
export interface KeyedPieces {
  piece: number;
  count: number;
  /** Page box of the first of them. */
  box: Box;
}

export interface Labelled {
  nodes: SceneNode[];
  keyed: KeyedPieces[];
}

const PILL_SIZE = 8.5;

/** Whether a strip this deep has no room for a letter anywhere: its margin label says what it holds. */
export function isThin(depth: Ticks, frame: Frame): boolean {
  return depth * frame.perTick < lineHeight(PILL_SIZE) + 2;
}

function overlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** A small arrow in the piece's corner that shows which way the print reads. */
function printMark(box: Box, frame: Frame, texts: readonly TextNode[]): SceneNode[] {
  const { kind, axis } = frame.fabric.print;
  if (kind === "none") return [];
  const corner: Box = { x: box.x + box.width - 17, y: box.y + 4, width: 13, height: 13 };
  if (box.width < 24 || box.height < 22 || texts.some((text) => overlap(boxOfText(text), corner))) return [];
  const [x, y] = [corner.x + corner.width / 2, corner.y + corner.height / 2];
  const ends = kind === "two-way" ? 2 : 1;
  const ground = frame.photo === null ? [] : [rect(corner, { fill: frame.colour }, 2)];
  const mark =
    axis === "along"
      ? arrow([x, y + 6.5], [x, y - 6.5], frame.label, ends, 0.9)
      : arrow([x - 6.5, y], [x + 6.5, y], frame.label, ends, 0.9);
  return [...ground, ...mark];
}

/** Neighbours in one row joined into longer boxes. */
function joinRow(boxes: readonly Box[]): { box: Box; count: number }[] {
  const runs: { box: Box; count: number }[] = [];
  for (const box of boxes) {
    const last = runs[runs.length - 1];
    const touches =
      last !== undefined &&
      Math.abs(last.box.x + last.box.width - box.x) < 0.01 &&
      Math.abs(last.box.y - box.y) < 0.01 &&
      Math.abs(last.box.height - box.height) < 0.01;
    if (touches) {
      last.box = { ...last.box, width: last.box.width + box.width };
      last.count++;
    } else {
      runs.push({ box, count: 1 });
    }
  }
  return runs;
}

/** One label across a row of pieces each too narrow for its own; null when it does not fit either. */
function rowLabel(run: { box: Box; count: number }, letter: string, frame: Frame): SceneNode[] | null {
  if (run.count < 2) return null;
  const text = `${letter} ×${run.count}`;
  const width = textWidth(text, PILL_SIZE, true) + 6;
  const height = lineHeight(PILL_SIZE) + 1;
  const { box } = run;
  if (width > box.width - 2 || height > box.height - 2) return null;
  const pill = {
    x: box.x + (box.width - width) / 2,
    y: box.y + (box.height - height) / 2,
    width,
    height,
  };
  return [
    rect(pill, { fill: frame.colour }, 3),
    textIn(text, pill, { size: PILL_SIZE, bold: true, fill: frame.label, anchor: "middle" }),
  ];
}

/** The cloth's own colour behind words. */
function grounds(texts: readonly TextNode[], colour: string): SceneNode[] {
  return texts.map((text) => {
    const box = boxOfText(text);
    return rect({ x: box.x - 1, y: box.y, width: box.width + 2, height: box.height }, { fill: colour }, 2);
  });
}

/** Each shape of a run as a part to write on: the room in its middle. */
function shapesAsLeaves(leaf: Part, frame: Frame): Part[] {
  if (leaf.shapes === undefined) return [leaf];
  return runOutlines(leaf, frame.fabric.pieces).map((points): Part => {
    const { x, y, width, height } = boxWithin(points);
    const [across, along] = [width * TICKS_PER_MM, height * TICKS_PER_MM];
    return { ...leaf, x: x * TICKS_PER_MM, y: y * TICKS_PER_MM, across, along };
  });
}

/** Labels for the pieces of one strip (or of cloth outside strips). */
function labelStrip(leaves: readonly Part[], frame: Frame, toPage: (part: Part) => Box): Labelled {
  const result: Labelled = { nodes: [], keyed: [] };
  const sized = new Map<string, number>();
  const unfit = new Map<number, Box[]>();
  for (const leaf of leaves.flatMap((each) => shapesAsLeaves(each, frame))) {
    const piece = frame.fabric.pieces[leaf.piece ?? -1];
    if (piece === undefined || leaf.piece === null) continue;
    const box = toPage(leaf);
    const shape = `${leaf.piece}:${leaf.turned}`;
    const cap = sized.get(shape);
    const sizes = cap === undefined && leaf.shapes === undefined ? sizeWords(piece, frame.ruler) : [];
    const fit = fitPieceLabel(box, { letter: piece.letter, sizes }, frame.label, cap ?? 16);
    if (fit === null) {
      unfit.set(leaf.piece, [...(unfit.get(leaf.piece) ?? []), box]);
      continue;
    }
    // Neither a line to cut along nor a photo's own lines run through the words.
    if (frame.photo !== null || (piece.subcut !== "none" && leaf.shapes === undefined))
      result.nodes.push(...grounds(fit.texts, frame.colour));
    result.nodes.push(...fit.texts);
    if (cap === undefined) result.nodes.push(...printMark(box, frame, fit.texts));
    sized.set(shape, fit.letterSize);
  }
  for (const [piece, boxes] of unfit) {
    const letter = frame.fabric.pieces[piece]?.letter ?? "";
    const left: { box: Box; count: number }[] = [];
    for (const run of joinRow(boxes)) {
      const nodes = rowLabel(run, letter, frame);
      if (nodes === null) left.push(run);
      else result.nodes.push(...nodes);
    }
    const count = left.reduce((sum, run) => sum + run.count, 0);
    if (count > 0) result.keyed.push({ piece, count, box: nth(boxes, 0) });
  }
  return result;
}

/** What the lines that lead from pieces to the margin leave of a box: the deepest part between two of them. */
function clearOfLeaders({ x, y, width, height }: Box, keyed: readonly KeyedPieces[]): Box {
  const crossed = keyed
    .filter(({ box }) => box.x + box.width / 2 < x + width)
    .map(({ box }) => box.y + box.height / 2)
    .filter((line) => line > y && line < y + height)
    .sort((a, b) => a - b);
  const edges = [y, ...crossed, y + height];
  const parts = edges
    .slice(1)
    .map((end, i) => ({ x, y: edges[i] ?? y, width, height: end - (edges[i] ?? y) }));
  return parts.reduce((deepest, part) => (part.height > deepest.height ? part : deepest));
}

/** Says of an offcut worth keeping how big it is, where there is room. */
function keepLabel(part: Part, box: Box, frame: Frame, words: Words): SceneNode[] {
  const size = spokenSize(part.across, part.along, frame.ruler);
  const texts = fitWords(box, words.drawings.cutting.keep(size), 8.5);
  return texts.flatMap((text): SceneNode[] => {
    const box = boxOfText(text);
    const ground = { x: box.x - 2, y: box.y - 1, width: box.width + 4, height: box.height + 2 };
    return [rect(ground, { fill: WASTE_GROUND }, 2), text];
  });
}

/** The box a node covers on the page; null for groups, which stand in a scale of their own. */
function coveredBy(node: SceneNode): Box | null {
  const around = (points: readonly (readonly [number, number])[]): Box => {
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    const [x, y] = [Math.min(...xs), Math.min(...ys)];
    return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
  };
  switch (node.kind) {
    case "text":
      return boxOfText(node);
    case "rect":
      return node.box;
    case "path":
      return around(node.points);
    case "line":
      return around([
        [node.x1, node.y1],
        [node.x2, node.y2],
      ]);
    default:
      return null;
  }
}

const BAND_PILL = { height: 12, least: 15, edge: 5, step: 4, air: 2 } as const;

/** The badge of a band for a number so wide: a narrow band gets a narrow one, a narrower one whose number reads upwards. */
function bandPill(wide: number, room: number): { width: number; height: number; upwards: boolean } {
  const { height, least } = BAND_PILL;
  const width = Math.min(Math.max(least, wide + 7), Math.max(wide + 2, room - 2));
  return width <= room - 1
    ? { width, height, upwards: false }
    : { width: height, height: Math.max(least, wide + 7), upwards: true };
}

/** A band's number as near its head as it is clear of letters and arrows. */
function bandNumber(box: Box, number: number, others: readonly SceneNode[]): SceneNode[] {
  const { edge, step, air } = BAND_PILL;
  const { width, height, upwards } = bandPill(textWidth(`${number}`, PILL_SIZE, true), box.width);
  if (width > box.width - 1) return [];
  const taken = others.flatMap((node) => {
    const covered = coveredBy(node);
    if (covered === null || !overlap(covered, box)) return [];
    const { x, y, width: wide, height: high } = covered;
    return [{ x: x - air, y: y - air, width: wide + 2 * air, height: high + 2 * air }];
  });
  const x = box.x + (box.width - width) / 2;
  for (let y = box.y + edge; y + height + edge <= box.y + box.height; y += step) {
    const pill = { x, y, width, height };
    if (!taken.some((other) => overlap(other, pill))) return numberMark(`${number}`, pill, upwards);
  }
  return [];
}

function stripsIn(part: Part): Part[] {
  return part.role === "strip" ? [part] : part.parts.flatMap(stripsIn);
}

function leavesOutside(part: Part): Part[] {
  if (part.role === "strip") return [];
  return part.parts.length === 0 ? [part] : part.parts.flatMap(leavesOutside);
}

/** Labels for everything drawn of `parts`. */
export function labelPieces(
  parts: readonly Part[],
  frame: Frame,
  toPage: (part: Part) => Box,
  words: Words,
): Labelled {
  const labelled: Labelled = { nodes: [], keyed: [] };
  const take = ({ nodes, keyed }: Labelled): void => {
    labelled.nodes.push(...nodes);
    labelled.keyed.push(...keyed);
  };
  for (const part of parts) {
    for (const strip of stripsIn(part)) {
      const leaves = allParts(strip).filter((inner) => inner.parts.length === 0);
      const depth = Math.min(strip.along, strip.across);
      if (!isThin(depth, frame)) take(labelStrip(leaves, frame, toPage));
    }
    take(labelStrip(leavesOutside(part), frame, toPage));
    for (const band of allParts(part)) {
      if (band.role === "band") labelled.nodes.push(...bandNumber(toPage(band), band.number, labelled.nodes));
    }
  }
  const offcuts = parts
    .flatMap(allParts)
    .filter((leaf) => leaf.parts.length === 0 && leaf.keep && leaf.role !== "uncut-end");
  for (const leaf of offcuts)
    labelled.nodes.push(...keepLabel(leaf, clearOfLeaders(toPage(leaf), labelled.keyed), frame, words));
  return labelled;
}
