import { measureName } from "../../length/format.ts";
import type { Ruler } from "../../length/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { rulerAcross, rulerAlong, rulerScale } from "../cutting/ruler.ts";
import { toSvg } from "../scene/canvas.ts";
import { PAGE_HEIGHT, PAGE_WIDTH, TICKS_PER_MM } from "../scene/frame.ts";
import type { Scene, SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText } from "../scene/text-fit.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import { titleBlock } from "../scene/title-block.ts";
import { patchPage } from "./patch-page.ts";
import { type Corner, outlineNodes, outlineOf, patchNodes, rectangle, ticksOf } from "./patches.ts";
import { spokenSizeNear, topFacts } from "./quilt-words.ts";

export interface TopOptions {
  /** Starts every id; default `top-`. */
  idPrefix?: string;
}

const LEFT = 34;
const ABOVE = 20;
const TALLEST = 620;
/** Blocks smaller than this on the page get no outline of their own. */
const SMALLEST_BLOCK = 14;

function isLarge(corners: readonly Corner[], scale: number): boolean {
  const [[x1, y1], [x2, y2], [x3, y3]] = corners as [Corner, Corner, Corner];
  return Math.min(Math.hypot(x2 - x1, y2 - y1), Math.hypot(x3 - x2, y3 - y2)) * scale >= SMALLEST_BLOCK;
}

/** What the figures of the rulers are in, where the two meet. */
function rulerMeasure({ unit, language }: Ruler, at: { x: number; y: number }): SceneNode {
  const box = { x: at.x - 34, y: at.y - 18, width: 24, height: 9 };
  return textIn(measureName(unit, language), box, { size: 8.3, anchor: "end" });
}

/** The quilt top as plain data, to scale with rulers, fabrics in their own colours and textures. */
export function topScene(
  top: QuiltTop,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
  words: Words,
  options: TopOptions = {},
): Scene {
  const idPrefix = options.idPrefix ?? "top-";
  const [across, down] = [ticksOf(top.across), ticksOf(top.down)];
  const name = cleanText(top.name);
  const head = titleBlock({
    over: words.drawings.quilt.top,
    name,
    colour: null,
    facts: topFacts(top, ruler, words),
  });
  const room = Math.min(TALLEST, PAGE_HEIGHT - head.height - 120);
  const fit = Math.min((PAGE_WIDTH - LEFT - 4) / across, (room - ABOVE) / down) * TICKS_PER_MM;
  const scale = Number(Math.min(fit, 1).toFixed(6));
  const perTick = scale / TICKS_PER_MM;
  const width = across * perTick;
  const at = { x: LEFT + Math.max(0, (PAGE_WIDTH - LEFT - 4 - width) / 2), y: head.height + ABOVE, scale };

  // Where blocks are as small as patches usually are, lines about them would only darken the picture.
  const blocks = top.blocks
    .map(({ outline }) => outlineOf(outline))
    .filter((corners) => isLarge(corners, scale));
  const borders = top.borders.map(({ x, y, across, down }): Corner[] => {
    const [left, upper, wide, high] = [x, y, across, down].map((size) => ticksOf(size) / TICKS_PER_MM);
    return rectangle(left ?? 0, upper ?? 0, wide ?? 0, high ?? 0);
  });
  const whole = rectangle(0, 0, across / TICKS_PER_MM, down / TICKS_PER_MM);
  const figures = rulerScale(ruler, perTick, 26, Math.max(across, down));
  const run = { zero: 0, from: 0, perTick };
  const nodes: SceneNode[] = [
    ...head.nodes,
    ...rulerAcross({ ...run, to: across, start: at.x, edge: at.y - 3 }, figures),
    ...rulerAlong({ ...run, to: down, start: at.y, edge: at.x - 3 }, figures, -1),
    rulerMeasure(ruler, at),
    ...patchNodes(top.patches, fabrics, at, { id: "patches" }),
    ...outlineNodes(blocks, at, 0.9, "blocks"),
    ...outlineNodes([...borders, whole], at, 1.2, "borders"),
  ];
  const picture = {
    idPrefix,
    title: `${words.drawings.quilt.top}: ${name}`,
    description: words.drawings.quilt.topDescribed(
      spokenSizeNear(across, down, ruler),
      top.blocks.length,
      top.patches.length,
    ),
    nodes,
    patches: top.patches,
    scale,
    bottom: at.y + down * perTick + 16,
  };
  return patchPage(picture, fabrics, words);
}

/** The quilt top as an SVG document. */
export function drawTop(
  top: QuiltTop,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
  words: Words,
  options: TopOptions = {},
): string {
  return toSvg(topScene(top, fabrics, ruler, words, options));
}
