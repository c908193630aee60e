import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { classOfText, removeKits, setKits, setSwap } from "../../src/edits/class-edits.ts";
import { solveHere } from "../../src/index.ts";
import { kitsFor } from "../../src/page/planner/kits.ts";
import { crossgrainHere } from "../cli/run.ts";

const QUILT = `# Boats for a class
name: Boats
units: in
fabrics:
  - { name: night, colour: "#28365d", price: $12 per yd }
  - { name: sails, print: one-way, price: $11 per yd } # heads up
  - { name: plum, price: $10 per yd }
blocks:
  boat:
    size: 6
    grid: |
      n b
      b n
    cells: { n: { square: night }, b: { half-square triangle: [sails, night] } }
setting: { rows: boat*2, fill: 2 x 2 }
binding: night
`;

describe("kits of a class on the page", () => {
  test("each gesture is an edit of the text, and undone to the first byte", () => {
    const one = setKits(QUILT, 0, { count: 6, size: "", colourway: "" });
    expect(classOfText(one)).toEqual({
      kits: [{ line: "6", kit: { count: 6, size: "", colourway: "" } }],
      colourways: [],
    });
    const two = setKits(one, 1, { count: 2, size: "3x3", colourway: "" });
    const dusk = setSwap(two, "dusk", "night", "plum");
    const third = setKits(dusk, 1, { count: 2, size: "3x3", colourway: "dusk" });
    expect(classOfText(third)).toEqual({
      kits: [
        { line: "6", kit: { count: 6, size: "", colourway: "" } },
        { line: "2 of 3x3 in dusk", kit: { count: 2, size: "3x3", colourway: "dusk" } },
      ],
      colourways: [{ name: "dusk", swaps: [{ from: "night", to: "plum" }] }],
    });
    expect(third.startsWith(QUILT.trimEnd())).toBe(true);
    // A colourway without a swap would be the quilt as it is.
    expect(setSwap(third, "dusk", "night", "night")).toBe(third);
    expect(setSwap(setSwap(third, "dusk", "sails", "plum"), "dusk", "sails", "sails")).toBe(third);
    expect(removeKits(removeKits(third, 0), 0)).toBe(QUILT);
  });

  test("papers and plan are the command line's, to the byte", async () => {
    const text = setKits(setKits(QUILT, 0, { count: 3, size: "", colourway: "" }), 1, {
      count: 2,
      size: "3x3",
      colourway: "",
    });
    const made = await kitsFor(text, "quilt.yaml", solveHere);
    expect([made.problem, made.kits, made.sorts]).toEqual(["", 5, 2]);
    const folder = mkdtempSync(join(tmpdir(), "kits-"));
    writeFileSync(join(folder, "quilt.yaml"), text);
    const words = ["plan", "quilt.yaml", "--kits", "file", "--out", "out"];
    const { code } = await crossgrainHere(words, folder);
    expect(code).toBe(0);
    // What the program keeps for itself is not handed out.
    const all = readdirSync(join(folder, "out")).sort();
    const written = all.filter((name) => !name.startsWith("."));
    expect(Object.keys(made.files).sort()).toEqual(written);
    for (const name of written)
      expect(made.files[name] === readFileSync(join(folder, "out", name), "utf8"), name).toBe(true);
  });

  test("what cannot be planned is said in words", async () => {
    const none = await kitsFor(QUILT, "quilt.yaml", solveHere);
    expect(none.problem).not.toBe("");
    const sofa = await kitsFor(
      setKits(QUILT, 0, { count: 3, size: "a sofa", colourway: "" }),
      "quilt.yaml",
      solveHere,
    );
    expect([sofa.problem.includes("sofa"), Object.keys(sofa.files)]).toEqual([true, []]);
  });
});
