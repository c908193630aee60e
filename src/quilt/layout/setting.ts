import {
  blockSizesDiffer,
  blockUnknown,
  colourwayUnknown,
  onPointUneven,
  rowsUneven,
  seamsDoNotMeet,
} from "../../diagnostics/quilts/quilt.ts";
import { add, equal, type Rational, ZERO } from "../../length/rational.ts";
import type { SpokenLength } from "../../length/spoken.ts";
import type { DrawnCell, DrawnRow, QuiltSpec } from "../../spec/quilt-types.ts";
import type { LaidBlock } from "../laid-types.ts";
import { sayLength, saySize, sayUnlike } from "../say.ts";
import type { Builder } from "./builder.ts";

/** A block in the rows of the setting. */
export interface SetBlock {
  block: LaidBlock;
  drawn: DrawnCell;
  /** Size as turned. */
  across: Rational;
  down: Rational;
}

export interface SetRow {
  drawn: DrawnRow;
  blocks: SetBlock[];
  down: Rational;
}

/** Rows as they are sewn: the drawing, repeated as often as the file asks. */
export function fillRows(spec: QuiltSpec): DrawnRow[] {
  const { rows, fill, layout } = spec.setting;
  if (fill === null || rows.length === 0) return rows;
  const repeated = (row: DrawnRow, count: number): DrawnRow => ({
    ...row,
    cells: Array.from({ length: count }, (_, i) => row.cells[i % row.cells.length]).filter(
      (cell) => cell !== undefined,
    ),
  });
  const at = (i: number): DrawnRow => rows[i % rows.length] ?? { cells: [], path: "", at: null };
  // On point every second row holds one block fewer, and stands between two full ones.
  const total = layout === "straight" ? fill.down : 2 * fill.down - 1;
  return Array.from({ length: total }, (_, i) =>
    repeated(at(i), layout === "on-point" && i % 2 === 1 ? fill.across - 1 : fill.across),
  );
}

/** Finds the blocks the rows name; reports words that name none. */
export function setRows(
  rows: readonly DrawnRow[],
  blocks: ReadonlyMap<string, LaidBlock | null>,
  builder: Builder,
): SetRow[] | null {
  const known = [...blocks.keys()];
  const ways = new Set(builder.spec.colourways.map((way) => way.name));
  const reported = new Set<string>();
  let good = true;
  const fault = (key: string, report: () => void): void => {
    good = false;
    if (!reported.has(key)) report();
    reported.add(key);
  };
  const set = rows.map((drawn): SetRow => {
    const found = drawn.cells.flatMap((cell): SetBlock[] => {
      const block = blocks.get(cell.code);
      if (cell.colourway !== "" && !ways.has(cell.colourway)) {
        fault(`way ${cell.colourway}`, () =>
          builder.diagnostics.push(colourwayUnknown(drawn, cell.colourway, [...ways])),
        );
      }
      if (block === undefined) {
        fault(`block ${cell.code}`, () => builder.diagnostics.push(blockUnknown(drawn, cell.code, known)));
        return [];
      }
      if (block === null) {
        good = false;
        return [];
      }
      const upright = cell.turn % 180 === 0;
      return [
        {
          block,
          drawn: cell,
          across: upright ? block.across : block.down,
          down: upright ? block.down : block.across,
        },
      ];
    });
    return { drawn, blocks: found, down: found[0]?.down ?? ZERO };
  });
  return good ? set : null;
}

function totalAcross(row: SetRow): Rational {
  return row.blocks.reduce((sum, each) => add(sum, each.across), ZERO);
}

/** A straight setting: one height in a row, one length for all rows; with sashing one width in a column. */
export function checkStraight(rows: readonly SetRow[], builder: Builder): boolean {
  const { spec, diagnostics } = builder;
  let good = true;
  for (const row of rows) {
    const odd = row.blocks.find((each) => !equal(each.down, row.down));
    if (odd !== undefined) {
      good = false;
      const [high, begun] = sayUnlike(odd.down, row.down, spec.ruler);
      diagnostics.push(
        blockSizesDiffer(row.drawn, { why: "row-heights", block: odd.block.spec.name, high, begun }),
      );
    }
  }
  const first = rows[0];
  if (first === undefined) return good;
  if (spec.setting.sashing !== null) return sameColumns(rows, first, builder) && good;
  const length = totalAcross(first);
  const warned = new Set<string>();
  for (const row of rows.slice(1)) {
    const own = totalAcross(row);
    if (!equal(own, length)) {
      good = false;
      const [long, begun] = sayUnlike(own, length, spec.ruler);
      diagnostics.push(
        rowsUneven(row.drawn, {
          why: "lengths",
          long,
          blocks: row.blocks.length,
          begun,
          first: first.blocks.length,
        }),
      );
    } else if (
      row.blocks.length === first.blocks.length &&
      row.blocks.some((each, i) => !equal(each.across, first.blocks[i]?.across ?? ZERO)) &&
      !warned.has(row.drawn.path)
    ) {
      warned.add(row.drawn.path);
      diagnostics.push(seamsDoNotMeet(row.drawn));
    }
  }
  return good;
}

function sameColumns(rows: readonly SetRow[], first: SetRow, builder: Builder): boolean {
  const say = (size: Rational): SpokenLength => sayLength(size, builder.spec.ruler);
  let good = true;
  for (const row of rows) {
    if (row.blocks.length !== first.blocks.length) {
      good = false;
      builder.diagnostics.push(
        rowsUneven(row.drawn, { why: "counts", blocks: row.blocks.length, first: first.blocks.length }),
      );
      continue;
    }
    const column = row.blocks.findIndex((each, i) => !equal(each.across, first.blocks[i]?.across ?? ZERO));
    const odd = row.blocks[column];
    if (odd === undefined) continue;
    good = false;
    builder.diagnostics.push(
      blockSizesDiffer(row.drawn, {
        why: "column-widths",
        block: odd.block.spec.name,
        column: column + 1,
        wide: say(odd.across),
        first: say(first.blocks[column]?.across ?? ZERO),
      }),
    );
  }
  return good;
}

/** On point: square blocks of one size, in rows of n, n - 1, n ... beginning and ending with a full row. */
export function checkOnPoint(rows: readonly SetRow[], builder: Builder): boolean {
  const { spec, diagnostics } = builder;
  const side = rows[0]?.down ?? ZERO;
  const count = rows[0]?.blocks.length ?? 0;
  let good = true;
  for (const row of rows) {
    const odd = row.blocks.find((each) => !equal(each.across, side) || !equal(each.down, side));
    if (odd === undefined) continue;
    good = false;
    diagnostics.push(
      onPointUneven(row.drawn, {
        why: "block-size",
        block: odd.block.spec.name,
        is: saySize(odd.across, odd.down, spec.ruler),
        side: sayLength(side, spec.ruler),
      }),
    );
  }
  if (rows.length % 2 === 0) {
    good = false;
    const last = rows.at(-1)?.drawn ?? spec.setting;
    diagnostics.push(onPointUneven(last, { why: "rows-even", rows: rows.length }));
  }
  rows.forEach((row, i) => {
    const expected = i % 2 === 0 ? count : count - 1;
    if (row.blocks.length === expected) return;
    good = false;
    diagnostics.push(
      onPointUneven(row.drawn, { why: "row-count", row: i + 1, blocks: row.blocks.length, expected }),
    );
  });
  return good;
}
