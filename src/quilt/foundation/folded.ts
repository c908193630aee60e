import type { FoundationArea } from "../../diagnostics/quilts/design-faults.ts";
import { foundationBlock, foundationOffGrid, gridSquares } from "../../diagnostics/quilts/foundation.ts";
import type { InDesign } from "../../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import * as q from "../../length/rational.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import { addExact, exactToNumber, rationalOfExact, turnPoint } from "../exact.ts";
import { sayLength } from "../say.ts";
import type { BlockDesign, Point } from "../types.ts";
import { letterOf } from "./pieced.ts";
import type { Node } from "./sequence.ts";
import { pictureKey, QUARTERS, type Quarter } from "./turned.ts";
import type { FoldedCell, FoldedPart } from "./types.ts";

/** Blocks that lie side by side on one piece of foundation. */
export interface Area {
  name: FoundationArea;
  blocks: { index: number; design: BlockDesign; turn: Quarter }[];
  count: number;
  /** The file names its block, so that it must have lines to fold. */
  asked: boolean;
  where: InDesign;
}

interface Box {
  design: number;
  unit: number;
  left: q.Rational;
  upper: q.Rational;
  right: q.Rational;
  lower: q.Rational;
}

interface AreaPatch {
  corners: Node[];
  fabric: string;
  up: number | null;
}

/** The units of an area as upright boxes, and its patches for the picture. */
function readArea(area: Area): { boxes: Box[]; patches: AreaPatch[] } {
  const boxes: Box[] = [];
  const patches: AreaPatch[] = [];
  let start: q.Rational = q.ZERO;
  for (const { index, design, turn } of area.blocks) {
    const shift = q.toNumber(start);
    const turned = (p: Point): Point => turnPoint(p, turn, design.across, design.down);
    for (const [unit, { x, y, across, down }] of design.units.entries()) {
      const corner = turned({ x, y });
      const far = turned({ x: addExact(x, across), y: addExact(y, down) });
      const [x1, y1, x2, y2] = [corner.x, corner.y, far.x, far.y].map(rationalOfExact);
      if (x1 === undefined || y1 === undefined || x2 === undefined || y2 === undefined) continue;
      const [left, right] = q.compare(x1, x2) < 0 ? [x1, x2] : [x2, x1];
      const [upper, lower] = q.compare(y1, y2) < 0 ? [y1, y2] : [y2, y1];
      boxes.push({ design: index, unit, left: q.add(left, start), right: q.add(right, start), upper, lower });
    }
    for (const patch of design.patches) {
      const corners = patch.outline.map((p): Node => {
        const { x, y } = turned(p);
        return [Math.round(exactToNumber(x) + shift), Math.round(exactToNumber(y))];
      });
      patches.push({ corners, fabric: patch.fabric, up: patch.up === null ? null : (patch.up + turn) % 360 });
    }
    const width = turn % 180 === 0 ? design.across : design.down;
    start = q.add(start, rationalOfExact(width));
  }
  return { boxes, patches };
}

/** Where lines run right across between the boxes: first edge, every line, last edge. */
function linesAcross(boxes: readonly Box[], from: "left" | "upper", to: "right" | "lower"): q.Rational[] {
  const sorted = [...boxes].sort((a, b) => q.compare(a[from], b[from]));
  const lines: q.Rational[] = [];
  let end: q.Rational | null = null;
  for (const box of sorted) {
    if (end === null || q.compare(box[from], end) >= 0) lines.push(box[from]);
    end = end === null || q.compare(box[to], end) > 0 ? box[to] : end;
  }
  return end === null ? [] : [...lines, end];
}

const hasRoots = ({ units, across, down }: BlockDesign): boolean =>
  [across, down, ...units.flatMap((unit) => [unit.x, unit.y, unit.across, unit.down])].some(
    ({ r }) => r !== 0,
  );

/**
 * The pieces of foundation a quilt takes when finished parts are laid on it edge to edge and its lines are folded.
 * Every part is its finished size and two seam allowances, so all of it must come to whole squares.
 * @param allowance seam allowance in squares
 */
export function foldedParts(
  areas: readonly Area[],
  grid: Ticks,
  allowance: number,
  ruler: Ruler,
  diagnostics: Diagnostic[],
): FoldedPart[] {
  const parts: FoldedPart[] = [];
  const known = new Map<string, FoldedPart>();
  const cells = new Map<string, number>();
  for (const area of areas) {
    const part = foldedPart(area, parts.length, { grid, allowance, ruler, cells }, diagnostics);
    if (part === null) continue;
    const { patches } = readArea(area);
    const [across, down] = [part.finished.across * grid, part.finished.down * grid];
    const key = pictureKey(patches, 0, across, down);
    const before = known.get(key);
    if (before !== undefined) before.count += area.count;
    else {
      parts.push(part);
      // A row is one row; a block stands for all its turns.
      const turns = area.blocks.length === 1 ? QUARTERS : [0];
      for (const turn of turns) known.set(pictureKey(patches, turn, across, down), part);
    }
  }
  return parts;
}

