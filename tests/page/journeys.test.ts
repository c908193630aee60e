import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { formatMeasure } from "../../src/planning.ts";
import { crossgrain } from "../cli/run.ts";
import { LEFT_OUT } from "../support/sweep.ts";
import {
  CHROMIUM,
  emptyFolder,
  faultsOf,
  launch,
  lookAt,
  MODES,
  openPage,
  planOfCommandLine,
  planOnPage,
  savedText,
  settled,
} from "./browser.ts";
import { drawStarQuilt, finger, type Hand, keys, mouse } from "./hands.ts";
import { QUILTS, quiltNamed } from "./quilts.ts";

/** All journeys, every quilt: `npm run journeys`. Every run has the first of each kind. */
const ALL = process.env.JOURNEYS === "all";
/** All regions in all modes take a while. */
const PATIENCE = ALL ? 600_000 : 120_000;
if (CHROMIUM === null) console.warn("Chromium is not installed: the journeys on the page are skipped.");

let browser: Browser;

describe.skipIf(CHROMIUM === null)("the page in a browser", () => {
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
  });

  const ways: {
    name: string;
    options: object;
    hand: (page: Awaited<ReturnType<typeof openPage>>) => Hand;
  }[] = [
    { name: "by pointer", options: {}, hand: mouse },
    ...(ALL
      ? [
          {
            name: "by touch",
            options: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
            hand: finger,
          },
          { name: "by keys alone", options: {}, hand: keys },
        ]
      : []),
  ];
  test.each(ways)(
    "a star quilt from nothing, $name: drawn, counted, saved, the plan of the command line",
    async ({ options, hand }) => {
      const page = await openPage(browser, options);
      await drawStarQuilt(hand(page));
      await settled(page);
      const text = await savedText(page);
      const expected = planOfCommandLine(text);
      expect(expected.top?.blocks).toHaveLength(9);
      expect(expected.top?.borders).toHaveLength(1);
      expect(new Set(expected.top?.designs[0]?.patches.map(({ fabric }) => fabric))).toEqual(
        new Set(["chalk", "night", "lanterns"]),
      );
      const amounts = await page.locator(".pile .amount").allTextContents();
      expect(amounts).toEqual(
        expected.fabrics.map(({ purchase, sold }) =>
          formatMeasure(purchase?.length ?? 0, sold.unit, { typeset: true }),
        ),
      );
      expect(await planOnPage(page)).toEqual(expected);
      // Back to the empty sheet, a gesture at a time, and forth again.
      await page.getByRole("button", { name: "Draw", exact: true }).click();
      const undo = page.getByRole("button", { name: "Undo", exact: true });
      for (let i = 0; i < 40 && (await undo.isEnabled()); i++) await undo.click();
      expect(await savedText(page)).toContain(". . . .\n      . . . .");
      const redo = page.getByRole("button", { name: "Redo", exact: true });
      for (let i = 0; i < 40 && (await redo.isEnabled()); i++) await redo.click();
      expect(await savedText(page)).toBe(text);
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
    PATIENCE,
  );

  test.skipIf(!ALL)(
    "no accessibility fault, no sideways scroll, every target 44 px",
    async () => {
      for (const mode of MODES) {
        const page = await openPage(browser, mode);
        const look = (where: string) => lookAt(page, where);
        await look("first open");
        await page.getByRole("button", { name: /^Lantern Lane/ }).click();
        await settled(page);
        await page.locator('[data-at="1,2"]').click();
        await look("quilt");
        await page.getByRole("button", { name: "Draw this block" }).click();
        await look("block");
        await page.getByRole("button", { name: "Draw a patch by its corners" }).click();
        await look("corners");
        await page.getByRole("button", { name: "Stop" }).click();
        await page.getByRole("button", { name: "snowball", exact: true }).first().click();
        await page.locator('.paper [aria-label^="b2,"]').click({ force: true });
        await page.getByText("Columns and lines of their own size").click();
        await look("more of a unit");
        for (const region of ["Fabric", "Cut", "Sew"]) {
          await page.getByRole("button", { name: region, exact: true }).click();
          if (region === "Fabric") await page.getByRole("button", { name: "chalk", exact: true }).click();
          else await page.waitForSelector(region === "Cut" ? ".matlay" : ".bigstep");
          await look(region);
        }
        await page.getByRole("button", { name: "Draw", exact: true }).click();
        await page.getByRole("button", { name: "The text", exact: true }).click();
        await page.locator(".cm-content").click();
        await page.keyboard.press("Control+End");
        await page.keyboard.type("\nbindign: x\n");
        await page.locator(".faults li").first().waitFor();
        await look("a fault");
        expect(faultsOf(page)).toEqual([]);
        await page.context().close();
      }
    },
    PATIENCE,
  );

  test.skipIf(LEFT_OUT)(
    "a quilt handed out in its page opens on it; what is typed is drawn; a fault is told in its place",
    async () => {
      const folder = emptyFolder();
      const [from, to] = [join(folder, "quilt.yaml"), join(folder, "handed out.html")];
      // A name that would end the element it travels in, were it not guarded.
      writeFileSync(from, quiltNamed("nine-stars").replace(/^name: .*$/m, 'name: "Stars </script><b>"'));
      expect(crossgrain(["page", from, "--out", to]).code).toBe(0);
      const page = await openPage(browser, {}, to);
      await settled(page);
      expect(await page.getByLabel("Name").inputValue()).toBe("Stars </script><b>");
      await page.getByRole("button", { name: "The text", exact: true }).click();
      await page.locator(".cm-content").click();
      await page.keyboard.press("Control+End");
      await page.keyboard.type("\nbindign: x\n");
      await page.locator(".faults li", { hasText: "There is no key `bindign` here." }).first().waitFor();
      expect(await page.locator(".cm-lintRange-error").count()).toBeGreaterThan(0);
      await page.getByRole("button", { name: /^Put it right/ }).click();
      await page.waitForFunction(
        () => !document.querySelector(".cm-content")?.textContent?.includes("bindign"),
      );
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
  );

  test.skipIf(LEFT_OUT)("what was drawn is still there when the page is opened again", async () => {
    const page = await openPage(browser);
    await page.getByRole("button", { name: /^Nine stars/ }).click();
    await page.getByRole("button", { name: "Add a border", exact: true }).click();
    await page.waitForFunction(() => document.querySelector(".kept .k")?.textContent?.startsWith("Kept"));
    await page.reload();
    await page.getByRole("button", { name: /^Nine stars, \d/ }).click();
    expect(await page.locator(".rings .ring").count()).toBe(2);
    await page.context().close();
  });

  test.skipIf(LEFT_OUT)(
    "nothing typed or opened by mistake harms the quilt: it is refused where the hand is",
    async () => {
      const page = await openPage(browser);
      await page.getByRole("button", { name: /^Nine stars/ }).click();
      await settled(page);
      const amounts = () => page.locator(".amount").allTextContents();
      const here = () => page.locator(".saidhere").textContent();
      const type = async (field: string, wish: string) => {
        await page.locator(field).first().fill(wish);
        await page.locator(field).first().press("Tab");
      };
      const before = await amounts();
      await type(".rings input", "wide");
      expect(await here()).toBe("“wide” is no length. For example: 4 1/2");
      await type(".rings input", "2 1/2");
      expect(await here()).toBe("night 2½ in.");
      await type(".rings input", "1/16");
      await settled(page);
      expect(await page.locator(".alarm").count()).toBe(0);
      await type(".rings input", "3");
      await settled(page);
      expect(await amounts()).toEqual(before);
      const text = await savedText(page);
      const choosing = page.waitForEvent("filechooser");
      await page.getByRole("button", { name: "Open a file", exact: true }).click();
      await (await choosing).setFiles({
        name: "letter.yaml",
        mimeType: "text/yaml",
        buffer: Buffer.from("Dear Ann,\nthe quilt is done.\n"),
      });
      await page.locator(".notice", { hasText: "Your quilt is still here." }).waitFor();
      expect(await savedText(page)).toBe(text);
      await page.getByRole("button", { name: "Fabric", exact: true }).click();
      for (const [i, wish] of ["wide", "at once", "cheap"].entries()) {
        const field = page.locator(".shop input").nth(i);
        await field.fill(wish);
        await field.press("Tab");
        expect(await field.inputValue()).toBe("");
        expect(await here()).toContain(`“${wish}” is no `);
      }
      expect(await savedText(page)).toBe(text);
      await page.context().close();
    },
  );

  test.skipIf(!ALL).each(QUILTS)("$name: the plan of the command line", async ({ name, text }) => {
    const folder = emptyFolder();
    const to = join(folder, "page.html");
    const from = join(folder, name);
    writeFileSync(from, text);
    crossgrain(["page", from, "--out", to]);
    const page = await openPage(browser, {}, to);
    await settled(page);
    expect(await planOnPage(page)).toEqual(planOfCommandLine(text));
    expect(faultsOf(page)).toEqual([]);
    await page.context().close();
  });
});
