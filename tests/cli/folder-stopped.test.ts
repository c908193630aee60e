import { spawnSync } from "node:child_process";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { beforeAll, describe, expect, test } from "vitest";
import { type Disk, realDisk } from "../../src/cli/files/disk.ts";
import { writeFiles } from "../../src/cli/files/write.ts";
import { said } from "../support/in-words.ts";
import {
  buryHolder,
  type Contents,
  contents,
  contentsOn,
  failingAt,
  goneFrom,
  leftovers,
  refuse,
  result,
  watched,
} from "./folders.ts";
import { MemoryDisk } from "./memory-disk.ts";
import { emptyFolder, ROOT } from "./run.ts";

const FIRST = {
  "steps.txt": "first",
  "waste.txt": "alike",
  "cut-1-sky.svg": "sky",
  "book.pdf": "first book",
};
const SECOND = { "steps.txt": "second", "waste.txt": "alike", "cut-1-sea.svg": "sea", "top.svg": "top" };
const HERS = { "notes.txt": "mine", "cut-9-mine.svg": "mine too", "block-3.png": "my photo" };
const MADE = "/quilts/made";
const first = result(MADE, FIRST);
const second = result(MADE, SECOND);
/** Stands for any run that comes later and does not write: it is refused. */
const refused = result(MADE, { "notes.txt": "over hers" });

/** A folder with files of hers, into which the first result was written. */
async function planned(): Promise<MemoryDisk> {
  const disk = new MemoryDisk();
  await disk.makeFolder(MADE);
  for (const [name, text] of Object.entries(HERS)) disk.put(join(MADE, name), text);
  expect((await writeFiles(first, disk)).value).toEqual(Object.keys(FIRST));
  return disk;
}

const seenOn = (disk: MemoryDisk) => contentsOn(disk, MADE);

/** Whether a folder holds nothing but some of these files. */
const isPartOf = (seen: Contents, whole: Contents) =>
  Object.entries(seen).every(([name, text]) => whole[name] === text);

const isIncomplete = (seen: Contents, ...wholes: Contents[]) =>
  wholes.every((whole) => Object.keys(seen).length < Object.keys(whole).length);

const before = seenOn(await planned());
const [after, steps] = await (async () => {
  const whole = await planned();
  let count = 0;
  const counting = watched(whole, () => {
    count++;
  });
  await writeFiles(second, counting);
  return [seenOn(whole), count];
})();

/** The second result, stopped at every step in turn. */
async function* stoppedRuns(
  stop: (number: number, disk: MemoryDisk) => Disk = goneFrom,
  written = second,
  start = planned,
) {
  const folder = await start();
  for (let number = 0; number < steps; number++) {
    const disk = new MemoryDisk(folder);
    const ended = await writeFiles(written, stop(number, disk), 0);
    buryHolder(disk, MADE);
    yield { disk, number, ended, codes: ended.diagnostics.map(({ code }) => code) };
  }
}

test("unstopped: the first quilt's files go, the second's come, hers stay", () => {
  const { ".crossgrain.json": _one, ...was } = before;
  const { ".crossgrain.json": _two, ...is } = after;
  expect(was).toEqual({ ...HERS, ...FIRST });
  expect(is).toEqual({ ...HERS, ...SECOND });
  expect(steps).toBeGreaterThan(60);
});

