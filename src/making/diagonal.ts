import type { Ticks } from "../length/types.ts";
import { exactToNumber } from "../quilt/index.ts";
import type { QuiltTop } from "../quilt/types.ts";
import type { ReadTop } from "./read-top.ts";
import type { DiagonalRow, JoinName, JoinPart } from "./types.ts";

/*
 * Rows of blocks on point run from the upper left to the lower right; u runs along them, v from row to row. Each
 * ends in side triangles, as long on one edge as the next row needs, or in a corner.
 *
 *      ____________              side triangle left: its leg below, the row's lower edge a block longer
 *     /|   |   |  /              right: its leg above, the upper edge a block longer
 *    / |   |   | /
 *   /__|___|___|/
 */

/**
 * The rows of a top on point with their sizes.
 * @param seam seam allowance in ticks
 */
export function diagonalRows(top: QuiltTop, read: ReadTop, seam: Ticks): DiagonalRow[] {
  if (!read.tilted) return [];
  const { scale } = read;
  interface Row {
    from: number;
    to: number;
    high: number;
    names: { x: number; name: JoinName; part: JoinPart }[];
  }
  const rows = new Map<number, Row>();
  for (const { box, place, design, block, fabric } of read.cells) {
    if (place === "setting-triangle") continue;
    const row = rows.get(box.y) ?? { from: box.x, to: box.x, high: box.down, names: [] };
    rows.set(box.y, {
      from: Math.min(row.from, box.x),
      to: Math.max(row.to, box.x + box.across),
      high: box.down,
      names: [
        ...row.names,
        {
          x: box.x,
          name:
            design === null ? { is: "cloth", place } : { is: "block", name: top.designs[design]?.name ?? "" },
          part: block === null ? { of: "cloth", place, fabric } : { of: "block", block },
        },
      ],
    });
  }
  const [right, bottom] = edgesOf(top, scale);
  const sorted = [...rows].sort(([a], [b]) => a - b);
  return sorted.map(([v, { from, to, high, names: unordered }], i): DiagonalRow => {
    const names = [...unordered].sort((a, b) => a.x - b.x);
    // The quilt's edges in this frame: top u + v = 0, left u = v, right u - v = right, bottom u + v = bottom.
    const [meetsTop, meetsLeft] = [from + v === 0, from === v + high];
    const [meetsRight, meetsBottom] = [to - v === right, to + v + high === bottom];
    const cornerLeft = meetsTop && meetsLeft;
    const cornerRight = meetsRight && meetsBottom;
    const upperEdge = [
      !cornerLeft && meetsLeft ? from - high : from,
      !cornerRight && meetsBottom ? to + high : to,
    ] as const;
    const lowerEdge = [
      !cornerLeft && meetsTop ? from - high : from,
      !cornerRight && meetsRight ? to + high : to,
    ] as const;
    return {
      row: i + 1,
      blocks: names.length,
      from: names.map(({ name }) => name),
      takes: names.map(({ part }) => part),
      v,
      ends: [cornerLeft ? "corner" : "side", cornerRight ? "corner" : "side"],
      high: Math.round(high / scale) + 2 * seam,
      upper: rawEdge(upperEdge, lowerEdge, scale, seam),
      lower: rawEdge(lowerEdge, upperEdge, scale, seam),
      upperEdge,
      lowerEdge,
    };
  });
}

/** Right and bottom edge of the centre in the frame of its rows. */
function edgesOf({ centre }: QuiltTop, scale: number): [number, number] {
  const turned = (length: number): number => Math.round(length * Math.SQRT2 * scale);
  return [turned(exactToNumber(centre.across)), turned(exactToNumber(centre.down))];
}

/**
 * Tip to tip with the seam allowance on: a sharp tip of 45 degrees reaches (1 + root 2) seams beyond the finished
 * one, a blunt one of 135 degrees (root 2 - 1). Derived geometry.
 */
function rawEdge(
  edge: readonly [number, number],
  other: readonly [number, number],
  scale: number,
  seam: Ticks,
): Ticks {
  const sharp = [edge[0] < other[0], edge[1] > other[1]];
  const tips = sharp.reduce((sum, is) => sum + (is ? Math.SQRT2 + 1 : Math.SQRT2 - 1) * seam, 0);
  return Math.round((edge[1] - edge[0]) / scale + tips);
}

/**
 * What is wrong with diagonal rows: each edge must be as long as the one it is sewn to and lie against it, the first
 * and last row must leave room for a corner, and all together must fill the centre. Empty when all is right.
 */
export function diagonalFaults(rows: readonly DiagonalRow[], top: QuiltTop, scale: number): string[] {
  if (rows.length === 0) return [];
  const faults: string[] = [];
  const block = ([from, to]: readonly [number, number], { lowerEdge: [a, b] }: DiagonalRow): boolean =>
    to - from > 0 && b - a > 0;
  let area = 0;
  let high = 0;
  for (const [i, row] of rows.entries()) {
    const next = rows[i + 1];
    const { upperEdge, lowerEdge } = row;
    high = (lowerEdge[1] - lowerEdge[0] + upperEdge[1] - upperEdge[0]) / 2;
    if (!block(upperEdge, row)) faults.push(`diagonal row ${row.row} has an edge of nothing`);
    if (next !== undefined && (next.upperEdge[0] !== lowerEdge[0] || next.upperEdge[1] !== lowerEdge[1])) {
      faults.push(`diagonal rows ${row.row} and ${next.row} do not meet`);
    }
    area += high;
  }
  const first = rows[0];
  const side = first === undefined ? 0 : first.upperEdge[1] - first.upperEdge[0];
  // Four corners, halves of squares on their long side, are a block together.
  const [right, bottom] = edgesOf(top, scale);
  if (area * side + side * side !== (right * bottom) / 2)
    faults.push("the diagonal rows do not fill the centre");
  return faults;
}
