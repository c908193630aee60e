import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { crossgrain, ROOT } from "../cli/run.ts";
import { CHROMIUM, emptyFolder, launch, openPage, savedText, settled } from "./browser.ts";
import { quiltNamed } from "./quilts.ts";

/** A sampler of 20 x 20 blocks of nine units. */
function sampler(): string {
  const rows = Array.from({ length: 20 }, (_, r) =>
    Array.from({ length: 20 }, (_, c) => "ABCD"[(r + c) % 4]).join(" "),
  );
  const grid = [
    "    grid: |",
    "      c   gv  -   c",
    "      g>  m   -   g<",
    "      |   |   -   |",
    "      c   g   -   c",
  ];
  const block = (key: string, heart: string) => [
    `  ${key}:`,
    "    size: 8",
    ...grid,
    "    cells:",
    "      c: { square: chalk }",
    "      g: { flying geese: [chalk, night] }",
    `      m: { square: ${heart} }`,
  ];
  return [
    "name: Sampler",
    "units: in",
    "fabrics:",
    ...["night", "chalk", "gold", "moss", "rust", "plum"].map(
      (name, i) => `  - { name: ${name}, colour: "#${i}${i}5577" }`,
    ),
    "blocks:",
    ...block("A", "gold"),
    ...block("B", "moss"),
    ...block("C", "rust"),
    ...block("D", "plum"),
    "setting:",
    "  rows: |",
    ...rows.map((row) => `    ${row}`),
    "borders:",
    "  - { fabric: night, width: 4 }",
    "",
  ].join("\n");
}

/**
 * Milliseconds that each thread of a browser's pages has had of a processor, where the system tells (Linux): on a
 * machine with other work to do it says what a clock does on a quiet one.
 */
async function threads(browser: Browser): Promise<Map<string, number>> {
  const asked = await browser.newBrowserCDPSession();
  const { processInfo } = await asked.send("SystemInfo.getProcessInfo");
  await asked.detach();
  const all = new Map<string, number>();
  for (const { id } of processInfo.filter(({ type }) => type === "renderer")) {
    const tasks = `/proc/${id}/task`;
    if (!existsSync(tasks)) continue;
    for (const task of readdirSync(tasks)) {
      const name = readFileSync(join(tasks, task, "comm"), "utf8").trim();
      const [ran = ""] = readFileSync(join(tasks, task, "schedstat"), "utf8").split(" ");
      const what = name.startsWith("DedicatedWorker") ? `worker ${task}` : task === String(id) ? "page" : "";
      if (what !== "") all.set(`${what} ${id}`, Number(ran) / 1e6);
    }
  }
  return all;
}

/** What ran meanwhile, longest first: the page itself, and each of its workers. */
function ranSince(before: ReadonlyMap<string, number>, after: ReadonlyMap<string, number>): string {
  const [page, workers] = [[] as number[], [] as number[]];
  for (const [name, ran] of after) {
    const own = Math.round(ran - (before.get(name) ?? 0));
    if (own > 1) (name.startsWith("page") ? page : workers).push(own);
  }
  const told = (all: number[]) => all.sort((a, b) => b - a).join(" + ") || "0";
  return `processor: page ${told(page)}, workers ${told(workers)} ms`;
}

