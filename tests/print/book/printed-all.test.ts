import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, chromium } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { loadPdf, planSpec, solveHere, USUAL_OPTIONS } from "../../../src/index.ts";
import { bookOf, pageOf, patternOf } from "../../../src/print/index.ts";
import { readSpecFile } from "../../../src/spec/index.ts";
import { english } from "../../../src/words/index.ts";
import { PDF_FONTS } from "../../support/fonts.ts";
import { pagesOf, printFaults, smallestLetters } from "../../support/pdf-text.ts";

// Both books of every fixture, printed by a browser on both papers and by ourselves: with `PAGES=all`.

const PLACES = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
const executablePath = PLACES.find((place) => existsSync(place));
const all = process.env.PAGES === "all" && executablePath !== undefined;

/** Points of the smallest letters on paper, and bytes of a print up to which it is easily sent. */
const [SMALLEST, LARGEST_FILE] = [6, 1e6] as const;

const MADE = new Date(0);

const files = ["quilts", "trials"].flatMap((folder) => {
  const at = new URL(`../../../fixtures/${folder}/`, import.meta.url);
  return readdirSync(at).map((name) => ({ name, url: new URL(name, at) }));
});

describe.skipIf(!all)("printed", () => {
  let browser: Browser;
  const folder = mkdtempSync(join(tmpdir(), "printed-"));

  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: executablePath ?? "", args: ["--no-sandbox"] });
  });
  afterAll(() => browser?.close());

  test.each(files)("$name: the same pages on A4, on Letter and in the PDF", async ({ name, url }) => {
    const { value: spec } = readSpecFile(readFileSync(url, "utf8"), name);
    if (spec?.kind !== "quilt") return;
    const { value: plan } = await planSpec(spec, USUAL_OPTIONS, solveHere);
    if (plan === null || plan.top === null) return;
    const { printedBook } = await loadPdf();
    for (const book of [bookOf(plan, english), patternOf(plan, spec.pattern, english)]) {
      const path = join(folder, `${book.purpose}.html`);
      writeFileSync(path, pageOf(book, english));
      for (const format of ["A4", "Letter"] as const) {
        const page = await browser.newPage();
        await page.goto(pathToFileURL(path).href);
        const printed = await page.pdf({ format });
        await page.close();
        const where = `${book.purpose} on ${format}`;
        expect(printFaults(await pagesOf(printed), book, false), where).toEqual([]);
        expect(printed.length, where).toBeLessThan(LARGEST_FILE);
        const own = await printedBook(
          book,
          { fonts: PDF_FONTS, paper: format === "A4" ? "a4" : "letter", made: MADE },
          english,
        );
        expect(printFaults(await pagesOf(own), book), `${where}, ours`).toEqual([]);
        expect(await smallestLetters(own, SMALLEST), `${where}, ours`).toEqual([]);
      }
    }
  });
});
