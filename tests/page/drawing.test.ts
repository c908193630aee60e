import { describe, expect, test } from "vitest";
import * as block from "../../src/edits/block-edits.ts";
import { colourPlaced, setColourway } from "../../src/edits/colourway-edits.ts";
import { withWord } from "../../src/edits/drawing-text.ts";
import { freePatches, type Ring, restOf } from "../../src/edits/free-patches.ts";
import { readModel } from "../../src/edits/model.ts";
import { withGrid } from "../../src/edits/motif-edits.ts";
import * as quilt from "../../src/edits/quilt-edits.ts";
import * as ring from "../../src/edits/ring-edits.ts";
import * as rows from "../../src/edits/row-edits.ts";
import { helpFor, offeredAt, placeAt } from "../../src/edits/text-help.ts";
import { patchesOf, seenTurn, squeezedOf } from "../../src/edits/unit-patches.ts";
import { EMPTY_SHEET, STARTS } from "../../src/page/starts.ts";
import { checkQuilt } from "../../src/pipeline.ts";
import { layOutQuilt, motifTurned, motifWays, readSpecFile } from "../../src/planning.ts";
import type { QuiltSpec } from "../../src/spec/index.ts";
import { english, sayKey } from "../../src/words/index.ts";
import { QUILTS, quiltNamed } from "./quilts.ts";

const say = sayKey(english.fileKeys);

const errors = (text: string) =>
  checkQuilt(text, "q")
    .diagnostics.filter(({ severity }) => severity === "error")
    .map(({ code }) => code);
const area = (column: number, row: number, columns = 1, rows = 1) => ({ column, row, columns, rows });

describe("a text drawing", () => {
  test("changes one word and leaves the others in their places", () => {
    expect(withWord("  c   gv  -   c", 1, "h>")).toBe("  c   h>  -   c");
    expect(withWord("a b c", 1, "long")).toBe("a long c");
    expect(withWord("a b*3 c", 2, "x")).toBe("a b x b c");
    expect(withWord("a b", 1, "c")).toBe("a c");
    expect(withWord("a b", 7, "c")).toBe("a b");
  });
});

describe("what the paper shows of shapes and prints", () => {
  /** The empty sheet with its block of so many squares and another size, geese on two of them. */
  const odd = (squares: number, size: string) => {
    const grown = block.sizeBlock(block.resizeGrid(EMPTY_SHEET, "A", squares, squares), "A", size);
    return block.layUnit(grown, "A", area(1, 2, 2, 1), {
      kind: "flying geese",
      words: ["night", "chalk"],
      turn: 0,
    });
  };
  test.each([
    [7, "9"],
    [4, "7 1/3"],
    [11, "10 5/8"],
    [3, "10"],
  ])("geese on %i squares of %s in are geese, as the planner has them", (squares, size) => {
    const text = odd(squares, size);
    const model = readModel(text);
    const [unit] = model.blocks[0]!.units;
    expect(patchesOf(unit!, model.blocks[0]!, model)?.map(({ part }) => part)).toEqual([
      "goose",
      "sky",
      "sky",
    ]);
  });
  test("a unit in a shape it does not come in is drawn out to it", () => {
    const text = block.resizeGrid(odd(4, "8"), "A", 4, 8);
    const model = readModel(text);
    const [unit] = model.blocks[0]!.units;
    expect(patchesOf(unit!, model.blocks[0]!, model)).toBeNull();
    const squeezed = squeezedOf(unit!, model.blocks[0]!, model);
    expect(squeezed.map(({ part }) => part)).toEqual(["goose", "sky", "sky"]);
    const across = squeezed.flatMap(({ corners }) => corners.map(([x]) => x));
    expect([Math.min(...across), Math.max(...across)]).toEqual([
      model.blocks[0]!.xs[1],
      model.blocks[0]!.xs[3],
    ]);
  });
  test("a turn is seen where the block or its print tells it", () => {
    const [stars] = STARTS;
    const plain = readModel(stars!.text);
    expect([90, 180, 270].map((turn) => seenTurn(plain.blocks[0]!, plain, "", turn))).toEqual([0, 0, 0]);
    const oneWay = (prints: string) =>
      readModel(stars!.text.replace("name: chalk,", "name: chalk, print: one-way,") + prints);
    const upright = oneWay("");
    expect(seenTurn(upright.blocks[0]!, upright, "", 90)).toBe(0);
    const turning = oneWay("prints: with block\n");
    expect([90, 180].map((turn) => seenTurn(turning.blocks[0]!, turning, "", turn))).toEqual([90, 180]);
    const ups = patchesOf(turning.blocks[0]!.units[1]!, turning.blocks[0]!, turning)?.map(({ up }) => up);
    expect(ups).toContain(0);
    expect(ups).toContain(null);
  });
});

