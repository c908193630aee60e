import { mkdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { expect, test } from "vitest";
import { CHROMIUM, launch, openPage, settled } from "./browser.ts";

const PICTURE = join(import.meta.dirname, "..", "..", "out", "page.png");

// The README's first picture, taken anew where it is asked for: `JOURNEYS=picture npx vitest run --config tests/vitest.config.ts tests/page/readme-picture`.
test.skipIf(CHROMIUM === null || process.env.JOURNEYS !== "picture")(
  "the page as the README shows it",
  async () => {
    const browser = await launch();
    const page = await openPage(browser, { viewport: { width: 1280, height: 940 }, reducedMotion: "reduce" });
    await page.getByRole("button", { name: /^Lantern Lane/ }).click();
    await settled(page);
    await page.getByRole("button", { name: /^Lantern, 10/ }).click();
    await page.getByRole("button", { name: "flying geese, right" }).click();
    await page.locator('.paper [aria-label^="b1,"]').focus();
    await settled(page);
    mkdirSync(dirname(PICTURE), { recursive: true });
    await page.screenshot({ path: PICTURE });
    expect(await page.locator(".paper .inhand").count()).toBe(1);
    await browser.close();
  },
);
