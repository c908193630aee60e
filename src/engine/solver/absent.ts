import type { LinearOutcome, Solver } from "./types.ts";

/**
 * A solver that never answers. With it the engine still plans and proves by its own searches, so a machine
 * on which the real module cannot run is served all the same.
 */
export function absentSolver(): Solver {
  return {
    linearModel() {
      let rows = 0;
      let columns = 0;
      const failed = (): LinearOutcome => ({
        status: "failed",
        objective: Number.NaN,
        values: new Float64Array(columns),
        prices: new Float64Array(rows),
      });
      return {
        addRow: () => rows++,
        addColumn: () => columns++,
        setColumnBounds: () => {},
        solve: failed,
        dispose: () => {},
      };
    },
    integer: () => ({ status: "failed", objective: Number.NaN, values: null, bound: -Infinity }),
  };
}
