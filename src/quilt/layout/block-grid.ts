import type { CellPlace } from "../../diagnostics/quilts/design-faults.ts";
import {
  blockSizeMissing,
  cellEmpty,
  codeUnknown,
  codeUnused,
  gridOffMarks,
  rowsUneven,
  sizesDoNotAddUp,
  spanOffGrid,
  unitsOverlap,
} from "../../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import {
  add,
  compare,
  div,
  equal,
  floor,
  fromInteger,
  mul,
  ONE,
  type Rational,
  sub,
  toTicksExact,
  ZERO,
} from "../../length/rational.ts";
import type { BlockSpec, CellSpec, FractionTicks, QuiltSpec } from "../../spec/quilt-types.ts";
import { warnOfCrookedSeams } from "../crooked-seams.ts";
import { rationalOfFraction } from "../exact.ts";
import type { LaidBlock, LaidUnit } from "../laid-types.ts";
import { sayLength, sayUnlike } from "../say.ts";
import { asDesigned, asSewn, stops } from "../sizes/units-as-sewn.ts";
import { asQuarterTurn } from "../turning/whole-turns.ts";
import { checkUnit } from "./unit-of-cell.ts";

const COVERED = new Set(["-", "|", "."]);

/**
 * Puts the units of a block on its grid and checks that they fill it: every cell drawn or covered, no two
 * units on one cell, sizes that add up.
 * @returns null when an error leaves no block to work with; everything found is in `diagnostics`
 */
export function layOutBlock(block: BlockSpec, spec: QuiltSpec, diagnostics: Diagnostic[]): LaidBlock | null {
  const before = diagnostics.length;
  const failed = (): boolean => diagnostics.slice(before).some((each) => each.severity === "error");
  const rows = block.grid.length;
  const columns = block.grid[0]?.cells.length ?? 0;
  for (const row of block.grid) {
    if (row.cells.length !== columns) {
      diagnostics.push(
        rowsUneven(row, { why: "cells", block: block.name, cells: row.cells.length, first: columns }),
      );
    }
  }
  const across = sizesOf(block, "across", { columns, rows }, spec, diagnostics);
  const down = sizesOf(block, "down", { columns, rows }, spec, diagnostics);
  if (failed() || across === null || down === null) return null;
  const placed = placeUnits(block, spec, starts(across), starts(down), diagnostics);
  if (failed()) return null;
  const { units, factors } = onPrintedLines(block, placed, spec)
    ? asDesigned(placed, across, down)
    : asSewn(placed, across, down, spec);
  const larger = [...factors.across, ...factors.down].some((factor) => !equal(factor, ONE));
  warnOfCrookedSeams(block, units, spec, diagnostics);
  return {
    spec: block,
    across: total(across),
    down: total(down),
    columns,
    rows,
    units,
    ...(larger ? { sewn: { across: stops(across, factors.across), down: stops(down, factors.down) } } : {}),
  };
}

/** Whether a block is pieced on gridded foundation, whose lines are its seams. */
function onPrintedLines(block: BlockSpec, placed: readonly LaidUnit[], { foundation }: QuiltSpec): boolean {
  if (foundation?.way !== "pieced") return false;
  if (foundation.blocks !== null) return foundation.blocks.some(({ word }) => word === block.key);
  return placed.length > 1 || placed.some(({ kind, design }) => kind.patches(design).length > 1);
}

function total(sizes: readonly Rational[]): Rational {
  return sizes.reduce(add, ZERO);
}

/** Where each column begins, and where the last one ends. */
function starts(sizes: readonly Rational[]): Rational[] {
  const all = [ZERO];
  for (const size of sizes) all.push(add(all.at(-1) ?? ZERO, size));
  return all;
}

