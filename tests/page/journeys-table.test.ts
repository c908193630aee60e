import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { unzipSync } from "fflate";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { crossgrain } from "../cli/run.ts";
import { CHROMIUM, emptyFolder, faultsOf, launch, lookAt, MODES, openPage, savedText } from "./browser.ts";
import { finger, type Hand, keys, mouse } from "./hands.ts";

/** All journeys: `npm run journeys`. Every run has one short one. */
const ALL = process.env.JOURNEYS === "all";
const PATIENCE = ALL ? 600_000 : 120_000;
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

const WAYS: { name: string; options: object; hand: (page: Page) => Hand }[] = [
  { name: "by touch on a phone", options: PHONE, hand: finger },
  { name: "by pointer", options: {}, hand: mouse },
  { name: "by keys alone", options: {}, hand: keys },
];

async function download(page: Page, press: () => Promise<void>): Promise<Buffer> {
  const [file] = await Promise.all([page.waitForEvent("download"), press()]);
  return readFileSync(await file.path());
}

/** Lantern Lane on the mat, the chalk unrolled. */
async function chalkOnMat(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Lantern Lane/ }).click();
  await page.getByRole("button", { name: "Cut", exact: true }).click();
  await page.locator(".folded button", { hasText: "chalk" }).click();
  await page.waitForSelector(".matlay");
}

/** Waits until the mat is of what was said last. */
const planned = (page: Page) =>
  page.waitForFunction(
    () =>
      document.querySelector('.atstrip[aria-busy="true"]') === null &&
      document.querySelector(".saidlength button:disabled") === null,
  );

async function say(page: Page, label: string, typed: string): Promise<void> {
  await page.getByLabel(label).first().fill(typed);
  await page.getByLabel(label).first().press("Enter");
  await planned(page);
}

let browser: Browser;

