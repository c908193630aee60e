import type { NestedCut } from "../../cutlist/types.ts";
import type { PackingItem, SegmentUse, StackUse, StripColumn } from "../../engine/types.ts";
import type { Ticks } from "../../length/types.ts";
import type { Part } from "../types.ts";
import { buildRun } from "./build-run.ts";
import { byLikeness, cutInto, pieceLeaf, wasteLeaf } from "./parts.ts";

/** What is laid: its size, and how it stands in strips where it is a shape. */
export type LaidItem = Pick<PackingItem, "across" | "along"> & {
  stands?: Pick<NestedCut, "across" | "along">;
};

/** What the builders need besides the layout: the items, and whether the layout's axes are swapped. */
export interface Frame {
  items: readonly LaidItem[];
  /** True for a sheet whose strips run along it: parts are built lying down and transposed afterwards. */
  swapped: boolean;
  /** Offcuts at least this big both ways are kept. */
  keepFrom: Ticks;
  /** Between two marks of the ruler. Default: every tick is one. */
  mark?: Ticks;
  /** Longest cut along a stacked segment. Default: any. */
  reach?: Ticks;
}

interface Cell {
  across: Ticks;
  along: Ticks;
  use: StackUse;
}

/** Equal segments of one strip that are cut once more, parallel to it. */
interface Stack {
  cells: Cell[];
  across: Ticks;
  count: number;
}

/**
 * One strip with its subcuts, at the origin. Pieces as high as the strip come first, widest first; then
 * stacked segments; then, by height, runs of pieces that are trimmed. A run is cut off in one block,
 * trimmed once and then subcut: fewer cuts than trimming each piece, and one long offcut. For the last run the
 * whole rest of the strip is trimmed, its end too, unless that would waste the end (`trimsEnd`).
 *
 *     +-----+-----+---+---+----------+
 *     |     |     | D | E |   trim   |
 *     |  A  |  A  +---+---+--+--+----+
 *     |     |     | D | F |C |C | end|
 *     +-----+-----+---+---+--+--+----+
 */
export function buildStrip(column: StripColumn, run: Ticks, frame: Frame): Part {
  const height = column.along;
  const whole: Part[] = [];
  const stacked = new Map<string, Stack>();
  const trimmed = new Map<Ticks, Part[]>();
  for (const part of buildRuns(column, run, frame)) {
    if (part.along === height) whole.push(part);
    else trimmed.set(part.along, [...(trimmed.get(part.along) ?? []), part]);
  }
  for (const { across, count, ...segment } of column.segments) {
    if (standsIn(frame, segment.stack)) continue;
    const cells = cellsOf(segment.stack, frame);
    const [only] = cells;
    // A segment wider than its only piece leaves cloth that belongs to the strip's end.
    if (cells.length !== 1 || only === undefined) {
      const key = JSON.stringify([across, cells]);
      const before = stacked.get(key)?.count ?? 0;
      stacked.set(key, { cells, across, count: before + count });
      continue;
    }
    const leaves = Array.from({ length: count }, () => leafOf(only));
    if (only.along === height) whole.push(...leaves);
    else trimmed.set(only.along, [...(trimmed.get(only.along) ?? []), ...leaves]);
  }
  const stacks = [...stacked.values()].flatMap((stack) => buildStacks(stack, height, frame.reach));
  const runs = [...trimmed].sort(([a], [b]) => b - a).map(([, pieces]) => pieces);
  const last = runs.at(-1) ?? [];
  const parts = [...whole.sort(widestFirst), ...stacks.sort(widestFirst)];
  const end = run - widthOf(parts) - widthOf(runs.flat());
  const trimmedToo = trimsEnd(last, end, height, frame.keepFrom);
  for (const pieces of runs)
    parts.push(buildTrimmedRun(pieces, pieces === last && trimmedToo ? end : 0, height));
  if (end > 0 && !trimmedToo) parts.push(wasteLeaf("strip-end", end, height));
  return cutInto("strip", "along", parts);
}

function standsIn({ items }: Frame, [first]: readonly StackUse[]): boolean {
  return first !== undefined && items[first.item]?.stands !== undefined;
}

/**
 * The runs of shapes in a strip. Each is cut off on a mark of the ruler as far as what is left of the strip allows, those
 * that must be cut off to be trimmed before all others.
 */
function buildRuns({ segments, along: height, end }: StripColumn, run: Ticks, frame: Frame): Part[] {
  const { mark = 1, items, swapped } = frame;
  const used = segments.reduce((sum, { across, count }) => sum + across * count, 0);
  let room = end === undefined ? run - used : 0;
  const runs = segments.flatMap(({ across, count, stack: [first] }) => {
    const stands = items[first?.item ?? -1]?.stands;
    if (first === undefined || stands === undefined) return [];
    return Array.from({ length: count }, () => buildRun(stands, first, across, height, swapped));
  });
  return runs
    .sort((a, b) => Number(a.along === height) - Number(b.along === height))
    .map((part) => {
      const more = (mark - (part.across % mark)) % mark;
      if (more > room) return part;
      room -= more;
      return { ...part, across: part.across + more };
    });
}

