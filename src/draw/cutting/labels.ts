import { nth } from "../../length/nth.ts";
import { textWidth } from "../scene/metrics.ts";
import type { Box, TextNode } from "../scene/scene.ts";
import { lineHeight, textIn } from "../scene/text.ts";

/** Letter sizes tried, largest first, and the least size of small print. */
const LETTERS = [16, 13, 11, 9.5, 8.5] as const;
const SMALL_PRINT = 8.3;
const SIDE = 3;

export interface PieceWords {
  letter: string;
  /** The size in words, longest way of saying it first; empty to leave it out. */
  sizes: readonly string[];
}

interface Fit {
  /** Font size of the letter, so that its neighbours can be given the same. */
  letterSize: number;
  texts: TextNode[];
}

function smaller(letterSize: number): number {
  return Math.max(SMALL_PRINT, Math.min(10, letterSize * 0.72));
}

function inset(box: Box): Box {
  return { x: box.x + 1, y: box.y + 1, width: box.width - 2, height: box.height - 2 };
}

function stacked(box: Box, letter: string, size: string, letterSize: number, fill: string): Fit | null {
  const print = smaller(letterSize);
  const [high, low] = [lineHeight(letterSize), lineHeight(print)];
  const width = Math.max(textWidth(letter, letterSize, true), textWidth(size, print));
  if (width > box.width - 2 * SIDE || high + low > box.height - 2 * SIDE) return null;
  const top = box.y + (box.height - high - low) / 2;
  const frame = { x: box.x + SIDE, width: box.width - 2 * SIDE };
  const texts = [
    textIn(
      letter,
      { ...frame, y: top, height: high },
      { size: letterSize, bold: true, fill, anchor: "middle" },
    ),
    textIn(size, { ...frame, y: top + high, height: low }, { size: print, fill, anchor: "middle" }),
  ];
  return { letterSize, texts };
}

function inline(
  box: Box,
  words: [string, string],
  letterSize: number,
  fill: string,
  upwards: boolean,
): Fit | null {
  const [letter, size] = words;
  const print = smaller(letterSize);
  const [first, second] = [textWidth(letter, letterSize, true), textWidth(size, print)];
  const gap = 4;
  const run = first + gap + second;
  const [room, depth] = upwards ? [box.height, box.width] : [box.width, box.height];
  if (run > room - 2 * SIDE || lineHeight(letterSize) > depth - 2) return null;
  const start = (room - run) / 2;
  const place = (from: number, length: number): Box =>
    upwards
      ? { x: box.x, y: box.y + box.height - from - length, width: box.width, height: length }
      : { x: box.x + from, y: box.y, width: length, height: box.height };
  const texts = [
    textIn(letter, place(start, first), { size: letterSize, bold: true, fill }, upwards),
    textIn(size, place(start + first + gap, second), { size: print, fill }, upwards),
  ];
  return { letterSize, texts };
}

function alone(box: Box, letter: string, letterSize: number, fill: string): Fit | null {
  const width = textWidth(letter, letterSize, true);
  if (width > box.width - 2 || lineHeight(letterSize) > box.height - 2) return null;
  return {
    letterSize,
    texts: [textIn(letter, inset(box), { size: letterSize, bold: true, fill, anchor: "middle" })],
  };
}

function firstOf<T>(list: readonly T[], attempt: (value: T) => Fit | null): Fit | null {
  for (const value of list) {
    const fit = attempt(value);
    if (fit !== null) return fit;
  }
  return null;
}

/**
 * The largest label that fits a piece: letter over size, letter beside size, the same reading upwards, or
 * the letter alone. Null when not even the letter fits. `cap` keeps letters of one strip alike.
 */
export function fitPieceLabel(box: Box, words: PieceWords, fill: string, cap: number): Fit | null {
  const calm = Math.max(nth(LETTERS, LETTERS.length - 2), Math.min(box.width, box.height) * 0.45);
  const letters = LETTERS.filter((size) => size <= cap && size <= calm);
  const { letter, sizes } = words;
  const full =
    firstOf(sizes, (size) =>
      firstOf(
        letters.filter((s) => s >= 11),
        (s) => stacked(box, letter, size, s, fill),
      ),
    ) ??
    firstOf(sizes, (size) => firstOf(letters, (s) => inline(box, [letter, size], s, fill, false))) ??
    firstOf(sizes, (size) => firstOf(letters, (s) => stacked(box, letter, size, s, fill))) ??
    (box.height > box.width
      ? firstOf(sizes, (size) => firstOf(letters, (s) => inline(box, [letter, size], s, fill, true)))
      : null);
  return full ?? firstOf(letters, (size) => alone(box, letter, size, fill));
}

/**
 * Places along a line for labels of the given sizes, each as near its target as it can be without
 * overlapping its neighbours or starting before `from`. Targets must not decrease. Returns the middles.
 */
export function spread(labels: readonly { target: number; size: number }[], from: number): number[] {
  // Neighbours that would overlap are joined into blocks that move as one (pool adjacent violators).
  interface Block {
    start: number;
    size: number;
    sum: number;
    members: number;
  }
  const blocks: Block[] = [];
  const settle = (block: Block): void => {
    block.start = Math.max(from, block.sum / block.members);
  };
  for (const { target, size } of labels) {
    const block: Block = { start: 0, size, sum: target - size / 2, members: 1 };
    settle(block);
    for (;;) {
      const before = blocks[blocks.length - 1];
      if (before === undefined || before.start + before.size <= block.start) break;
      blocks.pop();
      block.sum = before.sum + block.sum - block.members * before.size;
      block.members += before.members;
      block.size += before.size;
      settle(block);
    }
    blocks.push(block);
  }
  const middles: number[] = [];
  let next = 0;
  for (const block of blocks) {
    let place = block.start;
    for (let i = 0; i < block.members; i++, next++) {
      const size = nth(labels, next).size;
      middles.push(place + size / 2);
      place += size;
    }
  }
  return middles;
}

/** The first of `ways` that fits the box in one line, upright or reading upwards; none when none does. */
export function fitWords(box: Box, ways: readonly string[], size: number): TextNode[] {
  const high = lineHeight(size) + 4;
  for (const words of ways) {
    for (const upwards of [false, true]) {
      const [run, depth] = upwards ? [box.height, box.width] : [box.width, box.height];
      if (depth < high || textWidth(words, size) > run - 8) continue;
      return [textIn(words, inset(box), { size, anchor: "middle" }, upwards)];
    }
  }
  return [];
}
