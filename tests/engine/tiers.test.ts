import { expect, test } from "vitest";
import { oracleForTwo } from "../../src/engine/oracles/oracle-two.ts";
import { dropSurplus } from "../../src/engine/problem/assemble.ts";
import { startClock } from "../../src/engine/problem/clock.ts";
import { gatherKinds, transposeKinds } from "../../src/engine/problem/reduce.ts";
import { lengthOf } from "../../src/engine/problem/roll-question.ts";
import { highsSolver } from "../../src/engine/solver/highs.ts";
import { searchTiers } from "../../src/engine/tiers/tier-tree.ts";
import { leastLength, mostShortfall, tierCut, tierSteps } from "../../src/engine/tiers/tiers.ts";
import { leastCostBySubsets } from "./exact/by-subsets.ts";
import { Dice, randomRoll } from "./exact/random-problems.ts";

test("branching over tiers alone comes to the least length of every sub-multiset", async () => {
  const solver = await highsSolver();
  for (let seed = 4001; seed <= 4040; seed++) {
    const shape = { sizes: [5, 8], copies: [1, 1], pieces: 8, width: [8, 40] } as const;
    const { items, roll } = randomRoll(seed, { style: "strips-2", ...shape });
    const least = leastCostBySubsets({ style: "strips-2", items, roll, sheets: [] });
    if (!Number.isFinite(least)) continue;
    const kinds = gatherKinds(items);
    const frames = { upright: kinds, transposed: transposeKinds(kinds) };
    const demand = kinds.map((kind) => kind.demand);
    // One strip for every piece, in its highest lie that fits, is a plan to start from.
    const high = (k: number) =>
      Math.max(...kinds[k]!.lies.filter(({ width }) => width <= roll!.width).map(({ height }) => height));
    let upper = demand.reduce((sum, count, k) => sum + count * high(k), 0) + 1;
    let lower = 0;
    searchTiers({
      oracle: oracleForTwo(kinds, roll!.width),
      ...{ demand, pool: [], lower: 0, upper, solver, clock: startClock({}) },
      offer(strips) {
        upper = Math.min(upper, lengthOf(dropSurplus(frames, demand, strips)));
        return upper;
      },
      raise(value) {
        lower = Math.max(lower, value);
      },
    });
    expect([lower <= least, upper], `seed ${seed}`).toEqual([true, least]);
  }
});

test("the bound of a cut is never above the best whole numbers of strips, nor the shortfall below theirs", () => {
  const dice = new Dice(77);
  for (let round = 0; round < 200; round++) {
    const heights = [dice.between(1, 5), dice.between(6, 9), dice.between(10, 14)];
    const best = Float64Array.from([dice.between(0, 20), dice.between(20, 40), dice.between(40, 60)]);
    const guide = heights.map((height) => height * dice.between(1, 4));
    const whole = { prices: new Float64Array(1), scale: 1, total: dice.between(1, 150) };
    const steps = tierSteps(heights);
    const cut = tierCut(whole, best, guide, steps);
    const bounds = { least: [1, 0, 0], most: [4, 3, 2] };
    const length = dice.between(5, 60);
    let shortest = Infinity;
    let spare = -Infinity;
    for (let a = 1; a <= 4; a++)
      for (let b = 0; b <= Math.min(a, 3); b++)
        for (let c = 0; c <= Math.min(b, 2); c++) {
          const held = (a - b) * best[0]! + (b - c) * best[1]! + c * best[2]!;
          const long = a * steps[0]! + b * steps[1]! + c * steps[2]!;
          if (held >= whole.total) shortest = Math.min(shortest, long);
          if (long <= length) spare = Math.max(spare, held - whole.total);
        }
    expect(leastLength(cut, steps, bounds)).toBeLessThanOrEqual(shortest);
    if (spare >= 0) expect(mostShortfall(cut, steps, bounds, length)).toBeGreaterThanOrEqual(spare);
  }
});
