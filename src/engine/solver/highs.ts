import { FAILED_INTEGER, failedLinear } from "./absent.ts";
import type { Entry, IntegerOutcome, IntegerProgram, LinearModel, Meter, Solver } from "./types.ts";

type Highs = Awaited<ReturnType<typeof loadRuntime>>;
type HighsModel = ReturnType<Highs["createModel"]>;

const OPTIMAL = 7;
const INFEASIBLE = 8;
const FEASIBLE_POINT = 2;

let runtime: Highs | null = null;

async function loadRuntime() {
  const module = await import("highs");
  const load = module.default as unknown as typeof module.default.default;
  return load({ print: () => {}, printErr: () => {} } as Parameters<typeof load>[0]);
}

/**
 * Loads the HiGHS WebAssembly module once; again after it has been dropped by a failure. With a meter that counts,
 * limits are in counted work and the answer is the same on every machine.
 */
export async function highsSolver(meter: Meter = WALL): Promise<Solver> {
  runtime ??= await loadRuntime();
  const highs = runtime;
  return {
    linearModel: () => keptModel(highs, meter),
    integer: (...args) => solveInteger(highs, meter, ...args),
  };
}

const WALL: Meter = { counted: false, charge: () => {}, late: () => false };

/** Most seconds of any one run, whatever is counted. */
const GUARD = 120;

/**
 * Counted milliseconds of a run: what iterations of the simplex method and nodes of the tree cost on a quiet
 * desktop in programs of the sizes met here. Only the order of size matters.
 */
function workOfLinear(rows: number, columns: number, iterations: number): number {
  return 0.05 + columns * 4e-5 + iterations * (0.01 + rows * 4e-4 + columns * 1e-5);
}

function workOfInteger(rows: number, columns: number, iterations: number, nodes: number): number {
  return 3 + columns * 0.06 + iterations * (0.02 + rows * 8e-4 + columns * 1e-4) + nodes * 0.2;
}

/**
 * Forgets the module, so that the next `highsSolver` starts a fresh one: after an abort inside WebAssembly
 * its memory cannot be trusted.
 */
export function dropSolver(): void {
  runtime = null;
}

function keptModel(highs: Highs, meter: Meter): LinearModel {
  const model = highs.createModel();
  model.options.set({ output_flag: false });
  let rows = 0;
  let columns = 0;
  const failed = () => failedLinear(rows, columns);
  return {
    addRow(lower, upper, entries = []) {
      model.addRow(finite(highs, lower), finite(highs, upper), sparse(entries));
      return rows++;
    },
    addColumn(cost, lower, upper, entries) {
      model.addCol(cost, finite(highs, lower), finite(highs, upper), sparse(entries));
      return columns++;
    },
    setColumnBounds(column, lower, upper) {
      model.changeColBounds(column, finite(highs, lower), finite(highs, upper));
    },
    solve(milliseconds) {
      try {
        // The clock of a kept model adds up over its runs, and with it the time limit.
        model.options.set("time_limit", meter.counted ? GUARD : Math.max(0.05, milliseconds / 1000));
        model.zeroAllClocks();
        model.run();
        meter.charge(workOfLinear(rows, columns, model.info.get("simplex_iteration_count") as number));
        const status = model.getModelStatus();
        if (status === INFEASIBLE) return { ...failed(), status: "infeasible" };
        if (status !== OPTIMAL || !hasPoint(model)) return failed();
        const solution = model.getSolution();
        return {
          status: "optimal",
          objective: model.getObjectiveValue(),
          values: solution.colValue,
          prices: solution.rowDual,
        };
      } catch {
        dropSolver();
        return failed();
      }
    },
    dispose: () => disposeQuietly(model),
  };
}

