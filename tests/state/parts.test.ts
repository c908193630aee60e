import { describe, expect, test } from "vitest";
import type { CutPiece } from "../../src/cutlist/types.ts";
import type { Part } from "../../src/plan/types.ts";
import { readFact } from "../../src/spec/index.ts";
import { type Cutting, restsOf } from "../../src/state/rests.ts";
import { stillInRun, stillWanted } from "../../src/state/still-wanted.ts";
import { IN } from "../support/cut-list-spec.ts";

const blank = { turned: false, cause: null, keep: false, number: 0, kind: -1 } as const;

/** A strip of pieces side by side, each as high as the strip, and what is left at its end. */
function strip(pieces: readonly number[], high: number, run: number): Part {
  let x = 0;
  const parts = pieces.map((across): Part => {
    const part = {
      ...blank,
      role: "piece" as const,
      x,
      y: 0,
      across,
      along: high,
      cut: null,
      parts: [],
      piece: 0,
    };
    x += across;
    return part;
  });
  const end: Part = {
    ...blank,
    role: "waste",
    x,
    y: 0,
    across: run - x,
    along: high,
    cut: null,
    parts: [],
    piece: null,
    cause: "strip-end",
  };
  const all = run > x ? [...parts, end] : parts;
  return {
    ...blank,
    role: "strip",
    x: 0,
    y: 0,
    across: run,
    along: high,
    cut: "along",
    parts: all,
    piece: null,
    number: 1,
  };
}

const cutting = (part: Part, told: number, real = part.across): Cutting => ({
  told: new Set(part.parts.slice(0, told)),
  spoiled: new Set(),
  off: new Set(),
  planned: { across: part.across, along: part.along },
  ends: { across: real, along: part.along },
  atEdge: true,
});

describe("what a strip leaves", () => {
  const four = strip([9, 9, 9, 9], 5, 42);

  test.each([
    ["nothing cut: all of it", 0, 42, [[42, 5]]],
    ["two cut: the other half in one piece", 2, 42, [[24, 5]]],
    ["all cut: its end", 4, 42, [[6, 5]]],
    ["all cut of narrower cloth", 4, 40, [[4, 5]]],
    ["all cut of wider cloth", 4, 44, [[8, 5]]],
    ["two cut of cloth that ends inside the fourth", 2, 30, [[12, 5]]],
  ])("%s", (_, told, real, left) => {
    const rests = restsOf(four, cutting(four, told, real));
    expect(rests.map(({ across, along }) => [across, along])).toEqual(left);
  });

  test("only what ends where the fabric does is marked so", () => {
    const apart = { ...cutting(four, 0), told: new Set([four.parts[1]!]) };
    expect(restsOf(four, apart).map(({ across, atEdge }) => [across, atEdge])).toEqual([
      [9, undefined],
      [24, true],
    ]);
    expect(restsOf(four, { ...apart, atEdge: false }).some(({ atEdge }) => atEdge)).toBe(false);
  });

  test("spoiled: nothing", () => {
    expect(restsOf(four, { ...cutting(four, 0), spoiled: new Set([four]) })).toEqual([]);
  });

  test("a strip cut off inside a section does not hang together with its neighbour", () => {
    const at = (part: Part, y: number): Part => ({
      ...part,
      y,
      parts: part.parts.map((each) => ({ ...each, y })),
    });
    const [one, two, three] = [strip([9], 5, 42), at(strip([9], 5, 42), 5), at(strip([9], 5, 42), 10)];
    const rest: Part = {
      ...blank,
      role: "rest",
      x: 0,
      y: 0,
      across: 42,
      along: 15,
      cut: "across",
      parts: [one, two, three],
      piece: null,
    };
    const told = new Set(one.parts.slice(0, 1));
    const asked = { ...cutting(rest, 0), told, off: new Set([two]) };
    expect(restsOf(rest, asked).map(({ across, along }) => [across, along])).toEqual([
      [33, 5],
      [42, 5],
      [42, 5],
    ]);
    const together = { ...cutting(rest, 0), told };
    expect(restsOf(rest, together).map(({ across, along }) => [across, along])).toEqual([
      [33, 5],
      [42, 10],
    ]);
  });
});

const bag = (
  letter: string,
  across: number,
  along: number,
  count: number,
  more: Partial<CutPiece> = {},
): CutPiece => ({
  ...{ letter, label: "", across, along, fullWidth: false, count, turnable: true, cut: "strips", join: "no" },
  ...{ uses: [], subcut: "none", diagonal: "any", trimTo: null, roundedUp: false, notes: [] },
  ...more,
});

