import type { LengthUnit } from "../../length/index.ts";
import { TICKS_PER } from "../../length/index.ts";
import {
  blockAlikeAfter,
  exactToNumber,
  fillRows,
  layOutQuilt,
  type TurnedBlock,
} from "../../quilt/index.ts";
import { asQuarterTurn } from "../../quilt/turning/whole-turns.ts";
import type { DrawnCell, DrawnRow, FractionTicks, QuarterTurn, QuiltSpec } from "../../spec/index.ts";
import { mirrorTurns, type Turning } from "./turnings.ts";

/** The same quilt with every block of the setting turned so, whatever the file says of its turn. */
export function turnBlocks(
  spec: QuiltSpec,
  { turn }: Pick<Turning, "turn">,
  mirrorOf: (cell: DrawnCell) => QuarterTurn | null = () => 0,
): QuiltSpec {
  // A block that is alike turned so far is not marked as turned.
  const alike = new Map(spec.blocks.map((block) => [block.key, blockAlikeAfter(block, spec)]));
  const rows = fillRows(spec);
  const across = Math.max(0, ...rows.map(({ cells }) => cells.length));
  const turned = rows.map((row, r) => ({
    ...row,
    cells: row.cells.map((cell, c) => {
      const least = alike.get(cell.code);
      if (least === undefined) return cell;
      // A shorter row stands half a block in for each block it has fewer.
      const x = c + (across - row.cells.length) / 2 - (across - 1) / 2;
      const y = r - (rows.length - 1) / 2;
      const wanted = turn({ row: r, column: c, x, y, mirror: mirrorOf(cell) });
      return { ...cell, turn: asQuarterTurn(wanted % least) };
    }),
  }));
  return { ...spec, setting: { ...spec.setting, rows: turned, fill: null } };
}

/**
 * The same quilt to the eye with its blocks laid otherwise: none turned that looks the same without, and every second
 * one turned a half or a quarter where that does not show. Which way a block's seams run is all that changes, and so how they
 * nest. Empty where no block looks the same turned.
 */
export function unseenTurns(spec: QuiltSpec): QuiltSpec[] {
  const alike = new Map(spec.blocks.map((block) => [block.key, blockAlikeAfter(block, spec)]));
  const rows = fillRows(spec);
  const onPoint = spec.setting.layout === "on-point";
  // On point the neighbours of a block stand in the rows before and after its own.
  const second = (row: number, column: number): boolean => (onPoint ? row : row + column) % 2 === 1;
  const laid = (by: 0 | 90 | 180): QuiltSpec => {
    const turned = rows.map((row, r) => ({
      ...row,
      cells: row.cells.map((cell, c) => {
        const least = alike.get(cell.code) ?? 360;
        const turn = (cell.turn % least) + (least <= by && second(r, c) ? by : 0);
        return { ...cell, turn: asQuarterTurn(turn) };
      }),
    }));
    return { ...spec, setting: { ...spec.setting, rows: turned, fill: null } };
  };
  const written = (one: QuiltSpec): string => writtenRows(one).join("\n");
  const known = [written(spec)];
  return [laid(0), laid(180), laid(90)].filter((one) => {
    const isNew = !known.includes(written(one));
    known.push(written(one));
    return isNew;
  });
}

const MARKS: Readonly<Record<QuarterTurn, string>> = { 0: "", 90: ">", 180: "v", 270: "<" };

function written(drawn: readonly DrawnRow[], known: ReadonlySet<string>): string[] {
  const word = ({ code, turn, colourway }: DrawnCell): string => {
    // A code that would be read as another with its mark is turned in degrees.
    const mark = turn !== 0 && known.has(`${code}${MARKS[turn]}`) ? `:${turn}` : MARKS[turn];
    return `${code}${mark}${colourway === "" ? "" : `/${colourway}`}`;
  };
  const rows = drawn.map(({ cells }) => cells.map(word));
  const width = Math.max(0, ...rows.flat().map((word) => word.length));
  return rows.map((row) =>
    row
      .map((word) => word.padEnd(width))
      .join(" ")
      .trimEnd(),
  );
}

/** The rows of a setting as they are written in a file. */
export function writtenRows(spec: QuiltSpec): string[] {
  return written(fillRows(spec), new Set(spec.blocks.map(({ key }) => key)));
}

/** The drawing of a block as it is written in a file. */
export interface WrittenGrid {
  /** The block's word in the rows. */
  block: string;
  grid: string[];
  /** Finished sizes of columns and lines as written; null: left out. */
  columns: string[] | null;
  lines: string[] | null;
  /** What the file has for the block and is to be left out with this grid. */
  leaveOut: ("columns" | "lines")[];
  /** Codes whose `span` is to be left out. */
  withoutSpan: string[];
}

/** A length as a file has it, exactly: whole units and a fraction. */
function writtenLength({ n, d }: FractionTicks, unit: LengthUnit): string {
  const [top, bottom] = [BigInt(n), BigInt(d) * BigInt(TICKS_PER[unit])];
  const [whole, rest] = [top / bottom, top % bottom];
  if (rest === 0n) return String(whole);
  let [a, b] = [rest, bottom];
  while (b !== 0n) [a, b] = [b, a % b];
  return `${whole === 0n ? "" : `${whole} `}${rest / a}/${bottom / a}`;
}

/** How a block with its motifs turned is written. */
export function writtenGrid({ block, withoutSpan }: TurnedBlock, spec: QuiltSpec): WrittenGrid {
  const filed = spec.blocks.find(({ key }) => key === block.key);
  const sizes = (all: readonly FractionTicks[] | null) =>
    all === null ? null : all.map((each) => writtenLength(each, spec.ruler.unit));
  return {
    block: block.key,
    grid: written(block.grid, new Set(block.cells.map(({ code }) => code))),
    columns: sizes(block.columns),
    lines: sizes(block.lines),
    leaveOut: (["columns", "lines"] as const).filter((each) => filed?.[each] != null && block[each] === null),
    withoutSpan,
  };
}

export const turnsAQuarter = (spec: QuiltSpec): boolean =>
  fillRows(spec).some(({ cells }) => cells.some(({ turn }) => turn % 180 !== 0));

export interface Mirrors {
  of: (cell: DrawnCell) => QuarterTurn | null;
  none: string[];
  /** Blocks of the rows that are not square. */
  oblong: string[];
}

/** By what turn each block of the rows shows its mirror image. */
export function mirrorsOf(spec: QuiltSpec): Mirrors {
  const top = layOutQuilt(spec).value?.top;
  if (top === undefined) return { of: () => 0, none: [], oblong: [] };
  const turns = mirrorTurns(top);
  const rows = fillRows(spec);
  const found = new Map<string, { turn: QuarterTurn | null; name: string }>();
  const keyOf = ({ code, colourway }: DrawnCell) => `${code}/${colourway}`;
  for (const { place, row, column, design } of top.blocks) {
    const cell = rows[row]?.cells[column];
    if (place !== "block" || cell === undefined) continue;
    found.set(keyOf(cell), { turn: turns[design] ?? null, name: top.designs[design]?.name ?? "" });
  }
  const none = [...found.values()].flatMap(({ turn, name }) => (turn === null ? [name] : []));
  const oblong = top.blocks.flatMap(({ place, design }) => {
    const own = top.designs[design];
    if (place !== "block" || own === undefined) return [];
    return exactToNumber(own.across) === exactToNumber(own.down) ? [] : [own.name];
  });
  return {
    of: (cell) => found.get(keyOf(cell))?.turn ?? null,
    none: [...new Set(none)],
    oblong: [...new Set(oblong)],
  };
}
