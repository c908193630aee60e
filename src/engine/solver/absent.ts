import type { IntegerOutcome, LinearOutcome, Solver } from "./types.ts";

/** What a linear program of so many rows and columns answers when it gave none. */
export function failedLinear(rows: number, columns: number): LinearOutcome {
  const [values, prices] = [new Float64Array(columns), new Float64Array(rows)];
  return { status: "failed", objective: Number.NaN, values, prices };
}

/** The same of a whole-number program. */
export const FAILED_INTEGER: IntegerOutcome = {
  ...{ status: "failed", objective: Number.NaN, values: null, bound: -Infinity },
};

/**
 * A solver that never answers. With it the engine still plans and proves by its own searches, so a machine
 * on which the real module cannot run is served all the same.
 */
export function absentSolver(): Solver {
  return {
    linearModel() {
      let rows = 0;
      let columns = 0;
      return {
        addRow: () => rows++,
        addColumn: () => columns++,
        setColumnBounds: () => {},
        solve: () => failedLinear(rows, columns),
        dispose: () => {},
      };
    },
    integer: () => FAILED_INTEGER,
  };
}
