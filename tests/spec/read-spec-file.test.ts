import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { jsonSchema } from "../../src/index.ts";
import { CENTIMETRE, INCH, METRE } from "../../src/length/index.ts";
import { type CutListSpec, readSpecFile } from "../../src/spec/index.ts";
import { german } from "../../src/words/de/index.ts";
import { english, wordAll } from "../../src/words/index.ts";
import { assumedIn } from "../support/in-words.ts";

function read(text: string): CutListSpec {
  const { value, diagnostics } = readSpecFile(text, "test.yaml");
  if (value === null || value.kind !== "cut-list") throw new Error(JSON.stringify(diagnostics, null, 1));
  return value;
}

function pieceOf(line: string, head = "") {
  const fabric = read(`${head}\nfabrics:\n  - name: Sea\n    pieces:\n      - ${line}\n`).fabrics[0];
  const piece = fabric?.pieces[0];
  if (piece === undefined) throw new Error(line);
  const { at: _at, ...rest } = piece;
  return rest;
}

describe("the example files", () => {
  test.each(["harbour-lights", "winter-orchard-metric"])("%s reads without a word", (name) => {
    const text = readFileSync(new URL(`../../fixtures/cutlists/${name}.yaml`, import.meta.url), "utf8");
    const { value, diagnostics } = readSpecFile(text, `${name}.yaml`);
    expect(diagnostics).toEqual([]);
    expect(value?.fabrics.length).toBeGreaterThan(3);
    // Survives JSON, so it can be kept and compared.
    expect(JSON.parse(JSON.stringify(value))).toEqual(value);
  });
});

describe("a piece", () => {
  const plain = {
    label: "sky",
    across: 2.5 * INCH,
    along: 4.5 * INCH,
    fullWidth: false,
    count: 24,
    turn: "free",
    cut: "strips",
    join: "no",
    note: "",
  };

  test.each([
    "sky 2 1/2 x 4 1/2, 24",
    'sky 2½" × 4½", 24',
    "sky 2.5 by 4.50; 24",
    "{ label: sky, size: 2 1/2 x 4 1/2, count: 24 }",
    '{ "label": "sky", "size": "2 1/2 x 4 1/2", "count": "24" }',
  ])("%s", (line) => {
    expect(pieceOf(line)).toEqual(plain);
  });

  test("on one line may say all that its keys can say", () => {
    expect(pieceOf("sky 2 1/2 x 4 1/2, 24, fixed, lengthwise, join diagonal, note first row, left")).toEqual({
      ...plain,
      turn: "fixed",
      cut: "lengthwise",
      join: "diagonal",
      note: "first row, left",
    });
  });

  test("needs no label, and a label may end in a figure", () => {
    expect(pieceOf("2 1/2 x 4 1/2, 24")).toEqual({ ...plain, label: "" });
    expect(pieceOf("row 3 2 1/2 x 4 1/2, 24")).toEqual({ ...plain, label: "row 3" });
  });

  test("may run the whole width", () => {
    for (const line of ["binding 2 1/2 x WOF, 6", "binding wof by 2 1/2, 6"]) {
      expect(pieceOf(line)).toMatchObject({ across: 0, along: 2.5 * INCH, fullWidth: true, count: 6 });
    }
  });

  test("may have decimal commas", () => {
    expect(pieceOf("6,5 x 11,5, 8", "units: cm")).toMatchObject({ across: 41600, along: 73600, count: 8 });
  });

  test("is in the measure of the file by any spelling", () => {
    expect(pieceOf("6.5 x 11.5, 8", "units: centimetres")).toMatchObject({ across: 41600 });
    expect(pieceOf("2 1/2 x 4 1/2, 24", "units: Inches")).toMatchObject({ across: 2.5 * INCH });
    expect(pieceOf("6.5 x 11.5, 8", "ruler: 5 mm")).toMatchObject({ across: 41600 });
  });

  test("without a count is answered with a line that can be copied", () => {
    const answered = (line: string) =>
      [english, german].map((words) => {
        const { diagnostics } = readSpecFile(
          `fabrics:\n  - name: Sea\n    pieces: ["${line}"]\n`,
          "sea.yaml",
        );
        return wordAll(diagnostics, words).find(({ code }) => code === "FIELD-MISSING")?.hint;
      });
    expect(answered("300 of 4 x 6")).toEqual(["For example `4 x 6, 300`.", "Zum Beispiel `4 x 6, 300`."]);
    expect(answered("300 Stück 4 x 6")).toEqual(["For example `4 x 6, 300`.", "Zum Beispiel `4 x 6, 300`."]);
    expect(answered("sky 4 x 6")).toEqual(["For example `sky 4 x 6, 24`.", "Zum Beispiel `sky 4 x 6, 24`."]);
  });

  test("keeps decimals exact to the last place", () => {
    expect(pieceOf("{ size: 0.1 x 0.30, count: 1 }", "units: cm\nruler: 1 mm")).toMatchObject({
      across: 640,
      along: 1920,
    });
  });

  test("is fixed on a directional print unless it says otherwise", () => {
    const text = "fabrics:\n  - name: Sea\n    print: one-way across\n    pieces: [2 x 3, 1]\n".replace(
      "[2 x 3, 1]",
      '["2 x 3, 1", "3 x 4, 1, free"]',
    );
    const [fabric] = read(text).fabrics;
    expect(fabric?.print).toEqual({ kind: "one-way", axis: "across" });
    expect(fabric?.pieces.map(({ turn }) => turn)).toEqual(["fixed", "free"]);
  });
});

