import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { withoutValue } from "../../src/edits/text-edit.ts";
import { CHROMIUM, faultsOf, launch, openPage, savedText } from "./browser.ts";
import { drawByHand } from "./by-hand.ts";
import { patchesOfTop } from "./from-nothing.ts";
import { QUILTS } from "./quilts.ts";

/** Many minutes: `JOURNEYS=hand`. The same edits without a browser run with every test (`from-nothing.test.ts`). */
const ALL = process.env.JOURNEYS === "hand";
/** One quilt alone, by the beginning of its name. */
const ONE = process.env.QUILT ?? "";

/** A quilt without what goes round and between its blocks. */
const bare = (text: string): string => withoutValue(withoutValue(text, ["borders"]), ["setting", "sashing"]);

describe.skipIf(CHROMIUM === null || !ALL)("every quilt drawn on the page from nothing, by hand", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
  });

  test.each(QUILTS.filter(({ name }) => name.startsWith(ONE)))(
    "$name: the same patches in the same fabrics",
    async ({ text }) => {
      const page = await openPage(browser);
      page.setDefaultTimeout(10_000);
      await drawByHand(page, text);
      expect(patchesOfTop(bare(await savedText(page)))).toEqual(patchesOfTop(bare(text)));
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
    900_000,
  );
});
