import { describe, expect, test } from "vitest";
import type { CuttingStyle, PackingItem, PackingProblem, SheetStock } from "../../src/engine/types.ts";
import { expectLeast } from "./exact/agreement.ts";
import { leastCostByArcs } from "./exact/arcs.ts";
import { leastCostBySubsets } from "./exact/by-subsets.ts";
import { leastCostByLevels } from "./exact/levels.ts";

/** A piece that may not be turned. */
function fixed(across: number, along: number, demand: number): PackingItem {
  return { across, along, demand, turnable: false, place: "strips" };
}

/** A piece that may be turned. */
function free(across: number, along: number, demand: number): PackingItem {
  return { across, along, demand, turnable: true, place: "strips" };
}

function band(across: number, along: number, demand: number): PackingItem {
  return { across, along, demand, turnable: false, place: "bands" };
}

function bolt(style: CuttingStyle, width: number, items: PackingItem[]): PackingProblem {
  return { style, items, roll: { width, available: null, costPerLength: 1 }, sheets: [] };
}

function drawer(style: CuttingStyle, items: PackingItem[], sheets: SheetStock[]): PackingProblem {
  return { style, items, roll: null, sheets };
}

/** Cases small enough to work out on paper; the comment beside each is that working (derived geometry). */
const CASES: { name: string; problem: PackingProblem; least: number }[] = [
  // 4 across, 2 strips of 5.
  { name: "squares that fill the width", problem: bolt("strips-2", 20, [free(5, 5, 8)]), least: 10 },
  // 4 across with 2 over: 9 squares need 3 strips.
  { name: "one square too many", problem: bolt("strips-2", 22, [free(5, 5, 9)]), least: 15 },
  // Lying 3 x 7 two go side by side in a strip of 7; lying 7 x 3 each needs a strip of 3.
  { name: "turning saves a strip", problem: bolt("strips-2", 8, [free(3, 7, 2)]), least: 6 },
  { name: "the same with an up", problem: bolt("strips-2", 8, [fixed(7, 3, 2)]), least: 6 },
  // One to a strip either way: lying 6 x 4 the strip is 4, turned it is 6.
  { name: "turning that does not pay", problem: bolt("strips-2", 6, [free(6, 4, 3)]), least: 12 },
  // Three strips of 4, each holding one 7 wide and, trimmed, one 3 wide.
  {
    name: "short pieces in the ends of strips",
    problem: bolt("strips-2", 10, [fixed(7, 4, 3), fixed(3, 3, 3)]),
    least: 12,
  },
  // Two 2-high pieces stack on one another beside the 4-high one; without stacking they need a strip more.
  {
    name: "stacking fills a strip",
    problem: bolt("strips-3", 10, [fixed(6, 4, 1), fixed(4, 2, 2)]),
    least: 4,
  },
  {
    name: "the same without stacking",
    problem: bolt("strips-2", 10, [fixed(6, 4, 1), fixed(4, 2, 2)]),
    least: 6,
  },
  // Beside 6 wide there is 4 left: a stack of 3 + 2, whose upper piece is trimmed to 3 wide.
  {
    name: "a stacked piece trimmed narrower",
    problem: bolt("strips-3", 10, [fixed(6, 5, 1), fixed(4, 3, 1), fixed(3, 2, 1)]),
    least: 5,
  },
  // One strip of 6: a column of 3 + 3 and one of 2 + 2 + 2, each 5 wide; in low strips 3 + 2 + 2.
  {
    name: "one tall strip beats three low ones",
    problem: bolt("strips-3", 10, [fixed(5, 3, 2), fixed(5, 2, 3)]),
    least: 6,
  },
  // Full-width strips stack up, nothing else fits beside them.
  { name: "binding alone", problem: bolt("strips-2", 42, [fixed(42, 2, 6)]), least: 12 },
  // The band is 3 of 12 wide and 10 long; 9 wide remain beside it: 3 squares a strip, 3 strips of 3 in 10.
  {
    name: "squares beside a lengthwise border",
    problem: bolt("strips-2", 12, [band(3, 10, 1), free(3, 3, 9)]),
    least: 10,
  },
  // Two borders down the roll, one after the other or side by side: side by side is 10 long.
  { name: "two borders side by side", problem: bolt("strips-2", 12, [band(3, 10, 2)]), least: 10 },
  // 3 x 2 of 5 on 15 x 12 (first cut across); 7 pieces need two sheets.
  {
    name: "fewest fat quarters",
    problem: drawer("strips-2", [free(5, 5, 7)], [sheet(15, 12, null, 1)]),
    least: 2,
  },
  // The small scrap holds both pieces; the big one costs more.
  {
    name: "the smaller scrap",
    problem: drawer("strips-2", [free(4, 4, 2)], [sheet(20, 20, 1, 400), sheet(9, 4, 1, 36)]),
    least: 36,
  },
  // Strips along the 16: one 4 wide, one 6 wide holding 10 + 6. Across, the strip of 16 holds 4 + 6 only.
  {
    name: "first cut along saves a sheet",
    problem: drawer("strips-2", [fixed(4, 16, 1), fixed(6, 10, 1), fixed(6, 6, 1)], [sheet(10, 16, null, 1)]),
    least: 1,
  },
  // Only one sheet of 6 x 6: two squares of 4 do not fit.
  {
    name: "too little to hand",
    problem: drawer("strips-2", [free(4, 4, 2)], [sheet(6, 6, 1, 36)]),
    least: Number.POSITIVE_INFINITY,
  },
  // A piece wider than the roll in every allowed turn.
  {
    name: "a piece that does not fit",
    problem: bolt("strips-2", 10, [fixed(11, 3, 1)]),
    least: Number.POSITIVE_INFINITY,
  },
];

function sheet(across: number, along: number, available: number | null, cost: number): SheetStock {
  return { across, along, available, cost, firstCut: "either" };
}

describe("small cases worked out on paper", () => {
  for (const { name, problem, least } of CASES) {
    test(name, async () => {
      expect(leastCostBySubsets(problem), "the model of every sub-multiset").toBe(least);
      if (problem.style === "strips-2" && problem.roll !== null && problem.items.every(inStrips)) {
        expect(await leastCostByLevels(problem), "level packing in HiGHS").toBe(least);
        expect(await leastCostByArcs(problem), "arc flows in HiGHS").toBe(least);
      }
      await expectLeast(problem, least, name);
    });
  }
});

function inStrips(item: PackingItem): boolean {
  return item.place === "strips";
}
