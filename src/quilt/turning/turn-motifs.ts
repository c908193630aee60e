import {
  add,
  compare,
  div,
  equal,
  fromInteger,
  type Rational,
  sub,
  toNumber,
  ZERO,
} from "../../length/rational.ts";
import type { BlockSpec, CellSpec, DrawnCell, QuarterTurn, QuiltSpec } from "../../spec/quilt-types.ts";
import { exactOfRational, fractionOfRational, rationalOfFraction } from "../exact.ts";
import type { LaidBlock, LaidUnit } from "../laid-types.ts";
import { layOutBlock } from "../layout/block-grid.ts";
import type { Exact } from "../types.ts";
import { motifParts, type Part } from "./find-motifs.ts";
import { laidAlikeAfter, lookOf, QUARTERS, sketchOf, wholeTurn } from "./looks.ts";

/** Where one motif stands in its block. */
export interface MotifPlace {
  row: number;
  column: number;
  /** From the middle of the block, in motifs. */
  x: number;
  y: number;
  /** As the file has it. */
  turn: QuarterTurn;
  /** The turns that fit its place: all four of a square, two of an oblong. */
  fits: QuarterTurn[];
}

/** The motifs of one block. Plain data. */
export interface Motifs {
  /** The block's word in the rows, and the name printed. */
  block: string;
  name: string;
  /** In reading order. */
  places: MotifPlace[];
  across: Exact;
  down: Exact;
  /** Turned by quarters; else by halves only. */
  square: boolean;
  /** The quarter-turn that shows a motif's mirror image, left for right; null when none does. */
  mirror: QuarterTurn | null;
}

/** A block as it is written with its motifs turned. */
export interface TurnedBlock {
  block: BlockSpec;
  /** Codes whose `span` is left out: the grid says how far their cells reach. */
  withoutSpan: string[];
}

/** The motifs of a block that can be turned; null when it has none, or cannot be laid out. */
export function motifsOf(block: BlockSpec, spec: QuiltSpec): Motifs | null {
  const laid = layOutBlock(block, spec, []);
  const found = laid === null ? null : motifParts(laid, spec);
  if (laid === null || found === null) return null;
  const { parts, square, mirror } = found;
  const [first] = parts;
  if (first === undefined) return null;
  const middle = { x: toNumber(laid.across) / 2, y: toNumber(laid.down) / 2 };
  const [wide, high] = [toNumber(first.across), toNumber(first.down)];
  const centres = parts.map(({ x, y, across, down }) => ({
    x: (toNumber(x) + toNumber(across) / 2 - middle.x) / wide,
    y: (toNumber(y) + toNumber(down) / 2 - middle.y) / high,
  }));
  const rank = (all: readonly number[], one: number): number =>
    [...new Set(all)].filter((each) => each < one).length;
  const [xs, ys] = [centres.map(({ x }) => x), centres.map(({ y }) => y)];
  const places = parts.map(({ turn }, i): MotifPlace => {
    const { x, y } = centres[i] ?? { x: 0, y: 0 };
    const fits = square ? [...QUARTERS] : QUARTERS.filter((each) => (each - turn) % 180 === 0);
    return { row: rank(ys, y), column: rank(xs, x), x, y, turn, fits };
  });
  const size = { across: exactOfRational(first.across), down: exactOfRational(first.down) };
  return { block: block.key, name: block.name, places, ...size, square, mirror };
}

/** A unit in its block, and whether it lies otherwise than in the file. */
type Moved = Pick<LaidUnit, "cell" | "turn" | "x" | "y" | "across" | "down"> & { by: QuarterTurn };

/** The units of a part turned clockwise in their place. */
function turnedUnits({ x, y, across, down, units }: Part, by: QuarterTurn): Moved[] {
  return units.map((unit): Moved => {
    const [left, upper] = [sub(unit.x, x), sub(unit.y, y)];
    const [right, lower] = [sub(across, add(left, unit.across)), sub(down, add(upper, unit.down))];
    const quarter = by === 90 || by === 270;
    const place = {
      0: { x: left, y: upper },
      90: { x: lower, y: left },
      180: { x: right, y: lower },
      270: { x: upper, y: right },
    }[by];
    return {
      cell: unit.cell,
      turn: wholeTurn(unit.turn + by),
      x: add(x, place.x),
      y: add(y, place.y),
      across: quarter ? unit.down : unit.across,
      down: quarter ? unit.across : unit.down,
      by,
    };
  });
}

function edges(units: readonly Moved[], axis: "x" | "y"): Rational[] {
  const sorted = units.map((unit) => unit[axis]).sort((a, b) => compare(a, b));
  return sorted.filter((edge, i) => i === 0 || !equal(edge, sorted[i - 1] ?? edge));
}

const isAmong = (place: Rational, lines: readonly Rational[]): boolean =>
  lines.some((line) => equal(line, place));

/** Where the columns or lines of the file's grid begin. */
function linesInFile(laid: LaidBlock, axis: "x" | "y"): Rational[] {
  const { columns, lines, grid } = laid.spec;
  const count = axis === "x" ? laid.columns : laid.rows;
  const whole = axis === "x" ? laid.across : laid.down;
  const written =
    axis === "x"
      ? columns
      : (lines ?? (laid.spec.down === null && laid.columns === grid.length ? columns : null));
  const starts = [ZERO];
  for (let i = 1; i < count; i += 1) {
    const size = written?.[i - 1];
    const step = size === undefined ? div(whole, fromInteger(count)) : rationalOfFraction(size);
    starts.push(add(starts.at(-1) ?? ZERO, step));
  }
  return starts;
}