/** Finished sizes of the columns (or lines), from the block's size or written one by one. */
function sizesOf(
  block: BlockSpec,
  axis: "across" | "down",
  { columns, rows }: { columns: number; rows: number },
  spec: QuiltSpec,
  diagnostics: Diagnostic[],
): Rational[] | null {
  const count = axis === "across" ? columns : rows;
  const size = block[axis] === null ? null : rationalOfFraction(block[axis]);
  const written = writtenSizes(block, axis, columns, rows);
  const name = axis === "across" ? "columns" : "lines";
  const where = {
    path: `${block.path}.${written === null ? "size" : name}`,
    at: block.at,
  };
  if (written === null) {
    if (size === null) {
      diagnostics.push(blockSizeMissing(block, block.name));
      return null;
    }
    if (count === 0) return null;
    const cell = div(size, fromInteger(count));
    noteOffMarks({ block: block.name, axis, count, cell }, spec, where, diagnostics);
    return Array<Rational>(count).fill(cell);
  }
  const sizes = written.map(rationalOfFraction);
  if (sizes.length !== count) {
    diagnostics.push(
      sizesDoNotAddUp(where, { why: "sizes-count", block: block.name, axis, sizes: sizes.length, count }),
    );
    return null;
  }
  const sum = total(sizes);
  if (size !== null && !equal(sum, size)) {
    const [together, wanted] = sayUnlike(sum, size, spec.ruler);
    diagnostics.push(sizesDoNotAddUp(where, { why: "sum", block: block.name, axis, together, size: wanted }));
    return null;
  }
  const off = sizes.find((each) => !cutOnMark(each, spec));
  if (off !== undefined)
    noteOffMarks({ block: block.name, axis, count: 1, cell: off }, spec, where, diagnostics);
  return sizes;
}

/** Sizes written one by one; a square grid may leave the lines out when they are as the columns. */
function writtenSizes(
  block: BlockSpec,
  axis: "across" | "down",
  columns: number,
  rows: number,
): readonly FractionTicks[] | null {
  if (axis === "across") return block.columns;
  if (block.lines !== null) return block.lines;
  return block.down === null && columns === rows ? block.columns : null;
}

function cutSizeOf(finished: Rational, spec: QuiltSpec): Rational {
  return add(finished, fromInteger(2 * spec.seam));
}

function cutOnMark(finished: Rational, spec: QuiltSpec): boolean {
  const cut = toTicksExact(cutSizeOf(finished, spec));
  return cut !== null && cut % spec.ruler.mark === 0;
}

/** Tells when cells do not come out on the marks, with the nearest sizes of the whole that do. */
function noteOffMarks(
  { block, axis, count, cell }: { block: string; axis: "across" | "down"; count: number; cell: Rational },
  spec: QuiltSpec,
  where: { path: string; at: BlockSpec["at"] },
  diagnostics: Diagnostic[],
): void {
  if (cutOnMark(cell, spec)) return;
  const mark = fromInteger(spec.ruler.mark);
  const marks = fromInteger(Number(floor(div(cutSizeOf(cell, spec), mark))));
  const seams = fromInteger(2 * spec.seam);
  const whole = (n: Rational): Rational => mul(sub(mul(n, mark), seams), fromInteger(count));
  const [below, above] = [whole(marks), whole(add(marks, fromInteger(1)))];
  const smallest = compare(below, ZERO) > 0 ? below : above;
  diagnostics.push(
    gridOffMarks(where, {
      block,
      axis,
      count,
      whole: sayLength(mul(cell, fromInteger(count)), spec.ruler),
      cell: sayLength(cell, spec.ruler),
      mark: sayLength(mark, spec.ruler),
      below: sayLength(smallest, spec.ruler),
      above: sayLength(above, spec.ruler),
    }),
  );
}

interface Placing {
  block: BlockSpec;
  spec: QuiltSpec;
  diagnostics: Diagnostic[];
  /** Which unit covers a cell, by its code; empty where none does yet. */
  cover: string[][];
}

function markAt(block: BlockSpec, row: number, column: number): string {
  return block.grid[row]?.cells[column]?.code ?? "";
}

function cellAt(row: number, column: number): CellPlace {
  return { line: row + 1, cell: column + 1 };
}

