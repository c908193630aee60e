// Bundles src into .build. The packages a user installs too stay outside, so that each is loaded only when used.
import {
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { pageParts } from "./build-page.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const target = join(root, ".build");

/** The doors: the command line, its worker, and what other programs import. */
const ENTRIES = {
  main: "src/cli/main.ts",
  worker: "src/cli/threads/worker.ts",
  "page-file": "src/cli/results/page-file.ts",
  index: "src/index.ts",
  planning: "src/planning.ts",
  engine: "src/engine/index.ts",
};

/** The fonts that lie beside the bundle, with their licence. */
export function fontFiles() {
  const from = join(root, "src/draw/fonts");
  const names = readdirSync(from).filter((name) => name.endsWith(".ttf") || name === "LICENSE");
  return Object.fromEntries(names.map((name) => [name, readFileSync(join(from, name))]));
}

/** The bundled files as esbuild gives them; `small` leaves out what only people who read the bundle need. */
export async function bundle(outdir, small) {
  const { dependencies } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: ENTRIES,
    outdir,
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    target: "node20",
    external: Object.keys(dependencies).flatMap((name) => [name, `${name}/*`]),
    minifySyntax: small,
    minifyWhitespace: small,
    minifyIdentifiers: small,
    legalComments: "none",
    sourcemap: false,
    write: false,
    logLevel: "warning",
  });
  return outputFiles;
}

/** Bundles the command line, its worker and the doors. A running program never sees half a build. */
export async function buildAll() {
  const started = new Date();
  const outputFiles = await bundle(target, false);
  mkdirSync(target, { recursive: true });
  const shared = (file) => basename(file.path).startsWith("chunk-");
  const put = (path, contents) => {
    writeFileSync(`${path}.${process.pid}`, contents);
    renameSync(`${path}.${process.pid}`, path);
  };
  // The parts first, the entries that name them last, each put in place whole.
  for (const file of [...outputFiles.filter(shared), ...outputFiles.filter((file) => !shared(file))])
    put(file.path, file.contents);
  for (const [name, contents] of Object.entries(await pageParts(root, 4))) put(join(target, name), contents);
  mkdirSync(join(target, "fonts"), { recursive: true });
  for (const [name, bytes] of Object.entries(fontFiles())) put(join(target, "fonts", name), bytes);
  // Tests open the whole page without asking the command for it.
  const { emptyPage } = await import(
    `${pathToFileURL(join(target, "page-file.js")).href}?${started.getTime()}`
  );
  put(join(target, "page.html"), await emptyPage());
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
