// Bundles the benchmark into .build and runs it with the words given.
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

const root = fileURLToPath(new URL("..", import.meta.url));
const outfile = `${root}.build/bench.mjs`;
await build({
  absWorkingDir: root,
  entryPoints: ["tests/bench/main.ts"],
  outfile,
  bundle: true,
  format: "esm",
  platform: "node",
  target: "node20",
  packages: "external",
  logLevel: "warning",
});
await import(pathToFileURL(outfile).href);
