import { setFlagsFromString } from "node:v8";

/**
 * Tells the JavaScript engine to translate the solver's module quickly and to translate again, for speed, only what
 * has run for long, one function at a time. A plan asks the solver for so little that the translation for speed cost
 * more time than it saved, and a hundred megabytes. Called before the solver is loaded; other versions of the engine
 * that do not know the words go on as they are.
 */
export function lightenSolver(): void {
  for (const flag of SOLVER_FLAGS) setFlagsFromString(flag);
}

export const SOLVER_FLAGS = ["--wasm-num-compilation-tasks=1", "--wasm-tiering-budget=400000000"];