describe("the paper", () => {
  test("shows every unit of every quilt: the same patches as the planner lays out", () => {
    for (const { text, name } of QUILTS) {
      const model = readModel(text);
      for (const drawn of model.blocks) {
        expect(drawn.empties, `${name} ${drawn.key}`).toEqual([]);
        for (const unit of drawn.units) {
          const patches = patchesOf(unit, drawn, model);
          expect(patches, `${name} ${drawn.key} ${unit.cell.code}`).not.toBeNull();
          for (const { corners } of patches ?? [])
            for (const [x, y] of corners) {
              expect(x).toBeGreaterThanOrEqual(drawn.xs[unit.column]! - 1);
              expect(y).toBeLessThanOrEqual(drawn.ys[unit.row + unit.rows]! + 1);
            }
        }
      }
    }
  });

  test("a star drawn on an empty sheet is the star of the first quilt", () => {
    const geese = ["chalk", "night"];
    let text = EMPTY_SHEET;
    for (const [column, row] of [
      [0, 0],
      [3, 0],
      [0, 3],
      [3, 3],
    ] as const)
      text = block.layUnit(text, "A", area(column, row), { kind: "square", words: ["chalk"], turn: 0 });
    text = block.layUnit(text, "A", area(1, 1, 2, 2), { kind: "square", words: ["lanterns"], turn: 0 });
    text = block.layUnit(text, "A", area(1, 0, 2, 1), { kind: "flying geese", words: geese, turn: 180 });
    text = block.layUnit(text, "A", area(1, 3, 2, 1), { kind: "flying geese", words: geese, turn: 0 });
    text = block.layUnit(text, "A", area(0, 1, 1, 2), { kind: "flying geese", words: geese, turn: 90 });
    text = block.layUnit(text, "A", area(3, 1, 1, 2), { kind: "flying geese", words: geese, turn: 270 });
    expect(errors(text)).toEqual([]);
    expect(text).toContain(
      "      s  fv - s\n      f> q  - f<\n      |  |  - |\n      s  f  - s\n    cells:\n      s: { square: chalk }\n",
    );
    const [drawn] = readModel(text).blocks;
    expect(drawn?.units).toHaveLength(9);
    expect(Object.keys(drawn?.cells ?? {})).toHaveLength(3);
  });

  test("turning on the spot four times comes back; a long unit with no room turns end for end", () => {
    const text = quiltNamed("nine-stars");
    const key = readModel(text).blocks[0]!.key;
    let turned = text;
    const square = { column: 0, row: 0 };
    for (let i = 0; i < 4; i++) turned = block.turnUnit(turned, key, square, 1);
    expect(readModel(turned).blocks[0]?.units).toEqual(readModel(text).blocks[0]?.units);
  });

  test("a unit taken off leaves empty squares, its cell goes when nothing uses it", () => {
    const text = block.layUnit(EMPTY_SHEET, "A", area(0, 0), {
      kind: "rails",
      words: ["night", "chalk"],
      turn: 0,
    });
    const gone = block.emptySquare(text, "A", { column: 0, row: 0 });
    expect(readModel(gone).blocks[0]?.empties).toHaveLength(16);
    expect(readModel(gone).blocks[0]?.cells).toEqual({});
  });

  test("a colour for one patch leaves its like alone, for all alike takes them with it", () => {
    const text = STARTS[0]!.text;
    const model = readModel(text);
    const star = model.blocks[0]!;
    const unit = star.units.find(({ cell }) => cell.code === "c")!;
    const cloth = "night";
    const count = (made: string) => {
      const now = readModel(made);
      return now.blocks[0]!.units.filter((one) =>
        patchesOf(one, now.blocks[0]!, now)?.every(({ fabric }) => fabric?.name === cloth),
      ).length;
    };
    const alike = star.units.filter(({ cell }) => cell.code === unit.cell.code).length;
    const before = count(text);
    const one = block.colourPatch(text, star.key, { ...unit, part: "patch" }, cloth, "patch");
    const all = block.colourPatch(text, star.key, { ...unit, part: "patch" }, cloth, "alike");
    expect(errors(one)).toEqual([]);
    expect([count(one) - before, count(all) - before]).toEqual([1, alike]);
  });
});

