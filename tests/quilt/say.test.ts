import { expect, test } from "vitest";
import { rational } from "../../src/length/rational.ts";
import type { Ruler } from "../../src/length/types.ts";
import { sayLength, saySizeBeside, sayUnlike } from "../../src/quilt/say.ts";
import { english } from "../../src/words/index.ts";

const INCHES: Ruler = { unit: "in", mark: 2032 };
const METRIC: Ruler = { unit: "mm", mark: 640 };

test.each([
  ["on a mark", rational(BigInt(2032 * 3), 1n), INCHES, "3/8 in"],
  ["a third of an inch", rational(BigInt(16256 * 10), 3n), INCHES, "3 1/3 in"],
  ["a thirteenth", rational(BigInt(16256 * 40), 13n), INCHES, "about 3 1/8 in"],
  ["between millimetres", rational(BigInt(8500), 1n), METRIC, "about 13 mm"],
])("%s", (_, length, ruler, told) => {
  expect(english.spoken.length(sayLength(length, ruler))).toBe(told);
});

test("two lengths nearer than a mark are told so that they differ", () => {
  expect(
    sayUnlike(rational(BigInt(16256 * 40), 13n), rational(BigInt(16256 * 25), 8n), INCHES).map(
      english.spoken.length,
    ),
  ).toEqual(["about 3.077 in", "about 3.125 in"]);
});

test("a size that is not cut is about the nearest mark, finer where that is what is cut", () => {
  const cut: [number, number] = [2032 * 28, 2032 * 28];
  expect(saySizeBeside(cut, [2032 * 26 + 300, 2032 * 26 + 300], INCHES).map(english.spoken.size)).toEqual([
    "3 1/2 x 3 1/2 in",
    "about 3 1/4 x 3 1/4 in",
  ]);
  expect(english.spoken.size(saySizeBeside(cut, [56336, 56336], INCHES)[1])).toBe("about 3.47 x 3.47 in");
});
