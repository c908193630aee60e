import type { Ruler } from "../../length/types.ts";
import type { Plan } from "../../plan/types.ts";
import type { BlockDesign, Patch } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { toSvg } from "../scene/canvas.ts";
import { PAGE_WIDTH, TICKS_PER_MM } from "../scene/frame.ts";
import { labelOn, safeColour } from "../scene/palette.ts";
import { onPaper } from "../scene/paper.ts";
import { type Cell, section } from "../scene/rows.ts";
import type { Scene, SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText } from "../scene/text-fit.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import { titleBlock } from "../scene/title-block.ts";
import { type BlockBags, bagLetters, bagLines, unitMadeLines } from "./block-bags.ts";
import { patchPage } from "./patch-page.ts";
import { type Corner, outlineNodes, patchNodes, rectangle, ticksOf } from "./patches.ts";
import { blockFacts, blockTitle, unitLines } from "./quilt-words.ts";

export interface BlockOptions {
  /** Starts every id; default `block-`. Give each block of one document its own. */
  idPrefix?: string;
  /** How the blocks are made: then every patch has its bag's letter. */
  bags?: BlockBags;
}

const GUTTER = 40;
const HALF = (PAGE_WIDTH - GUTTER) / 2;
const TALLEST = 420;
/** Page units between units set apart. */
const APART = 11;

/** Where a unit's cell begins among the distinct rows or columns of cells, so that gaps open between all. */
function rank(values: readonly number[], value: number): number {
  return [...new Set(values)].sort((a, b) => a - b).indexOf(value);
}

/** How often its units are parted from one another, across and down. */
function gapsOf({ units }: BlockDesign): { across: number; down: number } {
  const count = (places: readonly number[]): number => Math.max(0, new Set(places).size - 1);
  return { across: count(units.map(({ column }) => column)), down: count(units.map(({ row }) => row)) };
}

/** Units moved apart, in millimetres: how far each patch goes with its unit, and the units' own outlines. */
function setApart(
  { units }: BlockDesign,
  scale: number,
): { shift: (patch: Patch) => Corner; outlines: Corner[][] } {
  const [columns, rows] = [units.map(({ column }) => column), units.map(({ row }) => row)];
  const moved = units.map(({ column, row }): Corner => {
    const [right, lower] = [rank(columns, column), rank(rows, row)];
    return [(right * APART) / scale, (lower * APART) / scale];
  });
  return {
    shift: ({ origin }) => moved[origin.unit ?? -1] ?? [0, 0],
    outlines: units.map(({ x, y, across, down }, i): Corner[] => {
      const [dx, dy] = moved[i] ?? [0, 0];
      const [left, upper, wide, high] = [x, y, across, down].map((size) => ticksOf(size) / TICKS_PER_MM);
      return rectangle((left ?? 0) + dx, (upper ?? 0) + dy, wide ?? 0, high ?? 0);
    }),
  };
}

/** What a bag's letter is written in on a fabric. */
const lettersOn =
  (fabrics: readonly DrawnFabric[]) =>
  (name: string): { ink: string; plate: string | null } => {
    const { colour = "", photo } = fabrics.find((fabric) => fabric.name === name) ?? {};
    const ground = safeColour(colour);
    return { ink: labelOn(ground), plate: photo === undefined ? null : ground };
  };

/** Page units across a block that stands beside its steps, and how high it may be. */
const BESIDE = { width: 340, tallest: 340 } as const;

/** A block's units set apart with the letters of their bags, to stand beside its steps. */
export function blockApart(
  design: BlockDesign,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
  words: Words,
  { bags, idPrefix }: { bags: BlockBags; idPrefix: string },
): string {
  const [across, down] = [ticksOf(design.across) / TICKS_PER_MM, ticksOf(design.down) / TICKS_PER_MM];
  const gaps = gapsOf(design);
  const [wide, high] = [BESIDE.width - gaps.across * APART - 4, BESIDE.tallest - gaps.down * APART];
  const scale = Number(Math.min(wide / across, high / down, 2.4).toFixed(6));
  const at = { x: 2, y: 2, scale };
  const { shift, outlines } = setApart(design, scale);
  const name = cleanText(blockTitle(design));
  const lines = bagLines(design, bags, ruler, words);
  const nodes = [
    ...patchNodes(design.patches, fabrics, at, { id: "apart", shift, arrows: false }),
    ...outlineNodes(outlines, at, 1, "units"),
    ...bagLetters(design.patches, bags, at, shift, lettersOn(fabrics)),
  ];
  return toSvg({
    idPrefix,
    title: `${words.drawings.quilt.block}: ${name}`,
    description: words.drawings.quilt.blockDescribed(lines, design.count),
    ...onPaper(nodes, 4 + down * scale + gaps.down * APART, 4 + across * scale + gaps.across * APART),
  });
}

