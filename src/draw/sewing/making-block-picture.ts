import type { Words } from "../../words/index.ts";
import { ticksOf } from "../quilt/patches.ts";
import { spokenSizeNear } from "../quilt/quilt-words.ts";
import type { SewnQuilt } from "../scene/frame.ts";
import { onPaper } from "../scene/paper.ts";
import type { Scene, SceneNode } from "../scene/scene.ts";
import { cleanText } from "../scene/text-fit.ts";
import { panel } from "./making-blocks.ts";
import { blockPanel, panelsOf } from "./making-pressing.ts";
import { whorlOf, whorlPanel } from "./whorl.ts";

/** A panel, and between two. */
const WIDE = 84;
const BETWEEN = 12;

/**
 * A block set apart as it is joined, and how its seams are pressed in each kind of it, to stand beside its steps; null
 * for a block without a seam of its own.
 */
export function blockPictureScene(
  { top, making, fabrics, ruler }: SewnQuilt,
  index: number,
  words: Words,
): Scene | null {
  const design = top.designs[index];
  if (design === undefined || design.count === 0) return null;
  const order = whorlOf(making, index);
  const joined = making.joins.some((join) => join.design === index && join.stage === "block");
  if (order === null && !joined) return null;
  const size = spokenSizeNear(ticksOf(design.across), ticksOf(design.down), ruler);
  const called = design.colourway === "" ? design.name : `${design.name}, ${design.colourway}`;
  const title = `${called}, ${size}`;
  const frame = { x: 0, y: 0, width: WIDE };
  const idPrefix = `block-${index + 1}-`;
  // The step beside it names the block.
  const apart =
    order === null
      ? panel({ design, index }, making, fabrics, size, frame)
      : whorlPanel(design, order, fabrics, size, { ...frame, id: `parts-${index + 1}` });
  const pressed = panelsOf(top, making, words).filter((each) => each.design === index);
  const nodes: SceneNode[] = [...apart.nodes];
  let [x, y, deepest] = [WIDE + BETWEEN, 0, apart.height];
  for (const [i, each] of pressed.entries()) {
    const drawn = blockPanel(
      design,
      fabrics,
      each.seams,
      cleanText(pressed.length === 1 ? words.drawings.sewing.blocks.pressedSo : each.title),
      {
        x,
        y,
        width: WIDE,
        id: `press-${i + 1}`,
      },
    );
    nodes.push(...drawn.nodes);
    deepest = Math.max(deepest, drawn.height);
    if (x > 0) [x, y, deepest] = [0, y + deepest, 0];
    else x = WIDE + BETWEEN;
  }
  return {
    idPrefix,
    title,
    description: words.drawings.sewing.blocks.oneDescribed(cleanText(called)),
    ...onPaper(nodes, y + deepest - 8, 2 * WIDE + BETWEEN),
  };
}
