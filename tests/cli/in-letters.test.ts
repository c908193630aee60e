import { readFileSync } from "node:fs";
import { join } from "node:path";
import { runInNewContext } from "node:vm";
import { gzipSync } from "node:zlib";
import { expect, test } from "vitest";
import { inLetters } from "../../src/cli/results/in-letters.ts";

const BOOT = readFileSync(join(import.meta.dirname, "../../src/page/boot.js"), "utf8");

/** What the page makes of letters, by its own script in a page of paper. */
async function unpacked(letters: string): Promise<Buffer> {
  const around: Record<string, unknown> = {
    document: {
      getElementById: () => ({ textContent: letters }),
      createElement: () => ({}),
      body: { append() {} },
    },
    ...{ Uint8Array, Math, String, Response, Blob, DecompressionStream, URL },
  };
  around.globalThis = around;
  await runInNewContext(BOOT, around);
  await expect.poll(() => around.crossgrain).toBeDefined();
  return Buffer.from(await (around.crossgrain as { solver(): Promise<ArrayBuffer> }).solver());
}

test("bytes of any number come back from their letters on the page", async () => {
  for (let size = 0; size < 40; size++) {
    const bytes = Uint8Array.from({ length: size }, (_, i) => (i * 97 + size * 31) % 256);
    const packed = gzipSync(bytes, { level: 0 });
    const letters = inLetters(packed);
    expect(letters).toMatch(/^[!-~]*$/);
    expect(letters).not.toMatch(/["&<]/);
    expect(letters.length).toBeLessThanOrEqual(2 * Math.ceil((8 * packed.length) / 13));
    expect([...(await unpacked(letters))]).toEqual([...bytes]);
  }
});
