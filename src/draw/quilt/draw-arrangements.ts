import type { QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { toSvg } from "../scene/canvas.ts";
import { fabricList } from "../scene/fabric-list.ts";
import { PAGE_WIDTH, TICKS_PER_MM } from "../scene/frame.ts";
import { onPaper } from "../scene/paper.ts";
import type { Scene, SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText, wrap } from "../scene/text-fit.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import { outlineNodes, outlineOf, patchNodes, rectangle, ticksOf } from "./patches.ts";

/** One picture of several, with what stands above and below it. */
export interface Pictured {
  name: string;
  said: string;
  top: QuiltTop;
}

const COLUMNS = 3;
const GAP = 16;
/** The name above a picture: its size, the height of its first line and of each that follows. */
const NAME = { size: 10.5, first: 18, more: 13, most: 2 };
/** Room under a picture, besides its lines of text. */
const BELOW = 8;
const LINE = 12;
const MOST_LINES = 3;

/** Quilt tops side by side, all to one scale: the arrangements of a block set. */
export function drawArrangements(
  title: string,
  pictures: readonly Pictured[],
  fabrics: readonly DrawnFabric[],
  words: Words,
): string {
  return toSvg(arrangementsScene(title, pictures, fabrics, words));
}

export function arrangementsScene(
  title: string,
  pictures: readonly Pictured[],
  fabrics: readonly DrawnFabric[],
  words: Words,
): Scene {
  const idPrefix = "arrange-";
  const width = (PAGE_WIDTH - (COLUMNS - 1) * GAP) / COLUMNS;
  const widest = Math.max(1, ...pictures.map(({ top }) => ticksOf(top.across)));
  const tallest = Math.max(1, ...pictures.map(({ top }) => ticksOf(top.down)));
  const perTick = Math.min(width / widest, (1.6 * width) / tallest);
  const scale = Number((perTick * TICKS_PER_MM).toFixed(6));
  const lines = pictures.map(({ said }) => wrap(cleanText(said), width, 9, MOST_LINES));
  const below = BELOW + LINE * Math.max(0, ...lines.map(({ length }) => length));
  const names = pictures.map(({ name }) => wrap(cleanText(name), width, NAME.size, NAME.most, true));
  const above = NAME.first + NAME.more * (Math.max(1, ...names.map(({ length }) => length)) - 1);
  const rowHeight = above + tallest * perTick + below;
  const head = 28;
  const nodes: SceneNode[] = [
    textIn(cleanText(title), { x: 0, y: 0, width: PAGE_WIDTH, height: 20 }, { size: 15, bold: true }),
  ];
  for (const [i, { top }] of pictures.entries()) {
    const x = (i % COLUMNS) * (width + GAP);
    const y = head + Math.floor(i / COLUMNS) * rowHeight;
    const at = { x, y: y + above, scale };
    const [across, down] = [ticksOf(top.across), ticksOf(top.down)];
    const whole = rectangle(0, 0, across / TICKS_PER_MM, down / TICKS_PER_MM);
    const blocks = top.blocks.map(({ outline }) => outlineOf(outline));
    const under = at.y + down * perTick + 3;
    nodes.push(
      ...(names[i] ?? []).map((text, n) =>
        textIn(text, { x, y: y + n * NAME.more, width, height: 15 }, { size: NAME.size, bold: true }),
      ),
      ...patchNodes(top.patches, fabrics, at, { id: `top-${i + 1}` }),
      ...outlineNodes(blocks, at, 0.6, `blocks-${i + 1}`),
      ...outlineNodes([whole], at, 1, `edge-${i + 1}`),
      ...(lines[i] ?? []).map((text, n) =>
        textIn(text, { x, y: under + n * LINE, width, height: LINE }, { size: 9 }),
      ),
    );
  }
  const bottom = head + Math.ceil(pictures.length / COLUMNS) * rowHeight;
  const used = new Set(pictures.flatMap(({ top }) => top.patches.map(({ fabric }) => fabric)));
  const list = fabricList(fabrics, used, {
    scale,
    heading: words.drawings.quilt.fabrics,
    top: bottom,
  });
  nodes.push(...list.nodes);
  return {
    idPrefix,
    title: cleanText(title),
    description: words.drawings.quilt.sideBySide(pictures.length),
    ...onPaper(nodes, list.bottom),
  };
}
