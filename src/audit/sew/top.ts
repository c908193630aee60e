import type { BorderName } from "../../diagnostics/purposes.ts";
import type { BorderRound } from "../../making/types.ts";
import type { TopBorder } from "../../quilt/types.ts";
import { said } from "./compare.ts";
import { lengthOf } from "./designed.ts";
import type { Workroom } from "./types.ts";

/*
 * Rows of a top on point, and borders from the inside out: strips as long as the edges they meet, and each border
 * taking the top from the size before to the size after.
 */

const NEAR_TOP = 3;
const near = (a: number, b: number): boolean => Math.abs(a - b) <= NEAR_TOP;

/** A sharp tip of 45 degrees reaches (1 + root 2) seams beyond the finished one, a blunt one (root 2 - 1). */
export function checkDiagonal(room: Workroom): void {
  const { making, top, seam, faults } = room;
  const rows = making.diagonal;
  if (!top.centre.onPoint) {
    if (rows.length > 0) faults.push("diagonal rows are told for a top that is not on point");
    return;
  }
  const blocks = top.blocks.filter(({ place }) => place === "block").length;
  const told = rows.reduce((sum, row) => sum + row.blocks, 0);
  const plain = new Set(top.blocks.map(({ place }) => place)).size;
  // Sashes and squares lie in rows of their own, and a sash of plain cloth is no block.
  const sashed = top.patches.some(({ origin }) => origin.place === "sash" || origin.place === "cornerstone");
  if (rows.length > 0 && plain === 1 && !sashed && told !== blocks)
    faults.push(`diagonal rows hold ${told} blocks, and the top has ${blocks}`);
  rows.forEach((row, i) => {
    const next = rows[i + 1];
    const where = `diagonal row ${row.row}`;
    if (row.from.length !== row.blocks)
      faults.push(`${where}: ${row.blocks} blocks, and ${row.from.length} are named`);
    // Tips differ by their seam allowances; the seams between them must be one.
    if (next !== undefined && row.lowerEdge.some((end, side) => end !== next.upperEdge[side]))
      faults.push(`${where} and ${next.row}: unequal edges, ${said(row.lower)} to ${said(next.upper)}`);
    const tips = (edge: readonly [number, number], other: readonly [number, number]): number =>
      [edge[0] < other[0], edge[1] > other[1]].reduce(
        (sum, sharp) => sum + (sharp ? Math.SQRT2 + 1 : Math.SQRT2 - 1) * seam,
        0,
      );
    const raw = (edge: readonly [number, number], other: readonly [number, number]): number =>
      (edge[1] - edge[0]) / making.scale + tips(edge, other);
    if (
      !near(row.upper, raw(row.upperEdge, row.lowerEdge)) ||
      !near(row.lower, raw(row.lowerEdge, row.upperEdge))
    )
      faults.push(`${where}: its edges are not as long as told`);
  });
}

/** Sews the strips of a border on in order; the size of the top once they are on. */
function sewOn(
  { kind, strips, before, extra, pieced, fit }: BorderRound,
  designed: TopBorder | undefined,
  where: BorderName,
  { seam, mark, faults }: Workroom,
): { across: number; down: number } {
  const size = { across: before.across, down: before.down };
  // A fitted border is cut in one width all round, on a mark of the ruler, and trimmed when it is on.
  const oneWidth =
    designed === undefined || !fit
      ? null
      : Math.ceil((Math.max(lengthOf(designed.side), lengthOf(designed.end)) + 2 * seam - NEAR_TOP) / mark) *
          mark -
        2 * seam;
  for (const { sides, sewn, cut, width, cornerstones } of strips) {
    const upright = sides[0] === "left";
    const wide =
      oneWidth ??
      (designed === undefined ? width - 2 * seam : lengthOf(upright ? designed.side : designed.end));
    if (!near(width, wide + 2 * seam))
      faults.push(`${where}: strips are told ${said(width)} wide, and are ${said(wide + 2 * seam)}`);
    const edge =
      kind === "mitred" ? (upright ? before.down : before.across) : upright ? size.down : size.across;
    const ends = strips.find(({ sides: [one] }) => one !== sides[0])?.width ?? 0;
    const long = cornerstones ? sewn + 2 * (ends - 2 * seam) : sewn;
    if (!near(long, edge))
      faults.push(`${where}: a strip of ${said(long)} is sewn to an edge of ${said(edge)}`);
    if (!pieced && cut < sewn + extra - NEAR_TOP)
      faults.push(`${where}: a strip is cut ${said(cut)} long, shorter than ${said(sewn + extra)}`);
    if (upright) size.across += 2 * wide;
    else size.down += 2 * wide;
  }
  return size;
}

/** Borders, each sewn on in order. */
export function checkBorders(room: Workroom): void {
  const { making, top, seam, faults } = room;
  let across = lengthOf(top.centre.across) + 2 * seam;
  let down = lengthOf(top.centre.down) + 2 * seam;
  if (making.borders.length !== top.borders.length)
    faults.push(`${top.borders.length} borders are designed, and ${making.borders.length} told`);
  making.borders.forEach((round, index) => {
    const { name, before, after, fit } = round;
    const where = name === "" ? `border ${index + 1}` : name;
    if (!near(before.across, across) || !near(before.down, down))
      faults.push(
        `${where}: it is sewn to a top of ${said(before.across)} x ${said(before.down)}, which is ${said(across)} x ${said(down)}`,
      );
    const size = sewOn(round, top.borders[index], where, room);
    if (fit && size.across > after.across - NEAR_TOP) size.across = after.across;
    if (fit && size.down > after.down - NEAR_TOP) size.down = after.down;
    if (!near(size.across, after.across) || !near(size.down, after.down))
      faults.push(
        `${where}: the top comes out ${said(size.across)} x ${said(size.down)}, not ${said(after.across)} x ${said(after.down)}`,
      );
    across = after.across;
    down = after.down;
  });
  const { square } = making;
  if (!near(across, square.across) || !near(down, square.down))
    faults.push(
      `the finished top is told as ${said(square.across)} x ${said(square.down)}, and is ${said(across)} x ${said(down)}`,
    );
  if (
    !near(lengthOf(top.across) + 2 * seam, square.across) ||
    !near(lengthOf(top.down) + 2 * seam, square.down)
  )
    faults.push("the finished top is not of the size designed");
}
