import { describe, expect, test } from "vitest";
import { leastEnd, lossPerJoin, stripsToJoin } from "../../src/cutlist/joins.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { waysOfJoining } from "../../src/cutlist/ways-of-joining.ts";
import { cutListSpec, fabric, IN, piece } from "../support/cut-list-spec.ts";

const INCHES = { unit: "in", mark: IN / 8 } as const;

describe("joining strips", () => {
  // derived geometry: strips of width w crossed at right angles overlap in a square w long, so a diagonal
  // join takes w; a straight join takes two seam allowances.
  test("a diagonal join takes the strip's width, a straight one two seams", () => {
    expect(lossPerJoin("diagonal", 2.5 * IN, INCHES)).toBe(2.5 * IN);
    expect(lossPerJoin("straight", 2.5 * IN, INCHES)).toBe(0.5 * IN);
  });

  test("metric straight seams are 0.75 cm each", () => {
    expect(lossPerJoin("straight", 41_600, { unit: "cm", mark: 1600 })).toBe(2 * 4800);
  });

  test.each([
    // 46 x 46 in quilt, no allowance, 40 in strips: 5 strips. Measuring fabric for continuous binding.
    { around: 2 * (46 + 46), usable: 40, loss: 0, strips: 5 },
    // 54 x 60 in quilt and 10 in over, 42 in strips: 238 in, 6 strips. How to make a double-fold flange
    // quilt binding.
    { around: 2 * (54 + 60) + 10, usable: 42, loss: 0, strips: 6 },
    // 60 x 72 in quilt and 10 in over, 40 in strips: 7 strips. Quilty Math.
    { around: 2 * (60 + 72) + 10, usable: 40, loss: 0, strips: 7 },
    // 50 x 60 in quilt at 40 in, 2 in a strip allowed for joins: 6 strips. How to calculate the number of
    // strips to bind a quilt. The source takes 2 in from every strip; our n - 1 joins give as many.
    { around: 2 * (50 + 60), usable: 40, loss: 2, strips: 6 },
  ])("$around in from strips of $usable in: $strips strips", ({ around, usable, loss, strips }) => {
    expect(stripsToJoin(around * IN, usable * IN, loss * IN)).toBe(strips);
  });

  test("strips just long enough are enough", () => {
    // derived geometry: n strips of length L make n L - (n - 1) loss.
    for (const n of [1, 2, 3, 7]) {
      const made = n * 42 * IN - (n - 1) * 2.5 * IN;
      expect(stripsToJoin(made, 42 * IN, 2.5 * IN)).toBe(n);
      expect(stripsToJoin(made + 1, 42 * IN, 2.5 * IN)).toBe(n + 1);
    }
  });

  test("strips no longer than the join takes cannot be joined", () => {
    expect(stripsToJoin(100 * IN, 40 * IN, 40 * IN)).toBeNull();
  });
});

describe("long pieces in a cut list", () => {
  test("are cut as full-width strips, and it is said how they are joined", () => {
    const border = piece("border", 3.5, 60, 4, { join: "straight" });
    const { value, diagnostics } = listCuts(cutListSpec([fabric("Sea", [border])]));
    // derived geometry: 4 x 60 = 240 in; 6 strips of 42 in less 5 joins of 1/2 in make 249 1/2 in, 5 make 208.
    expect(value?.[0]?.pieces[0]).toMatchObject({
      across: 42 * IN,
      along: 3.5 * IN,
      fullWidth: true,
      count: 6,
      turnable: false,
      notes: [
        {
          is: "run",
          strips: 6,
          ends: 0,
          join: "straight",
          lengths: [{ length: 60 * IN, count: 4 }],
          whole: null,
        },
      ],
      joined: { length: 240 * IN, loss: IN / 2 },
    });
    expect(diagnostics).toMatchObject([
      { code: "PIECE-JOINED", severity: "info", path: "fabrics[0].pieces[0]" },
    ]);
  });

  test.each([
    { usable: 42, length: 240, least: 16 },
    { usable: 12, length: 240, least: 12 },
    { usable: 42, length: 10, least: 10 },
  ])("have no piece shorter than the maker joins, cloth and run allowing", ({ usable, length, least }) => {
    const joining = { ruler: INCHES, joinFrom: 16 * IN };
    expect(leastEnd(joining, usable * IN, length * IN)).toBe(least * IN);
  });

  test("that may also be cut along the selvage are left to the plan", () => {
    const borders = [
      piece("side", 3.5, 60, 2, { join: "diagonal", cut: "either" }),
      piece("top", 4.5, 50, 2, { join: "diagonal", cut: "either" }),
      piece("square", 4.5, 4.5, 8),
    ];
    const [list] = listCuts(cutListSpec([fabric("Sea", borders)])).value ?? [];
    const ways = waysOfJoining(list!, 42 * IN, { ruler: INCHES, joinFrom: 16 * IN });
    expect(ways.map(({ way }) => way)).toEqual(["whole", "mixed", "mixed", "joined"]);
    expect(ways[3]?.cutList.pieces.map(({ letter, fullWidth }) => [letter, fullWidth])).toEqual([
      ["A", true],
      ["B", true],
      ["C", false],
    ]);
  });
});
