import type { Ruler, Ticks } from "../../length/types.ts";
import type { BlockDesign, QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { type Fact, spokenSize } from "../cutting/words.ts";
import { ticksOf } from "./patches.ts";

/** A size that need not be a whole number of ticks. */
export function spokenSizeNear(across: Ticks, along: Ticks, ruler: Ruler): string {
  return spokenSize(Math.round(across), Math.round(along), ruler);
}

export function topFacts(top: QuiltTop, ruler: Ruler, words: Words): Fact[] {
  const { onPoint, blocksAcross, blocksDown } = top.centre;
  const { quilt } = words.drawings;
  const blocks = top.blocks.filter(({ place }) => place === "block").length;
  return [
    {
      caption: quilt.finishedSize,
      value: spokenSizeNear(ticksOf(top.across), ticksOf(top.down), ruler),
    },
    { caption: quilt.setting, value: quilt.set(onPoint, blocksAcross, blocksDown) },
    { caption: quilt.holds, value: quilt.held(blocks, top.patches.length) },
  ];
}

export function blockTitle(design: BlockDesign): string {
  return design.colourway === "" ? design.name : `${design.name}, ${design.colourway}`;
}

export function blockFacts(design: BlockDesign, ruler: Ruler, words: Words): Fact[] {
  const { quilt } = words.drawings;
  return [
    {
      caption: quilt.finishedSize,
      value: spokenSizeNear(ticksOf(design.across), ticksOf(design.down), ruler),
    },
    { caption: quilt.make, value: quilt.blockCount(design.count) },
    { caption: quilt.madeOf, value: quilt.unitCount(design.units.length) },
  ];
}

/** Kinds of unit with their numbers, in order of first appearance. */
export function unitLines(design: BlockDesign): string[] {
  const counts = new Map<string, number>();
  for (const { kind, method } of design.units) {
    const called = method === "" ? kind : `${kind}, ${method}`;
    counts.set(called, (counts.get(called) ?? 0) + 1);
  }
  return [...counts].map(([called, count]) => `${count} × ${called}`);
}