describe("a fabric", () => {
  const one = (fields: string, head = "") =>
    read(`${head}\nfabrics:\n  - name: Sea\n${fields}    pieces: ["2 x 3, 1"]\n`).fabrics[0];

  test("takes what it does not say from all-fabrics, then from the trade", () => {
    const head = "all-fabrics:\n  width: 45 in\n  straighten: 2 in";
    expect(one("    straighten: 1/2 in\n", head)).toMatchObject({
      width: 45 * INCH,
      straighten: INCH / 2,
      selvage: INCH / 2,
    });
    expect(one("", "units: cm")).toMatchObject({
      width: 110 * CENTIMETRE,
      sold: { unit: "m", step: METRE / 10 },
    });
  });

  test.each([
    ["by 1/8 yd", { unit: "yd", step: 73152, least: 73152 }],
    ["1/4 yd, least 1/2 yd", { unit: "yd", step: 146304, least: 292608 }],
    ["by 10 cm in m", { unit: "m", step: 64000, least: 64000 }],
    ["by 5 cm", { unit: "cm", step: 32000, least: 32000 }],
    ["by 1 in", { unit: "in", step: 16256, least: 16256 }],
    ["by 1/3 yd", { unit: "yd", step: 195072, least: 195072 }],
    ["{ by: 0.25 m, least: 50 cm, in: cm }", { unit: "cm", step: 160000, least: 320000 }],
  ])("is sold %s", (sold, expected) => {
    expect(one(`    sold: ${sold}\n`)?.sold).toEqual(expected);
  });

  test.each([
    ["$12.50 per yd", { hundredths: 1250, per: "yd", currency: "$" }],
    ["€18,90/m", { hundredths: 1890, per: "m", currency: "€" }],
    ["18.9 EUR per metre", { hundredths: 1890, per: "m", currency: "EUR" }],
    ["12", { hundredths: 1200, per: "yd", currency: "" }],
    ["12.50", { hundredths: 1250, per: "yd", currency: "" }],
  ])("costs %s", (price, expected) => {
    expect(one(`    price: ${price}\n`)?.price).toEqual(expected);
  });

  test.each([
    ["3%", 30, 30],
    ["2.5 %", 25, 25],
    ["{ across: 1%, along: 4.5% }", 10, 45],
  ])("shrinks %s", (shrinkage, shrinkAcross, shrinkAlong) => {
    expect(one(`    shrinkage: ${shrinkage}\n`)).toMatchObject({ shrinkAcross, shrinkAlong });
  });

  test("may be called what YAML would take for something else", () => {
    const text =
      "fabrics:\n  - name: no\n    pieces: ['2 x 3, 1']\n  - name: 010\n    pieces: ['2 x 3, 1']\n";
    expect(read(text).fabrics.map(({ name }) => name)).toEqual(["no", "010"]);
  });
});

describe("what is assumed is told", () => {
  test("once for all fabrics when it is the same", () => {
    const text =
      "fabrics:\n  - name: A\n    pieces: ['2 x 3, 1']\n  - name: B\n    width: 54 in\n    pieces: ['2 x 3, 1']\n";
    const told = assumedIn(read(text));
    expect(told).toEqual(
      expect.arrayContaining([
        { fabric: "", subject: "bare numbers", value: "inches" },
        { fabric: "", subject: "straightening", value: "1 in" },
        { fabric: "A", subject: "usable width", value: "42 in (43 in less 1/2 in of selvage on each side)" },
        { fabric: "B", subject: "selvage", value: "1/2 in on each side" },
      ]),
    );
  });

  test("not at all when everything is written", () => {
    const text = readFileSync(
      new URL("../../fixtures/cutlists/winter-orchard-metric.yaml", import.meta.url),
      "utf8",
    );
    expect(assumedIn(read(text)).map(({ subject }) => subject)).not.toContain("usable width");
  });
});

