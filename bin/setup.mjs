// Makes a fresh clone ready: installs packages when they differ from the lock file, bundles src when
// .build is missing or older. Does nothing, quickly, when all is in place.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Whether every package of the lock file lies in node_modules in that version. */
function packagesMatchLock() {
  try {
    const read = (file) => JSON.parse(readFileSync(join(root, file), "utf8")).packages;
    const installed = read("node_modules/.package-lock.json");
    return Object.entries(read("package-lock.json")).every(
      // Packages for other machines are listed in the lock and rightly not installed.
      ([path, { version, optional }]) =>
        path === "" || installed[path]?.version === version || (optional && !installed[path]),
    );
  } catch {
    return false;
  }
}

function newestChange(path) {
  const own = statSync(path);
  if (!own.isDirectory()) return own.mtimeMs;
  // A folder's own time changes when a file in it is removed.
  return Math.max(own.mtimeMs, ...readdirSync(path).map((name) => newestChange(join(path, name))));
}

function buildIsFresh() {
  const built = join(root, ".build", "main.js");
  if (!existsSync(built)) return false;
  return ["src", "bin/build.mjs"].every((path) => newestChange(join(root, path)) <= statSync(built).mtimeMs);
}

function installPackages() {
  process.stderr.write("Installing the packages this project uses (once; about 20 seconds) ...\n");
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  const flags = ["ci", "--no-audit", "--no-fund", "--loglevel=error"];
  const done = spawnSync(npm, flags, {
    cwd: root,
    stdio: ["ignore", "ignore", "inherit"],
    shell: process.platform === "win32",
  });
  if (done.status !== 0) {
    process.stderr.write("The packages could not be installed. Is there a connection to the npm registry?\n");
    process.exit(1);
  }
}

/** Installs and builds whatever is missing or out of date. */
export async function setUp() {
  if (!packagesMatchLock()) installPackages();
  if (!buildIsFresh()) await (await import("./build.mjs")).buildAll();
}

// What is wrong has been told by then.
if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await setUp().catch(() => process.exit(1));
}