describe.skipIf(CHROMIUM === null)("at the table", () => {
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
  });

  test(
    "a strip is cut, one spoiled and taken back; a unit's pictures follow one another; the book is there",
    async () => {
      const page = await openPage(browser, PHONE);
      const hand = finger(page);
      await chalkOnMat(page);
      await hand.press("Strip 1 is cut");
      await hand.press("This strip is spoiled");
      await page.locator(".answer", { hasText: "Lost, and to be cut again" }).waitFor();
      await planned(page);
      await hand.press("Undo", ".answer");
      await page.waitForFunction(() => document.querySelectorAll(".stripline .done").length === 1);
      expect(await page.locator("pre").count()).toBe(0);
      await page.getByRole("button", { name: "Sew", exact: true }).click();
      await page.waitForSelector(".bigstep");
      const told = await page.locator(".bigstep figcaption").textContent();
      await hand.press("Next");
      await page.waitForFunction(
        (before) => document.querySelector(".bigstep figcaption")?.textContent !== before,
        told,
      );
      await page.getByRole("button", { name: "Pattern", exact: true }).click();
      await page.waitForSelector(".bookframe");
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
    PATIENCE,
  );

  test.skipIf(!ALL).each(WAYS)(
    "cut half, spoil a strip, narrow the bolt, go on and finish, $name; the command takes it up",
    async ({ options, hand: handOf }) => {
      const page = await openPage(browser, options);
      const hand = handOf(page);
      await chalkOnMat(page);
      const text = await savedText(page);
      for (const strip of [1, 2, 3]) await hand.press(`Strip ${strip} is cut`);
      expect(await page.locator(".stripline .done").count()).toBe(3);
      await hand.press("This strip is spoiled");
      await page.locator(".answer", { hasText: "Lost, and to be cut again" }).waitFor();
      await planned(page);
      // One undo away, and back.
      await hand.press("Undo", ".answer");
      await page.waitForFunction(() => document.querySelectorAll(".stripline .done").length === 3);
      await planned(page);
      await page.getByRole("button", { name: "Redo", exact: true }).click();
      await page.locator(".answer", { hasText: "strip 4 spoiled" }).waitFor();
      await planned(page);
      await say(page, "My fabric is", "40");
      await page.locator(".answer", { hasText: "40" }).waitFor();
      await hand.press("Strip 1 is cut");
      await planned(page);
      await hand.press("I stop here");
      await page.locator(".answer", { hasText: "cut to strip 1" }).waitFor();
      await planned(page);
      // The page is closed in the middle of it, and opened again.
      await page.waitForFunction(() => document.querySelector(".kept .k")?.textContent?.startsWith("Kept"));
      await page.reload();
      await page.getByRole("button", { name: /^Lantern Lane, \d/ }).click();
      await page.getByRole("button", { name: "Cut", exact: true }).click();
      await page.locator(".folded button", { hasText: "chalk" }).click();
      await page.locator(".answer", { hasText: "cut to strip 1" }).waitFor();
      for (let i = 0; i < 40; i++) {
        if ((await page.locator("h2", { hasText: "All of it is cut" }).count()) > 0) break;
        await page.locator(".tickit").focus();
        await page.keyboard.press("Enter");
      }
      await page.locator("h2", { hasText: "All of it is cut" }).waitFor();
      const work = await download(page, () => page.getByRole("button", { name: "Save what is cut" }).click());
      // What the page has kept is what the command goes on from: nothing is left to cut of the chalk.
      const folder = emptyFolder();
      writeFileSync(join(folder, "quilt.yaml"), text);
      expect(crossgrain(["plan", "quilt.yaml", "--out", "o"], { folder }).code).toBe(0);
      writeFileSync(join(folder, "o", "work.yaml"), work);
      const gone = crossgrain(["go-on", "quilt.yaml", "--out", "o", "--json"], { folder });
      expect(gone.stderr).not.toContain("error");
      const chalk = JSON.parse(gone.stdout).fabrics.find(({ name }: { name: string }) => name === "chalk");
      expect(chalk.lays).toEqual([]);
      expect(chalk.done.cut).toEqual(chalk.pieces.map(({ count }: { count: number }) => count));
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
    PATIENCE,
  );

  test.skipIf(!ALL).each(WAYS)(
    "a block is sewn to its end, $name, and is still sewn when the page is opened again",
    async ({ options, hand: handOf }) => {
      const page = await openPage(browser, options);
      const hand = handOf(page);
      await page.getByRole("button", { name: /^Lantern Lane/ }).click();
      await page.getByRole("button", { name: "Sew", exact: true }).click();
      await page.waitForSelector(".bigstep");
      expect(await page.locator(".takebags .bigbag").allTextContents()).toEqual(["H", "B"]);
      const [seen, described]: [string[], string[]] = [[], []];
      while ((await page.locator(".bigstep").count()) > 0) {
        const told = (await page.locator(".bigstep figcaption").textContent()) ?? "";
        // The picture says to a screen reader what stands under it.
        const heard = (await page.locator(".bigstep svg title").textContent()) ?? "";
        expect(told.toLowerCase()).toContain(heard.toLowerCase());
        seen.push(told);
        const [picture = ""] = await page
          .locator(".bigstep")
          .evaluateAll((all) =>
            all.map(
              (one) => document.getElementById(one.getAttribute("aria-describedby") ?? "")?.textContent ?? "",
            ),
          );
        described.push(picture.replace(/\s/g, " "));
        if (seen.length === 7) await hand.press("All 40");
        await hand.press("Next");
        await page.waitForFunction(
          (before) => document.querySelector(".bigstep figcaption")?.textContent !== before,
          told,
        );
      }
      expect(seen).toHaveLength(7);
      // Each picture is described in words: which bags, how they lie, what is cut and pressed, what it measures then.
      for (const words of described)
        expect(words).toMatch(/take 1 H \(chalk\) and 4 B \(night\)|B \(night\)|Trim to 4½ × 2½ in/);
      expect(described.join(" ")).toMatch(
        /right sides together[\s\S]*Press to night[\s\S]*Trim to 4½ × 2½ in/,
      );
      await page.locator("h2", { hasText: "Block Lantern (make 10)" }).waitFor();
      for (let i = 0; i < 4; i++) await page.getByRole("button", { name: "All 10" }).nth(i).click();
      expect(await page.locator(".sewsteps .done").count()).toBe(4);
      // Pressing on pale fabric: a seam tells what lies under it.
      expect(await page.locator(".pressing figcaption").textContent()).toMatch(/allowances lie under night/);
      await hand.press("Pressing: more");
      await page.locator(".pressing figcaption", { hasText: "Seam 2 of 8" }).waitFor();
      await page.reload();
      await page.getByRole("button", { name: /^Lantern Lane, \d/ }).click();
      await page.getByRole("button", { name: "Sew", exact: true }).click();
      await page.locator("h2", { hasText: "Block Lantern (make 10)" }).waitFor();
      expect(await page.locator(".sewsteps .done").count()).toBe(4);
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
    PATIENCE,
  );

  test.skipIf(!ALL)(
    "kits of two sizes are said, planned together, and their papers are seen and zipped",
    async () => {
      const page = await openPage(browser, {});
      const press = (name: string | RegExp) => page.getByRole("button", { name }).first().click();
      await press(/^Lantern Lane/);
      await press("Pattern");
      await page.waitForSelector(".bookframe");
      await page.locator("summary", { hasText: "Kits for a class" }).click();
      await press("Kits of this quilt, six to begin with");
      await press("Kits of another sort");
      const size = page.locator(".kitlines li").nth(1).getByLabel("size");
      await size.fill("a sofa");
      await size.press("Enter");
      await page.locator(".said", { hasText: "“a sofa” is no size" }).waitFor();
      await size.fill("3x3");
      await size.press("Enter");
      await press("Plan the kits");
      await page.locator("[role=status]", { hasText: "7 kits planned, cut together" }).waitFor();
      await press("the teacher’s sheet");
      const sheet = page.frameLocator(".bookframe");
      await sheet.locator("h1", { hasText: "Lantern Lane: 7 kits" }).waitFor();
      await press("paper of a kit, sort 2");
      await sheet.locator("h1", { hasText: "Lantern Lane" }).waitFor();
      await expect.poll(() => page.locator(".bookframe[title='paper of a kit, sort 2']").count()).toBe(1);
      const zip = unzipSync(await download(page, () => press("Everything, zipped")));
      expect(Object.keys(zip)).toEqual(
        expect.arrayContaining(["class/class.html", "class/kit-1.html", "class/kit-2.html", "class/buy.txt"]),
      );
      expect(await savedText(page)).toMatch(/kits: \[6, 1 of 3x3\]/);
      // What changes the quilt takes the papers away: they would be of another.
      await press("Undo");
      await expect.poll(() => page.getByRole("button", { name: "the teacher’s sheet" }).count()).toBe(0);
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
    PATIENCE,
  );

  test.skipIf(!ALL)(
    "each strip is heard: how wide, what is cut of it, which bag, in the order of the steps",
    async () => {
      const page = await openPage(browser);
      await chalkOnMat(page);
      const strips = await page.locator(".stripline button").count();
      expect(strips).toBe(6);
      for (let i = 0; i < strips; i++) {
        await page.locator(".stripline button").nth(i).click();
        const mat = await page.locator(".onmat").ariaSnapshot();
        const [, width = "", gives = ""] =
          new RegExp(`button "strip ${i + 1}, ([^:]+ in): ([^"]+)" \\[pressed\\]`).exec(mat) ?? [];
        const steps = await page.locator(".atstrip").ariaSnapshot();
        expect(steps).toContain(`heading "Cut 1 strip ${width} × WOF"`);
        // Every bag the strip fills is told with how many and how large.
        for (const one of gives.split(", ")) {
          const [, count = "", letter = ""] = /^(\d+) (\w+)$/.exec(one) ?? [];
          expect(steps, one).toMatch(new RegExp(`${count} squares [^ ]+ in \\[${letter}\\]`));
        }
        // The tick stands by itself at the foot, where it stays while steps are longer or shorter.
        const foot = await page.locator(".matfoot").ariaSnapshot();
        expect(foot).toContain(`button "Strip ${i + 1} is cut"`);
      }
      await page.getByRole("button", { name: "Strip 6 is cut" }).click();
      expect(await page.locator(".onmat").ariaSnapshot()).toMatch(/button "strip 6, [^"]+, cut/);
      await page.context().close();
    },
    PATIENCE,
  );

  /** Quilts on which each kind of change saves, and the words it is told in. */
  const SAVE = {
    "lighthouse-sampler": [
      /strips cut once more/,
      /may lie any way up/,
      /nine-patch: single pieces/,
      /sashing .* wide/,
    ],
    "sashed-star-points": [/joined from strips/],
    "many-squares": [/every block .* finished/],
  };

  test.skipIf(!ALL).each(Object.entries(SAVE))(
    "%s: what would save is told as the command tells it, and taken with one tap",
    async (name, kinds) => {
      const folder = emptyFolder();
      const quilt = join(import.meta.dirname, "..", "..", "fixtures", "quilts", `${name}.yaml`);
      crossgrain(["page", quilt, "--out", join(folder, "page.html")]);
      const page = await openPage(browser, {}, join(folder, "page.html"));
      await page.getByRole("button", { name: "Fabric", exact: true }).click();
      await page.getByRole("button", { name: "Look for savings" }).click();
      await page.locator(".saves", { hasText: /changes? buys? less/ }).waitFor({ timeout: 120_000 });
      const told = await page.locator(".savings li").allTextContents();
      for (const kind of kinds) expect(told.join("; ")).toMatch(kind);
      const printed = crossgrain(["savings", quilt]).stdout;
      expect(printed).toContain(`${told.length}  `);
      expect(printed).not.toContain(`${told.length + 1}  `);
      await page.locator(".savings li .act").first().click();
      const taken = join(folder, "taken.yaml");
      crossgrain(["savings", quilt, "--take", "1", "--out", taken]);
      expect(await savedText(page)).toBe(readFileSync(taken, "utf8"));
      expect(faultsOf(page)).toEqual([]);
      await page.context().close();
    },
    PATIENCE,
  );

  test.skipIf(!ALL)(
    "handed to a class: cut and sewn with ticks of her own, and nothing of the quilt is changed",
    async () => {
      const page = await openPage(browser);
      await chalkOnMat(page);
      await page.getByRole("button", { name: "Strip 1 is cut" }).click();
      await page.getByRole("button", { name: "Pattern", exact: true }).click();
      await page.waitForSelector(".bookframe");
      const zip = unzipSync(
        await download(page, () => page.getByRole("button", { name: "Everything, zipped" }).click()),
      );
      expect(Buffer.from(zip["work.yaml"]!).toString()).toContain("- strip 1 cut");
      const copy = join(emptyFolder(), "class.html");
      const made = await download(page, () =>
        page.getByRole("button", { name: "One file for the class" }).click(),
      );
      expect(made.length).toBeLessThan(3_000_000);
      writeFileSync(copy, made);
      await page.getByRole("button", { name: "Put the quilt in the address" }).click();
      const address = page.url();
      const text = await savedText(page);
      await page.context().close();

      const pupil = await openPage(browser, { viewport: { width: 320, height: 700 } }, copy);
      await pupil.waitForSelector(".matlay");
      expect(await pupil.locator("nav.work button").allTextContents()).toEqual(["Cut", "Sew", "Pattern"]);
      expect(await pupil.locator(".stripline .done").count()).toBe(0);
      await pupil.getByRole("button", { name: "Strip 1 is cut" }).click();
      await pupil.waitForFunction(() => document.querySelector(".kept .k")?.textContent?.startsWith("Kept"));
      await pupil.reload();
      await pupil.waitForFunction(() => document.querySelectorAll(".stripline .done").length === 1);
      await pupil.keyboard.press("Alt+1");
      expect(await pupil.locator(".matlay").count()).toBeGreaterThan(0);
      expect(await pupil.getByLabel("Name").getAttribute("readonly")).not.toBeNull();
      expect(faultsOf(pupil)).toEqual([]);
      await pupil.context().close();

      const sent = await openPage(browser, {}, address.replace("file://", ""));
      expect(await savedText(sent)).toBe(text);
      expect(faultsOf(sent)).toEqual([]);
      await sent.context().close();
    },
    PATIENCE,
  );

  test.skipIf(!ALL)(
    "at the mat and at the machine: no accessibility fault, no sideways scroll, every target 44 px",
    async () => {
      for (const mode of MODES) {
        const page = await openPage(browser, mode);
        const look = (where: string) => lookAt(page, `${where} ${JSON.stringify(mode)}`);
        await chalkOnMat(page);
        await page.getByRole("button", { name: "Strip 1 is cut" }).click();
        await planned(page);
        await page.getByRole("button", { name: "This strip is spoiled" }).click();
        await page.waitForSelector(".answer");
        await page.getByText("More to say").click();
        await page.locator(".bagbutton").first().click();
        await look("the mat");
        await page.getByRole("button", { name: "Sew", exact: true }).click();
        await page.waitForSelector(".bigstep");
        await page.getByText("In words").click();
        await look("a unit");
        await page.locator(".sewlist .act", { hasText: "Rows and top" }).click();
        await look("rows");
        await page.getByRole("button", { name: "Pattern", exact: true }).click();
        await page.waitForSelector(".bookframe");
        for (const part of ["What is in it", "Who made it", "Your own words"])
          await page.getByText(part).click();
        await look("the pattern");
        await page.getByRole("button", { name: "Fabric", exact: true }).click();
        for (const what of ["Ways of making", "Turnings"]) {
          await page.getByRole("button", { name: what }).click();
          await page.waitForSelector(what === "Turnings" ? ".turnings li" : ".waytable");
          await look(what);
        }
        expect(faultsOf(page)).toEqual([]);
        await page.context().close();
      }
    },
    PATIENCE,
  );
});
