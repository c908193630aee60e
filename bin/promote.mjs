// Takes what the last test run made of fixtures/plans/NAME as what is expected from now on.
// Look at the difference first: git diff --no-index fixtures/plans/NAME/expected out/plans/NAME
import { cpSync, existsSync } from "node:fs";
import { basename } from "node:path";

const names = process.argv.slice(2);
if (names.length === 0) {
  console.error(
    "promote: name one or more folders of fixtures/plans, for example: node bin/promote.mjs picnic-flags",
  );
  process.exit(2);
}
for (const name of names) {
  const made = new URL(`../out/plans/${name}`, import.meta.url);
  const expected = new URL(`../fixtures/plans/${name}/expected`, import.meta.url);
  if (!existsSync(made) || !existsSync(expected)) {
    console.error(`promote: ${name} has not been run, or is no folder of fixtures/plans`);
    process.exit(2);
  }
  // What a folder knows about who wrote it is no part of a plan.
  cpSync(made, expected, { recursive: true, filter: (path) => !basename(path).startsWith(".") });
}
