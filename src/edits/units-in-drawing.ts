import type { BlockModel, CellModel, UnitModel } from "./model.ts";

/** The units of a drawing with the squares they cover: as written (turned with them), or as far as their marks run. */
export function unitsIn(
  drawn: readonly { cells: readonly { code: string; turn: number }[] }[],
  cells: Readonly<Record<string, CellModel>>,
): UnitModel[] {
  const mark = (row: number, column: number): string => drawn[row]?.cells[column]?.code ?? "";
  return drawn.flatMap((line, row) =>
    line.cells.flatMap(({ code, turn: placed }, column): UnitModel[] => {
      const cell = cells[code];
      if (cell === undefined) return [];
      const turn = (cell.turn + placed) % 360;
      const span = /^(\d+)\s*(?:x|×|by)\s*(\d+)$/.exec(String(cell.written.span ?? ""));
      if (span !== null) {
        const [across, down] = [Number(span[1]), Number(span[2])];
        const [columns, rows] = turn % 180 === 0 ? [across, down] : [down, across];
        return [{ cell, column, row, columns, rows, turn }];
      }
      let [columns, rows] = [1, 1];
      while (mark(row, column + columns) === "-") columns += 1;
      while (mark(row + rows, column) === "|") rows += 1;
      return [{ cell, column, row, columns, rows, turn }];
    }),
  );
}

/** The squares of a drawing that no unit covers. */
export function emptyIn(
  drawn: readonly { cells: readonly unknown[] }[],
  units: readonly UnitModel[],
): BlockModel["empties"] {
  const covers = (unit: UnitModel, row: number, column: number): boolean =>
    row >= unit.row &&
    row < unit.row + unit.rows &&
    column >= unit.column &&
    column < unit.column + unit.columns;
  return drawn.flatMap(({ cells }, row) =>
    cells.flatMap((_, column) => (units.some((unit) => covers(unit, row, column)) ? [] : [{ column, row }])),
  );
}
