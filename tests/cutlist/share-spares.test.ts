import { expect, test } from "vitest";
import { cutsOf, workOut } from "../quilt/reading.ts";

/** Two kinds of unit of one print, one wanting upper left halves, the other lower right ones. */
function quilt(print: string, second: string): string {
  return `fabrics: [{ name: birds, print: ${print} }, { name: pale }, { name: dark }]
blocks:
  a: { size: 6, cell: { half-square triangle: [birds, pale], method: single triangles } }
  b: { size: 6, cell: { half-square triangle: ${second}, method: single triangles } }
setting: { rows: a b, fill: 4 x 2 }
`;
}

test("a half that one unit leaves over serves another of the same fabric and size", () => {
  // Four upper left halves and four lower right ones, heads up: four squares give both.
  expect(cutsOf(workOut(quilt("one-way", "[dark, birds]")), "birds")).toEqual(["6.875 x 6.875 x 4"]);
});

test("halves that lie alike are not shared: each square gives one of them", () => {
  expect(cutsOf(workOut(quilt("one-way", "[birds, dark]")), "birds")).toEqual(["6.875 x 6.875 x 8"]);
});

test("a print that reads alike from both ends gives two to a square", () => {
  expect(cutsOf(workOut(quilt("two-way", "[birds, dark]")), "birds")).toEqual(["6.875 x 6.875 x 4"]);
});

test("odd numbers of two units share the square that each would cut for its last half", () => {
  const odd = quilt("none", "[birds, dark]").replace("rows: a b, fill: 4 x 2", "rows: a b a b a b");
  // Three and three: two squares each, or three together.
  expect(cutsOf(workOut(odd), "birds")).toEqual(["6.875 x 6.875 x 3"]);
});

test("what each use takes of a shared bag adds up to the squares cut", () => {
  const cut = workOut(quilt("one-way", "[dark, birds]")).cutLists.find(
    ({ fabric }) => fabric.name === "birds",
  );
  for (const { uses, count } of cut?.pieces ?? []) {
    expect(uses.reduce((sum, use) => sum + use.count, 0)).toBe(count);
    expect(uses.every((use) => use.count >= 0)).toBe(true);
  }
  expect(cut?.pieces.map(({ count }) => count)).toEqual([4]);
});
