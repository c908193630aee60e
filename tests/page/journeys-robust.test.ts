import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { crossgrain } from "../cli/run.ts";
import { CHROMIUM, emptyFolder, faultsOf, launch, openPage, PAGE, savedText, settled } from "./browser.ts";
import { fingerOver } from "./hands.ts";
import { quiltNamed } from "./quilts.ts";

/** What goes wrong on other people's machines: `npm run journeys` goes through all of it. */
const ALL = process.env.JOURNEYS === "all";

const begin = (page: Page) => page.getByRole("button", { name: /^Nine stars/ }).click();
const border = (page: Page) => page.getByRole("button", { name: "Add a border", exact: true }).click();
const said = (page: Page, sentence: RegExp | string) =>
  page.getByText(sentence).filter({ visible: true }).first().waitFor();

/** Ten thousand placed blocks of one square each. */
const HUNDRED = `blocks:
  A: { size: 1, cell: { square: night } }
  B: { size: 1, cell: { square: boats } }
setting:
  rows: |
    A B
    B A
  fill: 100 x 100`;

/** A file dropped on the page, as from a folder. */
async function drop(page: Page, name: string, content: number[] | string, bytes = 0): Promise<void> {
  await page.evaluate(
    ([called, given, size]) => {
      const data = new DataTransfer();
      const body =
        typeof given === "string" ? given : size === 0 ? new Uint8Array(given) : new Uint8Array(size);
      data.items.add(new File([body], called));
      document.dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
    },
    [name, content, bytes] as const,
  );
}

