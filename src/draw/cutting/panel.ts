import { measureName } from "../../length/format.ts";
import { lastOf, nth } from "../../length/nth.ts";
import type { Part } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import type { Frame } from "../scene/frame.ts";
import { arrow, breakEdge, breakMark, pointer } from "../scene/marks.ts";
import { textWidth } from "../scene/metrics.ts";
import { INK, QUIET_INK } from "../scene/palette.ts";
import { type Box, path, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { wrap } from "../scene/text-fit.ts";
import { type Chunk, type ClothChunk, chunkHeight, type GapChunk } from "./chunks.ts";
import { allParts, clothGroup } from "./cloth.ts";
import { labelsBelow, labelsBeside, type MarginLabel, marginWidth } from "./margin.ts";
import { isThin, type KeyedPieces, labelPieces } from "./piece-labels.ts";
import { type RulerScale, rulerAcross, rulerAlong, rulerScale } from "./ruler.ts";
import { gapWords, spokenLength } from "./words.ts";

/** A lay, or a part of a long one, drawn in one block with its own rulers. */
export interface Panel {
  id: string;
  /** What stands over it; empty when the drawing has only one. */
  heading: string;
  isBolt: boolean;
  across: number;
  /** Longest way along, for the ruler's figures. */
  along: number;
  chunks: Chunk[];
  /** The lay goes on in another panel. */
  goesOn: boolean;
  comesFrom: boolean;
  /** Where the ruler's zero lies: the straightened end. */
  zero: number;
}

const GRAIN = 20;
const FIGURES = 26;
const LEFT = GRAIN + FIGURES;
const HEADING = 18;
const RULER = 18;
export const GAP_HEIGHT = 20;
const FIGURES_APART = 24;

interface Placed {
  chunk: Chunk;
  y: number;
  height: number;
}

function place(chunks: readonly Chunk[], frame: Frame, top: number): Placed[] {
  let y = top;
  return chunks.map((chunk) => {
    const height = chunkHeight(chunk, frame.perTick, GAP_HEIGHT);
    const placed = { chunk, y, height };
    y += height;
    return placed;
  });
}

interface Strip {
  part: Part;
  target: number;
}

/** Strips drawn in `chunk`, each with its middle on the page: down it, or across it for standing strips. */
function stripsOf(
  chunk: ClothChunk,
  y: number,
  clothX: number,
  frame: Frame,
): { lying: Strip[]; standing: Strip[] } {
  const found: { lying: Strip[]; standing: Strip[] } = { lying: [], standing: [] };
  const walk = (part: Part, parentCut: Part["cut"]): void => {
    if (part.role === "strip") {
      const middle = part.y + part.along / 2 - chunk.from;
      if (parentCut === "along") {
        found.standing.push({ part, target: clothX + (part.x + part.across / 2) * frame.perTick });
      } else {
        found.lying.push({ part, target: y + middle * frame.perTick });
      }
    }
    for (const inner of part.parts) walk(inner, part.cut);
  };
  for (const part of chunk.parts) walk(part, "across");
  return found;
}

/** What a strip holds, for strips too thin to letter: `A ×4, C ×12`. */
function contents(strip: Part, frame: Frame): string {
  const counts = new Map<number, number>();
  for (const { piece, shapes } of allParts(strip)) {
    if (piece !== null) counts.set(piece, (counts.get(piece) ?? 0) + (shapes?.length ?? 1));
  }
  return [...counts]
    .map(([piece, count]) => `${frame.fabric.pieces[piece]?.letter ?? ""} ×${count}`)
    .join(", ");
}

function likeThin(a: Part, b: Part | undefined): boolean {
  return b !== undefined && a.kind >= 0 && a.kind === b.kind && a.along === b.along && a.across === b.across;
}

/** One label per strip; a thin one says what it holds, and thin neighbours cut alike share one. */
function stripLabels(
  strips: readonly Strip[],
  frame: Frame,
  size: "along" | "across",
  words: Words,
): MarginLabel[] {
  const labels: MarginLabel[] = [];
  for (let i = 0; i < strips.length; ) {
    const first = nth(strips, i);
    const thin = isThin(first.part[size], frame);
    let n = 1;
    while (thin && likeThin(first.part, strips[i + n]?.part)) n++;
    const last = nth(strips, i + n - 1);
    const width = spokenLength(first.part[size], frame.ruler);
    const held = thin ? wrap(contents(first.part, frame), 90, 9, 4) : [];
    const { number } = first.part;
    labels.push({
      target: (first.target + last.target) / 2,
      mark: { kind: "number", text: n === 1 ? `${number}` : `${number}–${last.part.number}` },
      lines: [n === 1 ? width : words.drawings.cutting.each(width), ...held],
    });
    i += n;
  }
  return labels;
}

/** Names the ends of the bolt in the margin. */
function endLabels(placed: readonly Placed[], frame: Frame, words: Words): MarginLabel[] {
  const labels: MarginLabel[] = [];
  for (const { chunk, y, height } of placed) {
    const part = chunk.kind === "cloth" ? chunk.parts[0] : undefined;
    if (part === undefined || part.parts.length > 0) continue;
    if (part.cause !== "straightening" && part.cause !== "uncut-end") continue;
    // A broken uncut end is drawn in two bits; the first carries the label.
    if (chunk.from !== part.y) continue;
    labels.push({
      target: y + height / 2,
      mark: null,
      lines: [words.drawings.cutting.waste[part.cause], spokenLength(part.along, frame.ruler)],
    });
  }
  return labels;
}

function marginLabels(placed: readonly Placed[], clothX: number, frame: Frame, words: Words) {
  const lying: Strip[] = [];
  const standing: Strip[] = [];
  for (const { chunk, y } of placed) {
    if (chunk.kind === "gap") continue;
    const strips = stripsOf(chunk, y, clothX, frame);
    lying.push(...strips.lying);
    standing.push(...strips.standing);
  }
  return {
    beside: [...endLabels(placed, frame, words), ...stripLabels(lying, frame, "along", words)],
    below: stripLabels(standing, frame, "across", words),
  };
}

function gapNodes(placed: Placed, box: Box, drawn: number, words: Words): SceneNode[] {
  const { strips } = placed.chunk as GapChunk;
  const ways = strips.length === 0 ? words.drawings.cutting.uncutGap : gapWords(strips, drawn, words);
  const said = ways.find((way) => textWidth(way, 9) <= box.width - 12) ?? lastOf(ways);
  const inner = { x: box.x + 4, y: box.y + 4, width: box.width - 8, height: box.height - 8 };
  return [...breakMark(box), textIn(said, inner, { size: 9, anchor: "middle", fill: INK })];
}

/** Arrows beside the cloth: the lengthwise grain, and which way a directional print reads. */
function directionMarks(frame: Frame, top: number, height: number, words: Words): SceneNode[] {
  const nodes: SceneNode[] = [];
  const arrowX = GRAIN - 5;
  let y = top;
  const add = (said: string, length: number, ends: 1 | 2, flat: boolean): void => {
    const width = textWidth(said, 8) + 2;
    const run = Math.max(length, width);
    if (y + run > top + height) return;
    const middle = y + run / 2;
    if (flat) nodes.push(...arrow([arrowX - 5, middle], [arrowX + 6, middle], INK, ends));
    else nodes.push(...arrow([arrowX, y + run], [arrowX, y], INK, ends));
    const words_ = { x: 0, y: middle - width / 2, width: 10, height: width };
    nodes.push(textIn(said, words_, { size: 8.3, fill: QUIET_INK, anchor: "middle" }, true));
    y += run + 12;
  };
  add(words.drawings.cutting.directions.grain, 46, 2, false);
  const { kind, axis } = frame.fabric.print;
  if (kind !== "none")
    add(words.drawings.cutting.directions[kind], 46, kind === "one-way" ? 1 : 2, axis === "across");
  return nodes;
}

export interface PanelSize {
  width: number;
  height: number;
  /** Room kept for margin labels. */
  margin: number;
  below: number;
}

interface Anatomy {
  clothTop: number;
  selvage: number;
  /** Page place of x = 0 in the plan. */
  clothX: number;
  clothWidth: number;
  edge: number;
  clothHeight: number;
  placed: Placed[];
}

function anatomy(panel: Panel, frame: Frame): Anatomy {
  const clothTop = (panel.heading === "" ? 0 : HEADING) + RULER;
  const selvage = panel.isBolt ? frame.fabric.selvage * frame.perTick : 0;
  const clothX = LEFT + selvage;
  const clothWidth = panel.across * frame.perTick;
  const placed = place(panel.chunks, frame, clothTop);
  const last = placed[placed.length - 1];
  const clothHeight = last === undefined ? 0 : last.y + last.height - clothTop;
  return { clothTop, selvage, clothX, clothWidth, edge: clothX + clothWidth + selvage, clothHeight, placed };
}

/** Room one key label takes in the margin, whatever it says. */
const KEY_LABEL: MarginLabel = { target: 0, mark: { kind: "key", text: "MM" }, lines: ["×88"] };

/** Longer headings are cut short: names are the maker's own. */
const MOST_HEADING = 220;

function headingWidth(heading: string): number {
  return Math.min(MOST_HEADING, heading === "" ? 0 : textWidth(heading, 10, true) + 2);
}

/** Room the panel takes, keys to small pieces allowed for. Cheap, so that many scales can be tried. */
export function measurePanel(panel: Panel, frame: Frame, words: Words): PanelSize {
  const { clothTop, selvage, clothX, edge, clothHeight, placed } = anatomy(panel, frame);
  const { beside, below } = marginLabels(placed, clothX, frame, words);
  const margin = marginWidth([...beside, KEY_LABEL]);
  const underneath = marginWidth(below);
  const { bottom } = labelsBeside(beside, edge, clothTop, margin);
  const { right } = labelsBelow(below, clothTop + clothHeight, clothX, underneath);
  return {
    width: Math.max(edge + margin, right, clothX - selvage + headingWidth(panel.heading)),
    height: Math.max(clothTop + clothHeight + underneath, bottom) + 4,
    margin,
    below: underneath,
  };
}

/** A panel drawn with its top left corner at 0, 0. */
export function drawPanel(
  panel: Panel,
  frame: Frame,
  words: Words,
): { nodes: SceneNode[]; keyed: boolean; size: PanelSize } {
  const { clothTop, selvage, clothX, clothWidth, edge, clothHeight, placed } = anatomy(panel, frame);
  const size = measurePanel(panel, frame, words);
  const bolt = { x: clothX - selvage, width: clothWidth + 2 * selvage };
  const heading = { x: bolt.x, y: 0, width: size.width - bolt.x, height: 14 };
  const head = panel.heading === "" ? [] : [textIn(panel.heading, heading, { size: 10, bold: true })];
  const cloth = clothNodes(panel, frame, { placed, clothX, bolt }, words);
  const torn = (
    [
      [panel.comesFrom, clothTop],
      [panel.goesOn, clothTop + clothHeight],
    ] as const
  ).flatMap(([is, y]): SceneNode[] => {
    const edgeLine = breakEdge(bolt.x - 3, bolt.x + bolt.width + 3, y);
    return is ? [path(edgeLine, false, { fill: "none", stroke: INK, strokeWidth: 1.2 })] : [];
  });
  const { beside, below } = marginLabels(placed, clothX, frame, words);
  const key = keyLabels(cloth.keyed, edge, frame);
  const labels = labelsBeside([...beside, ...key.labels], edge, clothTop, size.margin);
  const under = labelsBelow(below, clothTop + clothHeight, clothX, size.below);
  const height = Math.max(size.height, labels.bottom + 4);
  return {
    nodes: [
      ...head,
      ...acrossNodes(panel, frame, clothX, clothTop),
      ...directionMarks(frame, clothTop + 10, clothHeight - 10, words),
      ...cloth.nodes,
      ...cloth.over,
      ...torn,
      ...key.pointers,
      ...labels.nodes,
      ...under.nodes,
    ],
    keyed: cloth.keyed.length > 0,
    size: { ...size, height },
  };
}

/** The ruler across the cloth, and its unit. */
function acrossNodes(panel: Panel, frame: Frame, clothX: number, clothTop: number): SceneNode[] {
  const { ruler, perTick } = frame;
  const scale = rulerScale(ruler, perTick, FIGURES_APART, panel.across);
  const run = { zero: 0, from: 0, to: panel.across, perTick, start: clothX, edge: clothTop - 3 };
  const unit = { x: LEFT - FIGURES - 2, y: clothTop - 18, width: FIGURES - 6, height: 9 };
  return [
    ...rulerAcross(run, scale),
    textIn(measureName(ruler.unit, ruler.language), unit, { size: 8.3, fill: QUIET_INK, anchor: "end" }),
  ];
}

/** The cloth of a panel, cut through where some of it is left out, with the ruler along it and its pieces labelled. */
function clothNodes(
  panel: Panel,
  frame: Frame,
  { placed, clothX, bolt }: { placed: readonly Placed[]; clothX: number; bolt: { x: number; width: number } },
  words: Words,
): { nodes: SceneNode[]; over: SceneNode[]; keyed: KeyedPieces[] } {
  const { perTick } = frame;
  const along: RulerScale = rulerScale(frame.ruler, perTick, FIGURES_APART, panel.along);
  const nodes: SceneNode[] = [];
  const over: SceneNode[] = [];
  const keyed: KeyedPieces[] = [];
  let drawn = 0;
  for (const [_slice, part] of slicesOf(placed).entries()) {
    const { y } = part;
    if (part.kind === "gap") {
      const { gap, before } = part;
      over.push(...gapNodes(gap, { x: bolt.x, y, width: bolt.width, height: gap.height }, before, words));
      continue;
    }
    drawn += 1;
    const { chunks, from, to } = part;
    const toPage = (one: Part): Box => ({
      x: clothX + one.x * perTick,
      y: y + (one.y - from) * perTick,
      width: one.across * perTick,
      height: one.along * perTick,
    });
    nodes.push(clothGroup(frame, `${panel.id}-cloth-${drawn}`, chunks, panel, { x: clothX, y }));
    const run = { zero: panel.zero, from, to, perTick, start: y, edge: bolt.x - 2 };
    nodes.push(...rulerAlong(run, along, drawn === 1 ? -1 : 5));
    const parts = chunks.flatMap((chunk) => chunk.parts);
    const labelled = labelPieces(parts, frame, toPage, words);
    over.push(...labelled.nodes);
    keyed.push(...labelled.keyed);
  }
  return { nodes, over, keyed };
}

/** What stands on the page in one go: cloth without a break, or what is left out between. */
type Slice =
  | { kind: "cloth"; y: number; chunks: ClothChunk[]; from: number; to: number }
  /** `before`: the number of the strip drawn before it. */
  | { kind: "gap"; y: number; gap: Placed; before: number };

function slicesOf(placed: readonly Placed[]): Slice[] {
  const slices: Slice[] = [];
  for (const [i, one] of placed.entries()) {
    const { chunk, y } = one;
    if (chunk.kind === "gap") {
      const last = placed[i - 1]?.chunk;
      const before = last?.kind === "cloth" ? (last.parts[0]?.number ?? 0) : 0;
      slices.push({ kind: "gap", y, gap: one, before });
      continue;
    }
    const open = slices.at(-1);
    if (open?.kind === "cloth") {
      open.chunks.push(chunk);
      open.to = chunk.to;
    } else slices.push({ kind: "cloth", y, chunks: [chunk], from: chunk.from, to: chunk.to });
  }
  return slices;
}

/** Pieces too small for their letters, pointed at from the margin. */
function keyLabels(
  keyed: readonly KeyedPieces[],
  edge: number,
  { fabric }: Frame,
): { pointers: SceneNode[]; labels: MarginLabel[] } {
  const pointers: SceneNode[] = [];
  const labels = keyed.map(({ box, piece, count }): MarginLabel => {
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    pointers.push(
      ...pointer([
        [x, y],
        [edge + 1, y],
      ]),
    );
    const letter = fabric.pieces[piece]?.letter ?? "";
    return { target: y, mark: { kind: "key", text: letter }, lines: count > 1 ? [`×${count}`] : [] };
  });
  return { pointers, labels };
}