function solveInteger(
  highs: Highs,
  meter: Meter,
  program: IntegerProgram,
  milliseconds: number,
): IntegerOutcome {
  let model: HighsModel | null = null;
  try {
    model = highs.createModel(modelData(highs, program));
    model.options.set({
      output_flag: false,
      time_limit: meter.counted ? GUARD : Math.max(0.05, milliseconds / 1000),
      mip_rel_gap: 0,
      mip_abs_gap: 0.5,
      mip_feasibility_tolerance: 1e-7,
      // Measured on the programs met here: without the search for symmetries all are sooner decided, and where
      // any answer will do, sooner without presolving too.
      mip_detect_symmetry: false,
      presolve: program.costs.every((cost) => cost === 0) ? "off" : "choose",
    });
    const spent = runInteger(highs, model, meter, program, milliseconds);
    meter.charge(spent);
    const status = model.getModelStatus();
    const bound = model.info.get("mip_dual_bound") as number;
    if (status === INFEASIBLE) return { ...FAILED_INTEGER, status: "infeasible", bound: Infinity };
    const values = hasPoint(model) ? model.getSolution().colValue : null;
    const objective = values === null ? Number.NaN : model.getObjectiveValue();
    if (status === OPTIMAL && values !== null) return { status: "optimal", objective, values, bound };
    return { status: "limit", objective, values, bound };
  } catch {
    dropSolver();
    return FAILED_INTEGER;
  } finally {
    if (model !== null) disposeQuietly(model);
  }
}

/** Runs the model, up to so much counted work where work is counted; returns the work done. */
function runInteger(
  highs: Highs,
  model: HighsModel,
  meter: Meter,
  program: IntegerProgram,
  most: number,
): number {
  if (!meter.counted) {
    model.run();
    return 0;
  }
  const { rows, costs } = program;
  const workOf = (iterations: number, nodes: number) =>
    workOfInteger(rows.length, costs.length, Math.max(0, iterations), Math.max(0, nodes));
  let work = 0;
  model.run({
    [highs.constants.callbackType.mipInterrupt]: (event) => {
      const { mip_total_lp_iterations: iterations = 0n, mip_node_count: nodes = 0n } = event.data;
      work = workOf(Number(iterations), Number(nodes));
      if (work > most || meter.late()) event.interrupt();
    },
  });
  // The interrupt is asked now and then only: what came after the last time, or all of a short run, is told here.
  const counted = (name: string) => Number(model.info.get(name) ?? 0);
  return Math.max(work, workOf(counted("simplex_iteration_count"), counted("mip_node_count")));
}

function hasPoint(model: HighsModel): boolean {
  return model.info.get("primal_solution_status") === FEASIBLE_POINT;
}

function disposeQuietly(model: HighsModel): void {
  try {
    model.dispose();
  } catch {
    // After an abort the module is dropped whole; there is nothing left to free.
  }
}

/** The program in the compressed sparse row form the module takes. */
function modelData(highs: Highs, program: IntegerProgram) {
  const starts: number[] = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const row of program.rows) {
    indices.push(...row.columns);
    values.push(...row.values);
    starts.push(indices.length);
  }
  const kind = highs.constants.variableType;
  return {
    numCols: program.costs.length,
    numRows: program.rows.length,
    colCost: program.costs,
    colLower: program.lower.map((v) => finite(highs, v)),
    colUpper: program.upper.map((v) => finite(highs, v)),
    rowLower: program.rows.map((row) => finite(highs, row.lower)),
    rowUpper: program.rows.map((row) => finite(highs, row.upper)),
    integrality: program.whole.map((whole) => (whole ? kind.integer : kind.continuous)),
    matrix: {
      format: "csr" as const,
      numRows: program.rows.length,
      numCols: program.costs.length,
      starts,
      indices,
      values,
    },
  };
}

function sparse(entries: readonly Entry[]) {
  return { indices: entries.map(([at]) => at), values: entries.map(([, value]) => value) };
}

function finite(highs: Highs, value: number): number {
  if (value === Infinity) return highs.infinity;
  if (value === -Infinity) return -highs.infinity;
  return value;
}
