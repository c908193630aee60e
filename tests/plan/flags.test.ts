import { describe, expect, test } from "vitest";
import { flagsFor } from "../../src/plan/lays/flag-steps.ts";
import { cutInto, pieceLeaf, wasteLeaf } from "../../src/plan/lays/parts.ts";
import { IN } from "../support/cut-list-spec.ts";

/** A strip or band of one piece and an end, sizes in inches. */
function strip(run: number, width: number, pieceRun = 4, role: "strip" | "band" = "strip") {
  const cut = role === "strip" ? "along" : "across";
  const size = (length: number): [number, number] =>
    role === "strip" ? [length * IN, width * IN] : [width * IN, length * IN];
  const parts = [pieceLeaf(0, ...size(pieceRun), false), wasteLeaf("strip-end", ...size(run - pieceRun))];
  return flagsFor(cutInto(role, cut, parts), width * IN, run * IN, { rulerLength: 24 * IN, folded: true });
}

describe("cuts longer than the maker's ruler", () => {
  // A 24 in ruler and fabric folded once, selvage to selvage: 42 in of width takes 21 in of ruler.
  test("42 in of fabric folded once is in reach of a 24 in ruler", () => {
    expect(strip(42, 4)).toEqual([]);
    expect(strip(48, 4)).toEqual([]);
  });

  test("wide fabric must be folded once more", () => {
    expect(strip(60, 4)).toEqual(["refold"]);
    expect(strip(108, 4)).toEqual(["longer-than-ruler"]);
  });

  test("unfolded, the same cut is not in reach", () => {
    const parts = [pieceLeaf(0, 42 * IN, 4 * IN, false)];
    const whole = cutInto("strip", "along", parts);
    const table = { rulerLength: 24 * IN, folded: false };
    expect(flagsFor(whole, 4 * IN, 42 * IN, table)).toEqual(["refold"]);
    expect(flagsFor(whole, 4 * IN, 42 * IN, { rulerLength: 18 * IN, folded: false })).toEqual([
      "longer-than-ruler",
    ]);
  });

  test("a strip wider than the ruler is long can be cut off, but not measured or subcut in one go", () => {
    expect(strip(42, 30)).toEqual(["long-subcut", "wide-strip"]);
    // Kept whole it is not subcut: 39 in folded once is 19 1/2 in under the ruler.
    const whole = cutInto("strip", "along", [pieceLeaf(0, 39 * IN, 30 * IN, false)]);
    expect(flagsFor(whole, 30 * IN, 39 * IN, { rulerLength: 24 * IN, folded: true })).toEqual(["wide-strip"]);
  });

  test("a rest that is trimmed along the strip lies unfolded", () => {
    const trimmed = (run: number) => {
      const row = pieceLeaf(0, run * IN, 2 * IN, false);
      const rest = cutInto("segment", "across", [row, wasteLeaf("trimming", run * IN, 2 * IN)]);
      const parts = [pieceLeaf(1, (42 - run) * IN, 4 * IN, false), rest];
      const table = { rulerLength: 24 * IN, folded: true };
      return flagsFor(cutInto("strip", "along", parts), 4 * IN, 42 * IN, table);
    };
    expect(trimmed(26)).toEqual(["long-subcut"]);
    expect(trimmed(36)).toEqual(["long-subcut"]);
    expect(trimmed(24)).toEqual([]);
  });

  test("a lengthwise band is not helped by the fold", () => {
    expect(strip(40, 6, 30, "band")).toEqual(["refold"]);
    expect(strip(80, 6, 70, "band")).toEqual(["longer-than-ruler"]);
  });
});

describe("parts too narrow to hold safely", () => {
  // Under 1 in beside the ruler: common practice, no source.
  test("are flagged, strips and segments alike", () => {
    expect(strip(42, 0.875)).toEqual(["narrow-segment"]);
    expect(strip(42, 4, 0.75)).toEqual(["narrow-segment"]);
    expect(strip(42, 1, 1)).toEqual([]);
  });

  test("waste may be as narrow as it likes", () => {
    expect(strip(4.125, 4, 4)).toEqual([]);
  });
});
