import { type ChildProcess, spawn } from "node:child_process";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { beforeAll, describe, expect, onTestFinished, test } from "vitest";
import { type Disk, realDisk } from "../../src/cli/files/disk.ts";
import { changeSafely } from "../../src/cli/files/safe-file.ts";
import { changeStash } from "../../src/cli/files/stash-file.ts";
import { addCloth, readStash } from "../../src/stash/index.ts";
import { said } from "../support/in-words.ts";
import { upTo } from "../support/sweep.ts";

/** Each kills two writers. */
const ROUNDS = upTo(8, 100);

const ROOT = join(import.meta.dirname, "..", "..");
const BUNDLE = join(ROOT, "node_modules", ".cache", "crossgrain-tests", `keep-adding-${process.pid}.mjs`);

const START =
  'fabric,width,length,how many,note\r\n"Sea, deep",21 in,18 in,3,"blue, ""good"" one"\r\nhalf a row,,\r\n';

beforeAll(async () => {
  await build({
    entryPoints: [join(ROOT, "tests", "stash", "keep-adding.ts")],
    outfile: BUNDLE,
    bundle: true,
    format: "esm",
    platform: "node",
    packages: "external",
    logLevel: "error",
  });
  return () => rmSync(BUNDLE, { force: true });
});

function folderWithTable(): { folder: string; path: string } {
  const folder = mkdtempSync(join(tmpdir(), "crossgrain-stash-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, "drawer.csv");
  writeFileSync(path, START);
  return { folder, path };
}

interface Adder {
  child: ChildProcess;
  told: string[];
  errors: string[];
  started: Promise<void>;
  ended: Promise<number | null>;
}

function startAdding(path: string, name: string, most = 1_000_000, options: { uid?: number } = {}): Adder {
  const child = spawn(process.execPath, [BUNDLE, path, name, String(most)], options);
  const told: string[] = [];
  const errors: string[] = [];
  let rest = "";
  const ended = new Promise<number | null>((resolve) => child.on("close", (code) => resolve(code)));
  const started = new Promise<void>((resolve) => {
    child.stdout.on("data", (chunk: Buffer) => {
      const lines = `${rest}${chunk}`.split("\n");
      rest = lines.pop() ?? "";
      told.push(...lines);
      resolve();
    });
    child.on("close", () => resolve());
  });
  child.stderr.on("data", (chunk: Buffer) => errors.push(String(chunk)));
  return { child, told, errors, started, ended };
}

function notesIn(path: string): string[] {
  const text = readFileSync(path, "utf8");
  expect(text.startsWith(START)).toBe(true);
  expect(text.endsWith("\r\n")).toBe(true);
  const { value, diagnostics } = readStash(text, "drawer.csv", "in");
  expect(diagnostics.map(({ code, at }) => [code, at?.line])).toEqual([["STASH-ROW-UNREADABLE", 3]]);
  return (value?.rows ?? []).flatMap(({ cloth }) => (cloth?.fabric === "added" ? [cloth.note] : []));
}

/** The next change clears away what the killed ones left. */
async function changeAfterwards(folder: string, path: string, safe: ReadonlySet<string>): Promise<void> {
  const last = startAdding(path, "last", 1);
  expect(await last.ended).toBe(0);
  expect(readdirSync(folder).filter((name) => name.includes(".part-"))).toEqual([]);
  expect(notesIn(path)).toEqual([...safe, "last-0"]);
  expect(notesIn(`${path}.bak`)).toEqual([...safe]);
}

describe("a table that is being changed", () => {
  // Two writers at once on one table, both killed at a moment of chance, over and over.
  test("killed over and over: whole, with every row that was said to be safe", async () => {
    let { folder, path } = folderWithTable();
    let safe = new Set<string>();
    let seed = 12345;
    const chance = () => {
      seed = (seed * 1103515245 + 12345) % 2147483648;
      return seed / 2147483648;
    };
    for (let round = 0; round < ROUNDS; round++) {
      const adders = ["a", "b"].map((name) => startAdding(path, `${name}${round}`));
      await Promise.race(adders.map(({ started }) => started));
      await new Promise((resolve) => setTimeout(resolve, 15 * chance()));
      for (const { child } of adders) child.kill("SIGKILL");
      await Promise.all(adders.map(({ ended }) => ended));
      expect(adders.flatMap(({ errors }) => errors)).toEqual([]);
      const notes = notesIn(path);
      const kept = new Set(notes);
      expect(kept.size).toBe(notes.length);
      const told = [...safe, ...adders.flatMap((adder) => adder.told)];
      expect(told.filter((note) => !kept.has(note))).toEqual([]);
      // At most the change that each was about.
      expect(notes.length).toBeLessThanOrEqual(told.length + 2);
      if (existsSync(`${path}.bak`)) notesIn(`${path}.bak`);
      safe = kept;
      if (round % 10 === 9) await changeAfterwards(folder, path, safe);
      if (round % 10 === 9 && round < ROUNDS - 1) {
        // A table of thousands of rows would only make the rounds longer.
        ({ folder, path } = folderWithTable());
        safe = new Set();
      }
    }
  }, 240_000);

  test("two writers at once: each waits for the other, nothing is lost", async () => {
    const { folder, path } = folderWithTable();
    const adders = ["a", "b", "c"].map((name) => startAdding(path, name, 15));
    expect(await Promise.all(adders.map(({ ended }) => ended))).toEqual([0, 0, 0]);
    expect(notesIn(path).sort()).toEqual(adders.flatMap(({ told }) => told).sort());
    expect(notesIn(path)).toHaveLength(45);
    expect(readdirSync(folder).sort()).toEqual(["drawer.csv", "drawer.csv.bak"]);
  }, 60_000);

  test("a folder that cannot be written in", async () => {
    const { folder, path } = folderWithTable();
    chmodSync(folder, 0o555);
    onTestFinished(() => chmodSync(folder, 0o755));
    // The superuser may write everywhere: then another does the work.
    const other = process.getuid?.() === 0 ? { uid: 65534 } : {};
    chmodSync(path, 0o644);
    const adder = startAdding(path, "a", 1, other);
    expect(await adder.ended).toBe(1);
    if (!adder.errors.join("").includes("STASH-NOT-WRITTEN"))
      expect(adder.errors.join("")).toContain("EACCES");
    chmodSync(folder, 0o755);
    expect(readFileSync(path, "utf8")).toBe(START);
    expect(readdirSync(folder)).toEqual(["drawer.csv"]);
  }, 30_000);
});

const cloth = { fabric: "Sky", across: 16256, along: 16256, count: 1, note: "" };

function add(path: string, disk: Disk) {
  return changeStash(
    { path, named: "drawer.csv", bare: "in", mayMake: true },
    (stash) => ({ value: { stash: addCloth(stash, cloth, "in"), told: true }, diagnostics: [] }),
    disk,
  );
}

function refuse(code: string): never {
  throw Object.assign(new Error(code), { code });
}

describe("a disk that fails", () => {
  /** Every step a change takes, each of which is let fail in turn. */
  const steps: (keyof Disk)[] = ["read", "write", "rename", "link", "remove", "list", "mode", "settle"];

  test.each(["ENOSPC", "EIO", "EROFS", "EACCES"])(
    "%s at any step: the old table or the new, whole",
    async (code) => {
      for (const step of steps) {
        for (let time = 0; time < 5; time++) {
          const { path } = folderWithTable();
          let calls = 0;
          const disk: Disk = {
            ...realDisk,
            [step]: async (...words: never[]) => {
              if (calls++ === time) refuse(code);
              return (realDisk[step] as (...all: never[]) => Promise<unknown>)(...words);
            },
          };
          const done = await add(path, disk);
          const text = readFileSync(path, "utf8");
          if (done.value === true) expect(text).toBe(`${START}Sky,1 in,1 in,1,\r\n`);
          else {
            // A lock that cannot be read back is taken for another's.
            expect(done.diagnostics[0]?.code).toMatch(/^STASH-(NOT-WRITTEN|BUSY)$/);
            expect(text).toBe(START);
          }
        }
      }
    },
  );

  test("a full disk, met halfway through the new table", async () => {
    const { folder, path } = folderWithTable();
    const disk: Disk = {
      ...realDisk,
      write: async (to, bytes, mode) => {
        if (!to.includes(".part-")) return realDisk.write(to, bytes, mode);
        writeFileSync(to, bytes.subarray(0, bytes.length / 2));
        refuse("ENOSPC");
      },
    };
    const done = await add(path, disk);
    expect(done.value).toBeNull();
    expect(said(done.diagnostics[0])?.message).toBe(
      "drawer.csv was not changed: the disk is full. It stands as it was.",
    );
    expect(readFileSync(path, "utf8")).toBe(START);
    expect(readdirSync(folder)).toEqual(["drawer.csv"]);
  });

  test("a folder in the table's place", async () => {
    const { folder } = folderWithTable();
    mkdirSync(join(folder, "other.csv"));
    const done = await add(join(folder, "other.csv"), realDisk);
    expect(said(done.diagnostics[0])?.message).toContain("it is a folder");
  });

  test("a lock of a run that goes on is waited for, then told of", async () => {
    const { folder, path } = folderWithTable();
    let inside: Promise<unknown> = Promise.resolve();
    let codes: string[] = [];
    const disk: Disk = {
      ...realDisk,
      list: async (where) => {
        inside = changeSafely(
          { path, named: path },
          () => ({ value: null, diagnostics: [] }),
          realDisk,
          40,
        ).then((done) => {
          codes = done.diagnostics.map(({ code }) => code);
        });
        await inside;
        return realDisk.list(where);
      },
    };
    expect((await add(path, disk)).value).toBe(true);
    expect(codes).toEqual(["STASH-BUSY"]);
    expect(readdirSync(folder).sort()).toEqual(["drawer.csv", "drawer.csv.bak"]);
    expect(readFileSync(`${path}.bak`, "utf8")).toBe(START);
  });
});
