import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { ROOT } from "./run.ts";

/** Packages that a bundled file loads at once, with those of the bundles it loads at once. */
function loadedAtOnce(file: string, seen = new Set<string>()): string[] {
  if (seen.has(file)) return [];
  seen.add(file);
  const source = readFileSync(join(ROOT, ".build", file), "utf8");
  const named = [...source.matchAll(/^(?:import|export)\b[^;]*?["']([^"']+)["'];$/gm)].map(
    ([, name = ""]) => name,
  );
  return named.flatMap((name) => (name.startsWith("./") ? loadedAtOnce(name.slice(2), seen) : [name]));
}

test("help loads the command-line reader and nothing heavier", () => {
  const packages = loadedAtOnce("main.js").filter((name) => !name.startsWith("node:"));
  expect([...new Set(packages)]).toEqual(["commander"]);
});

/** Milliseconds of the quickest of five starts: other work on the machine may slow any one of them. */
function quickest(words: readonly string[]): number {
  const times = Array.from({ length: 5 }, () => {
    const begun = performance.now();
    expect(spawnSync(process.execPath, words).status).toBe(0);
    return performance.now() - begun;
  });
  return Math.min(...times);
}

test("help is there in a moment", () => {
  // 110 ms on a quiet machine, where Node alone takes 45 ms; told by their ratio on a busy one.
  const node = quickest(["-e", "0"]);
  expect(quickest([join(ROOT, "bin", "crossgrain.mjs"), "--help"])).toBeLessThan(Math.max(250, 4 * node));
});
