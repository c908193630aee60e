import { lastOf, nth } from "../../length/nth.ts";
import type { Ticks } from "../../length/types.ts";
import type { Lay, Part } from "../../plan/types.ts";

/** A length of cloth drawn to scale in one go. */
export interface ClothChunk {
  kind: "cloth";
  from: Ticks;
  to: Ticks;
  parts: Part[];
}

/** A length left out of the drawing: strips like the last one drawn, or the middle of a long uncut end. */
export interface GapChunk {
  kind: "gap";
  from: Ticks;
  to: Ticks;
  /** Strips left out; empty for an uncut end. */
  strips: Part[];
}

export type Chunk = ClothChunk | GapChunk;

/** How a lay is shortened for drawing. */
export interface Shortening {
  /** Identical neighbouring strips are drawn once from this many on. */
  gatherFrom: number;
  /** The most of an uncut end that is drawn, and how much of it follows the break. */
  uncutShown: Ticks;
  uncutAfter: Ticks;
}

function runLength(parts: readonly Part[], start: number): number {
  const first = parts[start];
  let n = 1;
  if (first === undefined || first.role !== "strip" || first.kind < 0) return n;
  while (parts[start + n]?.role === "strip" && parts[start + n]?.kind === first.kind) n++;
  return n;
}

function cloth(part: Part, from: Ticks, to: Ticks): ClothChunk {
  return { kind: "cloth", from, to, parts: [part] };
}

function uncutEnd(part: Part, how: Shortening): Chunk[] {
  const end = part.y + part.along;
  if (part.along <= how.uncutShown * 1.5) return [cloth(part, part.y, end)];
  const [breakAt, resume] = [part.y + how.uncutShown - how.uncutAfter, end - how.uncutAfter];
  return [
    cloth(part, part.y, breakAt),
    { kind: "gap", from: breakAt, to: resume, strips: [] },
    cloth(part, resume, end),
  ];
}

/** The lay as lengths to draw and lengths to leave out, from the cut end down. `null` leaves nothing out. */
export function chunksOf(lay: Lay, how: Shortening | null): Chunk[] {
  const { root } = lay;
  if (root.cut !== "across") return [cloth(root, root.y, root.y + root.along)];
  const chunks: Chunk[] = [];
  for (let i = 0; i < root.parts.length; ) {
    const part = nth(root.parts, i);
    const run = how === null ? 1 : runLength(root.parts, i);
    if (how !== null && part.role === "uncut-end") {
      chunks.push(...uncutEnd(part, how));
    } else {
      chunks.push(cloth(part, part.y, part.y + part.along));
    }
    if (how !== null && run >= how.gatherFrom) {
      const strips = root.parts.slice(i + 1, i + run);
      const last = lastOf(strips);
      chunks.push({ kind: "gap", from: nth(strips, 0).y, to: last.y + last.along, strips });
      i += run;
    } else {
      i++;
    }
  }
  return chunks;
}

/** Page height of a chunk. */
export function chunkHeight(chunk: Chunk, perTick: number, gap: number): number {
  return chunk.kind === "gap" ? gap : (chunk.to - chunk.from) * perTick;
}

/** Chunks broken into panels no taller than `most`; a gap stays with the strip it speaks of. */
export function breakIntoPanels(
  chunks: readonly Chunk[],
  perTick: number,
  gap: number,
  most: number,
): Chunk[][] {
  const panels: Chunk[][] = [];
  let height = 0;
  for (let i = 0; i < chunks.length; ) {
    const size = chunks[i + 1]?.kind === "gap" ? 2 : 1;
    const together = chunks.slice(i, i + size);
    const needed = together.reduce((sum, chunk) => sum + chunkHeight(chunk, perTick, gap), 0);
    const panel = panels[panels.length - 1];
    if (panel === undefined || height + needed > most) {
      panels.push([...together]);
      height = needed;
    } else {
      panel.push(...together);
      height += needed;
    }
    i += size;
  }
  return panels;
}
