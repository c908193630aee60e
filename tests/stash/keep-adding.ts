// Adds to a table again and again until it is killed, telling each cloth once it is safe.
import { writeSync } from "node:fs";
import { changeSafely } from "../../src/cli/files/safe-file.ts";
import { addCloth, printStash, readStash } from "../../src/stash/index.ts";

const [path = "", name = "", most = "1000000"] = process.argv.slice(2);

for (let i = 0; i < Number(most); i++) {
  const note = `${name}-${i}`;
  const done = await changeSafely({ path, named: path }, (old) => {
    const read = readStash(
      new TextDecoder("utf-8", { ignoreBOM: true }).decode(old ?? undefined),
      path,
      "in",
    );
    if (read.value === null) return { value: null, diagnostics: read.diagnostics };
    const cloth = { fabric: "added", across: 16256, along: 32512, count: 1, note };
    const text = printStash(addCloth(read.value, cloth, "in"));
    return { value: { bytes: new TextEncoder().encode(text), told: note }, diagnostics: [] };
  });
  if (done.value === null) {
    writeSync(2, `${JSON.stringify(done.diagnostics)}\n`);
    process.exit(1);
  }
  writeSync(1, `${note}\n`);
}
