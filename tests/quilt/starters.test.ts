import { describe, expect, test } from "vitest";
import { checkQuilt, STARTERS, unitSizes } from "../../src/index.ts";
import { EIGHTH_INCH_RULER } from "../../src/length/index.ts";
import { english } from "../../src/words/index.ts";
import { said } from "../support/in-words.ts";

describe.each(STARTERS)("starter $name", ({ text }) => {
  test("has neither errors nor warnings", () => {
    const { diagnostics } = checkQuilt(text, "starter.yaml");
    expect(diagnostics.filter(({ severity }) => severity !== "info")).toEqual([]);
  });

  test("explains itself, in lines that fit a screen", () => {
    expect(text).toMatch(/^# /);
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(110);
  });
});

test("the first starter is a nine-block quilt with a border in about 25 lines, notes aside", () => {
  const lines = (STARTERS[0]?.text ?? "").split("\n").filter((line) => !/^\s*(#|$)/.test(line));
  expect(lines.length).toBeLessThanOrEqual(26);
});

// Fast Flying Geese, and How to measure and cut triangles: 5 1/4 and 2 7/8 in for 4 x 2 geese.
test("sizes of a unit by every method", () => {
  const asked = {
    unit: "geese",
    size: "4 x 2",
    measure: "in",
    seam: null,
    ruler: null,
    rounding: "exact",
  } as const;
  const methods = unitSizes(asked).value?.methods ?? [];
  const four = methods.find(({ method }) => method === "four at a time");
  expect(
    four?.pieces.map((piece) => `${piece.count} x ${english.unitSizes.size(piece, EIGHTH_INCH_RULER)}`),
  ).toEqual(["1 x 5 1/4 x 5 1/4 in", "4 x 2 7/8 x 2 7/8 in"]);
  expect(said(unitSizes({ ...asked, unit: "flying gese" }).diagnostics[0])?.hint).toContain("flying geese");
  expect(unitSizes({ ...asked, size: "4 by" }).value).toBe(null);
});
