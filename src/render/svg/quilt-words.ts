import type { Ruler, Ticks } from "../../length/types.ts";
import type { BlockDesign, QuiltTop } from "../../quilt/types.ts";
import { ticksOf } from "./patches.ts";
import { type Fact, spokenSize } from "./words.ts";

const TURNS: Readonly<Record<number, string>> = {
  0: "upright",
  90: "turned right",
  180: "turned half round",
  270: "turned left",
};

/** All the words that stand in drawings of quilt tops and blocks. */
export const QUILT_WORDS = {
  top: "Quilt top",
  block: "Block",
  sideBySide: (tops: number) => `${tops} quilt tops side by side.`,
  fabrics: "Fabrics",
  units: "Units to sew",
  finished: "Finished block",
  apart: "Its units, set apart",
  bags: "Bags",
  bag: (letter: string, size: string, further: string, fabric: string) =>
    `${letter}: ${size}${further}, ${fabric}`,
  strip: (width: string) => `strips ${width} wide`,
  cutFurther: {
    none: "",
    "once-diagonal": ", halved",
    "twice-diagonal": ", quartered",
    template: ", by template",
  },
  unitMade: (name: string, kind: string, method: string) =>
    method === "" ? `${kind}, bag ${name}` : `${name}: ${kind}, ${method}`,
  made: (count: number, turns: readonly number[], order: number) => {
    const turned = turns.map((turn) => TURNS[turn] ?? `${turn}°`).join(" or ");
    return `${order === 0 ? "As lettered" : "Of the same bags, other heaps"}, ${count} placed ${turned}:`;
  },
  arrows: "An arrow in a patch shows where the print's top points.",
  bothWays: "An arrow with two heads: the print reads both ways.",
} as const;

/** A size that need not be a whole number of ticks. */
export function spokenSizeNear(across: Ticks, along: Ticks, ruler: Ruler): string {
  return spokenSize(Math.round(across), Math.round(along), ruler);
}

function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? "" : "s"}`;
}

export function topFacts(top: QuiltTop, ruler: Ruler): Fact[] {
  const { onPoint, blocksAcross, blocksDown } = top.centre;
  return [
    { caption: "Finished size", value: spokenSizeNear(ticksOf(top.across), ticksOf(top.down), ruler) },
    { caption: "Setting", value: `${onPoint ? "on point" : "straight"}, ${blocksAcross} × ${blocksDown}` },
    {
      caption: "Holds",
      value: `${counted(top.blocks.filter(({ place }) => place === "block").length, "block")}, ${counted(top.patches.length, "patch").replace("patchs", "patches")}`,
    },
  ];
}

export function blockTitle(design: BlockDesign): string {
  return design.colourway === "" ? design.name : `${design.name}, ${design.colourway}`;
}

export function blockFacts(design: BlockDesign, ruler: Ruler): Fact[] {
  return [
    { caption: "Finished size", value: spokenSizeNear(ticksOf(design.across), ticksOf(design.down), ruler) },
    { caption: "Make", value: counted(design.count, "block") },
    { caption: "Made of", value: counted(design.units.length, "unit") },
  ];
}

/** Kinds of unit with their numbers, in order of first appearance. */
export function unitLines(design: BlockDesign): string[] {
  const counts = new Map<string, number>();
  for (const { kind, method } of design.units) {
    const words = method === "" ? kind : `${kind}, ${method}`;
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  return [...counts].map(([words, count]) => `${count} × ${words}`);
}
