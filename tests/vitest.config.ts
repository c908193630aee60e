import { defineConfig } from "vitest/config";
import { SOLVER_FLAGS } from "../src/cli/threads/light-solver.ts";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/**/*.test.ts"],
    // Wherever the tests run, what is not asked in another language is told in English.
    env: { LC_ALL: "C" },
    testTimeout: 60_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    // Tests make much that is soon thrown away: with more room for it less of their time goes into collecting it.
    execArgv: [...SOLVER_FLAGS, "--max-semi-space-size=64"],
    // Test files share what they import: none of them changes a module, and loading takes longer than most tests.
    isolate: false,
  },
});
