import { describe, expect, test } from "vitest";
import { trianglePieces } from "../../src/cutlist/of-quilt/quilt-strips.ts";
import type { TriangleDemand } from "../../src/quilt/work-types.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { workOut } from "../quilt/reading.ts";

function fabric(print: string) {
  const { value } = readSpecFile(
    `name: T\nfabrics:\n  - name: hens\n    print: ${print}\n    pieces: ["a 4 x 4, 1"]\n`,
    "t.yaml",
  );
  if (value === null || value.kind !== "cut-list") throw new Error("no list");
  return value.fabrics[0]!;
}

const demand = (facing: TriangleDemand["facing"], subcut: TriangleDemand["subcut"]): TriangleDemand => ({
  ...{ part: "side" as const, fabric: "hens", subcut, square: 162560, roundedUp: false },
  ...{ otherRounding: null, tradeShort: false, finished: 1, path: "", at: null, facing },
});

describe("squares for setting triangles of a print with an up", () => {
  // A quartered square gives one triangle that points each way: five that point down want five squares.
  test("the way most wanted decides", () => {
    const sides = demand(
      [
        { eighth: 4, count: 5 },
        { eighth: 0, count: 1 },
        { eighth: 2, count: 2 },
      ],
      "twice-diagonal",
    );
    expect(trianglePieces(sides, fabric("one-way along")).map(({ count }) => count)).toEqual([5]);
    // A print with two heads: up and down are one, six of them at two from a square.
    expect(trianglePieces(sides, fabric("two-way along")).map(({ count }) => count)).toEqual([3]);
    // Without direction eight quarters come from two squares.
    const plain = demand([{ eighth: 0, count: 8 }], "twice-diagonal");
    expect(trianglePieces(plain, fabric("none")).map(({ count }) => count)).toEqual([2]);
  });

  test("halved squares give two that face each other, by which diagonal is cut", () => {
    const corners = demand(
      [
        { eighth: 7, count: 3 },
        { eighth: 3, count: 1 },
        { eighth: 1, count: 2 },
      ],
      "once-diagonal",
    );
    expect(
      trianglePieces(corners, fabric("one-way along")).map(({ count, diagonal }) => [diagonal, count]),
    ).toEqual([
      ["rising", 3],
      ["falling", 2],
    ]);
  });
});

describe("shapes cut from single strips", () => {
  // derived geometry: triangles 3 in high, 12 x 3 in units in rows: every full strip gives as many as its set says, no more.
  test("a strip is told to give what its set counts", () => {
    const { units, cutLists } = workOut(`name: Sixty
fabrics: [{ name: hens }, { name: plum }]
blocks: { a: { size: 12 x 3, cell: { sixty-degree triangles: [hens, plum] } } }
setting: { rows: a a a a a a a a, fill: 4 x 12 }
`);
    const sets = units.flatMap(({ stripSets }) => stripSets);
    expect(sets.some(({ fullSets, perFullSet }) => fullSets > 0 && perFullSet > 1)).toBe(true);
    for (const { strips, fullSets, perFullSet, fromLast, segments } of sets) {
      expect(fullSets * perFullSet + fromLast).toBe(segments);
      const letter = strips[0]?.letter;
      const piece = cutLists.flatMap(({ pieces }) => pieces).find((each) => each.letter === letter);
      if (letter != null) expect(piece?.shape?.asDrawn).toBe(fullSets * perFullSet);
    }
  });
});
