import { describe, expect, test } from "vitest";
import { pack, withSolver } from "../../src/engine/pack.ts";
import { startClock } from "../../src/engine/problem/clock.ts";
import { gatherKinds } from "../../src/engine/problem/reduce.ts";
import { lengthOf } from "../../src/engine/problem/roll-question.ts";
import { verify } from "../../src/engine/problem/verify.ts";
import { type StockAnswer, solveStock } from "../../src/engine/search/stock.ts";
import { absentSolver } from "../../src/engine/solver/absent.ts";
import { dropSolver, highsSolver } from "../../src/engine/solver/highs.ts";
import type { IntegerOutcome, LinearOutcome, Solver } from "../../src/engine/solver/types.ts";
import type { PackingProblem } from "../../src/engine/types.ts";
import { oneIn } from "../support/sweep.ts";

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
    clock: startClock({ effort: 300 }),
    target: null,
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

/** Ways in which the solver goes wrong at its n-th linear or whole-number program. */
const FAULTS: Record<string, { linear?: Break<LinearOutcome>; integer?: Break<IntegerOutcome> }> = {
  "a linear program gives up": { linear: (good) => ({ ...good, status: "failed" }) },
  "a linear program answers with no numbers": {
    linear: (good) => ({ ...good, values: good.values.map(() => NaN), prices: good.prices.map(() => NaN) }),
  },
  "a linear program answers with endless prices": {
    linear: (good) => ({ ...good, prices: good.prices.map(() => Infinity) }),
  },
  "a linear program answers with prices of its own": {
    linear: (good) => ({ ...good, prices: good.prices.map((_, i) => (i % 2 === 0 ? -7 : 1e9)) }),
  },
  "a whole-number program runs into its limit": {
    integer: (good) => ({ ...good, status: "limit", values: null, bound: -Infinity }),
  },
  "a whole-number program fails": {
    integer: () => ({ status: "failed", objective: NaN, values: null, bound: NaN }),
  },
  "a whole-number program calls optimal what holds nothing": {
    integer: (good) => ({ ...good, status: "optimal", values: good.values?.map(() => 0) ?? null }),
  },
  "a whole-number program answers in fractions": {
    integer: (good) => ({ ...good, values: good.values?.map((value) => value * 0.6) ?? null }),
  },
  "the module aborts in a linear program": { linear: abort },
  "the module aborts in a whole-number program": { integer: abort },
};

type Break<T> = (good: T) => T;

function abort(): never {
  throw new WebAssembly.RuntimeError("unreachable");
}

function faulty(
  real: Solver,
  { linear, integer }: (typeof FAULTS)[string],
  from: number,
  tell: () => void,
): Solver {
  let linears = 0;
  let integers = 0;
  return {
    linearModel() {
      const model = real.linearModel();
      return {
        ...model,
        solve(milliseconds) {
          const good = model.solve(milliseconds);
          if (linear === undefined || ++linears < from) return good;
          tell();
          return linear(good);
        },
      };
    },
    integer(...asked) {
      const good = real.integer(...asked);
      if (integer === undefined || ++integers < from) return good;
      tell();
      return integer(good);
    },
  };
}

/** Problems that ask for linear programs only, and for whole-number programs as well. */
const either = (across: number, along: number, demand: number) => ({
  ...{ across, along, demand, turnable: true },
  place: "strips" as const,
});
const PROBLEMS: Record<"linear" | "integer", PackingProblem> = {
  linear: { style: "strips-2", items, roll: { width: 120, available: null, costPerLength: 1 }, sheets: [] },
  integer: {
    style: "strips-2",
    items: [
      either(31, 30, 3),
      either(27, 20, 11),
      either(15, 28, 11),
      either(29, 16, 3),
      either(23, 12, 12),
      either(29, 18, 3),
    ],
    roll: { width: 60, available: null, costPerLength: 1 },
    sheets: [],
  },
};

describe.each(oneIn(2, Object.entries(FAULTS)))("when %s", (_, fault) => {
  test.each([1, 2])("from number %i on, the plan is whole and the bound is true", async (from) => {
    const problem = PROBLEMS[fault.integer === undefined ? "linear" : "integer"];
    const limits = { effort: 300 };
    const good = await pack(problem, limits);
    expect(good.status).toBe("proven");
    let broken = 0;
    const ill = await pack(problem, limits, undefined, async (clock) =>
      faulty(await highsSolver(clock), fault, from, () => broken++),
    );
    expect(broken).toBeGreaterThanOrEqual(from === 1 || fault.linear !== undefined ? 1 : 0);
    expect(verify(problem, ill)).toEqual([]);
    expect(ill.bound.value).toBeLessThanOrEqual(good.objective);
    expect(ill.bound.value).toBeGreaterThan(0);
    expect(ill.objective).toBeGreaterThanOrEqual(good.objective);
  });
});

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
