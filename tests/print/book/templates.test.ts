import { existsSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { describe, expect, test } from "vitest";
import type { Plan } from "../../../src/plan/types.ts";
import { bookPage } from "../../../src/print/index.ts";
import { bookPdf } from "../../../src/print/pdf/index.ts";
import { english } from "../../../src/words/index.ts";
import { PDF_FONTS } from "../../support/fonts.ts";
import { type PdfPath, pdfPaths } from "../../support/pdf-paths.ts";
import { LEFT_OUT } from "../../support/sweep.ts";
import { SAILS, type Template, templatePlan, templatesOf } from "../../support/template-plans.ts";

/** A point is 1/72 in (ISO 32000); 640 ticks are a millimetre and 16256 an inch. */
const POINTS_PER_TICK = 72 / 16256;
const HUNDREDTH_MM = (0.01 * 72) / 25.4;

/** Whether a path is this outline at full size, standing upright or turned a quarter, wherever on the page. */
function isOutline({ points }: PdfPath, outline: Template["cut"], near: number): boolean {
  const [first = [0, 0]] = points;
  const last = points.at(-1) ?? first;
  // Some writers return to the first corner before they close the path.
  const returns = points.length > 1 && Math.hypot(last[0] - first[0], last[1] - first[1]) < 1e-6;
  const page = returns ? points.slice(0, -1) : points;
  if (page.length !== outline.length) return false;
  return [false, true].some((turned) =>
    outline.every((corner, i) => {
      const [dx, dy] = [corner.x - (outline[0]?.x ?? 0), corner.y - (outline[0]?.y ?? 0)];
      const [right, down] = turned ? [-dy, dx] : [dx, dy];
      const [x, y] = page[i] ?? [0, 0];
      // The page's y runs upwards.
      return (
        Math.abs(x - first[0] - right * POINTS_PER_TICK) < near &&
        Math.abs(first[1] - y - down * POINTS_PER_TICK) < near
      );
    }),
  );
}

/** Sides of the squares among paths, in points. */
function squareSides(paths: readonly PdfPath[]): number[] {
  return paths.flatMap(({ points }) => {
    const [a, b, c] = points;
    if (a === undefined || b === undefined || c === undefined || points.length < 4) return [];
    const [one, two] = [Math.hypot(b[0] - a[0], b[1] - a[1]), Math.hypot(c[0] - b[0], c[1] - b[1])];
    return Math.abs(one - two) < HUNDREDTH_MM ? [one] : [];
  });
}

function expectFullSize(
  pages: readonly PdfPath[][],
  templates: readonly Template[],
  near: number,
  dashByDash = false,
): void {
  for (const { name, cut, seam } of templates) {
    const on = pages.filter((paths) => paths.some((path) => isOutline(path, cut, near)));
    expect(on.length, `pages with the cut line of ${name}`).toBe(1);
    // A browser writes a dashed line dash by dash.
    const sewn = on[0]?.some((path) => isOutline(path, seam, near));
    if (!dashByDash) expect(sewn, `seam line of ${name}`).toBe(true);
    const sides = squareSides(on[0] ?? []);
    // Every page with a template has both squares, an inch and two centimetres a side.
    expect(sides.some((side) => Math.abs(side - 72) < near)).toBe(true);
    expect(sides.some((side) => Math.abs(side - (2 * 72) / 2.54) < near)).toBe(true);
  }
}

/** The plan without its quilt: what the book says of sewing is printed by other tests. */
async function cuttingOnly(): Promise<Plan> {
  const { making: _making, ...plan } = await templatePlan(SAILS);
  return { ...plan, top: null };
}

test.each(["a4", "letter"] as const)(
  "in the PDF on %s every outline is 72 points to the inch",
  async (paper) => {
    const plan = await cuttingOnly();
    const file = await bookPdf(plan, { fonts: PDF_FONTS, paper, made: new Date(0) }, english);
    expectFullSize(pdfPaths(file), templatesOf(plan), HUNDREDTH_MM);
  },
);

test("on the page every sheet says its size in inches, and a plan without outlines has none", async () => {
  const page = bookPage(await cuttingOnly(), english);
  const sheets = [...page.matchAll(/<figure class="full-size"[^>]*><svg ([^>]*)>/g)].map(
    ([, svg = ""]) => svg,
  );
  expect(sheets.length).toBeGreaterThan(0);
  for (const svg of sheets) {
    const read = (what: string): number => Number(new RegExp(`${what}="([\\d.]+)in"`).exec(svg)?.[1]);
    const [, across, down] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
    // A page unit is a CSS pixel: 1/96 in (W3C, CSS Values and Units 3).
    expect(read("width") * 96).toBeCloseTo(Number(across), 6);
    expect(read("height") * 96).toBeCloseTo(Number(down), 6);
    // Inside the margins of the book: 13 mm left and right, 17 above and 15 below, on A4 and on Letter.
    expect(read("width") * 25.4).toBeLessThanOrEqual(210 - 26);
    expect(read("height") * 25.4).toBeLessThanOrEqual(279.4 - 32);
  }
  expect(page).toContain("Print at 100 %");
  const { templates: _templates, ...bare } = await cuttingOnly();
  const plain = bookPage(bare, english);
  expect(plain).not.toContain('class="full-size"');
  expect(plain).not.toContain('id="templates"');
});

const PLACES = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
const executablePath = PLACES.find((place) => existsSync(place));
if (executablePath === undefined)
  console.warn(`Skipped: templates printed by a real browser, for none of ${PLACES.join(", ")} is here.`);

describe.skipIf(executablePath === undefined)("printed by a real browser", () => {
  test.skipIf(LEFT_OUT)("outlines are full size on A4 and Letter, one sheet to a page", async () => {
    const plan = await cuttingOnly();
    const path = join(mkdtempSync(join(tmpdir(), "templates-")), "book.html");
    writeFileSync(path, bookPage(plan, english));
    const browser = await chromium.launch({ executablePath: executablePath ?? "", args: ["--no-sandbox"] });
    try {
      const page = await browser.newPage({ viewport: { width: 320, height: 700 } });
      await page.goto(pathToFileURL(path).href);
      // On a narrow screen too the drawing keeps its size; it scrolls inside its frame.
      const widths = await page.evaluate(() =>
        [...document.querySelectorAll(".full-size svg")].map((svg) => svg.getBoundingClientRect().width),
      );
      expect(widths.every((width) => Math.abs(width - 684) < 0.01)).toBe(true);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
      for (const format of ["A4", "Letter"]) {
        // Browsers place by 1/64 of a pixel or so: a twentieth of a millimetre is what a ruler can see.
        expectFullSize(pdfPaths(await page.pdf({ format })), templatesOf(plan), (0.05 * 72) / 25.4, true);
      }
    } finally {
      await browser.close();
    }
  });
});
