import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Block } from "../../../src/content/book/content.ts";
import { fitText, startsRightToLeft } from "../../../src/draw/scene/text-fit.ts";
import { PRINT_STYLE } from "../../../src/print/html/print-style.ts";
import { bookOf, laidOut, patternOf } from "../../../src/print/index.ts";
import { bookPdf, printedBook } from "../../../src/print/pdf/index.ts";
import { readSpecFile } from "../../../src/spec/index.ts";
import { english, wordsFor } from "../../../src/words/index.ts";
import { PDF_FONTS } from "../../support/fonts.ts";
import { inOrder, readPdf } from "../../support/pdf-structure.ts";
import { drawingsIn } from "../../support/pdf-text.ts";
import { sampleFabric, samplePiece, samplePlan } from "../../support/sample-plan.ts";
import { LEFT_OUT } from "../../support/sweep.ts";
import { quiltPlan, smallestPlan } from "./book-plans.ts";

const HOW = { fonts: PDF_FONTS, paper: "a4", made: new Date(0) } as const;
const bare = (text: string) => text.replace(/\s+/g, "");

/** The pattern of the quilt, as its file asks for it. */
async function quiltPattern() {
  const file = "quilts/nine-stars.yaml";
  const text = readFileSync(new URL(`../../../fixtures/${file}`, import.meta.url), "utf8");
  const { value: spec } = readSpecFile(text, file);
  if (spec?.kind !== "quilt") throw new Error(`${file} is no quilt`);
  return patternOf(await quiltPlan(), spec.pattern, english);
}

/*
 * What a checker of PDF/UA-1 (ISO 14289-1) looks for and PDF.js can tell: 7.1 all content is marked and has its place in
 * the reading order, 7.2 the language is told, 7.3 figures have an alternative, 7.5 tables have headers and regular rows,
 * 7.17 there are bookmarks.
 */
test("the PDF is tagged: language, bookmarks, and everything on it in reading order", async () => {
  const plan = await quiltPlan();
  const book = bookOf(plan, english);
  const laid = laidOut(book);
  const { language, marked, bookmarks, pages } = await readPdf(await bookPdf(plan, HOW, english));
  expect([language, marked]).toEqual(["en", true]);
  expect(bookmarks.map(({ title }) => title)).toEqual(laid.sections.map(({ title }) => title));
  let page = 1;
  const begins = laid.sections.map((section) => {
    if (section.fresh) page += 1;
    const first = page;
    page += section.blocks.filter(({ fresh }) => fresh).length;
    return first;
  });
  expect(bookmarks.map((mark) => mark.page)).toEqual(begins);
  expect(pages.flatMap(({ stray }) => stray)).toEqual([]);
  const parts = pages.flatMap(({ tagged }) => inOrder(tagged));
  const heads = parts.filter(({ role }) => role === "H1" || role === "H2");
  expect(heads.map(({ role, text }) => `${role} ${bare(text)}`)).toEqual([
    `H1 ${bare(book.title)}`,
    ...laid.sections.map(({ title }) => `H2 ${bare(title)}`),
  ]);
  // What is told in steps is read in the order of work, its words whole.
  const said = bare(parts.map(({ text }) => text).join(""));
  let from = 0;
  for (const section of laid.sections)
    for (const { block } of section.blocks)
      for (const text of stepTexts(block)) {
        const at = said.indexOf(bare(text), from);
        expect(at, `"${text}" after ${said.slice(Math.max(0, from - 60), from)}`).toBeGreaterThanOrEqual(
          from,
        );
        from = at;
      }
  expect(from).toBeGreaterThan(1000);
});

/** Titles and details of steps in the order they are done; other blocks have none. */
function stepTexts(block: Block): string[] {
  const groups = block.kind === "steps" || block.kind === "beside" ? block.groups : [];
  return groups.flatMap(({ steps }) =>
    steps.flatMap(({ title, details, parts }) => [
      title,
      ...details,
      ...parts.flatMap((part) => [part.title, ...part.details]),
    ]),
  );
}

