import { PAGE_WIDTH } from "./frame.ts";
import type { Box, SceneNode } from "./scene.ts";
import { textIn } from "./text.ts";

/** Something of a known height that draws itself into a box. */
export type Cell = (box: Box) => SceneNode[];

const HEADING = 20;
const BETWEEN = 16;

/** Cells under a heading if they have one, filling column after column as in a newspaper. Starts at 0, `top`. */
export function section(
  heading: string | null,
  cells: readonly Cell[],
  layout: { columns: number; cellHeight: number; top: number },
): { nodes: SceneNode[]; bottom: number } {
  if (cells.length === 0) return { nodes: [], bottom: layout.top };
  const { columns, cellHeight, top } = layout;
  const perColumn = Math.ceil(cells.length / columns);
  const width = (PAGE_WIDTH - (columns - 1) * BETWEEN) / columns;
  const under = top + (heading === null ? 0 : HEADING);
  const head = { x: 0, y: top, width: PAGE_WIDTH, height: HEADING - 4 };
  const nodes: SceneNode[] = heading === null ? [] : [textIn(heading, head, { size: 10.5, bold: true })];
  for (const [i, cell] of cells.entries()) {
    const column = Math.floor(i / perColumn);
    const y = under + (i % perColumn) * cellHeight;
    nodes.push(...cell({ x: column * (width + BETWEEN), y, width, height: cellHeight }));
  }
  return { nodes, bottom: under + Math.min(perColumn, cells.length) * cellHeight + 10 };
}
