import { expect, test } from "vitest";
import { buyList, cuttingSteps, wasteTable } from "../../src/content/index.ts";
import { drawFabric } from "../../src/draw/index.ts";
import { formatLength, formatNumber, formatSize, QUARTER_CENTIMETRE_RULER } from "../../src/length/index.ts";
import { cutsCsv } from "../../src/print/csv/index.ts";
import { bookOf, handoutText } from "../../src/print/index.ts";
import { decimalOf, readSpecFile } from "../../src/spec/read/read-spec-file.ts";
import { english } from "../../src/words/index.ts";
import { assumedIn } from "../support/in-words.ts";
import { sampleFabric, samplePiece, samplePlan } from "../support/sample-plan.ts";

const COMMA = { ...QUARTER_CENTIMETRE_RULER, decimal: "comma" } as const;

test("tenths are set off as the ruler says, fractions stay as they are", () => {
  expect(formatLength(41_600, COMMA)).toBe("6,5 cm");
  expect(formatSize(41_600, 73_600, COMMA, { typeset: true })).toBe("6,5 × 11,5 cm");
  expect(formatSize(41_600, 73_600, COMMA, { unit: false, decimal: undefined })).toBe("6.5 x 11.5");
  expect(formatNumber(12.5, 2, COMMA)).toBe("12,50");
  expect(formatNumber(12.5, 2, QUARTER_CENTIMETRE_RULER)).toBe("12.50");
  expect(formatLength(40_640, { unit: "in", mark: 2032, decimal: "comma" })).toBe("2 1/2 in");
});

test.each([
  ["- Mitte 16,5 x 16,5 cm, 12", "comma"],
  ["- Mitte 16.5 x 16.5 cm, 12", undefined],
  ["width: 112 cm\n- a 2 1/2 square, 26\n- b 4, 12", undefined],
  ["- a 6,5 cm\n- b 6.5 cm\n- c 7.5 cm", undefined],
  ["pieces: [1,2,3]", undefined],
  ["price: 18,90 EUR per m", undefined],
] as const)("the mark is the one the file is written with: %s", (text, mark) => {
  expect(decimalOf(text)).toBe(mark);
});

test("a file with commas is answered with commas, unless points are asked for", () => {
  const text =
    "name: Lin\nunits: cm\nfabrics:\n  - name: Blau\n    width: 112 cm\n    pieces:\n      - a 6,5 x 11,5, 9\n";
  expect(readSpecFile(text, "lin.yaml").value?.ruler.decimal).toBe("comma");
  expect(readSpecFile(text, "lin.yaml", "point").value?.ruler.decimal).toBe(undefined);
  const asked = readSpecFile(text.replaceAll(",5", ".5"), "lin.yaml", "comma").value;
  expect(asked === null ? [] : assumedIn(asked)).toContainEqual({
    fabric: "",
    subject: "ruler marks",
    value: "every 0,25 cm",
  });
});

test("everything printed and drawn keeps to the comma; tables for programs keep the point", async () => {
  const cloth = {
    sold: { unit: "m" as const, step: 64_000, least: 64_000 },
    price: { hundredths: 1890, per: "m" as const, currency: "€" },
  };
  const plan = await samplePlan([sampleFabric("Lin", [samplePiece(41_600, 73_600, 99)], cloth)], {}, COMMA);
  const book = bookOf(plan, english);
  const told = [
    buyList(plan, english),
    cuttingSteps(plan, true, english),
    wasteTable(plan, english),
    handoutText(book, english),
    JSON.stringify(book.sections.map(({ blocks }) => blocks.map((block) => ({ ...block, scene: null })))),
    [...drawFabric(plan, 0, english).matchAll(/<(?:text|desc|title)[^>]*>([^<]*)</g)]
      .map(([, text]) => text)
      .join("\n"),
  ];
  for (const text of told) {
    expect(text.match(/.*\d\.\d.*/g)).toBe(null);
  }
  expect(told[0]).toMatch(/\d,\d m/);
  expect(told[0]).toMatch(/€\d+,\d\d/);
  expect(told[3]).toContain("6,5 × 11,5 cm");
  expect(cutsCsv(plan, english)).toContain(",6.5,11.5,");
});
