import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { crossgrain } from "../cli/run.ts";
import { pagesOf } from "../support/pdf-text.ts";
import { CHROMIUM, emptyFolder, launch, openPage } from "./browser.ts";
import { quiltNamed } from "./quilts.ts";

const ALL = process.env.JOURNEYS === "all";

/** The letters of a page in the order of the alphabet: the two write the same words in another order. */
function lettersOf({ text, head }: Awaited<ReturnType<typeof pagesOf>>[number]): string {
  const left = [...text];
  // The PDF's running head names the part too; bullets are no letters in the other.
  for (const letter of head) left.splice(left.indexOf(letter), 1);
  return left
    .filter((letter) => letter !== "•")
    .sort()
    .join("");
}

let browser: Browser;

describe.skipIf(CHROMIUM === null || !ALL)("the pattern as the page prints it", () => {
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
  });

  test.each(["allotments", "nine-stars", "lighthouse-sampler"])(
    "%s: page for page what the PDF has, on both papers",
    async (name) => {
      const folder = emptyFolder();
      const file = join(folder, "quilt.yaml");
      writeFileSync(file, quiltNamed(name));
      const planned = crossgrain(["plan", "quilt.yaml", "--pdf", "--out", "out"], { folder });
      expect(planned.code, planned.stderr).toBe(0);
      const ours = await pagesOf(readFileSync(join(folder, "out", "pattern.pdf")));
      expect(crossgrain(["page", "quilt.yaml", "--out", "page.html"], { folder }).code).toBe(0);
      const page = await openPage(browser, {}, join(folder, "page.html"));
      await page.getByRole("button", { name: "Pattern", exact: true }).click();
      await page.waitForSelector(".bookframe", { timeout: 120_000 });
      for (const paper of ["A4", "Letter"]) {
        await page.getByRole("button", { name: paper, exact: true }).click();
        // What the frame holds is what its print prints.
        const held = (await page.locator(`.bookframe.${paper.toLowerCase()}`).getAttribute("srcdoc")) ?? "";
        writeFileSync(join(folder, `${paper}.html`), held);
        const leaf = await page.context().newPage();
        await leaf.goto(`file://${join(folder, `${paper}.html`)}`);
        const printed = await pagesOf(await leaf.pdf({ preferCSSPageSize: true, printBackground: true }));
        await leaf.close();
        expect(printed.map(({ foot }) => foot)).toEqual(ours.map(({ foot }) => foot));
        ours.forEach((own, i) => {
          const other = printed[i]!;
          expect(own.head.startsWith(other.head), `${own.head}, ${other.head}`).toBe(true);
          expect(lettersOf(other), `page ${i + 1} on ${paper}`).toBe(lettersOf(own));
        });
        expect(Math.round(printed[0]!.width)).toBe(paper === "A4" ? 595 : 612);
        expect(ours.length).toBeGreaterThan(5);
      }
      await page.context().close();
    },
    300_000,
  );
});
