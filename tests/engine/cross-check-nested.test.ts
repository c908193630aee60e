import { describe, expect, test } from "vitest";
import type { NestLie } from "../../src/engine/nested/nest.ts";
import type { PackingItem, PackingProblem, SheetStock } from "../../src/engine/types.ts";
import { expectLeast, forSeeds } from "./exact/agreement.ts";
import { leastCostBySubsets } from "./exact/by-subsets.ts";
import { leastCostOfNested } from "./exact/nested-subsets.ts";
import { Dice, randomRoll } from "./exact/random-problems.ts";

function randomLie(dice: Dice): NestLie {
  const first = dice.between(2, 9);
  const most = dice.between(1, first);
  const advances = dice.chance(1, 2) ? [most] : [dice.between(0, most), Math.max(1, dice.between(1, most))];
  return { turned: dice.chance(1, 2), height: dice.between(1, 7), first, advances };
}

/** One lie, or two that differ in turn: a shape of one height and turn takes one length in a run. */
function lies(dice: Dice): NestLie[] {
  const one = randomLie(dice);
  return dice.chance(1, 2) ? [one] : [one, { ...randomLie(dice), turned: !one.turned }];
}

/** One or two shapes that nest, a rectangle or two beside them, and now and then pieces of cloth beside the roll. */
function randomNested(seed: number): PackingProblem {
  const dice = new Dice(seed);
  const width = dice.between(8, 24);
  const shapes = Array.from({ length: dice.between(1, 2) }, (): PackingItem => {
    const nest = { across: lies(dice), along: lies(dice) };
    const { first, height } = nest.across[0]!;
    return {
      ...{ across: first, along: height, demand: dice.between(1, 6), turnable: false, place: "strips" },
      nest,
    };
  });
  const plain = Array.from(
    { length: dice.between(0, 2) },
    (): PackingItem => ({
      ...{ across: dice.between(1, width), along: dice.between(1, 7), demand: dice.between(1, 3) },
      ...{ turnable: dice.chance(1, 2), place: "strips" },
    }),
  );
  const sheets = Array.from(
    { length: dice.chance(1, 2) ? dice.between(1, 2) : 0 },
    (): SheetStock => ({
      ...{ across: dice.between(6, width), along: dice.between(4, 14), available: dice.between(1, 2) },
      ...{
        cost: dice.chance(1, 2) ? 0 : dice.between(1, 9),
        firstCut: dice.chance(1, 2) ? "across" : "either",
      },
    }),
  );
  return {
    style: "strips-2",
    items: [...shapes, ...plain],
    roll: { width, available: null, costPerLength: 1 },
    sheets,
  };
}

describe("shapes that nest: the least cost is the one found state by state", () => {
  test("40 small problems, with rectangles, and with pieces of cloth beside the roll", async () => {
    await forSeeds(7001, 7040, async (seed) => {
      const problem = randomNested(seed);
      await expectLeast(problem, leastCostOfNested(problem), `seed ${seed}`);
    });
  });

  test("the two exact models agree where nothing nests", () => {
    for (let seed = 7101; seed <= 7110; seed += 1) {
      const problem = randomRoll(seed, {
        ...{ style: "strips-2", sizes: [2, 3], copies: [1, 3], pieces: 7, width: [6, 20] },
      });
      expect(leastCostOfNested(problem)).toBe(leastCostBySubsets(problem));
    }
  });
});
