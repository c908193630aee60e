import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Resvg } from "@resvg/resvg-js";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { crossgrain } from "../cli/run.ts";
import {
  CHROMIUM,
  emptyFolder,
  faultsOf,
  launch,
  lookAt,
  MODES,
  openPage,
  savedText,
  settled,
} from "./browser.ts";

/** Photos of fabrics and the drawer: `npm run journeys` goes through all of it. */
const ALL = process.env.JOURNEYS === "all";
const PATIENCE = 300_000;

/** A print of twelve lanterns, four across and three down, 1600 points wide. */
function print(width: number): Buffer {
  const lanterns = Array.from({ length: 12 }, (_, i) => {
    const [x, y] = [200 + 400 * (i % 4), 200 + 400 * Math.floor(i / 4)];
    return `<circle cx="${x}" cy="${y}" r="110" fill="#d9b44a"/><path d="M${x} ${y - 160}l60 90h-120z" fill="#b03a2e"/>`;
  });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1600 1200" width="1600" height="1200"><rect width="1600" height="1200" fill="#cfe0e8"/>${lanterns.join("")}</svg>`;
  return new Resvg(svg, { fitTo: { mode: "width", value: width } }).render().asPng();
}

const spoken = (page: Page): Promise<string> =>
  page.evaluate(() => document.getElementById("spoken")?.textContent ?? "");
const heard = (page: Page, sentence: string | RegExp) =>
  expect.poll(() => spoken(page), { timeout: 30_000 }).toMatch(sentence);
const press = (page: Page, name: string | RegExp) =>
  page
    .getByRole("button", { name, ...(typeof name === "string" ? { exact: true } : {}) })
    .first()
    .click();

/** A fabric of Lantern Lane opened. */
async function fabricOpen(page: Page, name: string): Promise<void> {
  await press(page, /^Lantern Lane/);
  await settled(page);
  await press(page, "Fabric");
  await page.locator(".bigpile th .act", { hasText: name }).click();
}

async function choose(page: Page, button: string, file: { name: string; mimeType: string; buffer: Buffer }) {
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), press(page, button)]);
  await chooser.setFiles(file);
}

const photo = (buffer: Buffer, name = "print.png", mimeType = "image/png") => ({ name, mimeType, buffer });

/** A drag over a part of the photo. */
async function drag(page: Page, to: readonly [number, number]): Promise<void> {
  const box = (await page.locator(".photobox").boundingBox())!;
  await page.mouse.move(box.x + 1, box.y + 1);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * to[0], box.y + box.height * to[1], { steps: 4 });
  await page.mouse.up();
}

/** How large one tile of a fabric is laid, in millimetres of cloth. */
const tile = (page: Page, index = 0): Promise<number[]> =>
  page.evaluate((at) => {
    const tile = document.querySelector(`#photo-${at}`);
    return ["width", "height"].map((side) => Number(tile?.getAttribute(side)));
  }, index);

let browser: Browser;

