import { describe, expect, test } from "vitest";
import { choose } from "../../src/engine/choose.ts";
import { hasPlan, pack, verify } from "../../src/engine/index.ts";
import type { PackingProblem, SheetStock } from "../../src/engine/types.ts";
import { upTo } from "../support/sweep.ts";
import { Dice } from "./exact/random-problems.ts";

const SEEDS = Number(process.env.CROSS_SEEDS ?? upTo(6, 40));
const FIRST = Number(process.env.CROSS_FIRST ?? 1);

function randomChoice(seed: number) {
  const dice = new Dice(seed);
  const next = (below: number) => dice.between(0, below - 1);
  const width = 8 + next(8);
  const bands = next(3) === 0;
  const items = Array.from({ length: 1 + next(3) }, (_, i) => ({
    across: bands && i === 0 ? 1 + next(3) : 2 + next(5),
    along: bands && i === 0 ? 6 + next(8) : 2 + next(5),
    demand: 1 + next(bands && i === 0 ? 2 : 5),
    turnable: next(2) === 0,
    place: bands && i === 0 ? ("bands" as const) : ("strips" as const),
  }));
  const sheets = Array.from(
    { length: 1 + next(3) },
    (): SheetStock => ({
      ...{ across: 3 + next(10), along: 3 + next(10), available: 1 + next(2), cost: 0 },
      firstCut: next(4) === 0 ? "across" : "either",
    }),
  );
  const step = 2 + next(4);
  const each = 3 + next(6);
  const style = next(3) === 0 ? ("strips-3" as const) : ("strips-2" as const);
  const roll = { width, available: null, costPerLength: 1 };
  const problem: PackingProblem = { style, items, roll, sheets };
  const portions = Array.from({ length: 60 }, (_, k) => ({ length: k * step, price: k * each }));
  const bought = sheets.map(() => (next(2) === 0 ? 1 + next(12) : 0));
  const owned = sheets.map(({ across, along }, i) => (bought[i] === 0 ? across * along : 0));
  return { problem, choice: { portions, aims: [bought, owned] } };
}

/** Every choice of sheets, each with the least roll beside it. */
async function byEveryChoice({ problem, choice }: ReturnType<typeof randomChoice>): Promise<number[] | null> {
  let vectors: number[][] = [[]];
  for (const { available } of problem.sheets)
    vectors = vectors.flatMap((one) => Array.from({ length: available! + 1 }, (_, n) => [...one, n]));
  let best: number[] | null = null;
  for (const counts of vectors) {
    const sheets = problem.sheets.map((sheet, i) => ({ ...sheet, available: counts[i]! }));
    const result = await pack({ ...problem, sheets }, { effort: 20_000 });
    if (!hasPlan(result)) continue;
    expect(result.status).toBe("proven");
    const portion = choice.portions.find(({ length }) => length >= result.rollLength)!;
    const value = choice.aims.map((costs, aim) =>
      counts.reduce((sum, n, i) => sum + n * costs[i]!, aim === 0 ? portion.price : 0),
    );
    const at = best === null ? 0 : value.findIndex((one, aim) => one !== best![aim]);
    if (best === null || (at >= 0 && value[at]! < best[at]!)) best = value;
  }
  return best;
}

describe("stock chosen by several aims", () => {
  test("comes to what every choice tried gives", async () => {
    for (let seed = FIRST; seed < FIRST + SEEDS; seed++) {
      const question = randomChoice(seed);
      const least = await byEveryChoice(question);
      const result = await choose(question.problem, question.choice, { effort: 20_000 });
      if (least === null) {
        expect(hasPlan(result), `seed ${seed}`).toBe(false);
        continue;
      }
      expect(result.status, `seed ${seed}`).not.toBe("infeasible");
      const { aims = [] } = result;
      expect(
        aims.map(({ value }) => value),
        `seed ${seed}`,
      ).toEqual(least);
      expect(
        aims.every(({ value, bound }) => value === bound),
        `seed ${seed} proved`,
      ).toBe(true);
      expect(verify(question.problem, result), `seed ${seed}`).toEqual([]);
    }
  });
});