describe("a run that is killed", () => {
  test("at any step: hers is there, old and new are never mixed, and the next run mends it", async () => {
    let incomplete = 0;
    for await (const { disk, number } of stoppedRuns()) {
      const seen = seenOn(disk);
      expect(seen).toMatchObject(HERS);
      expect(isPartOf(seen, before) || isPartOf(seen, after), `step ${number}`).toBe(true);

      // The next run is refused: the folder is put back all the same, or was already done.
      const later = new MemoryDisk(disk);
      const codes = (await writeFiles(refused, later)).diagnostics.map(({ code }) => code);
      expect(codes.at(-1)).toBe("FOLDER-IN-THE-WAY");
      expect([before, after]).toContainEqual(seenOn(later));
      expect(await leftovers(later, MADE)).toEqual([]);
      if (isIncomplete(seen, before, after)) {
        incomplete++;
        expect(codes).toEqual(["FOLDER-MENDED", "FOLDER-IN-THE-WAY"]);
      }

      // Or it writes the same.
      expect((await writeFiles(second, disk)).value).toEqual(Object.keys(SECOND));
      expect(seenOn(disk)).toEqual(after);
      expect(await leftovers(disk, MADE)).toEqual([]);
    }
    expect(incomplete).toBeGreaterThan(5);
  });

  test("while it mends what another left: the one after mends it", async () => {
    let nested = 0;
    for await (const { disk: half } of stoppedRuns()) {
      if (!isIncomplete(seenOn(half), before, after)) continue;
      for (let number = 0; ; number++) {
        const disk = new MemoryDisk(half);
        const ended = await writeFiles(refused, goneFrom(number, disk));
        buryHolder(disk, MADE);
        const seen = seenOn(disk);
        expect(seen).toMatchObject(HERS);
        expect(isPartOf(seen, before) || isPartOf(seen, after)).toBe(true);
        if (isIncomplete(seen, before)) nested++;
        await writeFiles(refused, disk);
        expect(seenOn(disk)).toEqual(before);
        expect(await leftovers(disk, MADE)).toEqual([]);
        if (ended.diagnostics.at(-1)?.code === "FOLDER-IN-THE-WAY") break;
      }
    }
    expect(nested).toBeGreaterThan(50);
  });

  test.each(Object.keys({ ...FIRST, ...SECOND, ".crossgrain.json": "" }))(
    "%s, which she writes before the next run, stays; what stood there comes beside it",
    async (name) => {
      let beside = 0;
      for await (const { disk } of stoppedRuns()) {
        disk.put(join(MADE, name), "hers by now");
        const { diagnostics } = await writeFiles(refused, disk);
        const seen = seenOn(disk);
        expect(seen).toMatchObject({ ...HERS, [name]: "hers by now" });
        const other = Object.entries(seen).filter(([each]) => each !== name);
        const added = other.find(([each]) => each.includes("(before)"));
        if (added === undefined) continue;
        beside++;
        expect(diagnostics.map(({ code }) => code)).toContain("FOLDER-KEPT-BOTH");
        expect(added[1]).toBe(before[name]);
      }
      // What is the same in both results is never moved, and what is new has nothing before it.
      const moves = before[name] !== undefined && before[name] !== after[name];
      expect(beside > 0).toBe(moves);
    },
  );

  test("what she let be written over is there until all is in place", async () => {
    const edited = async () => {
      const disk = await planned();
      disk.put(join(MADE, "steps.txt"), "hers");
      return disk;
    };
    const ends = { hers: 0, replaced: 0 };
    for await (const { disk } of stoppedRuns(goneFrom, { ...second, replace: true }, edited)) {
      await writeFiles(refused, disk);
      const seen = seenOn(disk);
      if (seen["top.svg"] === undefined) {
        expect(seen).toEqual({ ...before, "steps.txt": "hers" });
        ends.hers++;
      } else {
        expect(seen).toEqual(after);
        ends.replaced++;
      }
    }
    expect(ends.replaced).toBeGreaterThan(0);
    expect(ends.hers).toBeGreaterThan(ends.replaced);
  });

  test("an old file left over from a run that was done is never taken for one of a later run", async () => {
    let met = 0;
    for await (const { disk } of stoppedRuns()) {
      const work = join(MADE, ".crossgrain-work");
      if ((await disk.kind(join(work, "0.old"))) === null || (await disk.kind(join(work, "journal.json"))))
        continue;
      met++;
      // It cannot be cleared away at once, and the next run is killed as soon as its own journal is there.
      let failed = false;
      let journals = 0;
      const stubborn = watched(disk, (step, [from, to]) => {
        if (journals > 0) refuse("KILLED");
        if (step === "remove" && String(from).endsWith(".old") && !failed) {
          failed = true;
          refuse("EBUSY");
        }
        if (step === "rename" && String(to).endsWith("journal.json")) {
          journals++;
          void disk.rename(String(from), String(to));
          refuse("KILLED");
        }
      });
      await writeFiles(first, stubborn);
      expect([failed, journals]).toEqual([true, 1]);
      buryHolder(disk, MADE);
      await writeFiles(refused, disk);
      expect(seenOn(disk)).toEqual(after);
    }
    expect(met).toBeGreaterThan(0);
  });

  test("a journal that cannot be read is told of, and nothing is touched", async () => {
    for await (const { disk } of stoppedRuns()) {
      const journal = join(MADE, ".crossgrain-work", "journal.json");
      if ((await disk.kind(journal)) === null) continue;
      for (const text of ["", "[{]", '[{"name":"../notes.txt","old":null,"made":null}]', "{}"]) {
        const torn = new MemoryDisk(disk);
        torn.put(journal, text);
        const was = seenOn(torn);
        const { value, diagnostics } = await writeFiles(second, torn);
        expect([value, diagnostics[0]?.code]).toEqual([null, "FOLDER-HALF-WRITTEN"]);
        expect(said(diagnostics[0])?.hint).toContain(join("made", ".crossgrain-work"));
        expect(said(diagnostics[0])?.hint).toContain("Its journal there is damaged");
        expect(seenOn(torn)).toEqual(was);
      }
    }
  });

  describe("by the system", () => {
    const bundle = join(ROOT, "node_modules", ".cache", "crossgrain-tests", `killed-at-${process.pid}.mjs`);
    beforeAll(async () => {
      await build({
        entryPoints: [join(ROOT, "tests", "cli", "killed-at.ts")],
        outfile: bundle,
        bundle: true,
        format: "esm",
        platform: "node",
        packages: "external",
        logLevel: "error",
      });
      return () => rmSync(bundle, { force: true });
    });

    test("the next run takes its lock over and mends, on a real disk", async () => {
      for (let number = 4; number < steps; number += 9) {
        const folder = emptyFolder();
        for (const [name, text] of Object.entries(HERS)) writeFileSync(join(folder, name), text);
        await writeFiles(result(folder, FIRST));
        expect(contents(folder)).toEqual(before);
        const words = [bundle, folder, String(number), JSON.stringify(SECOND)];
        const ended = spawnSync(process.execPath, words, { encoding: "utf8" });
        expect([ended.signal, ended.stderr]).toEqual(["SIGKILL", ""]);
        expect(contents(folder)).toMatchObject(HERS);
        expect((await writeFiles(result(folder, refused.files))).value).toBeNull();
        expect([before, after]).toContainEqual(contents(folder));
        expect((await writeFiles(result(folder, SECOND))).value).not.toBeNull();
        expect(contents(folder)).toEqual(after);
        expect(await leftovers(realDisk, folder)).toEqual([]);
      }
    });
  });
});