/** The scale at which a block and its units set apart stand side by side. */
function scaleOf(design: BlockDesign): number {
  const gaps = gapsOf(design);
  const tallest = design.units.length < 2 ? TALLEST / 2 : TALLEST;
  const fit = Math.min(
    (HALF - gaps.across * APART) / (ticksOf(design.across) / TICKS_PER_MM),
    (tallest - gaps.down * APART) / (ticksOf(design.down) / TICKS_PER_MM),
  );
  return Number(Math.min(fit, 2.4).toFixed(6));
}

/** A block as plain data: finished beside its units set apart, both at one scale. */
export function blockScene(
  design: BlockDesign,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
  words: Words,
  options: BlockOptions = {},
): Scene {
  const idPrefix = options.idPrefix ?? "block-";
  const { bags } = options;
  const [across, down] = [ticksOf(design.across) / TICKS_PER_MM, ticksOf(design.down) / TICKS_PER_MM];
  const name = cleanText(blockTitle(design));
  const facts = blockFacts(design, ruler, words);
  const head = titleBlock({ over: words.drawings.quilt.block, name, colour: null, facts });
  const { down: gapsDown } = gapsOf(design);
  // A block of one unit has nothing to set apart.
  const isPlain = design.units.length < 2;
  const scale = scaleOf(design);
  const top = head.height + 20;
  const whole = { x: 2, y: top, scale };
  const apart = { x: HALF + GUTTER, y: top, scale };
  const { shift, outlines: units } = setApart(design, scale);
  const caption = (text: string, x: number): SceneNode =>
    textIn(text, { x, y: head.height, width: HALF, height: 14 }, { size: 10, bold: true });
  const nodes: SceneNode[] = [
    ...head.nodes,
    caption(words.drawings.quilt.finished, whole.x),
    ...patchNodes(design.patches, fabrics, whole, { id: "finished" }),
    ...outlineNodes([rectangle(0, 0, across, down)], whole, 1.2, "edge"),
  ];
  if (!isPlain) {
    nodes.push(
      caption(words.drawings.quilt.apart, apart.x),
      ...patchNodes(design.patches, fabrics, apart, {
        id: "apart",
        shift,
        arrows: bags === undefined,
      }),
      ...outlineNodes(units, apart, 1, "units"),
    );
  }
  if (bags !== undefined) {
    const [at, moved] = isPlain ? [whole, (): Corner => [0, 0]] : [apart, shift];
    if (!isPlain || design.patches.every(({ up }) => up === null))
      nodes.push(...bagLetters(design.patches, bags, at, moved, lettersOn(fabrics)));
  }
  const lines = bags === undefined ? unitLines(design) : unitMadeLines(design, bags, words);
  const bagsTold = bags === undefined ? [] : bagLines(design, bags, ruler, words);
  const lists = unitLists(lines, bagsTold, top + down * scale + gapsDown * APART + 18, words);
  const picture = {
    idPrefix,
    title: `${words.drawings.quilt.block}: ${name}`,
    description: words.drawings.quilt.blockDescribed(lines, design.count),
    nodes: [...nodes, ...lists.nodes],
    patches: design.patches,
    scale,
    bottom: lists.bottom,
  };
  return patchPage(picture, fabrics, words);
}

/** The units of a block, and the bags they are from, in two columns from a height down. */
function unitLists(
  units: readonly string[],
  bags: readonly string[],
  top: number,
  words: Words,
): { nodes: SceneNode[]; bottom: number } {
  const told =
    (text: string): Cell =>
    (box) => [textIn(cleanText(text), box, { size: 9.5 })];
  const two = { columns: 2, cellHeight: 15 };
  const list = section(words.drawings.quilt.units, units.map(told), { ...two, top });
  const bagList = section(words.drawings.quilt.bags, bags.map(told), { ...two, top: list.bottom + 6 });
  return {
    nodes: [...list.nodes, ...bagList.nodes],
    bottom: bags.length === 0 ? list.bottom : bagList.bottom,
  };
}

/** A block, finished and set apart into units, as an SVG document. */
export function drawBlock(
  design: BlockDesign,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
  words: Words,
  options: BlockOptions = {},
): string {
  return toSvg(blockScene(design, fabrics, ruler, words, options));
}

/**
 * Every block the quilt holds, with the letters of its bags.
 * @param numbered true when all are to stand in one document, so that each needs ids of its own
 */
export function drawBlocks(plan: Plan, numbered: boolean, words: Words): { name: string; svg: string }[] {
  const { top, making, fabrics, ruler } = plan;
  return (top?.designs ?? [])
    .map((design, index) => ({ design, index }))
    .filter(({ design }) => design.count > 0)
    .map(({ design, index }, i) => ({
      name: design.name,
      svg: drawBlock(design, fabrics, ruler, words, {
        ...(numbered ? { idPrefix: `block-${i + 1}-` } : {}),
        ...(making === undefined ? {} : { bags: { making, fabrics, design: index } }),
      }),
    }));
}
