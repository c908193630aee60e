/** What a linear program came to. Values are floating-point suggestions: nothing here is proof. */
export interface LinearOutcome {
  status: "optimal" | "infeasible" | "failed";
  objective: number;
  /** Value per column. */
  values: Float64Array;
  /** Dual price per row. */
  prices: Float64Array;
}

/** A column or row by its index, and the number that stands where it meets the other. */
export type Entry = readonly [at: number, value: number];

/** A linear program that is kept, grown and solved again from its last basis. Minimises. */
export interface LinearModel {
  /** Appends a row, over columns there are; returns its index. */
  addRow(lower: number, upper: number, entries?: readonly Entry[]): number;
  /** Appends a column, over rows there are; returns its index. */
  addColumn(cost: number, lower: number, upper: number, entries: readonly Entry[]): number;
  setColumnBounds(column: number, lower: number, upper: number): void;
  solve(milliseconds: number): LinearOutcome;
  dispose(): void;
}

/** A mixed-integer program, handed over whole. Minimises. */
export interface IntegerProgram {
  costs: number[];
  lower: number[];
  upper: number[];
  /** True for columns that must be whole. */
  whole: boolean[];
  rows: { lower: number; upper: number; columns: number[]; values: number[] }[];
}

export interface IntegerOutcome {
  /** `limit`: stopped early; `values` may still hold a feasible point. */
  status: "optimal" | "infeasible" | "limit" | "failed";
  objective: number;
  /** Null when no feasible point was found. */
  values: Float64Array | null;
  /** The solver's own lower bound; a float, not proof. */
  bound: number;
}

/** What a solver is told of time, and tells of work. */
export interface Meter {
  /** Limits are in counted work instead of time. */
  readonly counted: boolean;
  charge(milliseconds: number): void;
  /** True when even counted work must end now. */
  late(): boolean;
}

/** The narrow port through which the engine sees a solver. */
export interface Solver {
  linearModel(): LinearModel;
  integer(program: IntegerProgram, milliseconds: number): IntegerOutcome;
}

/** A solver of whole-number programs whose time is set already. */
export type ProgramSolver = (program: IntegerProgram) => IntegerOutcome;
