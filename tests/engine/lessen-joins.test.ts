import { describe, expect, test } from "vitest";
import { lessenJoins } from "../../src/engine/easing/lessen-joins.ts";
import { hasPlan, pack, verify } from "../../src/engine/index.ts";
import type { PackingItem, PackingProblem, PackingResult } from "../../src/engine/types.ts";
import { upTo } from "../support/sweep.ts";
import { randomJoinedRoll } from "./exact/random-problems.ts";

/** Strips and ends that runs are joined from. */
function sources({ layouts }: PackingResult): number {
  return layouts
    .flatMap(({ sections, count }) => sections.map((section) => ({ section, count: count * section.count })))
    .reduce(
      (sum, { section, count }) =>
        section.kind === "strips" && section.column.end !== undefined ? sum + count : sum,
      0,
    );
}

const item = (across: number, along: number, demand: number): PackingItem => {
  return { across, along, demand, turnable: false, place: "strips" };
};

const SHAPE = { style: "strips-2", sizes: [1, 4], copies: [1, 8], pieces: 20, width: [12, 30] } as const;

/*
 * Eight strips of two pieces leave 12 each. A run of 80 wants seven of those ends and more, for nothing, or two whole
 * strips, 2 x 42 = 84, for 20 more of the roll.
 */
const problem: PackingProblem = {
  style: "strips-2",
  items: [item(15, 10, 16), { ...item(42, 10, 1), run: { length: 80, loss: 0, leastEnd: 8 } }],
  roll: { width: 42, available: null, costPerLength: 1 },
  sheets: [],
};

describe("joined runs of fewer pieces", () => {
  test("take whole strips where those are within the purchase, and else stay", async () => {
    const found = await pack(problem);
    expect(found).toMatchObject({ status: "proven", rollLength: 80 });
    expect(sources(found)).toBe(7);
    const room = await lessenJoins(problem, found, 100);
    expect(room).toMatchObject({ status: "best-found", rollLength: 100, bound: { value: 80 } });
    expect(sources(room)).toBe(2);
    expect(verify(problem, room)).toEqual([]);
    expect(await lessenJoins(problem, found, 80)).toMatchObject({ layouts: found.layouts, status: "proven" });
  });

  test("are right, within the length, and never more: random problems", async () => {
    let fewer = 0;
    for (let seed = 0; seed < upTo(40, 400); seed++) {
      const asked = randomJoinedRoll(seed, SHAPE);
      const found = await pack(asked, { effort: 100 });
      if (!hasPlan(found)) continue;
      const limit = Math.floor(found.rollLength * 1.15);
      const eased = await lessenJoins(asked, found, limit);
      expect(verify(asked, eased)).toEqual([]);
      expect(eased.rollLength).toBeLessThanOrEqual(Math.max(limit, found.rollLength));
      expect(sources(eased)).toBeLessThanOrEqual(sources(found));
      expect(eased.bound).toEqual(found.bound);
      if (sources(eased) < sources(found)) fewer++;
    }
    expect(fewer).toBeGreaterThan(2);
  }, 120_000);
});
