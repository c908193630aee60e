import { describe, expect, test } from "vitest";
import { parse, parseDocument } from "yaml";
import { readText, withItem, withoutValue, withValue, withValueAtAll } from "../../src/edits/text-edit.ts";

const QUILT = `# Nine stars
name: Stars   # for the fair
units: in
fabrics:
  - { name: night, colour: "#22345c" }   # from the drawer

  - name: 'gold'
    colour: "#d9a441"

blocks:
  star:
    size: 8
    grid: |
      c   gv  -   c
      g>  m   -   g<
    cells:
      c: { square: chalk }   # corners
setting:
  rows: star
  fill: 3 x 3

borders:            # from the inside out
  - { fabric: night, width: 3 }
binding: gold
`;

const differing = (a: string, b: string): string[] => {
  const before = new Set(a.split("\n"));
  return b.split("\n").filter((line) => !before.has(line));
};

describe("an edit of the text", () => {
  test("changes a value where it stands and nothing else", () => {
    const made = withValue(QUILT, ["setting", "fill"], "4 x 5");
    expect(differing(QUILT, made)).toEqual(["  fill: 4 x 5"]);
    expect(made.length).toBe(QUILT.length);
  });

  test("keeps the quotes she chose and the note beside", () => {
    expect(withValue(QUILT, ["fabrics", 0, "colour"], "#000000")).toBe(QUILT.replace("#22345c", "#000000"));
    expect(withValue(QUILT, ["fabrics", 1, "name"], "moss")).toBe(QUILT.replace("'gold'", "'moss'"));
  });

  test("adds to bracketed and to indented maps in the form they have", () => {
    expect(withValue(QUILT, ["fabrics", 0, "print"], "one-way")).toContain(
      '  - { name: night, colour: "#22345c", print: one-way }   # from the drawer\n',
    );
    expect(withValue(QUILT, ["fabrics", 1, "print"], "one-way")).toContain(
      '    colour: "#d9a441"\n    print: one-way\n\nblocks:',
    );
    expect(withValue(QUILT, ["blocks", "star", "cells", "m"], { square: "gold" })).toContain(
      "      c: { square: chalk }   # corners\n      m: { square: gold }\nsetting:",
    );
  });

  test("puts a new part of the file behind the one it belongs to", () => {
    const made = withValue(QUILT, ["methods"], { "flying geese": "four at a time" }, "fabrics");
    expect(made).toContain('    colour: "#d9a441"\nmethods: { flying geese: four at a time }\n\nblocks:');
  });

  test("writes several lines as a block with the margin there was", () => {
    const made = withValue(QUILT, ["blocks", "star", "grid"], "a b\nc d\n");
    expect(made).toContain("    grid: |\n      a b\n      c d\n    cells:\n");
    expect(withValue(QUILT, ["setting", "rows"], "a b\nc d\n")).toContain(
      "  rows: |\n    a b\n    c d\n  fill: 3 x 3",
    );
  });

  test("adds to lists and takes from them", () => {
    const more = withItem(QUILT, ["borders"], 1, { fabric: "gold", width: "1 1/2" });
    expect(more).toContain("width: 3 }\n  - { fabric: gold, width: 1 1/2 }\nbinding");
    expect(withoutValue(more, ["borders", 0])).toContain(
      "# from the inside out\n  - { fabric: gold, width: 1 1/2 }\nbinding",
    );
    expect(withoutValue(more, ["borders", 1])).toBe(QUILT);
  });

  test("takes a part of the file away whole", () => {
    expect(withoutValue(QUILT, ["binding"])).toBe(QUILT.replace("binding: gold\n", ""));
    expect(withoutValue(QUILT, ["setting", "fill"])).toBe(QUILT.replace("  fill: 3 x 3\n", ""));
    expect(withoutValue(QUILT, ["not there"])).toBe(QUILT);
  });

  test("what is there already changes nothing", () => {
    expect(withValue(QUILT, ["borders", 0, "width"], "3")).toBe(QUILT);
  });

  test("quotes what would not mean itself", () => {
    for (const name of ["a, b", "#red", "yes: no", "true", "- x", "", "null", "{a}", "it's", 'say "so"']) {
      for (const path of [["name"], ["binding"], ["fabrics", 0, "name"]] as const) {
        const made = withValue(QUILT, path, name);
        const read = path.reduce((at: unknown, step) => (at as Record<string, unknown>)[step], parse(made));
        expect(String(read)).toBe(name);
      }
    }
  });

  test("a file in JSON stays JSON", () => {
    const json = '{\n  "name": "Stars",\n  "fabrics": [{ "name": "night" }],\n  "borders": []\n}\n';
    const made = withItem(withValue(json, ["fabrics", 0, "colour"], "navy"), ["borders"], 0, {
      fabric: "night",
      width: "3",
    });
    expect(JSON.parse(withValue(made, ["setting"], { rows: "a b\nc d" }))).toEqual({
      name: "Stars",
      fabrics: [{ name: "night", colour: "navy" }],
      borders: [{ fabric: "night", width: "3" }],
      setting: { rows: "a b\nc d" },
    });
  });

  test("a text that cannot be read whole is cut where that is sure, and else left as it is", () => {
    for (const tail of ["b", "x: {", "  - a", "y: [1, 2", '"q']) {
      const text = QUILT + tail;
      for (const made of [
        withValue(text, ["setting", "fill"], "4 x 5"),
        withValue(text, ["methods"], { rails: "single pieces" }, "fabrics"),
        withItem(text, ["fabrics"], 2, { name: "moss" }),
        withoutValue(text, ["setting"]),
        withoutValue(text, ["fabrics", 0]),
      ]) {
        expect(made.endsWith(tail)).toBe(true);
        for (const note of ["# Nine stars", "# from the drawer", "# corners"])
          expect(made.includes(note) || made.length < text.length).toBe(true);
      }
    }
  });

  test("a file that ends without a line end is added to on a line of its own", () => {
    expect(withValue("name: a\nbinding: b", ["backing"], "c")).toBe("name: a\nbinding: b\nbacking: c\n");
  });

  test("what is read part by part is what is read whole, and texts that are no sure parts are read whole", () => {
    const odd = [
      QUILT,
      `${QUILT}x: &one [a]\ny: *one\n`,
      `${QUILT}name: twice\n`,
      `---\n${QUILT}`,
      QUILT.replace("units: in", "units:\n\n# a note at the left\n  in"),
      QUILT.replace("binding: gold", "binding: {\n  fabric: gold\n}"),
      QUILT.replace("rows: star", "rows: |+\n    star\n\n"),
      QUILT.replace("binding: gold", 'binding: "gold\n\n  thread"'),
      QUILT.replace("binding: gold", "binding: gold\n  thread"),
      '{ "name": "Stars" }',
    ];
    for (const text of odd) {
      const whole = (() => {
        try {
          return parseDocument(text, { strict: false, uniqueKeys: false }).toJS({ maxAliasCount: 0 });
        } catch {
          return null;
        }
      })();
      const read = readText(text);
      expect(read.plain()).toEqual(whole);
      if (whole !== null) expect(read.value(["fabrics", 1, "name"])).toEqual(whole.fabrics?.[1]?.name);
    }
  });

  test("another part of the file keeps its letters even where the part that changes is written anew", () => {
    const text = `pattern: { before: { cutting: "# Wash\\n\\n- all\\n" } }\nblocks:\n  p: { grid: a b, cells: { a: { square: x } } }\n`;
    const made = withValue(text, ["blocks", "p", "grid"], "a b\nb a\n");
    expect(made.startsWith(text.slice(0, text.indexOf("blocks:")))).toBe(true);
    expect(parse(made).blocks.p.grid).toBe("a b\nb a\n");
  });

  test("one name written at many places is cut in at each of them", () => {
    const paths = [["fabrics", 0, "name"], ["borders", 0, "fabric"], ["binding"]];
    const made = withValueAtAll(QUILT, paths, "deep night");
    expect(made).toBe(
      QUILT.replace("{ name: night", "{ name: deep night")
        .replace("{ fabric: night", "{ fabric: deep night")
        .replace("binding: gold", "binding: deep night"),
    );
  });
});
