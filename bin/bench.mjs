// Bundles the bench, which is TypeScript beside the tests, and starts it with the given options.
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
