import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parseDocument } from "yaml";
import * as block from "../../src/edits/block-edits.ts";
import { colourPlaced } from "../../src/edits/colourway-edits.ts";
import * as fabric from "../../src/edits/fabric-edits.ts";
import { readModel } from "../../src/edits/model.ts";
import * as pattern from "../../src/edits/pattern-edits.ts";
import * as quilt from "../../src/edits/quilt-edits.ts";
import * as ring from "../../src/edits/ring-edits.ts";
import * as rows from "../../src/edits/row-edits.ts";
import { setColumns, setUnitField } from "../../src/edits/unit-edits.ts";
import { patchesOf } from "../../src/edits/unit-patches.ts";
import { historyOf } from "../../src/page/history.ts";
import { EMPTY_SHEET, STARTS } from "../../src/page/starts.ts";
import { checkQuilt } from "../../src/pipeline.ts";
import { PATTERN_PARTS } from "../../src/spec/index.ts";
import { starters as STARTERS } from "../../src/words/en/starters.ts";
import { QUILTS } from "./quilts.ts";

const FIXTURES = join(import.meta.dirname, "..", "..", "fixtures");

/** Whole numbers below a bound, the same on every run. */
function dice(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

const KINDS = [
  "square",
  "rectangle",
  "half-square triangle",
  "quarter-square triangle",
  "flying geese",
  "four-patch",
  "rails",
];

/** One gesture, any at all: some change nothing, as a hand at a table does too. */
function anyGesture(text: string, roll: (below: number) => number): string {
  const model = readModel(text);
  const of = <T>(all: readonly T[]): T | undefined => all[roll(Math.max(1, all.length))];
  const drawn = of(model.blocks);
  const cloth = of(model.fabrics)?.name ?? "";
  const place = { row: roll(model.setting.rows.length + 1), column: roll(5) };
  const square = { column: roll(drawn?.columns ?? 1), row: roll(drawn?.rows ?? 1) };
  const key = drawn?.key ?? "";
  switch (roll(41)) {
    case 0:
    case 1:
      return block.layUnit(
        text,
        key,
        { ...square, columns: 1 + roll(2), rows: 1 + roll(2) },
        { kind: of(KINDS) ?? "square", words: [cloth, of(model.fabrics)?.name ?? cloth], turn: 90 * roll(4) },
      );
    case 2:
      return block.turnUnit(text, key, square, 1 + roll(3));
    case 3:
      return block.emptySquare(text, key, square);
    case 4:
    case 5: {
      const unit = drawn === undefined ? null : block.unitOn(drawn, square);
      const patch =
        unit === null || drawn === undefined ? undefined : of(patchesOf(unit, drawn, model) ?? []);
      const reach = roll(2) === 0 ? "patch" : "alike";
      return patch === undefined
        ? text
        : block.colourPatch(text, key, { ...square, part: patch.part }, cloth, reach);
    }
    case 6:
      return roll(4) > 0 ? text : block.resizeGrid(text, key, 1 + roll(5), 1 + roll(5));
    case 7:
      return block.sizeBlock(text, key, String(4 + roll(9)));
    case 8:
      return quilt.turnPlaced(text, place, 90 * roll(4));
    case 9:
      return quilt.swapPlaced(text, place, { row: roll(3), column: roll(3) });
    case 10:
      return quilt.fillTurns(
        text,
        key,
        (["alike", "by-turns", "round", "chance"] as const)[roll(4)]!,
        90 * roll(4),
        roll(9),
      );
    case 11:
      return roll(3) > 0 ? text : quilt.sizeQuilt(text, 1 + roll(6), 1 + roll(6));
    case 12:
      return roll(3) > 0 ? text : quilt.setLayout(text, roll(2) === 0 ? "straight" : "on point", cloth);
    case 13:
      return quilt.setSashing(text, roll(2) === 0 ? null : { width: String(1 + roll(3)), fabric: cloth });
    case 14:
      return quilt.addBorder(text, cloth, String(1 + roll(5)));
    case 15:
      return quilt.removeBorder(text, roll(3));
    case 16:
      return model.borders.length === 0
        ? text
        : quilt.widenBorder(text, roll(model.borders.length), roll(9) - 4, 2032);
    case 17:
      return quilt.setFinishing(
        text,
        (["binding", "backing", "wadding"] as const)[roll(3)]!,
        roll(4) === 0 ? null : cloth,
      );
    case 18:
      return fabric.setColour(
        text,
        roll(model.fabrics.length),
        `#${(0x100000 + roll(0xefffff)).toString(16)}`,
      );
    case 19:
      return fabric.setPrint(
        text,
        roll(model.fabrics.length),
        (["none", "one-way", "two-way"] as const)[roll(3)]!,
      );
    case 20:
      return fabric.renameFabric(text, roll(model.fabrics.length), `${cloth.slice(0, 12)} ${roll(99)}`);
    case 22: {
      const inside = { across: 24 * 16256, down: (20 + roll(9)) * 16256 };
      return ring.pieceBorder(text, roll(model.borders.length + 1), inside, cloth, cloth).text;
    }
    case 23:
      return roll(2) === 0
        ? ring.plainBorder(text, roll(2), cloth)
        : ring.widenPieced(text, roll(2), roll(5) - 2);
    case 24:
      return roll(2) === 0 ? ring.pieceSashes(text).text : ring.plainSashes(text, cloth);
    case 25:
      return roll(2) === 0 ? ring.pieceSashStones(text).text : ring.pieceBorderStones(text, roll(2)).text;
    case 26:
      return ring.setBorderStones(text, roll(2), roll(3) === 0 ? null : cloth);
    case 27:
      return roll(3) > 0
        ? text
        : roll(2) === 0
          ? block.copyBlock(text, key).text
          : block.nameBlock(text, key, `Name ${roll(9)}`);
    case 28:
      return quilt.fillBlocks(
        text,
        key,
        (["everywhere", "every-other", "rows", "columns", "edge", "this-row", "this-column"] as const)[
          roll(7)
        ]!,
        place,
      );
    case 29:
      return setUnitField(
        text,
        key,
        square,
        (["count", "strips", "corner", "centre", "leaning"] as const)[roll(5)]!,
        ["", "2", "1 1/2", "2, 1, 1 1/4", "falling", "wide"][roll(6)]!,
      );
    case 30:
      return setColumns(
        text,
        key,
        roll(2) === 0 ? "columns" : "lines",
        Array.from({ length: drawn?.columns ?? 1 }, () => `${1 + roll(4)} 1/2`),
      );
    case 31:
      return roll(2) === 0
        ? ring.setRingWidth(text, roll(3), `${1 + roll(5)} 3/8`)
        : fabric.setOwnCloth(text, roll(model.fabrics.length), "width", roll(2) === 0 ? "" : "22 in");
    case 33:
      return pattern.setPatternLine(
        text,
        (["author", "level", "copyright", "contact", "version", "sizes"] as const)[roll(6)]!,
        ["", "Ann Example", "for: beginners # and others", "3x3, 4x5", "1"][roll(5)]!,
      );
    case 34:
      return pattern.setPatternWords(
        text,
        roll(2) === 0 ? "before" : "after",
        of(PATTERN_PARTS) ?? "cutting",
        ["", "Press well.", "# Before you begin\n\n- wash: all of it\n- press\n"][roll(3)]!,
      );
    case 35: {
      const left = PATTERN_PARTS.filter(() => roll(3) > 0);
      return pattern.setPatternParts(text, roll(4) === 0 ? PATTERN_PARTS : left.toReversed());
    }
    case 36:
      return fabric.setRepeat(text, roll(model.fabrics.length), ["", "6 x 8 in", "15 cm x 20 cm"][roll(3)]!);
    case 38: {
      const placed = model.setting.rows[place.row]?.[place.column];
      return placed === undefined ? text : rows.insertPlaced(text, place, placed);
    }
    case 39:
      return rows.removePlaced(text, place);
    case 40:
      return roll(3) > 0 ? text : rows.standOnEnd(text, roll(2) === 0);
    case 32:
      return colourPlaced(text, place, cloth, of(model.fabrics)?.name ?? cloth);
    default:
      return fabric.setMethod(text, "flying geese", roll(2) === 0 ? "stitch-and-flip" : "four at a time");
  }
}

/** Notes of a file: what stands after a `#` that begins one. */
const notesOf = (text: string): string[] =>
  [...text.matchAll(/(?:^|\s)(# .*)$/gm)].map((match) => match[1]!.trim());

const COUNT = Number(process.env.GESTURES ?? 40);
/** With `GESTURES` set: everything there is to draw on, for as long as that takes. */
const LONG = process.env.GESTURES !== undefined;

const filesIn = (folder: string): { name: string; text: string }[] =>
  readdirSync(join(FIXTURES, folder))
    .filter((name) => name.endsWith(".yaml"))
    .sort()
    .map((name) => ({
      name: `${folder}/${name}`,
      text: readFileSync(join(FIXTURES, folder, name), "utf8"),
    }));
const MORE = LONG
  ? [
      ...filesIn("trials"),
      ...filesIn("cutlists"),
      ...STARTERS.map(({ name, text }) => ({ name: `new ${name}`, text })),
    ]
  : [];

describe("gestures at random", () => {
  const sheets = [...STARTS, { name: "An empty sheet", text: EMPTY_SHEET }];
  test.each([...sheets, ...QUILTS, ...MORE])(
    "$name: the file stays a file, what the page does not know stays in it",
    ({ text }) => {
      const roll = dice(text.length);
      const begun = process.cpuUsage();
      // A key the page has never heard of, as a later program may write.
      let now = `${text}x-own: { kept: [1, 2], as: it is }   # mine\n`;
      const heads = notesOf(now.slice(0, now.search(/^\w/m)));
      let changes = 0;
      const history = historyOf(now);
      for (let i = 0; i < COUNT; i++) {
        const next = anyGesture(now, roll);
        if (next === now) continue;
        changes += 1;
        const doc = parseDocument(next, { uniqueKeys: true });
        if (doc.errors.length > 0) expect.fail(`${doc.errors[0]?.message}\n${next}`);
        const own = doc.get("x-own") as { toJS(doc: unknown): unknown } | undefined;
        expect(own?.toJS(doc)).toEqual({ kept: [1, 2], as: "it is" });
        now = next;
        history.push(now, `${i}`);
      }
      const last = now;
      let first: string | undefined;
      for (let i = 0; i < changes; i++) first = history.undo()?.text;
      expect(first).toBe(`${text}x-own: { kept: [1, 2], as: it is }   # mine\n`);
      expect(history.canUndo()).toBe(false);
      for (let i = 1; i < changes; i++) history.redo();
      expect(history.redo()?.text).toBe(last);
      // On a cut list only fabrics can be changed.
      const few = readModel(text).kind === "cut-list";
      expect(changes).toBeGreaterThan(few ? 0 : COUNT / 4);
      if (LONG)
        console.log(
          `${changes} of ${COUNT} gestures changed it; ${now.length} letters; ${Math.round((process.cpuUsage(begun).user / 1e6) * 10) / 10} s of processor`,
        );
      expect(notesOf(now)).toEqual(expect.arrayContaining(heads));
      expect(now).toContain("# mine");
    },
    LONG ? 900_000 : undefined,
  );

  test("a gesture that goes on is undone as one", () => {
    const history = historyOf("a");
    history.push("b", "first");
    history.push("c", "colours");
    history.grow("d", "colours more");
    expect(history.undo()).toMatchObject({ text: "b", what: "colours more" });
    expect(history.redo()?.text).toBe("d");
    history.undo();
    history.grow("e", "first goes on");
    expect(history.canRedo()).toBe(false);
    expect(history.undo()?.text).toBe("a");
  });

  test("a quilt of blocks that was sound stays one that can be read", () => {
    for (const { text, name } of QUILTS.slice(0, 3)) {
      const roll = dice(7);
      for (let i = 0; i < 10; i++) {
        const next = anyGesture(text, roll);
        const codes = checkQuilt(next, name)
          .diagnostics.filter(({ severity }) => severity === "error")
          .map(({ code }) => code);
        // A gesture may leave a design that cannot be sewn so; it never leaves a file that cannot be read.
        for (const code of codes)
          expect(code).not.toMatch(/^(YAML|KEY|TYPE|FILE|CODE-UNKNOWN|FABRIC-UNKNOWN)/);
      }
    }
  });
});
