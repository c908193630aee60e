import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { checkQuilt } from "../../src/pipeline.ts";
import { difference, ideasFor, saves, tryIdeas } from "../../src/savings/index.ts";
import type { Idea } from "../../src/savings/types.ts";

const quilt = (name: string): string =>
  readFileSync(join(import.meta.dirname, "..", "..", "fixtures", "quilts", `${name}.yaml`), "utf8");
const keysOf = (text: string) => ideasFor(text).map((family) => family.map(({ key }) => key));

describe("ideas for a file", () => {
  test.each([
    "allotments",
    "nine-stars",
    "vintage-crib",
    "sashed-star-points",
    "wild-geese-round",
    "salsa-on-point",
  ])("%s: every idea can be read, and changes the text", (name) => {
    const text = quilt(name);
    const ideas = ideasFor(text).flat();
    expect(ideas.length).toBeGreaterThan(3);
    expect(new Set(ideas.map(({ key }) => key)).size).toBe(ideas.length);
    for (const idea of ideas) {
      expect(idea.text, idea.key).not.toBe(text);
      const codes = checkQuilt(idea.text, name).diagnostics.flatMap(({ severity, code }) =>
        severity === "error" ? [code] : [],
      );
      // A change may not suit the design; the file itself stays one that can be read.
      for (const code of codes)
        expect(code, idea.key).not.toMatch(/^(YAML|KEY|TYPE|FILE|CODE-UNKNOWN|FABRIC-UNKNOWN|LENGTH|CHOICE)/);
    }
  });

  test("a print may be turned, blocks laid one way, a border cut along the selvage, widths narrowed nearest first", () => {
    const keys = keysOf(quilt("allotments"));
    expect(keys).toContainEqual(["free/seedlings"]);
    expect(keys).toContainEqual(["turned B 0"]);
    expect(keys).toContainEqual(["border/1/lengthwise"]);
    expect(keys).toContainEqual([
      "border/1/1",
      "border/1/2",
      "border/1/3",
      "border/1/4",
      "border/1/6",
      "border/1/8",
    ]);
    // Its pond has corners of a size of their own: blocks are not made smaller.
    expect(keys.flat()).not.toContain("block 1");
    expect(keysOf(quilt("nine-stars")).flat()).toContain("block 1");
  });

  test("a border cut along the selvage may be joined instead", () => {
    const ideas = ideasFor(quilt("sashed-star-points")).flat();
    const joined = ideas.find(({ key }) => key === "border/0/strips");
    expect(joined?.text).toContain("width: 3 1/2, cornerstones: aqua dot }");
  });

  test("none for what cannot be read", () => {
    expect(ideasFor("a: [")).toEqual([]);
    expect(ideasFor("")).toEqual([]);
  });
});

describe("trying ideas", () => {
  const bought = (length: number, cost: number | null) => [{ fabric: "a", length, cost }];
  const idea = (key: string): Idea => ({ key, change: { kind: "style", style: "strips-3" }, text: key });

  test("money counts before length, length where there are no prices", () => {
    expect(saves(difference(bought(10, 100), bought(12, 90)))).toBe(true);
    expect(saves(difference(bought(10, 100), bought(9, 110)))).toBe(false);
    expect(saves(difference(bought(10, null), bought(9, null)))).toBe(true);
    expect(saves(difference(bought(10, 100), bought(10, 100)))).toBe(false);
    expect(difference(bought(10, 100), [])).toEqual({ cost: -100, length: -10, fabrics: ["a"] });
  });

  test("the first of a family that buys less is told, those after it are not planned", async () => {
    const lengths: Record<string, number> = { near: 10, nearer: 9, far: 5, other: 8, none: 11 };
    const planned: string[] = [];
    const found = await tryIdeas(
      bought(10, null),
      [[idea("near"), idea("nearer"), idea("far")], [idea("none")], [idea("other")]],
      async ({ key }) => {
        planned.push(key);
        return bought(lengths[key]!, null);
      },
    );
    expect(planned).toEqual(["near", "nearer", "none", "other"]);
    expect(found.map(({ idea }) => idea.key)).toEqual(["other", "nearer"]);
  });
});
