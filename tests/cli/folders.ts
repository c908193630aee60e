import { lstatSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Disk } from "../../src/cli/files/disk.ts";
import type { Files, Result } from "../../src/cli/results/what-to-write.ts";
import type { MemoryDisk } from "./memory-disk.ts";

/** A result of a few files, as `plan` would have it written. */
export function result(folder: string, files: Files, more: Partial<Result> = {}): Result {
  return { folder, named: "made", by: "plan", files, inputs: [], replace: false, ...more };
}

export type Contents = Record<string, string>;

/** What a run that was stopped may leave to clear up. */
const isLeftover = (name: string) =>
  name.startsWith(".crossgrain-work") || name.startsWith(".crossgrain-lock");

/** Every file of a folder by name with its text, but for leftovers. */
export function contents(folder: string): Contents {
  const seen: Contents = {};
  for (const name of readdirSync(folder).sort()) {
    const path = join(folder, name);
    if (!isLeftover(name)) seen[name] = lstatSync(path).isFile() ? readFileSync(path, "utf8") : "(no file)";
  }
  return seen;
}

/** The same on a disk in memory. */
export function contentsOn(disk: MemoryDisk, folder: string): Contents {
  return Object.fromEntries(Object.entries(disk.textsIn(folder)).filter(([name]) => !isLeftover(name)));
}

export async function leftovers(disk: Disk, folder: string): Promise<string[]> {
  return (await disk.list(folder)).filter(isLeftover);
}

/** Locks say that their process is gone, as they do where one was killed. One that was not written out is old. */
export function buryHolder(disk: MemoryDisk, folder: string): void {
  for (const [name, text] of Object.entries(disk.textsIn(folder))) {
    if (!name.startsWith(".crossgrain-lock")) continue;
    if (text.endsWith("}")) disk.put(join(folder, name), text.replace(/"pid":\d+/, `"pid":${2 ** 30}`));
    else disk.put(join(folder, name), text, 0);
  }
}

const STEPS: readonly (keyof Disk)[] = [
  "read",
  "write",
  "rename",
  "link",
  "remove",
  "list",
  "makeFolder",
  "removeFolder",
  "kind",
  "identity",
  "mode",
  "modified",
  "settle",
];

/** A disk that calls `before` ahead of every step, with the step's number. */
export function watched(
  disk: Disk,
  before: (step: keyof Disk, words: unknown[], number: number) => void,
): Disk {
  let number = 0;
  const all = STEPS.map((step) => {
    const run = async (...words: unknown[]) => {
      before(step, words, number++);
      return (disk[step] as (...all: unknown[]) => Promise<unknown>).apply(disk, words);
    };
    return [step, run];
  });
  return Object.fromEntries(all) as unknown as Disk;
}

export function refuse(code: string): never {
  throw Object.assign(new Error(code), { code });
}

/** A disk that a run finds gone from one step on: as if it had been killed there. A file being written is left half. */
export function goneFrom(number: number, disk: MemoryDisk, code = "KILLED"): Disk {
  return watched(disk, (step, words, now) => {
    if (now < number) return;
    const [path, bytes] = words as [string, Uint8Array];
    if (now === number && step === "write") disk.put(path, bytes.subarray(0, bytes.length / 2));
    refuse(code);
  });
}

/** A disk of which one step fails once. */
export function failingAt(number: number, disk: Disk, code: string): Disk {
  return watched(disk, (_step, _words, now) => {
    if (now === number) refuse(code);
  });
}
