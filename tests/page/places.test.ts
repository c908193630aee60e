import { describe, expect, test } from "vitest";
import { readModel } from "../../src/edits/model.ts";
import { placeFor, stretchFor } from "../../src/edits/places.ts";
import { QUILTS, quiltNamed } from "./quilts.ts";

describe("a place in hand and its place in the text", () => {
  test("every block of every quilt's rows, borders and fabrics: there and back", () => {
    for (const { text, name } of QUILTS) {
      const model = readModel(text);
      const { rows, filled } = model.setting;
      for (const [row, line] of rows.slice(0, 3).entries())
        for (const column of [0, line.length - 1]) {
          const stretch = stretchFor(text, { kind: "placed", row, column });
          expect(stretch, `${name} ${row} ${column}`).not.toBeNull();
          const word = text.slice(stretch!.from, stretch!.to);
          expect(word.startsWith(line[column]!.block), `${name}: ${word}`).toBe(true);
          const back = placeFor(text, stretch!.from);
          expect(back?.kind).toBe("placed");
          if (!filled && !word.includes("*")) expect(back).toEqual({ kind: "placed", row, column });
        }
      for (const [index] of model.borders.entries()) {
        const stretch = stretchFor(text, { kind: "border", index });
        expect(placeFor(text, stretch!.from + 1)).toEqual({ kind: "border", index });
      }
      for (const { index, name: cloth } of model.fabrics) {
        const stretch = stretchFor(text, { kind: "fabric", index });
        expect(text.slice(stretch!.from, stretch!.to)).toContain(cloth);
        expect(placeFor(text, stretch!.from + 1)).toEqual({ kind: "fabric", index });
      }
    }
  });

  test("squares of a block, in a drawing of lines and in a list", () => {
    const text = quiltNamed("allotments");
    const stretch = stretchFor(text, { kind: "square", block: "S", row: 2, column: 1 });
    expect(text.slice(stretch!.from, stretch!.to)).toBe("n");
    expect(placeFor(text, stretch!.from)).toEqual({ kind: "square", block: "S", row: 2, column: 1 });
    const listed = text.replace(
      /grid: \|\n(?: {6}\S.*\n)+/,
      "grid: [r - - -, '| - - -', w n d w, '| b | |']\n",
    );
    const again = stretchFor(listed, { kind: "square", block: "S", row: 0, column: 0 });
    expect(listed.slice(again!.from, again!.to)).toBe("r");
    // A block of one unit is itself the place.
    const beds = stretchFor(text, { kind: "square", block: "B", row: 0, column: 0 });
    expect(text.slice(beds!.from, beds!.to)).toContain("name: Beds");
  });

  test("nowhere in a text that says nothing of it", () => {
    expect(stretchFor("name: a\n", { kind: "border", index: 2 })).toBeNull();
    expect(placeFor("a: [", 2)).toBeNull();
  });
});
