import { existsSync, mkdtempSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { PNG } from "pngjs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Plan } from "../../../src/plan/types.ts";
import { bookOf, bookPage } from "../../../src/print/index.ts";
import { english } from "../../../src/words/index.ts";
import { pagesOf, printFaults } from "../../support/pdf-text.ts";
import { firstOf, LEFT_OUT } from "../../support/sweep.ts";
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

  test.each(firstOf(["hostile", "quilt", "list"] as const, 1))(
    "nothing of %s is wider than the screen",
    async (name) => {
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
    },
  );

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

  test.each(firstOf(["light", "dark"] as const, 1))(
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

  test.each(firstOf(["A4", "Letter"] as const, 1))(
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

  test.skipIf(LEFT_OUT)(
    "where colours are forced an empty box is empty, and a ticked one is not",
    async () => {
      const page = await open("list", { forcedColors: "active" });
      const box = page.locator("#fabric-1 .step input").first();
      // In the middle half of the box, without its edge: how many colours there are.
      const colours = async (): Promise<number> => {
        const size = await box.boundingBox();
        if (size === null) throw new Error("no box");
        const { x, y, width, height } = size;
        const clip = { x: x + width / 4, y: y + height / 4, width: width / 2, height: height / 2 };
        const { data } = PNG.sync.read(await page.screenshot({ clip }));
        const seen = new Set<number>();
        for (let i = 0; i < data.length; i += 4) seen.add(data.readUInt32BE(i));
        return seen.size;
      };
      await box.scrollIntoViewIfNeeded();
      expect(await colours()).toBe(1);
      await box.check();
      expect(await colours()).toBeGreaterThan(1);
      await page.close();
    },
  );

  test.skipIf(LEFT_OUT)("the demo prints sharp and small from the browser", async () => {
    for (const name of ["book", "pattern"]) {
      const page = await browser.newPage();
      await page.goto(new URL(`../../../out/allotments/${name}.html`, import.meta.url).href);
      const file = await page.pdf({ format: "A4" });
      expect(file.length, name).toBeLessThan(1_000_000);
      expect(file.toString("latin1"), name).not.toMatch(/\/Subtype\s*\/Image/);
      await page.close();
    }
  });

  test("the faces of the page are its own, with figures all of one width", async () => {
    const page = await open("quilt");
    const { loaded, widths } = await page.evaluate(async () => {
      await document.fonts.ready;
      const faces = [...document.fonts].filter(({ status }) => status === "loaded");
      const pen = document.createElement("canvas").getContext("2d");
      const widths = ["400", "700"].map((weight) => {
        if (pen === null) return [];
        pen.font = `${weight} 100px "Crossgrain Text"`;
        return Array.from("0123456789", (figure) => pen.measureText(figure).width);
      });
      return { loaded: faces.map(({ family, weight }) => `${family.replaceAll('"', "")} ${weight}`), widths };
    });
    expect(loaded.sort()).toEqual(["Crossgrain Text 400", "Crossgrain Text 700", "Crossgrain Title 700"]);
    for (const each of widths) expect(new Set(each).size).toBe(1);
    await page.close();
  });
});
