import { formatLength } from "../../length/index.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import type { Backing, Making } from "../../making/types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { backingSketch, bindingSketches, sketchRow, sleeveSketch } from "../finish/making-finish-sketches.ts";
import { ticksOf } from "../quilt/patches.ts";
import { spokenSizeNear } from "../quilt/quilt-words.ts";
import { toSvg } from "../scene/canvas.ts";
import { PAGE_WIDTH, type Standing } from "../scene/frame.ts";
import { arrow } from "../scene/marks.ts";
import { INK, QUIET_INK, WASTE_GROUND } from "../scene/palette.ts";
import { onPaper } from "../scene/paper.ts";
import { type Box, line, rect, type Scene, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText } from "../scene/text-fit.ts";
import { titleBlock } from "../scene/title-block.ts";

const LEFT = 70;
const TALLEST = 260;

const EDGE = { stroke: INK, strokeWidth: 1.2 } as const;
const SEAM = { stroke: INK, strokeWidth: 1.6 } as const;
const _SEWN = { stroke: INK, strokeWidth: 1, dash: "3 2.5" } as const;

/** The backing as it is drawn: its box on the page, and where its panels begin and end along the seams' way. */
interface DrawnBacking {
  backing: Backing;
  box: Box;
  scale: number;
  upright: boolean;
  edges: readonly number[];
}

function seamNodes({ box, upright, edges }: DrawnBacking): SceneNode[] {
  return edges
    .slice(1, -1)
    .map((place) =>
      upright
        ? line(box.x + place, box.y, box.x + place, box.y + box.height, SEAM)
        : line(box.x, box.y + place, box.x + box.width, box.y + place, SEAM),
    );
}

/** Each panel with its number and the size it is cut. */
function panelNames({ backing, box, upright, edges }: DrawnBacking, ruler: Ruler, words: Words): SceneNode[] {
  const said = words.drawings.sewing.finish;
  const size = spokenSizeNear(backing.panel.across, backing.panel.along, ruler);
  return edges.slice(1).flatMap((edge, i): SceneNode[] => {
    const from = edges[i] ?? 0;
    const [x, y, width] = upright
      ? [box.x + from + 3, box.y + box.height / 2 - 20, edge - from - 6]
      : [box.x, box.y + (from + edge) / 2 - 13, box.width];
    return [backing.panels === 1 ? said.piece : said.panel(i + 1), size].map((text, n) =>
      textIn(text, { x, y: y + 13 * n, width, height: 13 }, { size: 9, bold: n === 0, anchor: "middle" }),
    );
  });
}

const near = (length: Ticks, ruler: Ruler): string =>
  formatLength(Math.round(length / ruler.mark) * ruler.mark, ruler, { typeset: true });

/** How far from the edge each seam lies. */
function seamPlaces({ backing, box, scale, upright }: DrawnBacking, ruler: Ruler): SceneNode[] {
  return backing.seamAt.map((place): SceneNode => {
    const at = place * scale;
    const text = near(place, ruler);
    return upright
      ? textIn(
          text,
          { x: box.x + at - 45, y: box.y + box.height + 3, width: 90, height: 12 },
          { size: 9, anchor: "middle" },
        )
      : textIn(text, { x: 0, y: box.y + at - 6, width: LEFT - 6, height: 12 }, { size: 9, anchor: "end" });
  });
}

/** How far the backing reaches beyond the quilt, `dx` on the page. */
function overhangNodes({ backing, box }: DrawnBacking, dx: number, ruler: Ruler, words: Words): SceneNode[] {
  if (backing.overhang === 0) return [];
  const [right, y] = [box.x + box.width, box.y + box.height * 0.8];
  const frame = { x: right + 5, y: y - 7, width: PAGE_WIDTH - box.x - box.width - 5, height: 14 };
  return [
    ...arrow([right - dx, y], [right, y], QUIET_INK, 2, 0.8),
    textIn(words.drawings.sewing.finish.overhang(near(backing.overhang, ruler)), frame, { size: 9 }),
  ];
}

/** Which way a print's up points, where it has one. */
function printUp({ backing, box }: DrawnBacking, words: Words): SceneNode[] {
  if (!backing.directional) return [];
  const frame = { x: 0, y: box.y + 56, width: LEFT - 4, height: 12 };
  return [
    ...(backing.sideways
      ? arrow([6, box.y + 34], [42, box.y + 34], INK, 1, 1.2)
      : arrow([24, box.y + 52], [24, box.y + 16], INK, 1, 1.2)),
    textIn(words.drawings.sewing.finish.up, frame, { size: 8.5 }),
  ];
}