describe("JSON", () => {
  test("is read as YAML is, and its faults have places", () => {
    const text =
      '{\n\t"units": "in",\n\t"fabrics": [{ "name": "Sea", "pieces": ["2 x 3, 1", { "size": "2 x 4", "count": 0 }] }]\n}';
    expect(read(text.replace('"count": 0', '"count": 3')).fabrics[0]?.pieces).toHaveLength(2);
    expect(readSpecFile(text, "a.json").diagnostics).toMatchObject([
      { code: "COUNT-NOT-WHOLE", at: { line: 3 } },
    ]);
  });

  test("schema describes the keys, the choices and the counts", () => {
    const text = JSON.stringify(jsonSchema());
    for (const word of ["all-fabrics", "one-way across", "width of fabric", '"type":"integer","minimum":1']) {
      expect(text).toContain(word);
    }
  });
});

describe("all problems in one run, in file order", () => {
  test("of different fabrics and kinds", () => {
    const text = [
      "nam: Tide pool",
      "fabrics:",
      "  - name: Sea",
      "    selvage: 30 in",
      "    pieces:",
      "      - sky 2 x 3, 1",
      "  - name: sea",
      "    pieces:",
      "      - sky 2 x q, 1",
      "      - sand 0 x 3, 1.5",
    ].join("\n");
    expect(readSpecFile(text, "a.yaml").diagnostics.map(({ code, at }) => [code, at?.line])).toEqual([
      ["KEY-UNKNOWN", 1],
      ["SELVAGES-TOO-WIDE", 4],
      ["NAME-REPEATED", 7],
      ["LENGTH-UNREADABLE", 9],
      ["SIZE-NOT-POSITIVE", 10],
      ["COUNT-NOT-WHOLE", 10],
    ]);
  });
});

describe("hostile files", () => {
  const codes = (text: string) => readSpecFile(text, "a.yaml").diagnostics.map(({ code }) => code);

  test("five megabytes are refused at once", () => {
    expect(codes("# a long comment\n".repeat(310_000))).toEqual(["FILE-TOO-LARGE"]);
  });

  test.each([
    ["brackets", "[".repeat(900_000)],
    ["braces", "{a: ".repeat(200_000)],
    ["dashes", "- ".repeat(20_000)],
    ["question marks", "? ".repeat(20_000)],
    ["anchors", "&a ".repeat(1000)],
    ["quotes", '"'.repeat(100_000)],
    ["spaces", `a: ${" ".repeat(900_000)}x`],
    ["a long line", `fabrics:\n  - name: S\n    pieces:\n      - ${"2 x ".repeat(200_000)}3, 4`],
    ["many keys", Array.from({ length: 20_000 }, (_, i) => `k${i}: ${i}`).join("\n")],
    ["one key for ever", "a: 1\n".repeat(20_000)],
  ])("many %s end in words, and in few", (_name, text) => {
    const { value, diagnostics } = readSpecFile(text, "a.yaml");
    expect(value).toBe(null);
    expect(diagnostics.length).toBeGreaterThan(0);
    expect(diagnostics.length).toBeLessThanOrEqual(51);
  });

  test("a key called __proto__ changes nothing", () => {
    readSpecFile("__proto__: { polluted: yes }\nfabrics: []", "a.yaml");
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });

  test("any text ends in a value or an error with a place, never a throw", () => {
    const scrap = fc.constantFrom(
      "fabrics:\n",
      "  - name: A\n",
      "    pieces:\n",
      "      - 2 x 3, 4\n",
      "width: ",
      "44 in\n",
      ": ",
      "\n",
      "- ",
      "[",
      "}",
      '"',
      "'",
      "|\n",
      "#",
      "*a ",
      "&a ",
      "!x ",
      "1/2",
      "½",
      "\t",
      "é",
      "x",
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(scrap, fc.string({ maxLength: 5 })), { maxLength: 30 }), (parts) => {
        const { value, diagnostics } = readSpecFile(parts.join(""), "a.yaml");
        if (value === null)
          expect(diagnostics.some(({ severity, at }) => severity === "error" && at !== null)).toBe(true);
      }),
      { seed: 7, numRuns: 600 },
    );
  });
});

describe("measures off the finest step", () => {
  // A step is 1/16256 in: 44 1/3 in are 720682 2/3 of them, and 1/3 in 5418 2/3.
  test("cloth is never taken to be wider than it is, nor its selvage narrower", () => {
    const { fabrics } = read(
      'name: T\nfabrics: [{ name: Sea, width: 44 1/3 in, selvage: 1/3 in, pieces: ["a 4 x 4, 1"] }]\n',
    );
    expect([fabrics[0]?.width, fabrics[0]?.selvage]).toEqual([720_682, 5419]);
  });
});