/**
 * Whether the end of a strip is trimmed together with the run of pieces before it, in one cut. Not where the end is
 * the longer of the two, nor where it is worth keeping as high as the strip: if it would not be when trimmed, or if
 * that saves no cut because the run is one piece.
 */
function trimsEnd(run: readonly Part[], end: Ticks, height: Ticks, keepFrom: Ticks): boolean {
  const [piece] = run;
  if (piece === undefined || end <= 0 || end > widthOf(run)) return false;
  if (Math.min(end, height) < keepFrom) return true;
  return run.length > 1 && piece.along >= keepFrom;
}

function widthOf(parts: readonly Part[]): Ticks {
  return parts.reduce((sum, part) => sum + part.across, 0);
}

/** A lengthwise band: its pieces one below the other, what is left of it last. */
export function buildBand(band: SegmentUse, length: Ticks, frame: Frame): Part {
  const inner = rowsOf({ cells: cellsOf(band.stack, frame), across: band.across, count: 1 });
  const end = length - inner.reduce((sum, part) => sum + part.along, 0);
  if (end > 0) inner.push(wasteLeaf("strip-end", band.across, end));
  return cutInto("band", "across", inner);
}

/**
 * Equal stacked segments. Where each would need trimming they are cut off as one block and taken apart row
 * by row, so that a trim is one cut and one offcut; else each is cut by itself.
 */
function buildStacks(stack: Stack, height: Ticks, reach = Number.MAX_SAFE_INTEGER): Part[] {
  const high = stack.cells.reduce((sum, cell) => sum + cell.along, 0);
  const trims = high < height || stack.cells.some((cell) => cell.across < stack.across);
  // A block is cut along in one placing of the ruler.
  const most = Math.max(1, Math.floor(reach / stack.across));
  if (trims && stack.count > most)
    return [most, stack.count - most].flatMap((count) => buildStacks({ ...stack, count }, height, reach));
  const times = trims ? 1 : stack.count;
  const rows = rowsOf({ ...stack, count: trims ? stack.count : 1 });
  if (high < height) rows.push(wasteLeaf("trimming", rows[0]?.across ?? stack.across, height - high));
  const [only] = rows;
  const segment = rows.length === 1 && only !== undefined ? only : cutInto("segment", "across", rows);
  return Array.from({ length: times }, () => segment);
}

/** The rows of a block of equal stacks, widest piece first; what a row leaves over lies at its end. */
function rowsOf({ cells, across, count }: Stack): Part[] {
  return [...cells]
    .sort((a, b) => b.across - a.across || b.along - a.along || a.use.item - b.use.item)
    .map((cell) => {
      const row = Array.from({ length: count }, () => leafOf(cell));
      const rest = (across - cell.across) * count;
      if (rest > 0) row.push(wasteLeaf("trimming", rest, cell.along));
      const [only] = row;
      return row.length === 1 && only !== undefined ? only : cutInto("segment", "along", row);
    });
}

/** Pieces of one height, cut as a block off a higher strip, and the strip's end where it is trimmed with them. */
function buildTrimmedRun(pieces: readonly Part[], end: Ticks, height: Ticks): Part {
  const sorted = [...pieces].sort(widestFirst);
  const [first] = sorted;
  if (end > 0) sorted.push(wasteLeaf("strip-end", end, first?.along ?? height));
  const run = sorted.length === 1 && first !== undefined ? first : cutInto("segment", "along", sorted);
  return cutInto("segment", "across", [run, wasteLeaf("trimming", run.across, height - run.along)]);
}

function cellsOf(stack: readonly StackUse[], { items, swapped }: Frame): Cell[] {
  return stack.flatMap((use) => {
    const item = items[use.item];
    if (item === undefined) throw new Error(`layout names item ${use.item}, which does not exist`);
    const lying = use.turned !== swapped;
    const cell: Cell = {
      across: lying ? item.along : item.across,
      along: lying ? item.across : item.along,
      use,
    };
    return Array.from({ length: use.count }, () => cell);
  });
}

/** `turned` speaks of the cloth, so it holds in a swapped frame as well. A square is never turned. */
function leafOf({ across, along, use }: Cell): Part {
  return pieceLeaf(use.item, across, along, use.turned && across !== along);
}

function widestFirst(a: Part, b: Part): number {
  return b.across - a.across || b.along - a.along || firstPiece(a) - firstPiece(b) || byLikeness(a, b);
}

function firstPiece(part: Part): number {
  return part.piece ?? Math.min(...part.parts.map(firstPiece), Number.MAX_SAFE_INTEGER);
}