interface Folding {
  grid: Ticks;
  allowance: number;
  ruler: Ruler;
  /** Pictures of parts met so far, in every turn, with their number. */
  cells: Map<string, number>;
}

function foldedPart(
  area: Area,
  index: number,
  { grid, allowance, ruler, cells }: Folding,
  diagnostics: Diagnostic[],
): FoldedPart | null {
  const refuse = (why: "off-squares" | "no-line"): null => {
    diagnostics.push(foundationBlock(area.where, { why, area: area.name }));
    return null;
  };
  if (area.blocks.some(({ design }) => hasRoots(design))) return refuse("off-squares");
  const { boxes, patches } = readArea(area);
  const [xs, ys] = [linesAcross(boxes, "left", "right"), linesAcross(boxes, "upper", "lower")];
  if (xs.length < 3 && ys.length < 3) return area.asked ? refuse("no-line") : null;
  const widths = sizesIn(xs, "column", area, { grid, ruler }, diagnostics);
  const heights = sizesIn(ys, "row", area, { grid, ruler }, diagnostics);
  if (widths === null || heights === null) return null;
  const sum = (sizes: readonly number[]): number => sizes.reduce((all, size) => all + size, 0);
  const laid = (sizes: readonly number[]): number => sum(sizes) + 2 * allowance * sizes.length;
  return {
    kind: "folded",
    letter: letterOf(index),
    count: area.count,
    blocks: area.blocks.map(({ index: design, turn }) => ({ design, turn })),
    finished: { across: sum(widths), down: sum(heights) },
    cut: { across: laid(widths), down: laid(heights) },
    columns: widths,
    rows: heights,
    cells: cellsOf(xs.map(q.toNumber), ys.map(q.toNumber), patches, boxes, cells),
  };
}

/** Widths or heights in whole squares; null when one is not, which is told. */
function sizesIn(
  lines: readonly q.Rational[],
  what: "column" | "row",
  area: Area,
  { grid, ruler }: Pick<Folding, "grid" | "ruler">,
  diagnostics: Diagnostic[],
): number[] | null {
  const sizes = lines.slice(1).map((line, i) => q.sub(line, lines[i] ?? q.ZERO));
  const off = sizes.findIndex((size) => q.div(size, q.fromInteger(grid)).d !== 1n);
  if (off < 0) return sizes.map((size) => Number(q.div(size, q.fromInteger(grid)).n));
  const size = sizes[off] ?? q.ZERO;
  const below = q.floor(q.div(size, q.fromInteger(grid)));
  const fits = (below < 1n ? [1n] : [below, below + 1n]).map((times) =>
    sayLength(q.mul(q.rational(times), q.fromInteger(grid)), ruler),
  );
  const told = {
    of: what,
    area: area.name,
    number: off + 1,
    finished: sayLength(size, ruler),
    squares: gridSquares(size, grid),
  };
  diagnostics.push(foundationOffGrid(area.where, told, { sizes: [], lengths: fits, blocks: [] }, true));
  return null;
}

/** The number of a picture, the same in every turn. */
function likeOf(
  patches: readonly AreaPatch[],
  [left, upper]: Node,
  size: Node,
  cells: Map<string, number>,
): number {
  const tiles = patches.map((patch) => ({
    ...patch,
    corners: patch.corners.map(([x, y]): Node => [x - left, y - upper]),
  }));
  const key = pictureKey(tiles, 0, ...size);
  const before = cells.get(key);
  if (before !== undefined) return before;
  const like = 1 + Math.max(0, ...cells.values());
  for (const turn of QUARTERS) cells.set(pictureKey(tiles, turn, ...size), like);
  return like;
}

function cellsOf(
  xs: readonly number[],
  ys: readonly number[],
  patches: readonly AreaPatch[],
  boxes: readonly Box[],
  cells: Map<string, number>,
): FoldedCell[] {
  return ys.slice(1).flatMap((lower, row) =>
    xs.slice(1).map((right, column): FoldedCell => {
      const [left, upper] = [xs[column] ?? 0, ys[row] ?? 0];
      const within = (x: number, y: number): boolean =>
        x >= left - 1 && x <= right + 1 && y >= upper - 1 && y <= lower + 1;
      const inside = patches.filter(({ corners }) => corners.every(([x, y]) => within(x, y)));
      const own = boxes.filter(
        (box) =>
          within(q.toNumber(box.left), q.toNumber(box.upper)) &&
          within(q.toNumber(box.right), q.toNumber(box.lower)),
      );
      return {
        design: own[0]?.design ?? 0,
        units: own.map(({ unit }) => unit).sort((a, b) => a - b),
        like: likeOf(inside, [left, upper], [right - left, lower - upper], cells),
        x: left,
        y: upper,
        across: right - left,
        down: lower - upper,
        patches: inside.map(({ fabric, corners }) => ({
          fabric,
          corners: corners.map(([x, y]) => ({ x, y })),
        })),
      };
    }),
  );
}
