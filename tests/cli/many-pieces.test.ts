import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { upTo } from "../support/sweep.ts";
import { emptyFolder, ROOT } from "./run.ts";

/**
 * What a plan holds for each piece is little: the program itself needs some 30 MB of heap, and each of 200,000 pieces
 * is a place on the diagram and a cut. A copy more of each would not find room. Run with the wide sweeps.
 */
test.runIf(upTo(0, 1) === 1)("a great many pieces are planned in little memory", { timeout: 120_000 }, () => {
  const many = 200_000;
  const folder = emptyFolder();
  const file = join(folder, "many.yaml");
  const sizes = ["2 1/2 square", "3 1/2 x 2", "4 1/2 square"].map((size) => `      - ${size}, ${many / 4}`);
  const pieces = [...sizes, `      - 5 x 3 1/2, ${many / 4}`];
  writeFileSync(
    file,
    `name: Many\nunits: in\nfabrics:\n  - name: sky\n    width: 42 in\n    pieces:\n${pieces.join("\n")}\n`,
  );
  const made = join(folder, "made");
  const run = spawnSync(
    process.execPath,
    [`--max-old-space-size=160`, join(ROOT, "bin/crossgrain.mjs"), "plan", file, "--out", made],
    { encoding: "utf8" },
  );
  expect({ status: run.status, said: run.stderr.slice(0, 200) }).toMatchObject({ status: 0 });
  const plan = JSON.parse(readFileSync(join(made, "plan.json"), "utf8"));
  expect(plan.fabrics[0].pieces.map(({ count }: { count: number }) => count)).toEqual(
    Array(4).fill(many / 4),
  );
});