describe("what is still wanted", () => {
  test("a bag's own pieces first, then what is over of another of its size", () => {
    const a = bag("A", 4, 4, 10);
    const b = bag("B", 4, 4, 6);
    const { wanted, served, over } = stillWanted([a, b], [{ piece: a, count: 13 }]);
    expect(wanted.map(({ cut, still }) => [cut, still?.count ?? 0])).toEqual([
      [10, 0],
      [3, 3],
    ]);
    expect(served).toEqual([{ from: "A", to: "B", count: 3 }]);
    expect(over).toEqual([]);
  });

  test("a fixed piece is not made of one that lay anyhow; it is cloth", () => {
    const a = bag("A", 4, 6, 2);
    const fixed = bag("B", 4, 6, 5, { turnable: false });
    const { served, over } = stillWanted([a, fixed], [{ piece: a, count: 3 }]);
    expect(served).toEqual([]);
    expect(over).toEqual([{ rectangle: { across: 4, along: 6 }, count: 1 }]);
  });

  test("a bag of one letter and another size gets nothing of it", () => {
    const was = bag("A", 4, 5, 2);
    const { wanted, over } = stillWanted([bag("A", 4, 4, 2)], [{ piece: was, count: 2 }]);
    expect(wanted[0]?.still?.count).toBe(2);
    expect(over).toEqual([{ rectangle: { across: 4, along: 5 }, count: 2 }]);
  });

  test("a run: further strips lose a join more", () => {
    const run = {
      length: 100,
      loss: 5,
      join: "straight",
      leastEnd: 8,
      lengths: [],
      whole: null,
      notes: [],
    } as const;
    const piece = bag("A", 40, 2, 1, { fullWidth: true, turnable: false });
    const of = (count: number) => stillInRun({ ...run, lengths: [] }, [{ piece, count }]);
    // One strip gives 40; 60 are missing, and the join takes 5. Two give 75: 25 and 5. Three give 110.
    expect(
      [0, 1, 2, 3].map((count) => (count === 0 ? stillInRun({ ...run, lengths: [] }, []) : of(count))),
    ).toEqual([100, 65, 30, null]);
  });
});

describe("one thing said", () => {
  const strips = (numbers: number[], cloth: string | null = null) => ({ of: "strips", numbers, cloth });

  test.each([
    ["cut to strip 12", { kind: "cut", what: { of: "to-strip", last: 12, cloth: null } }],
    ["strips 1, 3 and 5 cut", { kind: "cut", what: strips([1, 3, 5]) }],
    ["Strips 2 to 4 are spoiled.", { kind: "spoiled", what: strips([2, 3, 4]) }],
    ["strip 7 is spoilt", { kind: "spoiled", what: strips([7]) }],
    ["strip 4 cut off", { kind: "cut-off", what: strips([4]) }],
    ["strip 1 of fat quarter 2 cut", { kind: "cut", what: strips([1], "fat quarter 2") }],
    ["strip 2 of rest of the bolt cut", { kind: "cut", what: strips([2], "rest of the bolt") }],
    ["6 of A cut", { kind: "cut", what: { of: "pieces", count: 6, letter: "A" } }],
    ["2 [b] spoiled", { kind: "spoiled", what: { of: "pieces", count: 2, letter: "B" } }],
    ["20 of A in the bag", { kind: "in-bag", what: { of: "pieces", count: 20, letter: "A" } }],
    ["all cut", { kind: "cut", what: { of: "all", cloth: null } }],
    ["40 in wide", { kind: "wide", width: 40 * IN }],
    ["1 1/2 yd left", { kind: "left", length: 54 * IN }],
    ["nothing left", { kind: "left", length: 0 }],
    ["12 x 20 in in hand", { kind: "in-hand", across: 12 * IN, along: 20 * IN, count: 1 }],
    ["3 of 12 x 20 in in hand", { kind: "in-hand", across: 12 * IN, along: 20 * IN, count: 3 }],
  ])("%s", (said, fact) => {
    expect(readFact(said, "in")).toEqual({ value: fact });
  });

  test.each([
    "",
    "strip cut",
    "strip 0 cut",
    "strips 5 to 3 cut",
    "wide",
    "fish wide",
    "0 of A cut",
    "-3 in left",
  ])("%j is not read", (said) => {
    expect(readFact(said, "in")).toHaveProperty("problem");
  });
});
