import { describe, expect, test } from "vitest";
import { letterAt } from "../../src/cutlist/letters.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import type { FabricSpec } from "../../src/spec/types.ts";
import { cutListSpec, fabric, fullWidth, IN, piece } from "../support/cut-list-spec.ts";
import { said } from "../support/in-words.ts";

function listOne(one: FabricSpec) {
  const { value, diagnostics } = listCuts(cutListSpec([one]));
  return { pieces: value?.[0]?.pieces ?? [], value, diagnostics };
}

test("letters go on after Z, and leave out U, which begins the names of units", () => {
  expect([0, 19, 20, 24, 25, 49, 50, 649, 650].map(letterAt)).toEqual([
    "A",
    "T",
    "V",
    "Z",
    "AA",
    "AZ",
    "BA",
    "ZZ",
    "AAA",
  ]);
});

describe("listing cuts", () => {
  test("letters the largest first", () => {
    const { pieces } = listOne(
      fabric("Sea", [
        piece("s", 2, 2, 1),
        piece("l", 8, 8, 1),
        fullWidth("binding", 2.5, 6),
        piece("m", 4, 4, 1),
      ]),
    );
    expect(pieces.map(({ letter, label }) => [letter, label])).toEqual([
      ["A", "binding"],
      ["B", "l"],
      ["C", "m"],
      ["D", "s"],
    ]);
    expect(pieces[0]).toMatchObject({ across: 42 * IN, fullWidth: true, turnable: false });
  });

  test("gathers equal sizes, whichever way a free one is written, and keeps every use", () => {
    const { pieces } = listOne(
      fabric("Sea", [piece("sky", 2.5, 4.5, 8), piece("path", 4.5, 2.5, 4), piece("sky", 2.5, 4.5, 2)]),
    );
    expect(pieces).toHaveLength(1);
    expect(pieces[0]).toMatchObject({
      across: 2.5 * IN,
      along: 4.5 * IN,
      count: 14,
      label: "sky, path",
      uses: [
        { purpose: { for: "label", label: "sky" }, count: 10 },
        { purpose: { for: "label", label: "path" }, count: 4 },
      ],
    });
  });

  test("keeps apart what has another turn rule or lies the other way", () => {
    const fixed = { turn: "fixed" } as const;
    const { pieces } = listOne(
      fabric("Sea", [piece("a", 2, 4, 1), piece("b", 2, 4, 1, fixed), piece("c", 4, 2, 1, fixed)]),
    );
    expect(pieces.map(({ across, along, turnable }) => [across / IN, along / IN, turnable])).toEqual([
      [4, 2, false],
      [2, 4, false],
      [2, 4, true],
    ]);
  });

  test("a square is never turned, so its turn rule does not keep it apart", () => {
    const { pieces } = listOne(fabric("Sea", [piece("a", 3, 3, 1), piece("b", 3, 3, 1, { turn: "fixed" })]));
    expect(pieces).toMatchObject([{ count: 2, turnable: false }]);
  });

  test("a free piece cut along the selvage lies with its long side there", () => {
    const { pieces } = listOne(fabric("Sea", [piece("border", 70, 5, 2, { cut: "lengthwise" })]));
    expect(pieces).toMatchObject([{ across: 5 * IN, along: 70 * IN, turnable: false, cut: "lengthwise" }]);
  });

  test("full-width pieces take the width left by selvages and washing", () => {
    const one = fabric("Sea", [fullWidth("binding", 2.5, 6)], { shrinkAcross: 50 });
    // 42 in less 5 %: 39.9 in.
    expect(listOne(one).pieces[0]?.across).toBe(Math.floor(42 * IN * 0.95));
  });

  test("the order written does not change the list", () => {
    const some = [
      piece("a", 2, 4, 3),
      piece("b", 3, 3, 5),
      piece("c", 4, 2, 7, { turn: "fixed" }),
      piece("d", 1, 8, 2),
    ];
    const forward = listOne(fabric("Sea", some)).pieces;
    expect(listOne(fabric("Sea", [...some].reverse())).pieces).toEqual(forward);
  });
});

describe("a piece wider than the usable width", () => {
  test("is told of by name, by how much, and what would help", () => {
    const { value, diagnostics } = listOne(
      fabric("Sea", [piece("border", 50, 4, 2, { turn: "fixed" }), piece("ok", 4, 4, 1)]),
    );
    expect(value).toBeNull();
    expect(diagnostics).toHaveLength(1);
    expect(said(diagnostics[0])).toMatchObject({
      code: "PIECE-TOO-WIDE",
      severity: "error",
      path: "fabrics[0].pieces[0]",
      message: "border (50 x 4 in) does not fit Sea: the usable width is 42 in, 8 in too narrow.",
    });
    expect(said(diagnostics[0])?.hint).toContain("turn: free");
    expect(said(diagnostics[0])?.hint).toContain("join: straight");
    expect(said(diagnostics[0])?.hint).toContain("wider fabric");
  });

  test("may fit turned", () => {
    expect(listOne(fabric("Sea", [piece("border", 50, 4, 2)])).diagnostics).toEqual([]);
  });

  test("cut along the selvage is not saved by a join it does not get", () => {
    const wide = piece("panel", 50, 70, 1, { turn: "fixed", cut: "lengthwise", join: "straight" });
    expect(listOne(fabric("Sea", [wide])).diagnostics).toMatchObject([{ code: "PIECE-TOO-WIDE" }]);
  });

  test("and too long as well may still be joined from wide strips", () => {
    const { value } = listOne(
      fabric("Sea", [piece("panel", 50, 45, 1, { join: "straight", turn: "fixed" })]),
    );
    // A strip's width is measured along the bolt, so the fabric's width does not limit it.
    expect(value?.[0]?.pieces).toMatchObject([{ fullWidth: true, along: 45 * IN, count: 2 }]);
  });

  test("all of them are told in one run", () => {
    const { diagnostics } = listCuts(
      cutListSpec([fabric("Sea", [piece("a", 50, 50, 1)]), fabric("Sand", [piece("b", 60, 60, 1)])]),
    );
    expect(diagnostics.map(({ path }) => path)).toEqual(["fabrics[0].pieces[0]", "fabrics[1].pieces[0]"]);
  });
});