describe("a disk that fails", () => {
  test.each(["ENOSPC", "EBUSY", "EPERM", "EIO"])("%s once, at any step: all or none", async (code) => {
    const failing = (number: number, disk: MemoryDisk) => failingAt(number, disk, code);
    let none = 0;
    for await (const { disk, number, ended } of stoppedRuns(failing)) {
      expect(seenOn(disk), `step ${number}`).toEqual(ended.value === null ? before : after);
      if (ended.value === null) {
        none++;
        expect(ended.diagnostics.at(-1)).toMatchObject({ severity: "error" });
      }
      expect((await writeFiles(second, disk)).value).not.toBeNull();
      expect(seenOn(disk)).toEqual(after);
      expect(await leftovers(disk, MADE)).toEqual([]);
    }
    expect(none).toBeGreaterThan(30);
  });

  test("for good, from any step on: what is incomplete is said, and mended when the disk is well", async () => {
    let said = 0;
    const failing = (number: number, disk: MemoryDisk) => goneFrom(number, disk, "EIO");
    for await (const { disk, ended, codes } of stoppedRuns(failing)) {
      if (ended.value !== null) expect(seenOn(disk)).toEqual(after);
      else if (codes.includes("FOLDER-HALF-WRITTEN")) said++;
      else expect(seenOn(disk)).toEqual(before);
      await writeFiles(refused, disk);
      expect([before, after]).toContainEqual(seenOn(disk));
    }
    expect(said).toBeGreaterThan(5);
  });

  test("a full disk, met halfway through any file", async () => {
    // The lock, three new files, the manifest and the journal.
    for (let writes = 0; writes < 6; writes++) {
      const disk = await planned();
      let count = 0;
      const full = watched(disk, (step, words) => {
        if (step !== "write" || count++ < writes) return;
        const [path, bytes] = words as [string, Uint8Array];
        disk.put(path, bytes.subarray(0, bytes.length / 2));
        refuse("ENOSPC");
      });
      const { value, diagnostics } = await writeFiles(second, full);
      expect(value).toBeNull();
      expect(said(diagnostics[0])?.message).toContain("the disk is full");
      expect(seenOn(disk)).toEqual(before);
    }
  });

  test("a folder made for a result that did not come is gone again, with those above it", async () => {
    const top = emptyFolder();
    const full = watched(realDisk, (step, [path]) => {
      if (step === "write" && String(path).endsWith(".new")) refuse("ENOSPC");
    });
    expect((await writeFiles(result(join(top, "one", "two"), FIRST), full)).value).toBeNull();
    expect(contents(top)).toEqual({});
  });
});

