import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/*
 * Puts every listed fault into a copy of the sources, one at a time, and runs the tests of the rooms named with it:
 * at least nine in ten must be caught by an assertion. `npm run faults`, or `npm run faults -- WORD` for those whose
 * file or description holds the word.
 */

const root = fileURLToPath(new URL("..", import.meta.url));
const word = process.argv[2] ?? "";
const faults = JSON.parse(readFileSync(join(root, "tests/faults/faults.json"), "utf8")).filter(
  ({ file, what }) => `${file} ${what}`.includes(word),
);

const copy = mkdtempSync(join(tmpdir(), "faults-"));
for (const part of ["src", "tests", "fixtures", "bin", "package.json", "tsconfig.json"])
  cpSync(join(root, part), join(copy, part), { recursive: true });
symlinkSync(join(root, "node_modules"), join(copy, "node_modules"));

/**
 * Whether something was found wrong rather than in the way: by an assertion or a property, by a test that throws what it
 * found, or by the check that the program makes of every plan before it is told.
 */
function isAsserted(said) {
  const [first = ""] = said.split(String.raw`\n    at `).slice(1);
  return (
    said.startsWith("AssertionError") ||
    said.includes("Property failed") ||
    first.includes("/tests/") ||
    /does not pass its audit|the order of sewing does not come out/.test(said)
  );
}

/** `caught` by an assertion; `broken` where tests fail otherwise, as by an error thrown; `unseen`. */
function look({ file, from, to, tests }) {
  const path = join(copy, file);
  const sound = readFileSync(path, "utf8");
  if (!sound.includes(from)) return "gone";
  writeFileSync(
    path,
    sound.replace(from, () => to),
  );
  const rooms = tests.map((room) => `tests/${room}`);
  const ran = spawnSync(
    "npx",
    [
      "vitest",
      "run",
      "--config",
      "tests/vitest.config.ts",
      "--reporter=json",
      "--bail=1",
      "--maxWorkers=1",
      ...rooms,
    ],
    {
      cwd: copy,
      encoding: "utf8",
      maxBuffer: 1 << 28,
      timeout: 600_000,
      // As the check of a whole change does: every case of the sweeps.
      env: { ...process.env, SWEEP: "all" },
    },
  );
  writeFileSync(path, sound);
  if (ran.status === 0) return "unseen";
  const said = /"failureMessages":\["(.{0,2000})/.exec(ran.stdout)?.[1] ?? "";
  return isAsserted(said) ? "caught" : "broken";
}

const counts = { caught: 0, broken: 0, unseen: 0, gone: 0 };
for (const fault of faults) {
  const found = look(fault);
  counts[found]++;
  console.log(`${found.padEnd(7)} ${fault.file}: ${fault.what}`);
}
rmSync(copy, { recursive: true, force: true });
console.log(
  `${faults.length} faults: ${counts.caught} caught by an assertion, ${counts.broken} by an error, ${counts.unseen} unseen, ${counts.gone} no longer in the sources`,
);
process.exitCode = counts.caught >= 0.9 * faults.length ? 0 : 1;