describe("patches by their corners", () => {
  const half: Ring = [
    [0, 0],
    [8, 0],
    [0, 8],
  ];

  test("what they leave of the paper is a patch too", () => {
    expect(restOf([half], 8, 8)).toEqual([
      [
        [8, 0],
        [8, 8],
        [0, 8],
      ],
    ]);
    expect(
      restOf(
        [
          half,
          [
            [8, 0],
            [8, 8],
            [0, 8],
          ],
        ],
        8,
        8,
      ),
    ).toEqual([]);
  });

  test("patches that lie on one another, cross, or float in the middle are refused", () => {
    expect(
      restOf(
        [
          half,
          [
            [0, 0],
            [8, 8],
            [0, 8],
          ],
        ],
        8,
        8,
      ),
    ).toBeNull();
    expect(restOf([half, half], 8, 8)).toBeNull();
    expect(
      restOf(
        [
          [
            [3, 3],
            [5, 3],
            [4, 5],
          ],
        ],
        8,
        8,
      ),
    ).toBeNull();
    expect(
      restOf(
        [
          [
            [0, 0],
            [4, 0],
            [8, 0],
          ],
        ],
        8,
        8,
      ),
    ).toBeNull();
  });

  test("become a block that can be planned, of every orientation", () => {
    const mountain: Ring = [
      [0, 8],
      [4, 2],
      [8, 8],
    ];
    for (const ring of [half, mountain, [...mountain].reverse()]) {
      const made = freePatches([{ ring, fabric: "night" }], "chalk", 8, 8);
      const laid = {
        kind: "drawn patches",
        words: [],
        turn: 0,
        drawn: { patches: made!.patches, words: made!.words, on: "8 x 8" },
      };
      const text = block.layUnit(EMPTY_SHEET, "A", area(0, 0, 4, 4), laid);
      expect(errors(text)).toEqual([]);
      const model = readModel(text);
      expect(
        new Set(
          patchesOf(model.blocks[0]!.units[0]!, model.blocks[0]!, model)?.map(({ fabric }) => fabric?.name),
        ),
      ).toEqual(new Set(["night", "chalk"]));
    }
  });
});

describe("rings of blocks", () => {
  const text = quiltNamed("nine-stars");
  const inside = { across: 24 * 16256, down: 24 * 16256 };

  test("a border is pieced of blocks that go a whole number of times round, and plain again without a trace", () => {
    const made = ring.pieceBorder(text, 0, inside, "chalk", "chalk");
    expect(made.text).toContain("  A:\n    size: 3 x 3\n    grid: |\n      .\n    cells: {}\nsetting:\n");
    const drawn = block.layUnit(made.text, made.key, area(0, 0), {
      kind: "half-square triangle",
      words: ["night", "chalk"],
      turn: 0,
    });
    expect(errors(drawn)).toEqual([]);
    expect(errors(ring.widenPieced(drawn, 0, 8))).toEqual([]);
    const plain = ring.setBorderStones(ring.plainBorder(drawn, 0, "night"), 0, null);
    expect(readModel(plain)).toEqual(readModel(text));
  });

  test("where no block goes round, a border that fits comes before it", () => {
    const wide = { across: 24.125 * 16256, down: 27.875 * 16256 };
    const made = ring.pieceBorder(text, 0, wide, "chalk", "boats");
    const { borders } = readModel(made.text);
    expect(borders.map(({ width, block: key }) => [width, key])).toEqual([
      ["fit", ""],
      ["3", made.key],
    ]);
    const laid = { kind: "square", words: ["night"], turn: 0 };
    expect(errors(block.layUnit(made.text, made.key, area(0, 0), laid))).toEqual([]);
  });

  test("sashes and their crossings are blocks too, as wide as they are", () => {
    const sashed = quilt.setCornerstones(quilt.setSashing(text, { width: "2", fabric: "night" }), "chalk");
    const sash = ring.pieceSashes(sashed);
    let made = block.layUnit(sash.text, sash.key, area(0, 0, 1, 4), {
      kind: "rails",
      words: ["night", "chalk"],
      turn: 0,
    });
    const stones = ring.pieceSashStones(made);
    made = block.layUnit(stones.text, stones.key, area(0, 0, 2, 2), {
      kind: "square-in-a-square",
      words: ["night", "boats"],
      turn: 0,
    });
    expect(errors(made)).toEqual([]);
    const wider = quilt.setSashing(made, { width: "3", fabric: "" });
    expect(errors(wider)).toEqual([]);
    const plain = quilt.setCornerstones(ring.plainSashes(wider, "night"), "chalk");
    expect(readModel(plain).blocks.map(({ key }) => key)).not.toContain(sash.key);
  });
});