describe.skipIf(CHROMIUM === null || !ALL)("nothing is lost, and it is said", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
  });
  const opened = (before: () => void = () => {}, file = PAGE) => openPage(browser, {}, file, before);

  test("storage refused: one draws and saves all the same", async () => {
    const page = await opened(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException("refused", "SecurityError");
      };
    });
    await begin(page);
    await border(page);
    await said(page, "Not kept: this browser has no room for it. Save a file.");
    expect(await savedText(page)).toContain("borders:");
    expect(faultsOf(page)).toEqual([]);
    await page.context().close();
  });

  test("letters that are being typed stay when amounts come in around them", async () => {
    const page = await opened();
    await begin(page);
    await settled(page);
    const name = page.getByRole("textbox", { name: "Border 1".toLowerCase(), exact: false }).first();
    await name.focus();
    await page.keyboard.press("ControlOrMeta+a");
    await page.keyboard.type("5 ");
    // The page is drawn anew while the hand is in the field, as it is when a search ends.
    await page.evaluate(() =>
      document.querySelector<HTMLElement>(".size .stepper button:last-of-type")?.click(),
    );
    await settled(page);
    await page.keyboard.type("1/2");
    await page.keyboard.press("Tab");
    expect(await savedText(page)).toContain("width: 5 1/2");
    await page.context().close();
  });

  test("the paper and the quilt are one stop each in the order of keys; arrows go on within", async () => {
    const page = await opened();
    const inGrid = () => page.evaluate(() => document.activeElement?.getAttribute("role") === "gridcell");
    const stops = async () => {
      let count = 0;
      for (let i = 0; i < 70; i++) {
        await page.keyboard.press("Tab");
        if (await inGrid()) count += 1;
      }
      return count;
    };
    await page.getByRole("button", { name: /^An empty sheet/ }).click();
    await page.locator('.paper [role="gridcell"]').first().waitFor();
    await page.getByRole("textbox", { name: "Name of the block" }).focus();
    expect(await stops()).toBeLessThanOrEqual(2);
    await page.keyboard.press("F6");
    for (let i = 0; i < 8 && !(await inGrid()); i++) await page.keyboard.press("F6");
    expect(await inGrid()).toBe(true);
    await page.keyboard.press("ArrowRight");
    await page.waitForFunction(() => document.activeElement?.getAttribute("aria-label")?.startsWith("a2"));
    await page.context().close();
  });

  test("storage full: older states make way, then it is said; with room again it is kept", async () => {
    const page = await opened(() => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given: Parameters<typeof put>) {
        if ((globalThis as { full?: boolean }).full === true)
          throw new DOMException("no room", "QuotaExceededError");
        return put.apply(this, given);
      };
    });
    await begin(page);
    // One of those to begin with is kept once it is changed.
    await border(page);
    await page.waitForFunction(() => document.querySelector(".kept .k")?.textContent?.startsWith("Kept"));
    await page.evaluate(() => Object.assign(globalThis, { full: true }));
    await border(page);
    await said(page, /^Not kept/);
    await page.evaluate(() => Object.assign(globalThis, { full: false }));
    await border(page);
    await page.waitForFunction(() => document.querySelector(".kept .k")?.textContent?.startsWith("Kept"));
    await page.reload();
    await page.getByRole("button", { name: /^Nine stars, \d/ }).click();
    expect(await page.locator(".rings .ring").count()).toBe(4);
    await page.context().close();
  });

  test("no dialog to save with, or none used: the file goes among the downloads", async () => {
    const page = await opened(() => {
      const refuse = { with: "SecurityError" };
      const showSaveFilePicker = async () => {
        throw new DOMException("refused", refuse.with);
      };
      // The page's own test tools take the dialogs away; they are put back once it stands.
      Object.assign(globalThis, { refuse, putBack: () => Object.assign(globalThis, { showSaveFilePicker }) });
      globalThis.addEventListener("DOMContentLoaded", () =>
        Object.assign(globalThis, { showSaveFilePicker }),
      );
      Object.assign(globalThis, { showOpenFilePicker: async () => [], showSaveFilePicker });
    });
    await begin(page);
    expect(await savedText(page)).toContain("name: Nine stars");
    await said(page, "nine-stars.yaml is among this browser’s downloads.");
    await page.evaluate(() => {
      (globalThis as unknown as { refuse: { with: string } }).refuse.with = "AbortError";
    });
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await said(page, /^No file was saved/);
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Put it among the downloads" }).click(),
    ]);
    expect(file.suggestedFilename()).toBe("nine-stars.yaml");
    expect(await page.locator(".notice").count()).toBe(0);
    await page.context().close();
  });

  test("a finger drawn over the paper lays, colours and takes off; the page stays where it is", async () => {
    const page = await openPage(browser, {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    await page.getByRole("button", { name: /^An empty sheet/ }).click();
    expect(await fingerOver(page, "d4", "b1")).toBe(0);
    expect(await fingerOver(page, "a1", "a4")).toBe(0);
    const units = () => page.locator('.paper [aria-label$=", square, up"]').count();
    expect(await page.locator('.paper [aria-label$=", rectangle, up"]').count()).toBe(16);
    expect(await units()).toBe(0);
    await page.getByRole("button", { name: "Colour", exact: true }).click();
    await page.getByRole("button", { name: /^chalk, fabric 3/ }).click();
    const night = await savedText(page);
    await fingerOver(page, "a1", "d4");
    const chalk = await savedText(page);
    expect(chalk).not.toContain("rectangle: night");
    // All that one finger coloured is one gesture.
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    expect(await savedText(page)).toBe(night);
    await page.getByRole("button", { name: "Take off", exact: true }).click();
    await fingerOver(page, "a1", "d4");
    expect(await page.locator('.paper [aria-label$=", empty"]').count()).toBe(16);
    expect(faultsOf(page)).toEqual([]);
    await page.context().close();
  });

  test("a worker that breaks down in the middle: the spare plans on; all break down: it is said, the text stays", async () => {
    const page = await opened(() => {
      const made: Worker[] = [];
      Object.assign(globalThis, { made });
      const Own = Worker;
      globalThis.Worker = class extends Own {
        constructor(url: string | URL) {
          super(url);
          made.push(this);
        }
      };
    });
    await begin(page);
    await page.evaluate(() => {
      const [first] = (globalThis as unknown as { made: Worker[] }).made;
      first!.dispatchEvent(new ErrorEvent("error", { message: "out of memory" }));
    });
    await settled(page);
    await border(page);
    await page.evaluate(async () => {
      const { made } = globalThis as unknown as { made: Worker[] };
      for (let i = 0; i < made.length && i < 30; i++)
        made[i]!.dispatchEvent(new ErrorEvent("error", { message: "out of memory" }));
    });
    await said(page, /^The planner has stumbled over this quilt/);
    expect((await savedText(page)).match(/width: 3/g)).toHaveLength(2);
    // The next change asks anew.
    await border(page);
    await settled(page);
    await page.context().close();
  });

  test("files of the wrong kind: the quilt in hand stays, what is wrong is said", async () => {
    const page = await opened();
    await begin(page);
    await border(page);
    await settled(page);
    const mine = await savedText(page);
    await drop(page, "photo.jpg", [0xff, 0xd8, 0xff, 0xe0, 0, 0x10]);
    await said(page, /photo\.jpg is no text/);
    await drop(page, "large.jpg", [], 30_000_000);
    await said(page, /large\.jpg is too large/);
    expect(await savedText(page)).toBe(mine);
    await drop(page, "list.yaml", "fabrics:\n  - name: sky\n    pieces:\n      - clouds 4 1/2 square, 26\n");
    await said(page, /This file holds a cut list/);
    await settled(page);
    await drop(page, "letter.yaml", "Dear Ann,\nthe quilt is done.\n");
    await said(page, /letter\.yaml is no quilt.* Your quilt is still here\./);
    expect(await savedText(page)).toContain("clouds 4 1/2 square");
    // What was drawn before waits where it was left off.
    await page.getByRole("button", { name: "Other quilts", exact: true }).click();
    await page.getByRole("button", { name: /^Nine stars, \d/ }).click();
    expect(await savedText(page)).toBe(mine);
    expect(faultsOf(page)).toEqual([]);
    await page.context().close();
  });

  test("the file changed on disk meanwhile: not written over unseen, either side can be taken", async () => {
    const page = await opened(() => {
      const disk = { text: "", stamp: 1 };
      const handle = {
        kind: "file",
        name: "stars.yaml",
        getFile: async () => new File([disk.text], "stars.yaml", { lastModified: disk.stamp }),
        createWritable: async () => {
          const parts: BlobPart[] = [];
          return new WritableStream({
            write: (part: BlobPart) => void parts.push(part),
            close: async () => {
              disk.text = await new Blob(parts).text();
              disk.stamp += 1;
            },
          });
        },
        queryPermission: async () => "granted",
        requestPermission: async () => "granted",
      };
      Object.assign(globalThis, { disk, showOpenFilePicker: async () => [handle] });
      Object.assign(globalThis, { showSaveFilePicker: async () => handle });
    });
    const disk = () => page.evaluate(() => (globalThis as unknown as { disk: { text: string } }).disk.text);
    const write = (text: string) =>
      page.evaluate((given) => {
        const { disk: on } = globalThis as unknown as { disk: { text: string; stamp: number } };
        Object.assign(on, { text: given, stamp: on.stamp + 10 });
      }, text);
    const press = (name: string) => page.getByRole("button", { name, exact: true }).click();
    const first = quiltNamed("nine-stars");
    await write(first);
    await page.getByRole("button", { name: "Open a file", exact: true }).click();
    await page.waitForSelector(".rings");
    await border(page);
    const other = first.replace("width: 3", "width: 5");
    await write(other);
    await press("Save");
    await said(page, "stars.yaml has been changed on disk since it was opened here.");
    expect(await disk()).toBe(other);
    await press("Take what is on disk");
    await press("Undo");
    await press("Save");
    await said(page, "Saved as stars.yaml.");
    expect((await disk()).match(/width: 3/g)).toHaveLength(2);
    await write(other);
    await press("Save");
    await press("Keep what is here");
    await press("Save");
    await page.waitForFunction(
      () => !(globalThis as unknown as { disk: { text: string } }).disk.text.includes("width: 5"),
    );
    expect(faultsOf(page)).toEqual([]);
    await page.context().close();
  });

  test("the same quilt in two windows: each keeps its own", async () => {
    const page = await opened();
    await begin(page);
    await border(page);
    await page.waitForFunction(() => document.querySelector(".kept .k")?.textContent?.startsWith("Kept"));
    const second = await page.context().newPage();
    await second.goto(`file://${PAGE}`);
    await second.getByRole("button", { name: /^Nine stars, \d/ }).click();
    await border(second);
    await second.waitForFunction(() => document.querySelector(".kept .k")?.textContent?.startsWith("Kept"));
    await page.bringToFront();
    await page.evaluate(() => window.dispatchEvent(new Event("focus")));
    await said(page, "This quilt is being drawn in another window too.");
    await page.getByRole("button", { name: "Add sashing", exact: true }).click();
    await said(page, /kept as a quilt of its own/);
    expect((await savedText(second)).match(/width: 3/g)).toHaveLength(3);
    expect(await savedText(page)).toContain("sashing:");
    await page.context().close();
  });

  test("a quilt of 100 x 100 blocks is drawn, edited and taken back; one that is too large says so and stays", async () => {
    const folder = emptyFolder();
    const [from, to] = [join(folder, "quilt.yaml"), join(folder, "page.html")];
    const stars = quiltNamed("nine-stars");
    const text = stars.replace(/blocks:[\s\S]*?fill: 3 x 3/, HUNDRED);
    writeFileSync(from, text);
    expect(crossgrain(["page", from, "--out", to]).code).toBe(0);
    const page = await opened(undefined, to);
    page.setDefaultTimeout(120_000);
    await settled(page);
    expect(await page.locator('[data-at="99,99"]').count()).toBe(1);
    await border(page);
    await settled(page);
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    expect(await savedText(page)).toBe(text);
    const large = stars.replace("fill: 3 x 3", "fill: 100 x 100");
    await drop(page, "large.yaml", large);
    await said(page, /at most 60,000 can be worked out/);
    expect(await savedText(page)).toBe(large);
    expect(faultsOf(page)).toEqual([]);
    await page.context().close();
  }, 300_000);

  test("what is in hand is lit in the text, and the text takes in hand", async () => {
    const page = await opened();
    await begin(page);
    await page
      .getByRole("button", { name: "Draw this block" })
      .or(page.getByRole("button", { name: /^Star, 9/ }))
      .first()
      .click();
    await page.getByRole("button", { name: "The text", exact: true }).click();
    await page.locator('.paper [aria-label^="a1,"]').focus();
    await page.waitForFunction(() => document.querySelector(".cm-inhand")?.textContent === "c");
    await page.keyboard.press("ArrowRight");
    await page.waitForFunction(() => document.querySelector(".cm-inhand")?.textContent === "gv");
    // The other way: a click on the goose at the right takes its square in hand.
    await page.locator(".cm-line", { hasText: "g>  m" }).click();
    await page.keyboard.press("End");
    await page.waitForFunction(() =>
      document.querySelector('.paper [tabindex="0"]')?.getAttribute("aria-label")?.startsWith("b4,"),
    );
    await page.context().close();
  });
});
