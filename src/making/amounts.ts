import type { UnitRecord } from "../cutlist/record/unit-record.ts";
import type { Ticks } from "../length/types.ts";
import type { QuiltTop } from "../quilt/index.ts";
import { exactToNumber } from "../quilt/index.ts";
import type { QuiltingSpec } from "../spec/quilt-types.ts";
import type { Joinings } from "./joins.ts";
import type { DiagonalRow, PressedSeam, QuiltingThread, SeamTotals, ThreadEstimate } from "./types.ts";

/**
 * Length of all piecing seams, from cut edge to cut edge, by where they are sewn.
 * @param joined.partial seams of blocks that `joins` does not hold
 * @param diagonal seams between blocks of a top on point, which `joins` does not hold, and its rows
 * @param seam seam allowance in ticks
 */
export function seamTotals(
  units: readonly UnitRecord[],
  { joins, partial }: Joinings,
  top: QuiltTop,
  diagonal: { seams: readonly PressedSeam[]; rows: readonly DiagonalRow[] },
  seam: Ticks,
): SeamTotals {
  let [seams, inUnits] = [0, 0];
  for (const { seams: own } of units) {
    for (const { length, count } of own) {
      seams += count;
      inUnits += length * count;
    }
  }
  const at = { unit: inUnits, block: 0, top: 0, border: 0 };
  for (const join of joins) {
    seams += join.seams * join.count;
    at[join.stage] += join.seamLength * join.seams * join.count;
  }
  for (const { design, seams: own, seamLength } of partial) {
    const count = top.designs[design]?.count ?? 0;
    seams += own * count;
    at.block += seamLength * count;
  }
  for (const { x1, y1, x2, y2 } of diagonal.seams) {
    seams += 1;
    at.top += Math.round(Math.hypot(x2 - x1, y2 - y1)) + 2 * seam;
  }
  // The corner triangles above the first and below the last row lie on no seam between blocks.
  for (const edge of [diagonal.rows[0]?.upper, diagonal.rows.at(-1)?.lower]) {
    if (edge === undefined) continue;
    seams += 1;
    at.top += edge;
  }
  for (const [index, { kind, across, down, side, end }] of top.borders.entries()) {
    const joined = kind !== "mitred";
    if (joined && !top.centre.onPoint) continue;
    // Four strips along what the border goes round; at its corners four slanting seams, or the ends sewn across.
    const [wide, high, width, height] = [across, down, side, end].map(exactToNumber);
    const round = 2 * ((wide ?? 0) + (high ?? 0)) - 4 * ((width ?? 0) + (height ?? 0));
    at.border += Math.ceil(round + 4 * (joined ? (width ?? 0) : Math.SQRT2 * (width ?? 0)));
    // Every block, strip and corner square of a border has one seam to what is there before it.
    const pieces = joined ? piecesOfBorder(top, index) : 8;
    seams += pieces;
    if (joined) at.border += (pieces - 4) * ((width ?? 0) + 2 * seam);
  }
  const { unit, block, border } = at;
  return {
    units: unit,
    blocks: block,
    top: at.top,
    borders: border,
    total: unit + block + at.top + border,
    seams,
  };
}

function piecesOfBorder(top: QuiltTop, border: number): number {
  const own = top.patches.filter(({ origin }) => origin.border === border);
  const blocks = new Set(own.flatMap(({ origin }) => (origin.block === null ? [] : [origin.block])));
  return blocks.size + own.filter(({ origin }) => origin.block === null).length;
}

/**
 * Lockstitch thread, needle and bobbin together: 2 + 2 T S to the length of seam, with two layers of quilting
 * cotton T = 0.02 in thick and S = 12.7 stitches to the inch (2 mm): 2.508. Formula: How to calculate the amount
 * of sewing thread consumption. Fifteen in a hundred more for ends and breaks: Thread Consumption Methods.
 */
const PER_SEAM = 2508;
const WASTE_PERCENT = 15;

export function threadFor(seams: Ticks): ThreadEstimate {
  const length = Math.ceil((seams * PER_SEAM * (100 + WASTE_PERCENT)) / 100_000);
  return { length, perSeam: PER_SEAM, wastePercent: WASTE_PERCENT };
}

/**
 * Thickness of top, wadding and backing under the foot, in thousandths of an inch, and stitches to the inch.
 * Common practice, no source: low loft wadding; 2.5 mm by machine and frame, eight to the inch by hand.
 */
const LAYERS = { thick: 80, machine: 10, hand: 8 } as const;

/**
 * Thread for quilting. Lines a distance apart run over the quilt: area / spacing, twice that when they cross
 * (derived geometry). By machine the lockstitch rule above, 2 + 2 T S; by hand one thread that runs through the layers
 * twice for each stitch, 1 + 2 T S (derived geometry).
 */
export function quiltingThread(
  { by, lines, spacing, told }: QuiltingSpec,
  across: Ticks,
  down: Ticks,
): QuiltingThread {
  const stitches = by === "hand" ? LAYERS.hand : LAYERS.machine;
  const perLine = (by === "hand" ? 1000 : 2000) + 2 * LAYERS.thick * stitches;
  const stitched = Math.ceil(((across * down) / spacing) * (lines === "crossed" ? 2 : 1));
  const length = Math.ceil((stitched * perLine * (100 + WASTE_PERCENT)) / 100_000);
  return { by, lines, spacing, told, stitched, length, perLine, wastePercent: WASTE_PERCENT };
}
