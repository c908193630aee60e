import { formatSize } from "../../length/format.ts";
import type { Ruler } from "../../length/types.ts";
import type { FoundationMaking } from "../../making/foundation-types.ts";
import type { FoundationPart } from "../../quilt/foundation/types.ts";
import type { BlockDesign, QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { outlineNodes, patchNodes, rectangle, ticksOf } from "../quilt/patches.ts";
import { toSvg } from "../scene/canvas.ts";
import { fabricList } from "../scene/fabric-list.ts";
import { PAGE_WIDTH, type SewnQuilt, TICKS_PER_MM } from "../scene/frame.ts";
import { arrow } from "../scene/marks.ts";
import { INK, PAPER } from "../scene/palette.ts";
import { onPaper } from "../scene/paper.ts";
import { circle, type Scene, type SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { cleanText } from "../scene/text-fit.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import { titleBlock } from "../scene/title-block.ts";
import { foldedNodes } from "./foundation-folded.ts";
import { onCloth } from "./foundation-grid.ts";
import { piecedNodes, WHOLE_PAGE } from "./foundation-pieced.ts";

const SMALL = 170;
const GAP = 24;
/** Letters that are still read where the drawing stands on a page. */
const SMALLEST = 8.3;
const PER_ROW = Math.floor((PAGE_WIDTH + GAP) / (SMALL + GAP));
/** More blocks than this are not drawn one by one. */
const MOST_BLOCKS = 8;

/** What lies in a block: a frame in ticks, with where the top of what is told points there. */
interface Inside {
  x: number;
  y: number;
  across: number;
  down: number;
  turn: number;
  /** Only in blocks that are turned so in the quilt; null or absent: in all. */
  blockTurns?: readonly number[] | null;
}

function halves(squares: number): string {
  const whole = Math.floor(squares);
  return whole === squares ? String(squares) : `${whole === 0 ? "" : whole}½`;
}

export function inDesigns(part: FoundationPart, top: QuiltTop): { design: number; inside: Inside[] }[] {
  if (part.kind === "folded") {
    return part.blocks.slice(0, MOST_BLOCKS).map(({ design, turn }) => {
      const { across, down } = top.designs[design] ?? { across: null, down: null };
      const size = {
        across: across === null ? 0 : ticksOf(across),
        down: down === null ? 0 : ticksOf(down),
      };
      return { design, inside: [{ x: 0, y: 0, ...size, turn }] };
    });
  }
  const designs = [...new Set(part.places.map(({ design }) => design))].slice(0, MOST_BLOCKS);
  return designs.map((design) => ({
    design,
    inside: part.places.filter((place) => place.design === design),
  }));
}

/** A small block with what lies where in it, and an arrow to where its top points. */
export function blockNodes(
  design: BlockDesign,
  { inside, letter }: { inside: readonly Inside[]; letter: string },
  fabrics: readonly DrawnFabric[],
  frame: { x: number; y: number; id: string; small?: number },
  words: Words,
): { nodes: SceneNode[]; height: number } {
  const { small = SMALL } = frame;
  const [across, down] = [ticksOf(design.across) / TICKS_PER_MM, ticksOf(design.down) / TICKS_PER_MM];
  const scale = Number(Math.min((small - 4) / across, (small - 4) / down).toFixed(6));
  const at = { x: frame.x + 2, y: frame.y + 18, scale };
  const per = scale / TICKS_PER_MM;
  const outlines = inside.map(({ x, y, across: wide, down: high }) =>
    rectangle(x / TICKS_PER_MM, y / TICKS_PER_MM, wide / TICKS_PER_MM, high / TICKS_PER_MM),
  );
  const marks = inside.flatMap(({ x, y, across: wide, down: high, turn }, i): SceneNode[] => {
    const [cx, cy] = [at.x + (x + wide / 2) * per, at.y + (y + high / 2) * per];
    const room = Math.min(wide, high) * per;
    const reach = Math.min(26, room * 0.42);
    if (reach < 7) return [];
    const angle = (turn * Math.PI) / 180;
    const [dx, dy] = [Math.sin(angle) * reach, -Math.cos(angle) * reach];
    const radius = Math.max(5.6, Math.min(9, room * 0.2));
    const box = { x: cx - 14, y: cy - radius, width: 28, height: 2 * radius };
    return [
      onCloth(
        [
          ...arrow([cx, cy], [cx + dx, cy + dy], PAPER, 1, 2.4),
          ...arrow([cx, cy], [cx + dx, cy + dy], INK, 1, 1.3),
        ],
        `${frame.id}-turn-${i + 1}`,
      ),
      circle(cx, cy, radius, { fill: PAPER, stroke: INK, strokeWidth: 1 }),
      textIn(letter, box, { size: Math.max(SMALLEST, radius * 1.2), bold: true, anchor: "middle" }),
    ];
  });
  const turns = inside[0]?.blockTurns ?? null;
  // The block is drawn as it lies unturned: in one that is turned its prints point elsewhere.
  const patches =
    turns === null || turns.includes(0)
      ? design.patches
      : design.patches.map((patch) => ({ ...patch, up: null }));
  const heading = { x: frame.x, y: frame.y, width: small, height: 14 };
  return {
    nodes: [
      textIn(cleanText(words.drawings.foundation.block(design.name, turns)), heading, { size: 9.5 }),
      ...patchNodes(patches, fabrics, at, { id: frame.id }),
      ...outlineNodes(outlines, at, 1.8, `${frame.id}-edges`),
      ...marks,
    ],
    height: 18 + down * scale,
  };
}

/** What a piece of foundation is cut to, what it finishes at, and how many are made. */
function partFacts(
  part: FoundationPart,
  grid: number,
  ruler: Ruler,
  words: Words,
): { caption: string; value: string }[] {
  const said = words.drawings.foundation;
  const squares = ({ across, down }: { across: number; down: number }) =>
    said.squares(halves(across), halves(down));
  const cut = formatSize(part.cut.across * grid, part.cut.down * grid, ruler);
  return [
    { caption: said.cut, value: `${squares(part.cut)}: ${cut}` },
    { caption: said.finished, value: squares(part.finished) },
    { caption: said.make, value: String(part.count) },
  ];
}

/** The blocks a piece goes into, in rows from a height down. */
function placeNodes(
  part: FoundationPart,
  top: QuiltTop,
  fabrics: readonly DrawnFabric[],
  from: number,
  words: Words,
): { nodes: SceneNode[]; bottom: number } {
  const nodes: SceneNode[] = [];
  let [y, tallest] = [from, 0];
  for (const [i, { design, inside }] of inDesigns(part, top).entries()) {
    const block = top.designs[design];
    if (block === undefined) continue;
    if (i > 0 && i % PER_ROW === 0) {
      y += tallest + 14;
      tallest = 0;
    }
    const frame = { x: (i % PER_ROW) * (SMALL + GAP), y, id: `block-${i + 1}` };
    const own = blockNodes(block, { inside, letter: part.letter }, fabrics, frame, words);
    nodes.push(...own.nodes);
    tallest = Math.max(tallest, own.height);
  }
  return { nodes, bottom: y + tallest + 14 };
}

/** One piece of foundation: its squares counted, its seams numbered in sewing order, and where it goes. Plain data. */
export function foundationScene(
  index: number,
  foundation: FoundationMaking,
  { top, fabrics, ruler }: Pick<SewnQuilt, "top" | "fabrics" | "ruler">,
  words: Words,
): Scene | null {
  const part = foundation.parts[index];
  if (part === undefined) return null;
  const { per } = foundation;
  const idPrefix = `foundation-${index + 1}-`;
  const facts = partFacts(part, foundation.grid, ruler, words);
  const name = cleanText(`${per.charAt(0).toUpperCase()}${per.slice(1)} ${part.letter}`);
  const head = titleBlock({ over: words.drawings.foundation.over, name, colour: null, facts });
  const drawn =
    part.kind === "pieced"
      ? piecedNodes(part, foundation, fabrics, words, { ...WHOLE_PAGE, top: head.height })
      : foldedNodes(part, foundation, fabrics, head.height, words);
  const nodes: SceneNode[] = [...head.nodes, ...drawn.nodes];
  const y = drawn.bottom;
  const said = part.kind === "pieced" ? words.drawings.foundation.places : words.drawings.foundation.blocks;
  nodes.push(textIn(said, { x: 0, y, width: PAGE_WIDTH, height: 14 }, { size: 10.5, bold: true }));
  const places = placeNodes(part, top, fabrics, y + 20, words);
  nodes.push(...places.nodes);
  const tiles = part.kind === "pieced" ? part.patches : part.cells.flatMap(({ patches }) => patches);
  const used = new Set(tiles.map(({ fabric }) => fabric));
  const list = fabricList(fabrics, used, {
    scale: drawn.scale,
    heading: words.drawings.foundation.fabrics,
    top: places.bottom,
  });
  nodes.push(...list.nodes);
  return {
    idPrefix,
    title: `${words.drawings.foundation.over}: ${name}`,
    description: `${facts.map(({ caption, value }) => `${caption}: ${value}`).join("; ")}.`,
    ...onPaper(nodes, list.bottom),
  };
}

/** The same as SVG documents, one for each piece of foundation. */
export function drawFoundation(
  foundation: FoundationMaking,
  top: QuiltTop,
  fabrics: readonly DrawnFabric[],
  ruler: Ruler,
  words: Words,
): string[] {
  return foundation.parts.flatMap((_, index) => {
    const scene = foundationScene(index, foundation, { top, fabrics, ruler }, words);
    return scene === null ? [] : [toSvg(scene)];
  });
}