/** The columns (or lines) that a grid needs: the file's where they serve, else one for every edge. */
function gridLines(
  laid: LaidBlock,
  units: readonly Moved[],
  axis: "x" | "y",
): { starts: Rational[]; own: boolean } {
  const whole = axis === "x" ? laid.across : laid.down;
  const filed = linesInFile(laid, axis);
  const ends = [...filed, whole];
  const size = axis === "x" ? "across" : "down";
  const serve = units.every(
    (unit) => isAmong(unit[axis], filed) && isAmong(add(unit[axis], unit[size]), ends),
  );
  return serve ? { starts: filed, own: false } : { starts: edges(units, axis), own: true };
}

const sizesBetween = (starts: readonly Rational[], whole: Rational): Rational[] =>
  starts.map((start, i) => sub(starts[i + 1] ?? whole, start));

/** The least turn after a code's own that shows the unit as it is to be seen. */
function drawnTurn({ cell, turn, by }: Moved, unit: LaidUnit, laid: LaidBlock, spec: QuiltSpec): QuarterTurn {
  const drawn = wholeTurn(turn - cell.turn);
  // What is not turned is left as the maker wrote it.
  if (by === 0) return drawn;
  const middle = {
    x: toNumber(unit.x) + toNumber(unit.across) / 2,
    y: toNumber(unit.y) + toNumber(unit.down) / 2,
  };
  const sketch = sketchOf([unit], middle, laid, spec, ["unit"]);
  const look = lookOf(sketch, by);
  const shown = (least: QuarterTurn): QuarterTurn => wholeTurn(least + cell.turn - unit.turn);
  return QUARTERS.find((least) => lookOf(sketch, shown(least)) === look) ?? drawn;
}

/**
 * A block with its motifs turned, drawn on a grid of its own where the file's does not serve.
 * @param turns one for each motif, in reading order, among those that fit it
 */
export function turnMotifs(block: BlockSpec, spec: QuiltSpec, turns: readonly QuarterTurn[]): TurnedBlock {
  const laid = layOutBlock(block, spec, []);
  const found = laid === null ? null : motifParts(laid, spec);
  if (laid === null || found === null) return { block, withoutSpan: [] };
  const inPart = new Set(found.parts.flatMap(({ units }) => units));
  const origins = [
    ...found.parts.flatMap(({ units }) => units),
    ...laid.units.filter((unit) => !inPart.has(unit)),
  ];
  const moved: Moved[] = [
    ...found.parts.flatMap((part, i) => turnedUnits(part, wholeTurn((turns[i] ?? part.turn) - part.turn))),
    ...laid.units.filter((unit) => !inPart.has(unit)).map((unit) => ({ ...unit, by: 0 as const })),
  ];
  const across = gridLines(laid, moved, "x");
  const down = gridLines(laid, moved, "y");
  const drawn: DrawnCell[][] = down.starts.map(() =>
    across.starts.map(() => ({ code: ".", turn: 0, colourway: "" })),
  );
  const withoutSpan = new Set<string>();
  for (const [i, unit] of moved.entries()) {
    const origin = origins[i];
    if (origin === undefined) continue;
    const [right, lower] = [add(unit.x, unit.across), add(unit.y, unit.down)];
    const columns = across.starts.flatMap((x, c) =>
      compare(x, unit.x) >= 0 && compare(x, right) < 0 ? [c] : [],
    );
    const rows = down.starts.flatMap((y, r) => (compare(y, unit.y) >= 0 && compare(y, lower) < 0 ? [r] : []));
    const turn = drawnTurn(unit, origin, laid, spec);
    if (!spanServes(unit.cell, wholeTurn(turn + unit.cell.turn), columns.length, rows.length))
      withoutSpan.add(unit.cell.code);
    for (const r of rows) {
      for (const c of columns) {
        const first = c === columns[0];
        const code = r === rows[0] ? (first ? unit.cell.code : "-") : first ? "|" : "-";
        (drawn[r] ?? [])[c] = { code, turn: r === rows[0] && first ? turn : 0, colourway: "" };
      }
    }
  }
  const { path, at } = block.grid[0] ?? block;
  // Sizes are written where they differ from one another, or where the file writes them already.
  const own = across.own || down.own;
  const columns = own ? sizesBetween(across.starts, laid.across) : [];
  const lines = own ? sizesBetween(down.starts, laid.down) : [];
  const even = block.across !== null && block.down !== null && allEqual(columns) && allEqual(lines);
  return {
    block: {
      ...block,
      grid: drawn.map((cells) => ({ cells, path, at })),
      columns: own ? (even ? null : columns.map(fractionOfRational)) : block.columns,
      lines: own ? (even ? null : lines.map(fractionOfRational)) : block.lines,
      cells: block.cells.map((cell) => (withoutSpan.has(cell.code) ? { ...cell, span: null } : cell)),
    },
    withoutSpan: [...withoutSpan],
  };
}

const allEqual = (sizes: readonly Rational[]): boolean =>
  sizes.every((size) => equal(size, sizes[0] ?? size));

/** Whether a cell's own span reaches as far as its unit does. */
function spanServes({ span }: CellSpec, turn: QuarterTurn, columns: number, rows: number): boolean {
  if (span === null) return true;
  const upright = turn % 180 === 0;
  return (upright ? span.columns : span.rows) === columns && (upright ? span.rows : span.columns) === rows;
}

/** The least turn after which a whole block looks as it does: 90, 180, or 360 when none before that does. */
export function blockAlikeAfter(block: BlockSpec, spec: QuiltSpec): 90 | 180 | 360 {
  const laid = layOutBlock(block, spec, []);
  return laid === null ? 360 : laidAlikeAfter(laid, spec);
}