// Printed, never judged: a clock says as much of the machine as of the page.
describe.skipIf(CHROMIUM === null || process.env.JOURNEYS !== "times")(
  "times from gesture to picture and amounts",
  () => {
    test.each([
      { name: "tide-pool", text: readFileSync(join(ROOT, "fixtures/cutlists/tide-pool.yaml"), "utf8") },
      { name: "nine-stars", text: quiltNamed("nine-stars") },
      { name: "allotments", text: quiltNamed("allotments") },
      { name: "sampler 20 x 20", text: sampler() },
    ])(
      "$name",
      async ({ name, text }) => {
        const folder = emptyFolder();
        const [from, to] = [join(folder, "quilt.yaml"), join(folder, "page.html")];
        writeFileSync(from, text);
        crossgrain(["page", from, "--out", to]);
        const browser = await launch();
        const page = await openPage(browser, {}, to);
        await settled(page);
        const timed = async (what: string, act: string, pile = ".pile") => {
          // What the gesture before has set going is over.
          await page.waitForTimeout(2500);
          const before = await threads(browser);
          const told = await amountsAfter(what, act, pile);
          const ran = ranSince(before, await threads(browser));
          await page.waitForFunction((where) => {
            const all = [...document.querySelectorAll(`${where} .state`)];
            return all.every((one) => one.matches(".proven, .found"));
          }, pile);
          return `${told}; ${ran}`;
        };
        const amountsAfter = (what: string, act: string, pile: string) =>
          page.evaluate(
            async ([label, script, where]) => {
              const frame = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
              const states = () => [...document.querySelectorAll(`${where} .state`)];
              const begun = performance.now();
              (document.querySelector(script!) as HTMLElement).click();
              const handled = performance.now() - begun;
              await frame();
              const drawn = performance.now() - begun;
              const until = async (good: () => boolean) => {
                for (let i = 0; i < 3000 && !good(); i++)
                  await new Promise((resolve) => setTimeout(resolve, 4));
                return performance.now() - begun;
              };
              const first = await until(
                () => states().length > 0 && states().every((one) => !one.matches(".before")),
              );
              return `${label}: handled ${handled.toFixed(0)}, drawn ${drawn.toFixed(0)}, amounts ${first.toFixed(0)} ms`;
            },
            [what, act, pile],
          );
        const lines: string[] = [];
        if ((await page.locator(".rings").count()) > 0) {
          for (let i = 0; i < 2; i++)
            lines.push(await timed("border wider", '.rings .stepper button[aria-label$="more"]'));
          await page.locator('[data-at="0,0"]').click();
          lines.push(await timed("block turned", ".four button:nth-child(2)"));
          lines.push(await timed("back again", ".four button:nth-child(1)"));
        }
        // Taken back, all is known already; then a colour, which changes no cutting.
        await page.getByRole("button", { name: "Fabric", exact: true }).click();
        await page.locator(".bigpile th .act").first().click();
        await page.getByRole("button", { name: "one way up" }).click();
        await page.waitForFunction(
          () => !document.querySelector(".bigpile .before, .bigpile .so-far, .bigpile .none"),
        );
        lines.push(await timed("print taken back", ".kept .act:not(:disabled)", ".bigpile"));
        lines.push(await timed("print again", ".kept .act:nth-of-type(2)", ".bigpile"));
        console.log([name, ...lines].join("\n  "));
        await browser.close();
      },
      300_000,
    );
  },
);

/** Bytes in use on the page once all that nobody holds is let go. */
async function heap(page: Page): Promise<number> {
  const asked = await page.context().newCDPSession(page);
  await asked.send("HeapProfiler.collectGarbage");
  const { usedSize } = await asked.send("Runtime.getHeapUsage");
  await asked.detach();
  return usedSize;
}

const EDITS = 3000;

/** Judged by bytes, which are the same on every machine: an hour of drawing leaves its texts behind, and nothing else. */
describe.skipIf(CHROMIUM === null || process.env.JOURNEYS !== "memory")(
  "memory after an hour of edits",
  () => {
    test("borders wider and narrower, blocks turned: what is held grows by the states that undo goes back to", async () => {
      const browser = await launch();
      const page = await openPage(browser);
      await page.getByRole("button", { name: /^Nine stars/ }).click();
      await settled(page);
      await page.locator('[data-at="1,1"]').click();
      const edits = (count: number) =>
        page.evaluate(async (of) => {
          const all = [
            '.rings .stepper button[aria-label$="more"]',
            '.rings .stepper button[aria-label$="less"]',
          ];
          for (let i = 0; i < of; i++) {
            const turn = `.four button:nth-child(${1 + ((i >> 1) % 4)})`;
            document.querySelector<HTMLElement>(i % 2 === 0 ? turn : all[(i >> 1) % 2]!)?.click();
            await new Promise((resolve) => setTimeout(resolve, 2));
          }
        }, count);
      const told: number[] = [];
      await edits(50);
      await settled(page);
      told.push(await heap(page));
      for (const part of [0.5, 0.5]) {
        await edits(EDITS * part);
        await settled(page);
        told.push(await heap(page));
      }
      const text = (await savedText(page)).length;
      console.log(
        `heap ${told.map((bytes) => (bytes / 1e6).toFixed(1)).join(", ")} MB; a text has ${text} letters`,
      );
      // Each state holds its text of one or two bytes a letter; twice that for what the browser keeps beside it.
      const [first = 0, , last = 0] = told;
      expect(last - first).toBeLessThan(4 * EDITS * text);
      for (let i = 0; i < 20; i++) await page.getByRole("button", { name: "Undo", exact: true }).click();
      await browser.close();
    }, 900_000);
  },
);
