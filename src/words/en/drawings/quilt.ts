import { counted } from "../language.ts";

const TURNS: Readonly<Record<number, string>> = {
  0: "upright",
  90: "turned right",
  180: "turned half round",
  270: "turned left",
};

/** All the words that stand in drawings of quilt tops and blocks. */
export const quilt = {
  top: "Quilt top",
  block: "Block",
  sideBySide: (tops: number) => `${tops} quilt tops side by side.`,
  fabrics: "Fabrics",
  units: "Units to sew",
  finished: "Finished block",
  finishedSize: "Finished size",
  setting: "Setting",
  holds: "Holds",
  make: "Make",
  madeOf: "Made of",
  set: (onPoint: boolean, across: number, down: number) =>
    `${onPoint ? "on point" : "straight"}, ${across} × ${down}`,
  held: (blocks: number, patches: number) =>
    `${counted(blocks, "block")}, ${counted(patches, "patch", "patches")}`,
  blockCount: (count: number) => counted(count, "block"),
  unitCount: (count: number) => counted(count, "unit"),
  /** For people who hear the drawing. */
  topDescribed: (size: string, blocks: number, patches: number) =>
    `${size}, ${blocks} blocks, ${patches} patches.`,
  blockDescribed: (units: readonly string[], count: number) => `${units.join("; ")}. Make ${count}.`,
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
  colouring: {
    title: "Colouring page: the quilt in outline, and once more with a texture for each fabric",
    toColour: "To be coloured by hand.",
  },
} as const;