describe("motifs inside a block", () => {
  test("every way is a text whose block is drawn as arrange draws it; one alone turns and comes back", () => {
    const text = quiltNamed("wild-geese-round").replace(/^foundation:.*\n/m, "");
    const specOf = (made: string) => readSpecFile(made, "q").value as QuiltSpec;
    const found = motifWays(specOf(text), "round", 1);
    expect(found?.motifs.places).toHaveLength(4);
    const drawings = new Set<string>();
    for (const { grid } of found?.ways ?? []) {
      const made = withGrid(text, grid);
      expect(errors(made)).toEqual([]);
      drawings.add(JSON.stringify(readModel(made).blocks[0]?.units));
      expect(made.replace(/grid: \|\n(?: {6}.*\n)+/, "")).toBe(text.replace(/grid: \|\n(?: {6}.*\n)+/, ""));
    }
    expect(drawings.size).toBe(found?.ways.length);
    let turned = text;
    for (let i = 0; i < 4; i++) turned = withGrid(turned, motifTurned(specOf(turned), "round", 1)!);
    expect(readModel(turned).blocks[0]?.units).toEqual(readModel(text).blocks[0]?.units);
  });
});

describe("the quilt", () => {
  const text = quiltNamed("nine-stars");

  test("one block turned in a quilt that is filled: the rest stay as they were", () => {
    const size = readModel(text).setting.rows.map((row) => row.length);
    const made = quilt.turnPlaced(text, { row: 1, column: 1 }, 90);
    const { rows } = readModel(made).setting;
    expect(rows.map((row) => row.length)).toEqual(size);
    expect(rows.flat().filter(({ turn }) => turn === 90)).toHaveLength(1);
    expect(rows[1]?.[1]?.turn).toBe(90);
  });

  test("one placing in other colours: a colourway of its own, which the planner lays out the same", () => {
    const star = STARTS[0]!.text;
    const at = { row: 1, column: 1 };
    const once = colourPlaced(star, at, "night", "chalk");
    const twice = colourPlaced(once, at, "chalk", "night");
    expect(errors(twice)).toEqual([]);
    const model = readModel(twice);
    expect(model.setting.rows.flat().filter(({ colourway }) => colourway !== "")).toHaveLength(1);
    expect(model.colourways).toEqual({ "way-1": { night: "chalk", chalk: "night" } });
    const spec = readSpecFile(twice, "q").value;
    const top = spec?.kind === "quilt" ? layOutQuilt(spec).value?.top : undefined;
    const design = top?.designs.find(({ colourway }) => colourway === "way-1");
    const drawn = model.blocks[0]!;
    const onPaper = drawn.units.flatMap((unit) =>
      (patchesOf(unit, drawn, model, "way-1") ?? []).map(({ fabric }) => fabric?.name ?? ""),
    );
    expect(design?.patches.map(({ fabric }) => fabric).sort()).toEqual(onPaper.sort());
    // A second block in the first one's colours shares them until it is changed.
    const shared = setColourway(twice, { row: 0, column: 0 }, "way-1");
    const apart = colourPlaced(shared, { row: 0, column: 0 }, "lanterns", "night");
    expect(readModel(apart).colourways).toMatchObject({ "way-2": { like: "way-1", lanterns: "night" } });
    expect(errors(apart)).toEqual([]);
  });

  test("rules turn as they say", () => {
    const size = { rows: 4, columns: 4 };
    const turns = (rule: quilt.FillRule) =>
      [0, 3].flatMap((row) => [0, 3].map((column) => quilt.turnBy(rule, { row, column }, size, 0, 5)));
    expect(turns("alike")).toEqual([0, 0, 0, 0]);
    expect(turns("round")).toEqual([0, 90, 270, 180]);
    expect(turns("by-turns")).toEqual([0, 90, 90, 0]);
    expect(turns("chance")).toEqual(turns("chance"));
  });

  test("straight, on point and back; larger and smaller; all can be planned", () => {
    const cloth = readModel(text).fabrics[0]!.name;
    const onPoint = quilt.setLayout(text, "on point", cloth);
    expect(errors(onPoint)).toEqual([]);
    expect(errors(quilt.setLayout(onPoint, "straight", cloth))).toEqual([]);
    expect(errors(quilt.sizeQuilt(onPoint, 4, 5))).toEqual([]);
    const turned = quilt.turnPlaced(text, { row: 0, column: 0 }, 180);
    expect(errors(quilt.setLayout(turned, "on point", cloth))).toEqual([]);
    const longer = rows.insertPlaced(turned, { row: 0, column: 0 }, readModel(turned).setting.rows[0]![0]!);
    const counts = (text: string): number[] => readModel(text).setting.rows.map((row) => row.length);
    const size = counts(turned);
    expect(counts(longer)).toEqual([size[0]! + 1, ...size.slice(1)]);
    // One block more across is one more in each row, and a row more repeats the first: none is filled up.
    expect(counts(quilt.sizeQuilt(longer, size[0]! + 2, size.length + 1))).toEqual([
      size[0]! + 2,
      ...size.slice(1).map((count) => count + 1),
      size[0]! + 2,
    ]);
    expect(rows.removePlaced(longer, { row: 0, column: 1 })).toBe(turned);
    expect(rows.standOnEnd(rows.standOnEnd(turned, true), false)).toBe(turned);
    expect(readModel(quilt.sizeQuilt(turned, 5, 2)).setting.rows.map((row) => row.length)).toEqual([5, 5]);
  });
});

