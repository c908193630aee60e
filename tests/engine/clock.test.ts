import { describe, expect, test } from "vitest";
import { lessenWork, pack } from "../../src/engine/index.ts";
import type { PackingProblem, PackingResult } from "../../src/engine/types.ts";
import { randomCutList } from "../bench/random-cut-lists.ts";

/** A wall clock that goes on so many milliseconds every time it is looked at. */
function ticking(each: number): () => number {
  let time = 0;
  return () => {
    time += each;
    return time;
  };
}

function answer({ stats, ...result }: PackingResult): string {
  return JSON.stringify({ ...result, cutShort: stats.cutShort === "clock" });
}

/** Both are too hard for the work allowed below; the second is laid on scraps. */
const HARD: readonly PackingProblem[] = [randomCutList(186), randomCutList(36)];

describe("a search limited by counted work", () => {
  test.each(HARD)("ends at the same plan on a fast and on a slow machine", async (problem) => {
    const limits = { effort: 60, budget: 1e12 };
    const fast = await pack(problem, limits, ticking(0));
    const slow = await pack(problem, limits, ticking(1000));
    expect(fast.status).toBe("best-found");
    expect(answer(slow)).toBe(answer(fast));
    expect(slow.stats).toEqual(fast.stats);
    const eased = await lessenWork(problem, fast, fast.rollLength, limits, undefined, ticking(0));
    const slowly = await lessenWork(problem, fast, fast.rollLength, limits, undefined, ticking(1000));
    expect(answer(slowly)).toBe(answer(eased));
  });

  test("that is ended by the clock all the same says so", async () => {
    const problem = HARD[0]!;
    const late = await pack(problem, { effort: 60, budget: 5000 }, ticking(1000));
    expect(late).toMatchObject({ status: "best-found", stats: { cutShort: "clock" } });
    const inTime = await pack(problem, { effort: 60, budget: 5000 }, ticking(0));
    expect(inTime.stats.cutShort).toBe("work");
    expect(inTime.objective).toBeLessThanOrEqual(late.objective);
  });
});