function backingNodes(
  backing: Backing,
  top: QuiltTop,
  y: number,
  ruler: Ruler,
  words: Words,
): { nodes: SceneNode[]; bottom: number } {
  const { across, down, seamAt } = backing;
  const scale = Math.min((PAGE_WIDTH - LEFT - 100) / across, TALLEST / down);
  const box: Box = { x: LEFT, y, width: across * scale, height: down * scale };
  const [dx, dy] = [((across - ticksOf(top.across)) / 2) * scale, ((down - ticksOf(top.down)) / 2) * scale];
  const upright = backing.seams === "vertical";
  const edges = [0, ...seamAt, upright ? across : down].map((place) => place * scale);
  const drawn = { backing, box, scale, upright, edges };
  const quilt = { x: box.x + dx, y: box.y + dy, width: box.width - 2 * dx, height: box.height - 2 * dy };
  return {
    nodes: [
      rect(box, { fill: WASTE_GROUND, ...EDGE }),
      rect(quilt, { fill: "none", stroke: QUIET_INK, strokeWidth: 0.9, dash: "5 4" }),
      ...seamNodes(drawn),
      ...panelNames(drawn, ruler, words),
      ...seamPlaces(drawn, ruler),
      ...overhangNodes(drawn, dx, ruler, words),
      ...printUp(drawn, words),
    ],
    bottom: box.y + box.height + 26,
  };
}

/** The same among the words of a page: one row of small pictures in the order of work. */
function bareScene(top: QuiltTop, making: Making, ruler: Ruler, words: Words): Scene {
  const { backing, binding, sleeve } = making.finishing;
  const sketches = [
    ...(backing === null ? [] : [backingSketch(backing, top, ruler, words)]),
    ...(binding === null ? [] : bindingSketches(binding, making.seam, ruler, words)),
    sleeveSketch(sleeve, top, ruler, words),
  ];
  const { nodes, bottom } = sketchRow(sketches, 0);
  return {
    idPrefix: "finish-",
    title: `${words.drawings.sewing.finish.over}: ${cleanText(top.name)}`,
    description: words.drawings.sewing.finish.described(backing?.panels ?? 0, binding?.cut ?? "none"),
    ...onPaper(nodes, bottom),
  };
}

/** The backing with its panels, and how the binding is joined and mitred; null when the file has neither. */
export function finishScene(
  top: QuiltTop,
  making: Making,
  ruler: Ruler,
  words: Words,
  { bare = false }: Standing = {},
): Scene | null {
  const { backing, binding } = making.finishing;
  if (bare) return bareScene(top, making, ruler, words);
  if (backing === null && binding === null) return null;
  const name = cleanText(top.name);
  const facts = [
    {
      caption: words.drawings.sewing.finishedSize,
      value: spokenSizeNear(ticksOf(top.across), ticksOf(top.down), ruler),
    },
  ];
  if (backing !== null)
    facts.push({
      caption: words.drawings.sewing.finish.backingCaption,
      value: spokenSizeNear(backing.across, backing.down, ruler),
    });
  if (binding !== null)
    facts.push({
      caption: words.drawings.sewing.finish.binding,
      value: formatLength(binding.length, ruler, { typeset: true }),
    });
  const head = titleBlock({ over: words.drawings.sewing.finish.over, name, colour: null, facts });
  const nodes: SceneNode[] = [...head.nodes];
  let y = head.height;
  const caption = (text: string): void => {
    nodes.push(textIn(text, { x: 0, y, width: PAGE_WIDTH, height: 14 }, { size: 10, bold: true }));
    y += 22;
  };
  if (backing !== null) {
    caption(words.drawings.sewing.finish.backing);
    const drawn = backingNodes(backing, top, y, ruler, words);
    nodes.push(...drawn.nodes);
    y = drawn.bottom;
  }
  if (binding !== null) {
    caption(words.drawings.sewing.finish.binding);
    const row = sketchRow(bindingSketches(binding, making.seam, ruler, words), y);
    nodes.push(...row.nodes);
    y = row.bottom;
  }
  return {
    idPrefix: "finish-",
    title: `${words.drawings.sewing.finish.over}: ${name}`,
    description: words.drawings.sewing.finish.described(backing?.panels ?? 0, binding?.cut ?? "none"),
    ...onPaper(nodes, y),
  };
}

/** Backing and binding as an SVG document; null when the file has neither. */
export function drawFinishing(
  top: QuiltTop,
  making: Making,
  ruler: Ruler,
  words: Words,
  standing: Standing = {},
): string | null {
  const scene = finishScene(top, making, ruler, words, standing);
  return scene === null ? null : toSvg(scene);
}
