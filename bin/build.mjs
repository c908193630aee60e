// Bundles src into .build. Third-party packages stay outside, so that each is loaded only when used.
import { rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const root = fileURLToPath(new URL("..", import.meta.url));
rmSync(`${root}.build`, { recursive: true, force: true });
await build({
  absWorkingDir: root,
  entryPoints: { main: "src/cli/main.ts", index: "src/index.ts", worker: "src/cli/worker.ts" },
  outdir: ".build",
  bundle: true,
  splitting: true,
  format: "esm",
  platform: "node",
  target: "node20",
  packages: "external",
  sourcemap: false,
  logLevel: "warning",
});
