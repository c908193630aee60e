/** An upright rectangle in whole numbers. */
export interface Box {
  x: number;
  y: number;
  across: number;
  down: number;
}

export interface Cell {
  box: Box;
  /** What fills it, as the caller counts. */
  ref: number;
}

/** How a tiling is sewn: parts side by side or one below another, down to single cells. */
export type Tree =
  | { kind: "cell"; box: Box; ref: number }
  | { kind: "join"; box: Box; way: "across" | "down"; parts: Tree[] }
  /** Cells that no straight line divides: they need a seam sewn in part first. */
  | { kind: "whorl"; box: Box; cells: Cell[] };

/** Smallest rectangle around all. */
export function boxAround(boxes: readonly Box[]): Box {
  const x = Math.min(...boxes.map((box) => box.x));
  const y = Math.min(...boxes.map((box) => box.y));
  const right = Math.max(...boxes.map((box) => box.x + box.across));
  const bottom = Math.max(...boxes.map((box) => box.y + box.down));
  return { x, y, across: right - x, down: bottom - y };
}

/** The box inside its frame of `across` x `down` when the frame is turned clockwise. */
export function turnBox(box: Box, turn: number, across: number, down: number): Box {
  switch (turn) {
    case 90:
      return { x: down - box.y - box.down, y: box.x, across: box.down, down: box.across };
    case 180:
      return { ...box, x: across - box.x - box.across, y: down - box.y - box.down };
    case 270:
      return { x: box.y, y: across - box.x - box.across, across: box.down, down: box.across };
    default:
      return box;
  }
}

/**
 * Divides a tiling into rows wherever a line runs right across it, otherwise into columns, and each part
 * likewise: so the longest straight seams come last. `cells` must tile their bounding box.
 */
export function sewingTree(cells: readonly Cell[], last: "across" | "down" = "down"): Tree {
  const box = boxAround(cells.map((cell) => cell.box));
  const [only] = cells;
  if (only !== undefined && cells.length === 1) return { kind: "cell", box: only.box, ref: only.ref };
  const other = last === "down" ? "across" : "down";
  for (const way of [last, other] as const) {
    const parts = divide(cells, way);
    if (parts.length > 1) return { kind: "join", box, way, parts: parts.map((part) => sewingTree(part)) };
  }
  return { kind: "whorl", box, cells: [...cells] };
}

/** Groups of cells between the lines that cut none of them, in order. */
function divide(cells: readonly Cell[], way: "across" | "down"): Cell[][] {
  const [at, size] = way === "down" ? (["y", "down"] as const) : (["x", "across"] as const);
  const sorted = [...cells].sort((a, b) => a.box[at] - b.box[at] || a.ref - b.ref);
  const groups: Cell[][] = [];
  let end = Number.NEGATIVE_INFINITY;
  for (const cell of sorted) {
    if (cell.box[at] >= end) groups.push([]);
    groups.at(-1)?.push(cell);
    end = Math.max(end, cell.box[at] + cell.box[size]);
  }
  return groups;
}
