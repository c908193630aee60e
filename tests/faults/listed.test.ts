import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

const ROOT = join(import.meta.dirname, "..", "..");

interface Fault {
  file: string;
  what: string;
  from: string;
  to: string;
  tests: string[];
}

const faults = JSON.parse(readFileSync(join(import.meta.dirname, "faults.json"), "utf8")) as Fault[];

/* `npm run faults` takes long and is run by hand: what it is told must not drift away from the sources meanwhile. */
test("every listed fault can be put into the sources, and names rooms that have tests", () => {
  const drifted = faults.flatMap(({ file, what, from, tests }) => {
    const path = join(ROOT, file);
    const isThere = existsSync(path) && readFileSync(path, "utf8").includes(from);
    const missing = tests.filter((room) => !existsSync(join(ROOT, "tests", room)));
    return isThere && missing.length === 0 ? [] : [`${file}: ${what} ${missing.join()}`];
  });
  expect(drifted).toEqual([]);
});
