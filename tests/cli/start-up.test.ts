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
