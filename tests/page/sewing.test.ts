import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { planQuilt, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import { type Sewing, sewingOf } from "../../src/page/planner/sewing.ts";

/** Typeset words keep their spaces together. */
const loose = (text: string): string => text.replace(/\s/g, " ");

const sewing = async (name: string): Promise<Sewing> => {
  const text = readFileSync(`fixtures/quilts/${name}.yaml`, "utf8");
  const { value } = await planQuilt(text, `${name}.yaml`, USUAL_OPTIONS, solveHere);
  const told = value === null ? null : sewingOf(value);
  if (told === null) throw new Error(`${name} is sewn`);
  return told;
};

describe("the sewing as the page goes through it", () => {
  test("of each kind of a block as many are made as the quilt holds, and its pressing is called by it", async () => {
    const { blocks, units } = await sewing("nine-stars");
    expect(blocks.map(({ title }) => loose(title))).toEqual([
      "Block star: 9 in all, of 2 kinds: star 1 (make 5) and star 2 (make 4)",
    ]);
    // Three rows and their joining of the first kind; the second is told by what differs.
    expect(blocks[0]?.steps.map(({ count }) => count)).toEqual([5, 5, 5, 5, 4]);
    expect(blocks[0]?.presses.map(({ name, count }) => [name, count])).toEqual([
      ["star 1", 5],
      ["star 2", 4],
    ]);
    expect(blocks[0]?.pictures).toHaveLength(1);
    expect(units.map(({ blocks }) => blocks)).toEqual([[0]]);
    // Four geese from one square of 5 1/4 in and four of 2 7/8 in: common practice for geese of 4 by 2 in.
    expect(units[0]?.bags.map(({ size }) => loose(size))).toEqual(["5¼ in square", "2⅞ in square"]);
  });

  test("parts on a foundation are made one by one; what is done once is done once", async () => {
    const { blocks } = await sewing("wild-geese-round");
    expect(blocks.map(({ steps }) => steps.map(({ count }) => count))).toEqual([
      [1, 1, 36, 1, 1, 1],
      [6, 6, 3],
    ]);
    expect(loose(blocks[0]?.steps[2]?.title ?? "")).toContain("make 36");
  });
});
