import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { realDisk } from "../../src/cli/files/disk.ts";
import { type Change, changeSafely, undoSafely } from "../../src/cli/files/safe-file.ts";

function table(start: string): {
  folder: string;
  where: { path: string; named: string; keep: number };
  now: () => string;
} {
  const folder = mkdtempSync(join(tmpdir(), "crossgrain-undo-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, "stash.csv");
  writeFileSync(path, start);
  return { folder, where: { path, named: "stash.csv", keep: 9 }, now: () => readFileSync(path, "utf8") };
}

/** Adds a letter at the end. */
const adding =
  (letter: string): Change<string> =>
  (old) => ({
    value: { bytes: Buffer.from(`${Buffer.from(old ?? [])}${letter}`), told: letter },
    diagnostics: [],
  });

test("changes are taken back one by one, or several at once, nine at most", async () => {
  const { folder, where, now } = table("0");
  for (const letter of "abcdefghijk") await changeSafely(where, adding(letter));
  expect(now()).toBe("0abcdefghijk");
  expect((await undoSafely(where, 1)).value).toEqual({ steps: 1, left: 8 });
  expect(now()).toBe("0abcdefghij");
  expect(readFileSync(`${where.path}.undone`, "utf8")).toBe("0abcdefghijk");
  expect(readFileSync(`${where.path}.bak`, "utf8")).toBe("0abcdefghi");
  expect((await undoSafely(where, 3)).value).toEqual({ steps: 3, left: 5 });
  expect(now()).toBe("0abcdefg");
  await changeSafely(where, adding("z"));
  expect((await undoSafely(where, 99)).value).toEqual({ steps: 6, left: 0 });
  expect(now()).toBe("0ab");
  const none = await undoSafely(where, 1);
  expect(none.value).toBeNull();
  expect(none.diagnostics[0]?.code).toBe("STASH-NOTHING-TO-UNDO");
  expect(readdirSync(folder).sort()).toEqual(["stash.csv", "stash.csv.undone"]);
});

test("a table that is saved by hand meanwhile is changed as it then is", async () => {
  const { where, now } = table("0");
  let saved = false;
  const disk = {
    ...realDisk,
    async write(path: string, bytes: Uint8Array, mode?: number) {
      await realDisk.write(path, bytes, mode);
      if (!saved) writeFileSync(where.path, "0-by-hand");
      saved = true;
    },
  };
  expect((await changeSafely(where, adding("a"), disk)).value).toBe("a");
  expect(now()).toBe("0-by-handa");
  expect(readFileSync(`${where.path}.bak`, "utf8")).toBe("0-by-hand");
});

test("one that is saved again and again is left alone", async () => {
  const { folder, where, now } = table("0");
  let times = 0;
  const disk = {
    ...realDisk,
    async write(path: string, bytes: Uint8Array, mode?: number) {
      await realDisk.write(path, bytes, mode);
      times += 1;
      writeFileSync(where.path, `by hand ${times}`);
    },
  };
  const { value, diagnostics } = await changeSafely(where, adding("a"), disk);
  expect([value, diagnostics[0]?.code]).toEqual([null, "STASH-EDITED"]);
  expect(now()).toBe(`by hand ${times}`);
  expect(readdirSync(folder).filter((name) => name.includes("part-") || name.includes("lock"))).toEqual([]);
});

test("an undo that fails at any step leaves the table old or new, and whole", async () => {
  for (let failing = 1; failing < 12; failing++) {
    const { where, now } = table("0");
    for (const letter of "abc") await changeSafely(where, adding(letter));
    let done = 0;
    const fail = () => {
      done += 1;
      if (done === failing) throw Object.assign(new Error("full"), { code: "ENOSPC" });
    };
    const disk = { ...realDisk };
    for (const step of ["write", "link", "rename", "remove"] as const)
      disk[step] = (async (...given: never[]) => {
        fail();
        return (realDisk[step] as (...all: never[]) => Promise<void>)(...given);
      }) as never;
    await undoSafely(where, 1, disk);
    expect(["0abc", "0ab"]).toContain(now());
    expect(existsSync(where.path)).toBe(true);
  }
});
