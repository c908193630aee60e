import { formatLength } from "../../length/index.ts";
import { nth } from "../../length/nth.ts";
import type { Lay, Part } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { type Frame, PAGE_WIDTH, TICKS_PER_MM } from "../scene/frame.ts";
import { cleanText } from "../scene/text-fit.ts";
import { breakIntoPanels, type Chunk, chunksOf } from "./chunks.ts";
import { allParts } from "./cloth.ts";
import { GAP_HEIGHT, measurePanel, type Panel, type PanelSize } from "./panel.ts";

/** `usual` draws like strips once when there are many; `full` draws every one. */
export type View = "usual" | "full";

/** Scales tried, in page units to the millimetre: from twice the usual down to a thumbnail. */
const LARGEST = 0.56;
const STEP = 0.97;
const SMALLEST = 0.02;
/** Below a scale that shows its smallest piece this large, a drawing may rather run on to another page. */
const READABLE_PIECE = 11;
const READABLE = { least: 0.04, most: 0.17 } as const;
/** Between panels, beside and below one another. */
export const GUTTER = 18;
/** A bolt taller than this at the largest scale is gathered. */
const GATHER_ABOVE = 620;

export interface PlacedPanel {
  panel: Panel;
  x: number;
  y: number;
}

interface Drawn {
  lay: Lay;
  alike: number;
  chunks: Chunk[];
  zero: number;
}

/** Lays that are cut exactly alike are drawn once. */
function distinctLays(lays: readonly Lay[]): { lay: Lay; alike: number }[] {
  const [only] = lays;
  if (only !== undefined && lays.length === 1) return [{ lay: only, alike: 1 }];
  const found = new Map<string, { lay: Lay; alike: number }>();
  for (const lay of lays) {
    const key = JSON.stringify(lay);
    const known = found.get(key);
    if (known === undefined) found.set(key, { lay, alike: 1 });
    else known.alike++;
  }
  return [...found.values()];
}

function straightenedEnd(root: Part): number {
  const first = root.parts[0];
  return root.cut === "across" && first?.cause === "straightening" ? first.along : 0;
}

function panelsAt(drawn: readonly Drawn[], frame: Frame, most: number, words: Words): Panel[] {
  const several = drawn.length > 1 || drawn.some(({ alike, lay }) => alike > 1 || lay.source === "fixed");
  const bolts = frame.fabric.purchase?.lengths ?? [];
  const own = frame.fabric.lays.filter(({ source }) => source === "bolt");
  return drawn.flatMap(({ lay, alike, chunks, zero }, n) => {
    const bought = bolts[own.indexOf(lay)];
    const { sold } = frame.fabric;
    const inShop = { ...frame.ruler, unit: sold.unit };
    const length = bought === undefined ? "" : formatLength(bought.length, inShop, { typeset: true });
    const isBolt = lay.source === "bolt";
    const isTrimmed = frame.fabric.stock?.some(({ name, trim }) => name === lay.name && trim > 0) ?? false;
    const broken = breakIntoPanels(chunks, frame.perTick, GAP_HEIGHT, most);
    return broken.map((chunksHere, i): Panel => {
      const part = { n: i + 1, of: broken.length };
      const heading = words.drawings.cutting.lay(cleanText(lay.name), length, alike, part, isTrimmed);
      return {
        id: `lay-${n + 1}-panel-${i + 1}`,
        heading: several || broken.length > 1 ? heading : "",
        isBolt,
        across: lay.across,
        along: lay.along,
        chunks: chunksHere,
        comesFrom: i > 0,
        goesOn: i < broken.length - 1,
        zero,
      };
    });
  });
}

function readableScale(frame: Frame): number {
  const smallest = Math.min(...frame.fabric.pieces.map((piece) => Math.min(piece.across, piece.along)));
  const scale = READABLE_PIECE / (smallest / TICKS_PER_MM);
  return Math.min(READABLE.most, Math.max(READABLE.least, scale));
}

/** Panels set in rows, each row as high as its tallest; null when one is too wide. */
function flow(
  panels: readonly Panel[],
  sizes: readonly PanelSize[],
  wide: number,
): { placed: PlacedPanel[]; height: number } | null {
  const placed: PlacedPanel[] = [];
  let [x, y, rowHeight] = [0, 0, 0];
  for (const [i, panel] of panels.entries()) {
    const { width, height } = nth(sizes, i);
    if (width > wide) return null;
    if (x > 0 && x + width > wide) {
      [x, y, rowHeight] = [0, y + rowHeight + GUTTER, 0];
    }
    placed.push({ panel, x, y });
    x += width + GUTTER;
    rowHeight = Math.max(rowHeight, height);
  }
  return { placed, height: y + rowHeight };
}

function tallestWhole(drawn: readonly Drawn[]): number {
  const cloth = drawn.flatMap(({ chunks }) => chunks.filter(({ kind }) => kind === "cloth"));
  return Math.max(...cloth.map(({ from, to }) => to - from));
}

/**
 * The largest scale at which everything fits in `room` page units of height, and the panels at that scale.
 * When only an unreadable one would fit, the drawing grows instead, panel under panel.
 */
export function arrangePanels(
  frameAt: (scale: number) => Frame,
  view: View,
  room: number,
  words: Words,
  wide: number = PAGE_WIDTH,
): { frame: Frame; placed: PlacedPanel[]; height: number } {
  const lays = distinctLays(frameAt(LARGEST).fabric.lays);
  const drawnAt = (frame: Frame): Drawn[] =>
    lays.map(({ lay, alike }) => {
      const isLong = lay.along * frameAt(LARGEST).perTick > GATHER_ABOVE;
      const ticks = (page: number): number => page / frame.perTick;
      const shortening =
        view === "full" || !isLong ? null : { gatherFrom: 4, uncutShown: ticks(54), uncutAfter: ticks(12) };
      return { lay, alike, chunks: chunksOf(lay, shortening), zero: straightenedEnd(lay.root) };
    });
  const readable = readableScale(frameAt(LARGEST));
  let tooTall: { frame: Frame; placed: PlacedPanel[]; height: number } | null = null;
  for (let scale = LARGEST; scale > SMALLEST; scale *= STEP) {
    const frame = frameAt(Number(scale.toFixed(6)));
    const drawn = drawnAt(frame);
    // Room for the heading, the ruler and labels that run over.
    const most = Math.max(120, room - 40);
    const tallest = tallestWhole(drawn) * frame.perTick;
    if (tallest > most && scale > SMALLEST * 2) continue;
    const panels = panelsAt(drawn, frame, most, words);
    const flowed = flow(
      panels,
      panels.map((panel) => measurePanel(panel, frame, words)),
      wide,
    );
    if (flowed === null) continue;
    if (flowed.height <= room) return { frame, ...flowed };
    if (tooTall === null && panels.length > 0) tooTall = { frame, ...flowed };
    if (scale < readable && tooTall !== null) return { frame, ...flowed };
  }
  if (tooTall === null) throw new Error("A fabric could not be drawn at any scale");
  return tooTall;
}

/** Whether any offcut drawn is marked to keep. */
export function hasKeeps(placed: readonly PlacedPanel[]): boolean {
  return placed.some(({ panel }) =>
    panel.chunks.some(
      (chunk) => chunk.kind === "cloth" && chunk.parts.flatMap(allParts).some((part) => part.keep),
    ),
  );
}
