import { PAGE_WIDTH } from "./frame.ts";
import { moveNodes } from "./move.ts";
import { PAPER } from "./palette.ts";
import { rect, type Scene, type SceneNode } from "./scene.ts";

/** Page units left free on every side of a drawing. */
export const MARGIN = 10;

/** A drawing as wide as the page, or as it is told, and `bottom` page units high, on paper with a margin all round. */
export function onPaper(
  nodes: readonly SceneNode[],
  bottom: number,
  wide: number = PAGE_WIDTH,
): Pick<Scene, "width" | "height" | "nodes"> {
  const [width, height] = [wide + 2 * MARGIN, Math.ceil(bottom + 2 * MARGIN)];
  return {
    width,
    height,
    nodes: [rect({ x: 0, y: 0, width, height }, { fill: PAPER }), ...moveNodes(nodes, MARGIN, MARGIN)],
  };
}
