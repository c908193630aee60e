#!/usr/bin/env node
import { existsSync } from "node:fs";

const built = new URL("../.build/main.js", import.meta.url);
if (existsSync(built)) {
  const { start } = await import(built.href);
  await start();
} else {
  process.stderr.write("Crossgrain is not set up yet. Run `npm run setup` in its folder once.\n");
  process.exitCode = 70;
}