describe.skipIf(CHROMIUM === null || !ALL)("fabric by its photo, and the drawer", () => {
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
  });

  test(
    "a photo is seen to true scale in quilt, block, units and at the mat; its box and arrow are in the file",
    async () => {
      const page = await openPage(browser);
      await fabricOpen(page, "night");
      await choose(page, "Take or choose a photo", photo(print(1600)));
      await heard(page, /^night is seen as in the photo: \d+ kB made \d+ kB\. Its colour is taken from it\./);
      // Told once: 1600 points are 10 in, so a lantern is 2 1/2 in.
      await page.getByLabel("What the photo shows is").fill("10 in");
      await page.getByLabel("What the photo shows is").press("Enter");
      await heard(page, "night: the photo shows 10 in across.");
      await drag(page, [0.25, 1 / 3]);
      await press(page, "This is its repeat");
      await heard(page, "night repeats every 2½ × 2½ in.");
      expect(await savedText(page)).toContain("repeat: 2 1/2 x 2 1/2");
      for (const side of await tile(page)) expect(side).toBeCloseTo(63.5, 3);
      await press(page, /Turn the arrow$/);
      await heard(page, "night: up points to the right, across the fabric.");
      const text = await savedText(page);
      expect(text).toContain("print: one-way across");
      // The file with it plans at the command line, and its colour is the photo's.
      const file = join(emptyFolder(), "quilt.yaml");
      writeFileSync(file, text);
      expect(crossgrain(["check", file]).code).toBe(0);
      expect(text).not.toContain("#26365c");

      const fills = async (where: string): Promise<string[]> =>
        page.locator(where).evaluateAll((all) => [
          ...new Set(
            all.flatMap((one) => {
              const fill = getComputedStyle(one).fill;
              const [, id = ""] = /url\("?#([^")]+)/.exec(fill) ?? [];
              const pattern = document.getElementById(id);
              return id === "" ? [] : [`${pattern?.getAttribute("patternTransform")}`];
            }),
          ),
        ]);
      await press(page, "Draw");
      // A print's up that points up is the photo turned back by a quarter; a millimetre is a unit of the picture.
      await expect.poll(() => fills(".paper .seam")).toContain("scale(1) rotate(270)");
      await press(page, /^Lantern, 10/);
      await page.waitForSelector(".tray");
      const paper = await page.evaluate(() => {
        const cell = document.querySelector(".paper .cell")!;
        return Number(cell.getAttribute("width")) / (2 * 25.4);
      });
      const onPaper = await fills(".paper .seam");
      expect(onPaper.length).toBeGreaterThan(0);
      for (const scale of onPaper) expect(Number(/scale\(([\d.]+)\)/.exec(scale)?.[1])).toBeCloseTo(paper, 6);
      // One square of the block is 2 in, and 32 units of a picture of a unit.
      const units = await fills(".tray .rest .seam");
      expect(units).toContain(`scale(${32 / 50.8}) rotate(0)`);
      await press(page, "Cut");
      await page.waitForSelector(".matlay");
      expect(await fills(".mstrip.lit .mp")).toEqual(["scale(1) rotate(0)"]);

      // Back again step by step, the photo too; and once more.
      for (let i = 0; i < 5; i++) await press(page, "Undo");
      expect(await page.locator("pattern[id^=photo-0]").count()).toBe(0);
      for (let i = 0; i < 5; i++) await press(page, "Redo");
      expect(await savedText(page)).toBe(text);

      // Kept in this browser, and in the one file that is handed on.
      await page.waitForFunction(() => document.querySelector(".kept .k")?.textContent?.startsWith("Kept"));
      await press(page, "Pattern");
      await page.waitForSelector(".bookframe");
      const [copy] = await Promise.all([
        page.waitForEvent("download"),
        press(page, "This page with the quilt in it"),
      ]);
      const path = join(emptyFolder(), "copy.html");
      writeFileSync(path, readFileSync(await copy.path()));
      expect(readFileSync(path).length).toBeLessThanOrEqual(3_000_000);
      // The pattern is in the photo too, which lies in it as letters; at the machine a picture names the tile on the page.
      const book = page.frames().find((frame) => frame !== page.mainFrame());
      await expect
        .poll(() =>
          book?.evaluate(() => document.querySelector("#photo-0 image")?.getAttribute("href")?.slice(0, 15)),
        )
        .toBe("data:image/jpeg");
      expect(await book?.locator('[fill^="url(#photo-0-"]').count()).toBeGreaterThan(10);
      await press(page, "Sew");
      await page.waitForSelector(".bigstep");
      // The squares show their right side once the unit is opened.
      await press(page, "Next");
      await press(page, "Next");
      await expect
        .poll(async () => (await fills(".bigstep [fill^='url(#photo-0-']")).length)
        .toBeGreaterThan(0);
      await page.reload();
      await press(page, /^Lantern Lane, \d/);
      await expect.poll(() => page.locator("#photo-0").count()).toBe(1);
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
      const other = await openPage(browser, {}, path);
      for (const side of await tile(other)) expect(side).toBeCloseTo(63.5, 3);
      expect(faultsOf(other)).toEqual([]);
      await other.context().close();
    },
    PATIENCE,
  );

  test(
    "by keys and by two taps: the box moves, grows and is typed; the photo is turned; a fabric renamed keeps it",
    async () => {
      const page = await openPage(browser, { hasTouch: true });
      await fabricOpen(page, "night");
      await choose(page, "Take or choose a photo", photo(print(800)));
      await page.waitForSelector(".photobox");
      const box = page.locator(".photobox");
      const at = (x: number, y: number) =>
        box.boundingBox().then((frame) => ({ x: frame!.width * x, y: frame!.height * y }));
      await box.scrollIntoViewIfNeeded();
      await box.tap({ position: await at(0.25, 0.25) });
      await heard(page, "Now tap the opposite corner.");
      await box.tap({ position: await at(0.75, 0.75) });
      await heard(page, /^Laid side by side: (?:about )?4 × 3 in\./);
      await box.focus();
      for (let i = 0; i < 5; i++) await page.keyboard.press("Shift+ArrowRight");
      await heard(page, /^Laid side by side: (?:about )?4\D.* in\./);
      await page.keyboard.press("ArrowDown");
      expect(await box.getAttribute("aria-label")).toMatch(/^Part of the photo of night that is laid/);
      await page.getByLabel("box across", { exact: true }).last().fill("2 in");
      await page.getByLabel("box across", { exact: true }).last().press("Enter");
      await heard(page, "Laid side by side: 2 × 3 in.");
      await press(page, "Turn the photo");
      for (const [i, side] of (await tile(page)).entries())
        expect(side).toBeCloseTo(i === 0 ? 76.2 : 50.8, 1);
      await page.locator(".clothleaf").getByLabel("Name").fill("dusk");
      await page.locator(".clothleaf").getByLabel("Name").press("Enter");
      await page.locator(".clothleaf h2", { hasText: "dusk" }).waitFor();
      expect(await page.locator(".photobox").count()).toBe(1);
      await press(page, "Take the photo away");
      await heard(page, "dusk has no photo any more; undo brings it back.");
      await press(page, "Undo");
      expect(await page.locator(".photobox").count()).toBe(1);
      // What is typed as a repeat is what the file says, and the photo is laid so.
      await page.getByLabel("its print comes again every").fill("6 x 8 in");
      await page.getByLabel("its print comes again every").press("Enter");
      for (const [i, side] of (await tile(page)).entries())
        expect(side).toBeCloseTo(i === 0 ? 152.4 : 203.2, 3);
      await page.getByLabel("its print comes again every").fill("large");
      await page.getByLabel("its print comes again every").press("Enter");
      await heard(page, "“large” is no repeat. For example: 6 x 8 in, across and along.");
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
    PATIENCE,
  );

  test(
    "30 MB is made small, 100 points are said to be coarse, HEIC and code are refused, a full store is said",
    async () => {
      const page = await openPage(browser, {}, undefined, () => {
        const put = IDBObjectStore.prototype.put;
        IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given: Parameters<typeof put>) {
          if ((globalThis as { full?: boolean }).full === true && String(given[1]).startsWith("photos"))
            throw new DOMException("no room", "QuotaExceededError");
          return put.apply(this, given);
        };
      });
      await fabricOpen(page, "chalk");
      const before = await savedText(page);
      const add = "Take or choose a photo";
      const code = `<svg xmlns="http://www.w3.org/2000/svg" width="90" height="90"><script>window.ran = 1</script></svg>`;
      for (const [name, type, content] of [
        ["print.svg", "image/svg+xml", code],
        ["print.png", "image/png", `\ufeff<?xml version="1.0"?>${code}`],
      ] as const) {
        await choose(page, add, photo(Buffer.from(content), name, type));
        await heard(page, /^This is a drawing made of code, not a photo/);
      }
      const heic = Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from("ftypheic\0\0\0\0mif1heic")]);
      await choose(page, add, photo(heic, "print.heic", "image/heic"));
      await heard(page, /^This browser cannot open HEIC photos/);
      await choose(page, add, photo(Buffer.from("no picture at all"), "print.jpg", "image/jpeg"));
      await heard(page, /^This file is no photo a browser can open/);
      await choose(page, add, photo(print(6)));
      await heard(page, /^This picture is too small/);
      expect(await savedText(page)).toBe(before);
      expect(await page.evaluate(() => "ran" in globalThis)).toBe(false);
      await choose(page, add, photo(print(100)));
      await heard(page, /It is a small picture, so its print will look coarse\./);
      // Noise, which no format makes smaller, dropped on the page.
      const large = await page.evaluate(async () => {
        const canvas = Object.assign(document.createElement("canvas"), { width: 3600, height: 2800 });
        const context = canvas.getContext("2d")!;
        const image = context.createImageData(3600, 2800);
        for (let at = 0; at < image.data.length; at += 65_536)
          crypto.getRandomValues(image.data.subarray(at, Math.min(image.data.length, at + 65_536)));
        for (let at = 3; at < image.data.length; at += 4) image.data[at] = 255;
        context.putImageData(image, 0, 0);
        const blob = await new Promise<Blob>((done) => canvas.toBlob((made) => done(made!)));
        const data = new DataTransfer();
        data.items.add(new File([blob], "noise.png", { type: "image/png" }));
        document.dispatchEvent(
          new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }),
        );
        return blob.size;
      });
      expect(large).toBeGreaterThan(30_000_000);
      await heard(page, /^chalk is seen as in the photo: 3\d\.\d MB made \d+ kB\./);
      expect(Number(/made (\d+) kB/.exec(await spoken(page))?.[1])).toBeLessThan(900);
      await page.evaluate(() => Object.assign(globalThis, { full: true }));
      await choose(page, "Another photo", photo(print(400)));
      await page.getByText("The photo is here while the page is open").waitFor();
      expect(await page.locator("#photo-3").count()).toBe(1);
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
    PATIENCE,
  );

  test(
    "the drawer: the same table as at the command line, what it covers as `buy --stash` has it",
    async () => {
      const page = await openPage(browser);
      await press(page, /^Lantern Lane/);
      await settled(page);
      await press(page, "Fabric");
      const table =
        "fabric,width,length,how many,note\nnight,42 in,20 in,1,from last year\nchalk,21 in,18 in,6,\nsea,21 in,18 in,2,\nbad,x,y,1,\n";
      await choose(page, "Open the drawer’s file", {
        name: "mine.csv",
        mimeType: "text/csv",
        buffer: Buffer.from(table),
      });
      await heard(
        page,
        "mine.csv: 9 pieces of fabric in the drawer. One line could not be read; it stays as it is.",
      );
      const saved = async () => {
        const [file] = await Promise.all([
          page.waitForEvent("download"),
          press(page, "Save the drawer’s file"),
        ]);
        return readFileSync(await file.path(), "utf8");
      };
      expect(await saved()).toBe(table);
      await press(page, "What does the drawer cover?");
      await page.waitForSelector(".covers");
      const lines = await page.locator(".covers li").allInnerTexts();
      const folder = emptyFolder();
      writeFileSync(join(folder, "quilt.yaml"), await savedText(page));
      writeFileSync(join(folder, "mine.csv"), table);
      const { stdout } = crossgrain(["buy", "quilt.yaml", "--stash", "mine.csv"], { folder });
      expect(stdout).toMatch(/night +1\/2 yd/);
      expect(stdout).toMatch(/chalk +cut from pieces you have/);
      expect(lines).toHaveLength(5);
      expect(lines[0]).toMatch(/^night: buy ½ yd in place of 1 yd\. Cut from 42 × 20 in\.$/);
      expect(lines[3]).toMatch(/^chalk: all of it; nothing to buy\./);

      await page.getByLabel("fabric", { exact: true }).fill("moss");
      await page.getByLabel("size").fill("10 x 12 in");
      await press(page, "Put it in");
      await heard(page, "In the drawer: moss, 10 × 12 in.");
      expect(await saved()).toBe(`${table}moss,10 in,12 in,1,\n`);
      await page.getByLabel("size").fill("a heap");
      await press(page, "Put it in");
      await heard(page, /"a heap" is not a size/);
      await press(page, "take one out: chalk, 21 × 18 in");
      expect(await saved()).toContain("chalk,21 in,18 in,5,\n");
      await press(page, "Put it back");
      expect(await saved()).toContain("chalk,21 in,18 in,6,\n");
      await page.evaluate(() => {
        const data = new DataTransfer();
        data.items.add(new File(["a,b\n1,2\n"], "other.csv"));
        document.dispatchEvent(
          new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }),
        );
      });
      await heard(page, /^other\.csv is no list of fabric\./);
      await page.reload();
      await press(page, /^Lantern Lane/);
      await press(page, "Fabric");
      await page.locator(".heaps").first().waitFor();
      expect(await saved()).toContain("moss,10 in,12 in,1,");
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
    PATIENCE,
  );

  test(
    "a photo and the drawer: no accessibility fault, no sideways scroll, every target 44 px",
    async () => {
      for (const mode of MODES) {
        const page = await openPage(browser, mode);
        await fabricOpen(page, "night");
        await choose(page, "Take or choose a photo", photo(print(800)));
        await page.waitForSelector(".photobox");
        await press(page, /Turn the arrow$/);
        await page.getByLabel("fabric", { exact: true }).fill("night");
        await page.getByLabel("size").fill("20 x 40 in");
        await press(page, "Put it in");
        await page.waitForSelector(".heap");
        await press(page, "What does the drawer cover?");
        await page.waitForSelector(".covers");
        await lookAt(page, `fabric ${JSON.stringify(mode)}`);
        expect(faultsOf(page)).toEqual([]);
        await page.context().close();
      }
    },
    PATIENCE,
  );
});
