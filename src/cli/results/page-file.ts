import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { brotliDecompressSync, gzipSync } from "node:zlib";
import { inLetters } from "./in-letters.ts";

/** Most bytes of the page: it travels by mail and on memory sticks. */
const MOST_BYTES = 3_000_000;

/** What is written beside the bundle when it is made. */
const PARTS = { shell: "./page-shell.html", program: "./page-program.br" } as const;

const EMPTY = '<script type="application/json" id="quilt">null</script>';

const packed = (bytes: Uint8Array) => inLetters(gzipSync(bytes, { level: 9 }));

/**
 * The page as one HTML file, without a quilt in it. The program comes from beside this one, the solver from its own
 * package, so that neither is kept twice on the disk.
 * @throws Error when a part is missing or the page has grown too large
 */
export async function emptyPage(): Promise<string> {
  const beside = (name: string) => readFile(fileURLToPath(new URL(name, import.meta.url)));
  const solver = createRequire(import.meta.url).resolve("highs/runtime");
  const parts: Readonly<Record<string, string>> = {
    program: packed(brotliDecompressSync(await beside(PARTS.program))),
    solver: packed(await readFile(solver)),
  };
  const shell = (await beside(PARTS.shell)).toString("utf8");
  const page = shell.replace(/\{\{(program|solver)\}\}/g, (_, name: string) => parts[name] ?? "");
  if (page.length > MOST_BYTES)
    throw new Error(`the page has grown to ${page.length} bytes; at most ${MOST_BYTES} are allowed`);
  return page;
}

/** A quilt's text inside the page, where no letter of it can end the element that holds it. */
export function withQuilt(page: string, text: string): string {
  const data = JSON.stringify({ text }).replaceAll("<", "\\u003c");
  return page.replace(EMPTY, () => EMPTY.replace("null", () => data));
}
