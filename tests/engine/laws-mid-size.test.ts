import { describe, expect, test } from "vitest";
import { pack, verify } from "../../src/engine/index.ts";
import type { CuttingStyle, PackingItem, PackingProblem, PackingResult } from "../../src/engine/types.ts";
import { CROSS_CHECKS, upTo } from "../support/sweep.ts";
import { Dice } from "./exact/random-problems.ts";

/*
 * Problems too large to be worked through by hand or by another model, held to laws between two answers. Neither need
 * be proven: what one answer proves may not contradict what the other has found.
 *
 *     Q costs at least P:   value(Q) >= bound(P)
 */

/** Problems for each law. */
const SEEDS = upTo(2, 10) * CROSS_CHECKS;

/** Counted work for one answer. */
const EFFORT = 60;

/** Sizes as quilts have them: eighths of an inch, on a bolt of 30 to 43 in. */
function midSize(seed: number): PackingProblem {
  const dice = new Dice(seed);
  const width = dice.between(240, 344);
  const items = Array.from({ length: dice.between(5, 12) }, (): PackingItem => {
    const long = dice.chance(1, 5);
    return {
      across: dice.between(12, long ? width : 90),
      along: dice.between(12, 90),
      demand: dice.chance(1, 6) ? dice.between(50, 400) : dice.between(1, 40),
      turnable: dice.chance(1, 2),
      place: "strips",
    };
  });
  const style: CuttingStyle = dice.chance(1, 3) ? "strips-3" : "strips-2";
  return { style, items, roll: { width, available: null, costPerLength: 1 }, sheets: [] };
}

async function answer(problem: PackingProblem): Promise<PackingResult> {
  const result = await pack(problem, { effort: EFFORT });
  expect(verify(problem, result)).toEqual([]);
  return result;
}

const each = (problem: PackingProblem, change: (item: PackingItem, i: number) => PackingItem) => ({
  ...problem,
  items: problem.items.map(change),
});
const rolled = (problem: PackingProblem, more: Partial<NonNullable<PackingProblem["roll"]>>) => ({
  ...problem,
  roll: { ...problem.roll!, ...more },
});

/** How the least cost of the changed problem lies between two multiples of that of the first; null for no limit. */
interface Law {
  /** What is asked first, where it is not the problem itself. */
  first?: (problem: PackingProblem) => PackingProblem;
  change: (problem: PackingProblem, answer: PackingResult) => PackingProblem;
  least: number | null;
  most: number | null;
}

const LAWS: Readonly<Record<string, Law>> = {
  "one piece more": {
    change: (p) => each(p, (item, i) => (i === 0 ? { ...item, demand: item.demand + 1 } : item)),
    least: 1,
    most: null,
  },
  "one size fewer": {
    change: (p) => ({ ...p, items: p.items.slice(1) }),
    least: null,
    most: 1,
  },
  "a wider bolt": { change: (p) => rolled(p, { width: p.roll!.width + 7 }), least: null, most: 1 },
  "a narrower bolt": {
    change: (p) =>
      rolled(p, { width: Math.max(...p.items.map(({ across }) => across), p.roll!.width - 9, 90) }),
    least: 1,
    most: null,
  },
  "nothing may turn": {
    change: (p) => each(p, (item) => ({ ...item, turnable: false })),
    least: 1,
    most: null,
  },
  "everything may turn": {
    change: (p) => each(p, (item) => ({ ...item, turnable: true })),
    least: null,
    most: 1,
  },
  "all sizes three times as large": {
    change: (p) =>
      rolled(
        each(p, (item) => ({ ...item, across: 3 * item.across, along: 3 * item.along })),
        { width: 3 * p.roll!.width },
      ),
    least: 3,
    most: 3,
  },
  "a size in two lines": {
    change: (p) => ({
      ...p,
      items: p.items.flatMap((item) => {
        const half = Math.floor(item.demand / 2);
        return half === 0
          ? [item]
          : [
              { ...item, demand: half },
              { ...item, demand: item.demand - half },
            ];
      }),
    }),
    least: 1,
    most: 1,
  },
  "another order": { change: (p) => ({ ...p, items: [...p.items].reverse() }), least: 1, most: 1 },
  "twice the copies": {
    change: (p) => each(p, (item) => ({ ...item, demand: 2 * item.demand })),
    least: 1,
    most: 2,
  },
  "stacked subcuts": { change: (p) => ({ ...p, style: "strips-3" }), least: null, most: 1 },
  "no stacked subcuts": { change: (p) => ({ ...p, style: "strips-2" }), least: 1, most: null },
  "every piece a step lower": {
    // A strip of turned pieces is no lower for it, so nothing turns in either.
    first: (p) => each(p, (item) => ({ ...item, turnable: false })),
    change: (p) => each(p, (item) => ({ ...item, along: item.along - 1 })),
    least: null,
    most: 1,
  },
  "every piece a step larger": {
    change: (p) =>
      each(p, (item) => ({
        ...item,
        along: item.along + 1,
        across: Math.min(item.across + 1, p.roll!.width),
      })),
    least: 1,
    most: null,
  },
  "twice the price": { change: (p) => rolled(p, { costPerLength: 2 }), least: 2, most: 2 },
  "a bolt just as long as was found": {
    change: (p, found) => rolled(p, { available: found.rollLength }),
    least: 1,
    most: 1,
  },
};

describe.each(Object.entries(LAWS))("%s", (_, { first, change, least, most }) => {
  test("two answers never contradict each other", async () => {
    const wrong: string[] = [];
    for (let seed = 1; seed <= SEEDS; seed += 1) {
      const problem = (first ?? ((as) => as))(midSize(seed));
      const one = await answer(problem);
      const two = await answer(change(problem, one));
      if (two.status === "infeasible") wrong.push(`seed ${seed}: called impossible`);
      const found = two.status === "none-found" ? Number.POSITIVE_INFINITY : two.objective;
      if (least !== null && found < least * one.bound.value)
        wrong.push(`seed ${seed}: ${found} found, ${least} x ${one.bound.value} proved`);
      if (most !== null && two.bound.value > most * one.objective)
        wrong.push(`seed ${seed}: ${two.bound.value} proved, ${most} x ${one.objective} found`);
    }
    expect(wrong).toEqual([]);
  });
});