describe("a program that holds a file open", () => {
  test.each(["EBUSY", "EPERM", "EACCES"])("%s: the file is named, nothing is changed", async (code) => {
    for (const name of ["book.pdf", "steps.txt", "cut-1-sky.svg"]) {
      const disk = await planned();
      const held = watched(disk, (step, [path]) => {
        if (step === "rename" && path === join(MADE, name)) refuse(code);
      });
      const { value, diagnostics } = await writeFiles(second, held);
      expect([value, diagnostics.map((each) => each.code)]).toEqual([null, ["FOLDER-FILE-HELD"]]);
      expect(said(diagnostics[0])?.message).toContain(`${name} cannot be replaced`);
      expect(seenOn(disk)).toEqual(before);
      expect(await leftovers(disk, MADE)).toEqual([]);
    }
  });

  test("a file that would not change is not touched, so that a viewer does not matter", async () => {
    const disk = await planned();
    const held = watched(disk, (step, words) => {
      if (step !== "read" && step !== "kind" && words.includes(join(MADE, "book.pdf"))) refuse("EBUSY");
    });
    const next = { ...SECOND, "book.pdf": FIRST["book.pdf"] };
    expect((await writeFiles(result(MADE, next), held)).value).toEqual(Object.keys(next));
    expect(seenOn(disk)).toMatchObject({ ...HERS, ...next });
  });
});

describe("others at the same time", () => {
  test("three runs into one folder: one after the other", async () => {
    const folder = join(emptyFolder(), "made");
    mkdirSync(folder);
    const runs = [SECOND, FIRST, SECOND].map((files) => writeFiles(result(folder, files)));
    for (const ended of await Promise.all(runs)) expect(ended).toMatchObject({ diagnostics: [] });
    const { ".crossgrain.json": _list, ...seen } = contents(folder);
    expect([FIRST, SECOND]).toContainEqual(seen);
    expect(await leftovers(realDisk, folder)).toEqual([]);
  });

  test("a run that goes on for long is told of", async () => {
    const disk = await planned();
    let inside: Awaited<ReturnType<typeof writeFiles>> | null = null;
    const slow = watched(disk, () => undefined);
    const write = slow.write;
    slow.write = async (path, bytes) => {
      if (path.endsWith(".new")) inside ??= await writeFiles(first, disk, 20);
      return write(path, bytes);
    };
    expect((await writeFiles(second, slow)).value).not.toBeNull();
    expect(inside).toMatchObject({ value: null, diagnostics: [{ code: "FOLDER-BUSY" }] });
    expect(seenOn(disk)).toEqual(after);
  });

  test.each(["steps.txt", "top.svg", "book.pdf"])(
    "%s is saved by an editor in the moment it is about to be written",
    async (name) => {
      const disk = await planned();
      let met = 0;
      const meanwhile = watched(disk, (step, [path]) => {
        if (step !== "rename" || path !== join(MADE, ".crossgrain-work", "journal.part")) return;
        met++;
        disk.put(join(MADE, name), "hers");
      });
      const { value, diagnostics } = await writeFiles(second, meanwhile);
      expect([met, value]).toEqual([1, null]);
      expect(diagnostics.map(({ code }) => code)).toEqual(["FOLDER-CHANGED-MEANWHILE"]);
      expect(seenOn(disk)).toEqual({ ...before, [name]: "hers" });
      expect(await leftovers(disk, MADE)).toEqual([]);
    },
  );
});
