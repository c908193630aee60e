import { readFileSync } from "node:fs";
import { JSDOM } from "jsdom";
import { beforeAll, describe, expect, test } from "vitest";
import { readSizes } from "../../../src/choices/sizes/read-sizes.ts";
import { wholeSizes } from "../../../src/choices/sizes/several-sizes.ts";
import type { Book } from "../../../src/content/book/content.ts";
import { authorWords } from "../../../src/content/book/parts/author-words.ts";
import { letteredAlike } from "../../../src/content/book/parts/pattern-letters.ts";
import type { PatternSize } from "../../../src/content/book/pattern.ts";
import { planSpec, solveHere, USUAL_OPTIONS } from "../../../src/index.ts";
import type { Plan } from "../../../src/plan/types.ts";
import { laidOut, pageOf, patternOf } from "../../../src/print/index.ts";
import { printedBook } from "../../../src/print/pdf/index.ts";
import { type QuiltSpec, readSpecFile } from "../../../src/spec/index.ts";
import { german } from "../../../src/words/de/index.ts";
import { english } from "../../../src/words/index.ts";
import { PDF_FONTS } from "../../support/fonts.ts";
import { drawingsIn, pagesOf, printFaults } from "../../support/pdf-text.ts";

const PATTERN = `
pattern:
  author: the designer
  level: confident beginner
  copyright: (c) 2026 the designer
  version: "2"
  changes: [Border strips cut longer.]
  before:
    cutting: |
      # Before you cut
      Wash **nothing**.

      - Press the cloth.
      - Breathe.
  after: { finishing: Sleep under it. }
`;

let plan: Plan;
let spec: QuiltSpec;
let others: PatternSize[];
let book: Book;

beforeAll(async () => {
  const file = new URL("../../../fixtures/quilts/nine-stars.yaml", import.meta.url);
  const read = readSpecFile(`${readFileSync(file, "utf8")}${PATTERN}`, "nine-stars.yaml").value;
  if (read?.kind !== "quilt") throw new Error("no quilt");
  spec = read;
  const made = (await planSpec(spec, USUAL_OPTIONS, solveHere)).value;
  const asked = readSizes("2x2, 4x5", spec.ruler).value ?? [];
  const whole = (await wholeSizes(spec, asked, USUAL_OPTIONS, solveHere)).value ?? [];
  if (made === null || whole.length !== 2) throw new Error("not planned");
  plan = made;
  others = whole.map(({ size, plan: own }) => ({
    heading: size.heading,
    finished: size.finished,
    plan: own,
  }));
  book = patternOf(plan, spec.pattern, english, others.slice(0, 1));
});

const textOf = (of: Book): string =>
  new JSDOM(pageOf(of, english)).window.document.querySelector(".page")?.textContent ?? "";

