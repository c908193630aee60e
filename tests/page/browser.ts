import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { expect } from "vitest";
import type { Plan } from "../../src/planning.ts";

/** Chromium of this machine; tests of the page skip, saying so, where there is none. */
export const CHROMIUM =
  ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find((path) => existsSync(path)) ?? null;

const ROOT = join(import.meta.dirname, "..", "..");
export const PAGE = join(ROOT, ".build", "page.html");

export async function launch(): Promise<Browser> {
  return chromium.launch({ executablePath: CHROMIUM ?? "", args: ["--no-sandbox"] });
}

/** Faults a browser tells of by itself: errors of the script, things the policy refuses, things that would be fetched. */
const faults = new WeakMap<Page, string[]>();
export const faultsOf = (page: Page): string[] => faults.get(page) ?? [];

/** The page opened as from a folder. Files are saved as downloads: dialogs of the system cannot be tested. */
export async function openPage(
  browser: Browser,
  options: BrowserContextOptions = {},
  file = PAGE,
  before: () => void = () => {},
): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    acceptDownloads: true,
    ...options,
  });
  await context.addInitScript(() => {
    for (const name of ["showOpenFilePicker", "showSaveFilePicker", "showDirectoryPicker"])
      delete (globalThis as Record<string, unknown>)[name];
  });
  await context.addInitScript(before);
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  const told: string[] = [];
  faults.set(page, told);
  page.on("pageerror", (error) => told.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") told.push(message.text());
  });
  page.on("request", (request) => {
    if (/^https?:/.test(request.url())) told.push(`fetched ${request.url()}`);
  });
  await page.goto(`file://${file}`);
  await page.waitForSelector(".frame");
  return page;
}

/** Waits until every amount is as good as it gets. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const all = [...document.querySelectorAll(".pile .state")];
    return all.length > 0 && all.every((one) => one.matches(".proven, .found"));
  });
}

async function downloaded(page: Page, button: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: button, exact: true }).click(),
  ]);
  return readFileSync(await download.path());
}

export const savedText = async (page: Page): Promise<string> =>
  (await downloaded(page, "Save")).toString("utf8");

/** The plan the page hands out, as read from its zip. */
export async function planOnPage(page: Page): Promise<Plan> {
  await page.getByRole("button", { name: "Pattern", exact: true }).click();
  await page.waitForSelector(".bookframe");
  const files = unzipSync(await downloaded(page, "Everything, zipped"));
  return JSON.parse(Buffer.from(files["plan.json"]!).toString("utf8"));
}

/** The plan the command line makes of a text, in a file of the name the page gives it. */
export function planOfCommandLine(text: string): Plan {
  const folder = emptyFolder();
  writeFileSync(join(folder, "quilt.yaml"), text);
  const program = join(ROOT, "bin", "crossgrain.mjs");
  const ended = spawnSync(process.execPath, [program, "plan", "quilt.yaml", "--json"], {
    cwd: folder,
    encoding: "utf8",
    maxBuffer: 50_000_000,
  });
  if (ended.status !== 0) throw new Error(ended.stderr);
  return JSON.parse(ended.stdout);
}

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What the accessibility checker finds wrong, in short. */
async function axe(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const run = (
      globalThis as unknown as {
        axe: {
          run(): Promise<{ violations: { id: string; nodes: { html: string; failureSummary: string }[] }[] }>;
        };
      }
    ).axe;
    const { violations } = await run.run();
    return violations.flatMap(({ id, nodes }) =>
      nodes
        .slice(0, 3)
        .map(
          ({ html, failureSummary }) => `${id}: ${html.slice(0, 120)} ${failureSummary.split("\n")[1] ?? ""}`,
        ),
    );
  });
}

/** How a page is looked at: by day, by night, and with the colours of the system. */
export const MODES: readonly BrowserContextOptions[] = [
  { colorScheme: "light" },
  { colorScheme: "dark" },
  { colorScheme: "light", forcedColors: "active", reducedMotion: "reduce" },
];

/** No accessibility fault; at five widths nothing beside the screen, and every target large enough for a finger. */
export async function lookAt(page: Page, where: string): Promise<void> {
  expect(await axe(page), where).toEqual([]);
  for (const width of [320, 390, 768, 1280, 1920]) {
    await page.setViewportSize({ width, height: 900 });
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(over, `${where} at ${width}`).toBeLessThanOrEqual(0);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll("button, summary, input")].flatMap((one) => {
        const { width, height } = one.getBoundingClientRect();
        return height > 0 && (height < 43.5 || width < 43.5) ? [one.outerHTML.slice(0, 120)] : [];
      }),
    );
    expect(small, `${where} at ${width}`).toEqual([]);
  }
  await page.setViewportSize({ width: 1280, height: 900 });
  // Letters of twice the size, by the page's own zoom of text.
  const large = await page.addStyleTag({ content: "html { font-size: 200% }" });
  const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(over, `${where} with letters of twice the size`).toBeLessThanOrEqual(0);
  await large.evaluate((style) => style.parentNode?.removeChild(style));
}

export const emptyFolder = (): string => mkdtempSync(join(tmpdir(), "crossgrain-page-"));
