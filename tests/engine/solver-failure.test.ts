import { describe, expect, test } from "vitest";
import { startClock } from "../../src/engine/clock.ts";
import { withSolver } from "../../src/engine/pack.ts";
import { gatherKinds } from "../../src/engine/reduce.ts";
import { lengthOf } from "../../src/engine/roll.ts";
import { absentSolver } from "../../src/engine/solver/absent.ts";
import { dropSolver, highsSolver } from "../../src/engine/solver/highs.ts";
import type { Solver } from "../../src/engine/solver/types.ts";
import { type StockAnswer, solveStock } from "../../src/engine/stock.ts";

const items = [
  { across: 17, along: 42, demand: 12, turnable: true, place: "strips" as const },
  { across: 23, along: 23, demand: 30, turnable: true, place: "strips" as const },
  { across: 9, along: 31, demand: 21, turnable: false, place: "strips" as const },
];

function solveWith(solver: Solver): StockAnswer {
  return solveStock({
    kinds: gatherKinds(items),
    groups: [],
    roll: { run: 120, available: null, costPerLength: 1 },
    style: "strips-2",
    solver,
    clock: startClock({ effort: 3000 }),
    stats: { columns: 0, nodes: 0, lpSolves: 0, mipSolves: 0, milliseconds: 0 },
    target: null,
    report: () => {},
  });
}

/** Breaks down at the n-th linear program, as an abort inside the module does. */
function breakingSolver(real: Solver, at: number): Solver {
  let solved = 0;
  return {
    ...real,
    linearModel() {
      const model = real.linearModel();
      return {
        ...model,
        solve(milliseconds) {
          if (++solved === at) throw new WebAssembly.RuntimeError("unreachable");
          return model.solve(milliseconds);
        },
      };
    },
  };
}

describe("when the solver breaks down", () => {
  test("the search is begun again on a fresh module and ends as it would have", async () => {
    const good = solveWith(await highsSolver());
    for (const at of [1, 2, 3]) {
      let loads = 0;
      const again = await withSolver(solveWith, async () => {
        loads++;
        const real = await highsSolver();
        return loads === 1 ? breakingSolver(real, at) : real;
      });
      expect(loads).toBe(2);
      expect(lengthOf(again.strips)).toBe(lengthOf(good.strips));
      expect(again.lower).toBe(good.lower);
    }
  });

  test("with no solver at all a whole plan with a true bound still comes out", async () => {
    const good = solveWith(await highsSolver());
    const without = await withSolver(solveWith, async () => {
      throw new WebAssembly.RuntimeError("unreachable");
    });
    const least = lengthOf(good.strips);
    expect(good.lower).toBe(least);
    expect(without.lower).toBeLessThanOrEqual(least);
    expect(lengthOf(without.strips)).toBeGreaterThanOrEqual(least);
    const counts = items.map((_, k) =>
      without.strips.reduce((sum, { filling, count }) => sum + filling.counts[k]! * count, 0),
    );
    expect(counts.toSorted()).toEqual(items.map((item) => item.demand).toSorted());
    expect(solveWith(absentSolver()).lower).toBe(without.lower);
  });

  test("a fault of our own is not hidden", async () => {
    const ours = withSolver(() => {
      throw new TypeError("not the solver's");
    });
    await expect(ours).rejects.toThrow("not the solver's");
  });

  test("a dropped module is loaded afresh", async () => {
    dropSolver();
    expect(lengthOf(solveWith(await highsSolver()).strips)).toBeGreaterThan(0);
  });
});
