import { existsSync, mkdtempSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Plan } from "../../../src/plan/types.ts";
import { bookOf, bookPage } from "../../../src/render/book/index.ts";
import { english } from "../../../src/words/index.ts";
import { pagesOf, printFaults } from "../../support/pdf-text.ts";
import { hostilePlan, listPlan, quiltPlan } from "./book-plans.ts";

const PLACES = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
const executablePath = PLACES.find((place) => existsSync(place));
if (executablePath === undefined) {
  console.warn(`Skipped: the book in a real browser, for none of ${PLACES.join(", ")} is here.`);
}

const MAKERS = { quilt: quiltPlan, list: listPlan, hostile: hostilePlan } as const;
type Name = keyof typeof MAKERS;

describe.skipIf(executablePath === undefined)("in a real browser", () => {
  let browser: Browser;
  const plans = new Map<Name, Plan>();
  const addresses = new Map<Name, string>();

  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: executablePath ?? "", args: ["--no-sandbox"] });
    const folder = mkdtempSync(join(tmpdir(), "book-"));
    for (const [name, make] of Object.entries(MAKERS) as [Name, () => Promise<Plan>][]) {
      const plan = await make();
      const path = join(folder, `${name}.html`);
      writeFileSync(path, bookPage(plan, english));
      plans.set(name, plan);
      addresses.set(name, pathToFileURL(path).href);
    }
  });
  afterAll(() => browser?.close());

  async function open(name: Name, options: Parameters<Browser["newPage"]>[0] = {}): Promise<Page> {
    const page = await browser.newPage(options);
    await page.goto(addresses.get(name) ?? "");
    return page;
  }

  test.each(["quilt", "list", "hostile"] as const)("nothing of %s is wider than the screen", async (name) => {
    for (const width of [320, 768, 1280]) {
      const page = await open(name, { viewport: { width, height: 800 } });
      const wide = await page.evaluate(() =>
        [...document.querySelectorAll("body *")]
          .filter(
            (part) =>
              part.getBoundingClientRect().right > innerWidth + 1 && part.closest(".drawing svg") === null,
          )
          .map((part) => part.outerHTML.slice(0, 80)),
      );
      expect(wide, `at ${width}`).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      await page.close();
    }
  });

  test("tick boxes are large, count what is done, and are remembered until cleared", async () => {
    const context = await browser.newContext({ viewport: { width: 320, height: 640 } });
    const page = await context.newPage();
    await page.goto(addresses.get("list") ?? "");
    const box = page.locator("#fabric-1 .step input").first();
    const size = await box.boundingBox();
    // Target size: WCAG 2.2, success criterion 2.5.8, asks for 24 px.
    expect(Math.min(size?.width ?? 0, size?.height ?? 0)).toBeGreaterThanOrEqual(28);
    await box.focus();
    await page.keyboard.press("Space");
    const progress = page.locator("#fabric-1 .progress");
    expect(await progress.textContent()).toMatch(/^1 of \d+ done$/);
    await page.reload();
    expect(await box.isChecked()).toBe(true);
    const other = await context.newPage();
    await other.goto(addresses.get("quilt") ?? "");
    expect(await other.locator("input:checked").count()).toBe(0);
    page.on("dialog", (dialog) => void dialog.accept());
    await page.locator("[data-clear]").click();
    await page.reload();
    expect(await page.locator("input:checked").count()).toBe(0);
    await context.close();
  });

  test.each(["light", "dark"] as const)(
    "no serious fault with colours counted in, %s",
    async (colorScheme) => {
      const page = await open("quilt", { colorScheme, bypassCSP: true });
      await page.addScriptTag({ path: createRequire(import.meta.url).resolve("axe-core/axe.min.js") });
      const found = await page.evaluate(async () => {
        const { axe } = globalThis as unknown as {
          axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
        };
        const { violations } = await axe.run();
        return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`);
      });
      expect(found).toEqual([]);
      await page.close();
    },
  );

  test("hostile names run nothing, and the page stays in sight", async () => {
    const page = await open("hostile");
    expect(await page.evaluate(() => "broken" in window)).toBe(false);
    expect(await page.locator("h1").isVisible()).toBe(true);
    await page.close();
  });

  test.each(["A4", "Letter"] as const)(
    "prints on %s: pages numbered as in the PDF, nothing broken or cut off",
    async (format) => {
      const page = await open("quilt");
      const pages = await pagesOf(await page.pdf({ format }));
      // The same breaks on both papers, and as in the PDF: all that was reckoned for a page is on it.
      expect(printFaults(pages, bookOf(plans.get("quilt") as Plan, english), false)).toEqual([]);
      await page.emulateMedia({ media: "print" });
      const kept = await page.evaluate(() =>
        [".step", ".drawing", ".label"].map(
          (name) => getComputedStyle(document.querySelector(name) ?? document.body).breakInside,
        ),
      );
      expect(kept).toEqual(["avoid", "avoid", "avoid"]);
      await page.close();
    },
  );
});
