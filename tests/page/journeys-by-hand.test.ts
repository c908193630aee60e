import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  CHROMIUM,
  faultsOf,
  launch,
  openPage,
  planOfCommandLine,
  planOnPage,
  savedText,
  settled,
} from "./browser.ts";
import { drawByHand } from "./by-hand.ts";
import { patchesOfTop } from "./from-nothing.ts";
import { QUILTS } from "./quilts.ts";

/** Many minutes: `JOURNEYS=hand`. The same edits without a browser run with every test (`from-nothing.test.ts`). */
const ALL = process.env.JOURNEYS === "hand";
/** One quilt alone, by the beginning of its name. */
const ONE = process.env.QUILT ?? "";

describe.skipIf(CHROMIUM === null || !ALL)("every quilt drawn on the page from nothing, by hand", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
  });

  test.each(QUILTS.filter(({ name }) => name.startsWith(ONE)))(
    "$name: the same patches in the same fabrics, planned as the command line plans what is saved",
    async ({ text }) => {
      const page = await openPage(browser);
      page.setDefaultTimeout(10_000);
      await drawByHand(page, text);
      const saved = await savedText(page);
      expect(patchesOfTop(saved)).toEqual(patchesOfTop(text));
      await settled(page);
      expect(await planOnPage(page)).toEqual(planOfCommandLine(saved));
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
    900_000,
  );
});
