import { describe, expect, test } from "vitest";
import { mendingOf } from "../../src/diagnostics/mending.ts";
import { checkQuilt } from "../../src/pipeline.ts";

const mendings = (text: string) =>
  checkQuilt(text, "a.yaml").diagnostics.map((each) => [each.code, mendingOf(each)]);

describe("a word of the file that is nearly another", () => {
  const piece = (more: string) =>
    `fabrics: [{ name: a, width: 43 in, pieces: [{ size: 2 x 3, count: 4, ${more} }] }]`;

  test("a value is mended, not the key before it", () => {
    expect(mendings(piece("turn: fixd"))).toContainEqual(["CHOICE-UNKNOWN", { from: "fixd", to: "fixed" }]);
  });

  test("a key", () => {
    expect(mendings(piece("turm: fixed"))).toContainEqual(["KEY-UNKNOWN", { from: "turm", to: "turn" }]);
  });

  test("a word on one line", () => {
    expect(mendings("fabrics: [{ name: a, pieces: ['2 x 3, 4, lengthwys'] }]")).toContainEqual([
      "PIECE-LINE-UNREADABLE",
      { from: "lengthwys", to: "lengthwise" },
    ]);
  });

  test("nothing is near, or nothing is wrong with a word", () => {
    expect(mendings(piece("turn: qqqqqqqq"))).toContainEqual(["CHOICE-UNKNOWN", null]);
    expect(
      mendings("fabrics: [{ name: a, pieces: ['2 x, 4'] }]").every(([, mending]) => mending === null),
    ).toBe(true);
  });
});