describe("help with the text", () => {
  const at = (before: string) =>
    offeredAt(placeAt(before), ["night", "chalk"], say).map(({ label }) => label);

  test("offers the keys of the place", () => {
    expect(at("name: x\n")).toEqual(expect.arrayContaining(["fabrics", "blocks", "setting", "borders"]));
    expect(at("fabrics:\n  - { name: a, ")).toEqual(expect.arrayContaining(["colour", "width", "print"]));
    expect(at("fabrics:\n  - name: a\n    ")).toEqual(expect.arrayContaining(["colour", "width", "print"]));
    expect(at("blocks:\n  star:\n    size: 8\n    ")).toEqual(
      expect.arrayContaining(["grid", "cells", "roles"]),
    );
    expect(at("setting:\n  rows: a\n  sashing: { ")).toEqual(
      expect.arrayContaining(["width", "fabric", "ring"]),
    );
    expect(at("borders:\n  - { fabric: night, width: 3 }\n  - { ")).toEqual(
      expect.arrayContaining(["corners", "join"]),
    );
  });

  test("offers the words a key takes, and the fabrics where a fabric may stand", () => {
    expect(at("setting:\n  layout: ")).toEqual(["straight", "on point"]);
    expect(at("borders:\n  - { fabric: ")).toEqual(["night", "chalk"]);
  });

  test("says what a key means", () => {
    expect(helpFor(["borders", 0], "over-long", say)?.meaning).toContain("trimmed after sewing");
    expect(helpFor([], "no such key", say)).toBeNull();
  });
});
