// Bundles src into .build. Third-party packages stay outside, so that each is loaded only when used.
import { mkdirSync, readdirSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { buildPage } from "./build-page.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const target = join(root, ".build");

/** Bundles the command line, its worker and the front door. A running program never sees half a build. */
export async function buildAll() {
  const started = new Date();
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: { main: "src/cli/main.ts", index: "src/index.ts", worker: "src/cli/worker.ts" },
    outdir: target,
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    target: "node20",
    packages: "external",
    sourcemap: false,
    write: false,
    logLevel: "warning",
  });
  mkdirSync(target, { recursive: true });
  const shared = (file) => basename(file.path).startsWith("chunk-");
  // The parts first, the entries that name them last, each put in place whole.
  for (const file of [...outputFiles.filter(shared), ...outputFiles.filter((file) => !shared(file))]) {
    const partial = `${file.path}.${process.pid}`;
    writeFileSync(partial, file.contents);
    renameSync(partial, file.path);
  }
  const page = join(target, "page.html");
  writeFileSync(`${page}.${process.pid}`, await buildPage(root));
  renameSync(`${page}.${process.pid}`, page);
  // As old as the sources it was made from: a file saved while bundling makes it stale again.
  utimesSync(join(target, "main.js"), started, started);
  const kept = new Set(outputFiles.map((file) => basename(file.path)));
  for (const name of readdirSync(target)) {
    const path = join(target, name);
    // A program that was started on the old parts may still load one.
    const old = statSync(path).mtimeMs < started.getTime() - 600_000;
    if (name.endsWith(".js") && old && !kept.has(name)) rmSync(path, { force: true });
  }
}

// What is wrong has been told by then.
if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await buildAll().catch(() => process.exit(1));
}
