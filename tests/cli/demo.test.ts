import { spawnSync } from "node:child_process";
import { cpSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { LEFT_OUT } from "../support/sweep.ts";
import { emptyFolder, ROOT } from "./run.ts";

const FOLDERS = ["harbour-lights", "winter-orchard", "allotments"];

test.skipIf(LEFT_OUT)("the committed demo is what the program makes today", () => {
  // Over the committed results, as in a fresh clone: none of them may be taken for somebody else's.
  const folder = emptyFolder();
  for (const name of FOLDERS) cpSync(join(ROOT, "out", name), join(folder, name), { recursive: true });
  const ended = spawnSync(process.execPath, [join(ROOT, "bin", "demo.mjs"), folder], { encoding: "utf8" });
  expect(ended.stderr).not.toMatch("FOLDER-IN-THE-WAY");
  expect(ended.stderr).toMatch("files written into");
  expect(ended.status).toBe(0);
  for (const name of FOLDERS) {
    const [made, kept] = [join(folder, name), join(ROOT, "out", name)];
    const stale = "out/ is stale: look at what changed, then run `npm run demo -- --replace` and commit it";
    expect(readdirSync(made).sort(), stale).toEqual(readdirSync(kept).sort());
    for (const file of readdirSync(made)) {
      const read = (from: string) => readFileSync(join(from, file), "utf8").replaceAll("\r\n", "\n");
      expect(read(made) === read(kept), `${name}/${file}: ${stale}`).toBe(true);
    }
  }
});