describe("a pattern", () => {
  test("has at most twelve pages, and none but the last is nearly half empty", () => {
    const { fill } = laidOut(patternOf(plan, spec.pattern, english));
    expect(fill.length + 1).toBeGreaterThanOrEqual(6);
    expect(fill.length + 1).toBeLessThanOrEqual(12);
    expect(Math.min(...fill.slice(0, -1))).toBeGreaterThanOrEqual(0.55);
  });

  test("says nothing of the file, of proofs, of waste", () => {
    expect(textOf(book)).not.toMatch(/\bfile\b|prove[nd]|assum|square inch|\bwaste\b|`|undefined/i);
    const printed = JSON.stringify(patternOf(plan, spec.pattern, german).sections);
    expect(printed).not.toMatch(/\bDatei\b|bewiesen|angenommen|`/i);
  });

  test("has its parts in the order asked for, and the author's words before and after them", () => {
    const ids = book.sections.map(({ id }) => id);
    const asked: string[] = spec.pattern.parts.filter((part) => ids.includes(part));
    expect(ids).toEqual(asked);
    const cutting = book.sections.find(({ id }) => id === "cutting")?.blocks ?? [];
    expect(cutting.slice(0, 3)).toEqual([
      { kind: "heading", text: "Before you cut" },
      { kind: "text", text: "Wash nothing.", tone: "plain" },
      { kind: "list", items: ["Press the cloth.", "Breathe."] },
    ]);
    expect(book.sections.find(({ id }) => id === "finishing")?.blocks.at(-1)).toMatchObject({
      text: "Sleep under it.",
    });
    const two = patternOf(
      plan,
      { ...spec.pattern, parts: ["about", "requirements"], before: {}, after: {} },
      english,
    );
    expect(two.sections.map(({ id }) => id)).toEqual(["about", "requirements"]);
    expect(textOf(two)).toContain("Border strips cut longer.");
  });

  test("has a column for each size, and one letter for one bag in all of them", () => {
    const cutting = book.sections.find(({ id }) => id === "cutting")?.blocks ?? [];
    const tables = cutting.flatMap((block) => (block.kind === "table" ? [block.table] : []));
    expect(tables.length).toBe(plan.fabrics.length);
    const [other] = others;
    for (const [f, { columns, rows }] of tables.entries()) {
      expect(columns.slice(-2).map(({ heading }) => heading.replaceAll("\u00a0", " "))).toEqual([
        "30 × 30 in",
        "2x2",
      ]);
      const [own, second] = [plan.fabrics[f], other?.plan.fabrics[f]];
      for (const row of rows) {
        const piece = own?.pieces.find(({ letter }) => letter === row[0]?.text);
        if (piece === undefined) continue;
        expect(row.at(-2)?.text.split(" ")[0]).toBe(String(piece.count));
        const same = second?.pieces.filter(
          ({ across, along, subcut }) =>
            across === piece.across && along === piece.along && subcut === piece.subcut,
        );
        if (same?.length === 1) expect(row.at(-1)?.text.split(" ")[0]).toBe(String(same[0]?.count));
      }
    }
    const make = book.sections
      .find(({ id }) => id === "requirements")
      ?.blocks.flatMap((block) => (block.kind === "table" ? block.table.rows : []));
    expect(make?.some((row) => row[1]?.text === "9" && row[2]?.text === "4")).toBe(true);
  });

  test("gives a letter to one bag in all sizes, and a starred one to what only another size has", () => {
    const given = [plan, ...others.map((size) => size.plan)];
    // A further size in which a bag is cut further is no other bag's.
    const turned = structuredClone(plan);
    for (const { pieces } of turned.fabrics) for (const piece of pieces) piece.along += 16256;
    const lettered = letteredAlike([...given, turned], english);
    expect(lettered[0]).toBe(plan);
    const held = new Map<string, string>();
    for (const [s, { fabrics }] of lettered.entries()) {
      for (const { name, pieces } of fabrics) {
        const own = pieces.map(({ letter }) => letter);
        expect(new Set(own).size, `${name} of size ${s}`).toBe(own.length);
        for (const { letter, across, along, fullWidth, subcut } of pieces) {
          const bag = JSON.stringify([name, fullWidth ? "WOF" : across, along, subcut]);
          expect(held.get(letter) ?? bag, letter).toBe(bag);
          held.set(letter, bag);
        }
      }
    }
    const first = new Set(plan.fabrics.flatMap(({ pieces }) => pieces.map(({ letter }) => letter)));
    const starred = [...held.keys()].filter((letter) => !first.has(letter));
    expect(starred.length).toBeGreaterThan(0);
    for (const letter of starred) expect(letter).toMatch(/^[A-Z]+\d*\*+$/);
  });

  test("prints with its reading order told, words for every drawing, and no step over two pages", async () => {
    const bytes = await printedBook(book, { fonts: PDF_FONTS, paper: "letter", made: new Date(0) }, english);
    const file = Buffer.from(bytes).toString("latin1");
    // ISO 32000-1, 14.8: a tagged PDF is marked, has a structure tree and says its language.
    for (const part of [
      "/Marked true",
      "/StructTreeRoot",
      "/Lang (en)",
      "/S /H1",
      "/S /TH",
      "/S /LBody",
      "/Outlines",
    ])
      expect(file, part).toContain(part);
    const figures = file.split("/S /Figure").length - 1;
    expect(figures).toBe(drawingsIn(book));
    expect(file.split("/Alt ").length - 1).toBe(figures);
    const pages = await pagesOf(bytes);
    expect(printFaults(pages, book)).toEqual([]);
    expect(pages.length).toBe(laidOut(book).fill.length + 1);
  });
});

test("the author's words are headings, paragraphs and lists, whatever stands in them", () => {
  expect(authorWords("One\ntwo.\n\n1. a\n   b\n2. [c](https://example.org)\n\n## *H*\nx_y_z <b>")).toEqual([
    { kind: "text", text: "One two.", tone: "plain" },
    { kind: "list", items: ["a b", "c (https://example.org)"] },
    { kind: "heading", text: "H" },
    { kind: "text", text: "x_y_z <b>", tone: "plain" },
  ]);
});