function placeUnits(
  block: BlockSpec,
  spec: QuiltSpec,
  xs: readonly Rational[],
  ys: readonly Rational[],
  diagnostics: Diagnostic[],
): LaidUnit[] {
  const placing: Placing = {
    block,
    spec,
    diagnostics,
    cover: block.grid.map((row) => row.cells.map(() => "")),
  };
  const cells = new Map(block.cells.map((cell) => [cell.code, cell]));
  const used = new Set<string>();
  const unknown = new Set<string>();
  const units: LaidUnit[] = [];
  block.grid.forEach((line, row) => {
    line.cells.forEach((drawn, column) => {
      if (COVERED.has(drawn.code)) return;
      const cell = cells.get(drawn.code);
      if (cell === undefined) {
        claim(placing, drawn.code, { row, column, columns: 1, rows: 1 });
        if (!unknown.has(drawn.code)) diagnostics.push(codeUnknown(line, drawn.code, [...cells.keys()]));
        unknown.add(drawn.code);
        return;
      }
      used.add(drawn.code);
      const turn = asQuarterTurn(cell.turn + drawn.turn);
      const span = spanOf(block, cell, turn, row, column);
      if (!claim(placing, drawn.code, { row, column, ...span })) return;
      const [x, y] = [xs[column] ?? ZERO, ys[row] ?? ZERO];
      const across = sub(xs[column + span.columns] ?? ZERO, x);
      const down = sub(ys[row + span.rows] ?? ZERO, y);
      const [wide, high] = turn % 180 === 0 ? [across, down] : [down, across];
      const checked = checkUnit(cell, wide, high, spec, diagnostics);
      if (checked !== null) units.push({ ...checked, cell, turn, column, row, ...span, x, y, across, down });
    });
  });
  reportGaps(placing);
  for (const cell of block.cells) {
    if (!used.has(cell.code)) diagnostics.push(codeUnused(cell, cell.code, block.name));
  }
  return units;
}

/** How many cells a unit covers: as written (turned with it), or as far as the marks beside and below it run. */
function spanOf(
  block: BlockSpec,
  cell: CellSpec,
  turn: number,
  row: number,
  column: number,
): { columns: number; rows: number } {
  if (cell.span !== null) {
    const { columns, rows } = cell.span;
    return turn % 180 === 0 ? { columns, rows } : { columns: rows, rows: columns };
  }
  let columns = 1;
  while (markAt(block, row, column + columns) === "-") columns += 1;
  let rows = 1;
  while (markAt(block, row + rows, column) === "|") rows += 1;
  return { columns, rows };
}

/** Takes the cells of a unit; false when it runs off the grid or onto another unit. */
function claim(
  placing: Placing,
  code: string,
  { row, column, columns, rows }: Pick<LaidUnit, "row" | "column" | "columns" | "rows">,
): boolean {
  const { block, cover, diagnostics } = placing;
  const line = block.grid[row] ?? block;
  if (row + rows > cover.length || column + columns > (cover[row]?.length ?? 0)) {
    diagnostics.push(spanOffGrid(line, code, cellAt(row, column), { columns, rows }));
    return false;
  }
  for (let r = row; r < row + rows; r += 1) {
    for (let c = column; c < column + columns; c += 1) {
      const mark = markAt(block, r, c);
      const own = r === row && c === column;
      const other = cover[r]?.[c] || (own || COVERED.has(mark) ? "" : mark);
      if (other !== "") {
        diagnostics.push(unitsOverlap(line, code, other, cellAt(r, c)));
        return false;
      }
    }
  }
  for (let r = row; r < row + rows; r += 1) {
    for (let c = column; c < column + columns; c += 1) (cover[r] ?? [])[c] = code;
  }
  return true;
}

function reportGaps({ block, cover, diagnostics }: Placing): void {
  // After an overlap or a span off the grid the gaps it leaves would only repeat it.
  if (diagnostics.some((each) => each.code === "UNITS-OVERLAP" || each.code === "SPAN-OFF-GRID")) return;
  block.grid.forEach((line, row) => {
    line.cells.forEach((drawn, column) => {
      if (COVERED.has(drawn.code) && cover[row]?.[column] === "") {
        diagnostics.push(cellEmpty(line, block.name, cellAt(row, column), drawn.code));
      }
    });
  });
}
