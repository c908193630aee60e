#!/usr/bin/env node
import { existsSync } from "node:fs";

// A clone is bundled into .build, the package holds dist.
const built = ["../.build/main.js", "../dist/main.js"]
  .map((path) => new URL(path, import.meta.url))
  .find((path) => existsSync(path));
if (built !== undefined) {
  const { start } = await import(built.href);
  await start();
} else {
  process.stderr.write("Crossgrain is not set up yet. Run `npm run setup` in its folder once.\n");
  process.exitCode = 70;
}
