import type { FoundationMaking } from "../../making/foundation-types.ts";
import type { QuiltTop } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { PAGE_WIDTH } from "../scene/frame.ts";
import { onPaper } from "../scene/paper.ts";
import type { Scene, SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import { wrap } from "../scene/text-fit.ts";
import type { DrawnFabric } from "../scene/textures.ts";
import { blockNodes, inDesigns } from "./draw-foundation.ts";
import { foldedNodes } from "./foundation-folded.ts";
import { piecedNodes } from "./foundation-pieced.ts";

/** Room for the two sides of a piece of foundation, and for each block it goes into, right of them. */
const SIDES = { half: 140, gutter: 12, tallest: 190 } as const;
const BLOCK = 104;
const BLOCK_GAP = 12;
/** Blocks of a part that are drawn: where it goes in one says where it goes in all. */
const MOST = 2;
const CAPTION = { size: 9.5, line: 12.5 } as const;

/** One piece of foundation to stand beside its step: both its sides, and where it goes. Null for a part there is not. */
function besideScene(
  index: number,
  foundation: FoundationMaking,
  top: QuiltTop,
  fabrics: readonly DrawnFabric[],
  words: Words,
): Scene | null {
  const part = foundation.parts[index];
  if (part === undefined) return null;
  const idPrefix = `foundation-${index + 1}-`;
  const said = words.drawings.foundation;
  const described = {
    idPrefix,
    title: `${said.over}: ${foundation.per} ${part.letter}`,
    description: part.kind === "pieced" ? `${said.front}. ${said.back}` : said.laid,
  };
  if (part.kind === "folded") {
    const drawn = foldedNodes(part, foundation, fabrics, 0, words);
    return { ...described, ...onPaper(drawn.nodes, drawn.bottom, PAGE_WIDTH) };
  }
  const drawn = piecedNodes(part, foundation, fabrics, words, { ...SIDES, top: 0 });
  const x = 2 * SIDES.half + SIDES.gutter + BLOCK_GAP;
  const caption = wrap(said.places, BLOCK, CAPTION.size, 4, true);
  const nodes: SceneNode[] = [
    ...drawn.nodes,
    ...caption.map((text, i) =>
      textIn(text, { x, y: i * CAPTION.line, width: BLOCK, height: 14 }, { size: CAPTION.size, bold: true }),
    ),
  ];
  let y = caption.length * CAPTION.line + 6;
  for (const [i, { design, inside }] of inDesigns(part, top).slice(0, MOST).entries()) {
    const block = top.designs[design];
    if (block === undefined) continue;
    const frame = { x, y, id: `block-${i + 1}`, small: BLOCK };
    const own = blockNodes(block, { inside, letter: part.letter }, fabrics, frame, words);
    nodes.push(...own.nodes);
    y += own.height + 10;
  }
  return { ...described, ...onPaper(nodes, Math.max(y, drawn.bottom), x + BLOCK) };
}

/** Every piece of foundation as it stands beside the step that makes it, in the order of the parts. */
export function foundationBesideScenes(
  foundation: FoundationMaking,
  top: QuiltTop,
  fabrics: readonly DrawnFabric[],
  words: Words,
): Scene[] {
  return foundation.parts.flatMap((_, index) => {
    const scene = besideScene(index, foundation, top, fabrics, words);
    return scene === null ? [] : [scene];
  });
}
