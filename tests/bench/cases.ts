import type { CuttingStyle, PackingProblem } from "../../src/engine/types.ts";

/** What is known from elsewhere about the least value of a case. */
export interface KnownValues {
  /** Proven least value for exactly this case; null when nobody has proved one. */
  optimum: number | null;
  /** A value some plan reaches (proven or only found): no true bound lies above it. */
  reached: number | null;
  /** No plan is below this. */
  floor: number;
  /** Value of the rule of thumb as the data has it. */
  ruleOfThumb: number | null;
}

/** One problem to solve and time. */
export interface BenchCase {
  /** Short name of the file it comes from. */
  set: string;
  /** Unique inside the set and style. */
  name: string;
  style: CuttingStyle;
  /** What is asked, in the data's words. */
  variant: string;
  problem: PackingProblem;
  known: KnownValues;
  /** Solves what is more than one problem; its `problem` then says nothing. */
  run?(limit: number): Promise<Outcome>;
}

/** What came of a case that is more than one problem. */
export interface Outcome {
  value: number | null;
  bound: number | null;
  proven: boolean;
}

/** Sizes and copies of a case. */
export function sizeOf(problem: PackingProblem): { sizes: number; pieces: number } {
  return {
    sizes: problem.items.length,
    pieces: problem.items.reduce((sum, item) => sum + item.demand, 0),
  };
}

/** Area of everything to be cut, as a floor of the cost of a roll or of equal sheets. */
export function areaFloor(problem: PackingProblem): number {
  const area = problem.items.reduce(
    (sum, { across, along, demand, run }) =>
      sum + (run === undefined ? across * demand : run.length - run.loss) * along,
    0,
  );
  if (problem.roll !== null && problem.sheets.length === 0) {
    return Math.ceil(area / problem.roll.width) * problem.roll.costPerLength;
  }
  const cheapest = Math.min(...problem.sheets.map((sheet) => sheet.cost / (sheet.across * sheet.along)));
  return problem.roll === null ? Math.ceil(area * cheapest - 1e-6) : 0;
}