test("every drawing has words in its stead and its place, every table headers and whole rows", async () => {
  const plan = await quiltPlan();
  const book = bookOf(plan, english);
  const file = await bookPdf(plan, HOW, english);
  const { pages } = await readPdf(file);
  const parts = pages.flatMap(({ tagged }) => inOrder(tagged));
  const figures = parts.filter(({ role }) => role === "Figure");
  expect(figures.length).toBe(drawingsIn(book));
  for (const { alt } of figures) expect(alt.length).toBeGreaterThan(8);
  expect(figures[0]?.alt).toContain(book.cover.scene.title);
  const raw = Buffer.from(file).toString("latin1");
  expect(raw.split("/BBox [").length - 1).toBeGreaterThanOrEqual(figures.length);
  const tables = parts.filter(({ role }) => role === "Table");
  expect(tables.length).toBeGreaterThan(1);
  for (const { parts: rows } of tables) {
    const [head, ...others] = rows;
    expect(new Set(head?.parts.map(({ role }) => role))).toEqual(new Set(["TH"]));
    for (const row of others) expect(row.parts.length).toBe(head?.parts.length);
  }
  const heads = tables.flatMap(({ parts: rows }) => rows[0]?.parts ?? []).length;
  expect(raw.split("/Scope /Column").length - 1).toBe(heads);
});

test("the PDF says which language it speaks, and the pattern is tagged alike", async () => {
  const german = await wordsFor("de");
  expect((await readPdf(await bookPdf(await smallestPlan(), HOW, german))).language).toBe("de");
  const pattern = await quiltPattern();
  const read = await readPdf(await printedBook(pattern, HOW, english));
  expect(read.pages.flatMap(({ stray }) => stray)).toEqual([]);
  expect(read.bookmarks.map(({ title }) => title)).toEqual(
    laidOut(pattern).sections.map(({ title }) => title),
  );
});

test.skipIf(LEFT_OUT)(
  "nothing is smaller than 6 points, in the PDF or in print from the browser",
  async () => {
    const plan = await quiltPlan();
    for (const book of [bookOf(plan, english), await quiltPattern()]) {
      const { pages } = await readPdf(await printedBook(book, HOW, english));
      const small = pages.flatMap(({ texts }) => texts.filter(({ size }) => size < 5.99));
      expect(small).toEqual([]);
    }
    const sizes = [...PRINT_STYLE.matchAll(/font-size: ([\d.]+)(pt|px|rem|em)/g)];
    expect(sizes.length).toBeGreaterThan(5);
    for (const [, size, unit] of sizes) if (unit === "pt") expect(Number(size)).toBeGreaterThanOrEqual(6);
  },
);

test("a name read from right to left leaves the English line around it in order", async () => {
  const INCH = 16256 * 8;
  const name = "בד כחול";
  const plan = await samplePlan([sampleFabric(name, [samplePiece(4 * INCH, 4 * INCH, 9)])], {
    name: "Plain",
  });
  const book = bookOf(plan, english);
  // A sentence of ours stays one of ours: whoever holds both writings is read from left to right.
  const mixed = textsIn(book.sections).filter(
    (text) => /[a-z]{2}/i.test(text) && /\p{Script=Hebrew}/u.test(text),
  );
  expect(mixed.length).toBeGreaterThan(1);
  expect(mixed.filter((text) => startsRightToLeft(fitText(text)))).toEqual([]);
  const { pages } = await readPdf(await bookPdf(plan, HOW, english));
  const lines = pages.flatMap(({ texts }) => texts);
  for (const text of mixed) {
    // Words of a sentence in one line stand from left to right as they are read.
    const words = text.split(/[\u2068\u2069]/).flatMap((part) => part.match(/[A-Za-z]{4,}/g) ?? []);
    const [first, second] = words;
    if (first === undefined || second === undefined) continue;
    const whole = lines.filter(({ said }) => said.includes(first) && said.includes(second));
    for (const { said } of whole) expect(said.indexOf(first)).toBeLessThan(said.lastIndexOf(second));
    for (const a of lines.filter(({ said }) => said.trim().startsWith(first)))
      for (const b of lines.filter(
        ({ said, y }) => y === a.y && said.includes(second) && !said.includes(first),
      ))
        if (text.includes(a.said.trim()) && text.includes(b.said.trim())) expect(a.x).toBeLessThan(b.x);
  }
});

/** Every text in a value, however deep; what a drawing says is its own. */
function textsIn(value: unknown, key = ""): string[] {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null || key === "scene") return [];
  return Object.entries(value).flatMap(([name, inner]) => textsIn(inner, name));
}
